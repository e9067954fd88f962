package org.evenpour.view.screen;

import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.time.InstantSource;
import java.util.List;
import javax.swing.SwingUtilities;
import org.evenpour.live.LiveEngine;
import org.evenpour.view.model.Sources;

/** Opens the window. */
public final class Viewer {
  private Viewer() {}

  /**
   * Opens the window with the desk and, in it, files; returns at once. The program ends when the
   * window is closed.
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

  /**
   * Opens the window with the board on what an engine hears, and the desk beside it; returns at
   * once. The engine is closed with the window.
   *
   * @param engine already started
   * @param clock tells the time of day
   * @param sources which files the desk opens
   * @param languageTag {@code en} or {@code es}
   * @param dark whether the window begins dark
   */
  public static void follow(
      LiveEngine engine, InstantSource clock, Sources sources, String languageTag, boolean dark) {
    SwingUtilities.invokeLater(
        () -> {
          MainWindow window = MainWindow.following(engine, clock, languageTag, dark);
          window
              .frame()
              .addWindowListener(
                  new WindowAdapter() {
                    @Override
                    public void windowClosed(WindowEvent event) {
                      engine.close();
                    }
                  });
          window.frame().setVisible(true);
          window.open(sources);
        });
  }
}
