package org.evenpour.view.screen;

import java.util.List;
import javax.swing.JComponent;

/**
 * A page of the desk, for one opened log and one look. A new page is one class with this interface
 * and one line in {@link Pages}; its name and its explanation are {@code page.KEY} and {@code
 * page.KEY.tip} among the words.
 */
interface Page {

  /** What is shown; built once, by the constructor. */
  JComponent screen();

  /** Shows what is chosen now; called before the page is seen and whenever the choice changes. */
  void refresh();

  /** What can be saved from here, as it is seen now. */
  List<Export> exports();

  /** Whether it shows the chosen characteristic; where not, none is offered for choice. */
  default boolean isOfOneCharacteristic() {
    return true;
  }

  /** The field that filters, if there is one. */
  default java.util.Optional<JComponent> filter() {
    return java.util.Optional.empty();
  }

  /** What has the focus when the page is turned to by a key; empty = whatever had it. */
  default java.util.Optional<java.awt.Component> first() {
    return java.util.Optional.empty();
  }

  /** Takes what it may ask of the desk; called once, before it is shown. */
  default void act(PageActs acts) {}

  /** It is never shown again: what it computes, nobody waits for any more. */
  default void leave() {}

  /** Shows a part of itself, by its key. */
  default void turnTo(String part) {}

  /** Lets go of what was opened beside the list; false where nothing was. */
  default boolean close() {
    return false;
  }
}
