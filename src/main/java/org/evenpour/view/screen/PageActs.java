package org.evenpour.view.screen;

import org.evenpour.view.model.Evidence;

/** What a page may ask of the desk that it stands on. */
interface PageActs {

  /** Turns to where something is seen; Esc turns back. */
  void open(Evidence evidence);

  /** Asks where, and saves. */
  void save(Export export);
}
