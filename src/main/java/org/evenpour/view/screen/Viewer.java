package org.evenpour.view.screen;

import java.util.List;
import javax.swing.SwingUtilities;
import org.evenpour.view.model.Sources;

/** Opens the window. */
public final class Viewer {
  private Viewer() {}

  /**
   * Opens the window and, in it, files; returns at once. The program ends when the window is
   * closed.
   *
   * @param sources which files; {@link Sources#NONE} = none yet
   * @param languageTag {@code en} or {@code es}
   * @param dark whether the window begins dark
   */
  public static void open(Sources sources, String languageTag, boolean dark) {
    SwingUtilities.invokeLater(
        () -> {
          MainWindow window = new MainWindow(languageTag, dark, made -> List.of());
          window.frame().setVisible(true);
          window.open(sources);
        });
  }
}
