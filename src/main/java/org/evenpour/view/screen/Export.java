package org.evenpour.view.screen;

import java.io.IOException;
import java.nio.file.Path;

/**
 * Something that can be saved from where it is seen.
 *
 * @param label what, in words
 * @param suffix of the file, without the dot
 * @param name proposed for the file, without its suffix
 * @param writer writes it; runs on a worker thread, with what was shown when it was chosen
 */
public record Export(String label, String suffix, String name, Writer writer) {

  /** Writes a file, whole or not at all. */
  public interface Writer {
    /** Writes it. */
    void write(Path file) throws IOException;
  }
}
