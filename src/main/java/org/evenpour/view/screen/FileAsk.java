package org.evenpour.view.screen;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Asks the user for files. */
public interface FileAsk {

  /** Which files to open; empty = none after all. */
  List<Path> open();

  /** Where to save; null = nowhere after all. */
  @Nullable Path save(String proposedName);

  /**
   * Whether a file may be written.
   *
   * @throws IOException if it is one that is shown: says which
   */
  default void mayWrite(Path file) throws IOException {}
}
