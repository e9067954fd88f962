package org.evenpour.view.screen;

import java.awt.GraphicsEnvironment;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import javax.swing.SwingUtilities;
import org.evenpour.intake.IntakeException;
import org.evenpour.live.LiveEngine;
import org.evenpour.plant.PlantFiles;
import org.evenpour.plant.PlantNow;
import org.evenpour.view.model.BoardDesk;

/** Opens the window. */
public final class Viewer {
  static final Duration LOOK_EVERY = Duration.ofMillis(5);

  private Viewer() {}

  /** Whether a window can be opened at all. */
  public static boolean hasDisplay() {
    return !GraphicsEnvironment.isHeadless();
  }

  /**
   * Opens the window and, in it, files; returns at once. The program ends when the window is
   * closed.
   *
   * @param sources which files; {@link PlantFiles#NONE} = none yet
   * @param languageTag {@code en} or {@code es}
   * @param dark whether the window begins dark
   * @param clock tells when something was said
   */
  public static void open(
      PlantFiles sources, String languageTag, boolean dark, InstantSource clock) {
    SwingUtilities.invokeLater(
        () -> {
          MainWindow window = new MainWindow(languageTag, dark, clock, made -> List.of());
          window.frame().setVisible(true);
          window.open(sources);
        });
  }

  /**
   * Opens the window with the board in front, which follows a log while it grows, and with the log
   * on the desk as far as it has grown; returns at once.
   *
   * @param log need not be there yet
   * @param sources what else there is: the profile and the events
   * @param languageTag {@code en} or {@code es}
   * @param dark whether the window begins dark
   * @param clock tells how old the last anode is
   * @throws IntakeException if the profile or the events cannot be read
   */
  public static void follow(
      Path log, PlantFiles sources, String languageTag, boolean dark, InstantSource clock)
      throws IntakeException, IOException {
    PlantFiles all = sources.withLogs(List.of(log));
    LiveEngine engine = LiveEngine.following(log, new PlantNow(all), clock, LOOK_EVERY);
    engine.start();
    SwingUtilities.invokeLater(
        () -> {
          MainWindow window =
              new MainWindow(
                  languageTag,
                  dark,
                  clock,
                  made ->
                      List.of(
                          new BoardPlace(
                              BoardDesk.of(engine, clock),
                              new BoardActs(
                                  made::changeUnits,
                                  made::changeDark,
                                  made::changeFull,
                                  () -> made.choose("desk")))));
          window
              .frame()
              .addWindowListener(
                  new WindowAdapter() {
                    @Override
                    public void windowClosed(WindowEvent event) {
                      // On the way to full screen and back the frame is closed and comes again.
                      if (!window.frame().isDisplayable()) {
                        engine.close();
                      }
                    }
                  });
          window.frame().setVisible(true);
          window.follow(engine::snapshot, engine::onSnapshot, all);
        });
  }
}
