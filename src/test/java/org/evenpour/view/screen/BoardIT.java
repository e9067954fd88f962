package org.evenpour.view.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.evenpour.view.screen.Screens.find;
import static org.evenpour.view.screen.Screens.onEventThread;

import java.awt.Component;
import java.awt.Frame;
import java.awt.GraphicsEnvironment;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.event.KeyEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Predicate;
import javax.imageio.ImageIO;
import javax.swing.JFrame;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import org.evenpour.feed.GrowingLog;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.live.LiveEngine;
import org.evenpour.live.LiveRecord;
import org.evenpour.plant.PlantFiles;
import org.evenpour.plant.Seen;
import org.evenpour.plant.SeenFile;
import org.evenpour.view.model.BoardDesk;
import org.evenpour.view.model.BoardModel;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;

/** The board in the real window on a real display: a log grows, and real keys are pressed. */
class BoardIT {
  private static final Path SAMPLE = Path.of("samples", "tordilla-week");
  private static final long PATIENCE_NANOS = 60_000_000_000L;

  @RegisterExtension final EventThreadGuard guard = new EventThreadGuard();

  @TempDir Path folder;

  /** The plant's clock, which the test moves. */
  private final AtomicReference<Instant> now =
      new AtomicReference<>(Instant.parse("2026-03-07T20:54:00Z"));

  private List<String> lines = List.of();
  private int written;

  @SuppressWarnings("NullAway.Init") // made before each test
  private Path log;

  @SuppressWarnings("NullAway.Init") // made before each test
  private LiveEngine engine;

  @SuppressWarnings("NullAway.Init") // made before each test
  private MainWindow window;

  @SuppressWarnings("NullAway.Init") // made before each test
  private Robot robot;

  @BeforeEach
  void followTheSample() throws Exception {
    assumeThat(GraphicsEnvironment.isHeadless()).as("there is no display").isFalse();
    robot = new Robot();
    robot.setAutoDelay(20);
    log = folder.resolve("casting-log.csv");
    lines = Files.readAllLines(SAMPLE.resolve("casting-log.csv"));
    written = 5236; // in the midst of turn 205
    Files.write(log, lines.subList(0, written));
    Profiles profiles = ProfileReader.read(SAMPLE.resolve("profile.yaml"));
    engine =
        new LiveEngine(
            new GrowingLog(log, profiles, now::get, Duration.ofMillis(20)),
            new LiveRecord(
                "casting-log.csv",
                profiles,
                EventsReader.read(SAMPLE.resolve("events.csv"), profiles),
                SeenFile.beside(log)),
            now::get);
    engine.start();
    window =
        onEventThread(
            () -> {
              MainWindow made =
                  new MainWindow(
                      "en",
                      false,
                      now::get,
                      all ->
                          List.of(new BoardPlace(BoardDesk.of(engine, now::get), BoardActs.NONE)));
              made.frame().setSize(1280, 800);
              made.frame().setLocation(0, 0);
              made.frame().setVisible(true);
              return made;
            });
  }

  @AfterEach
  void close() {
    if (window != null) {
      onEventThread(
          () -> {
            window.frame().dispose();
            return true;
          });
      engine.close();
    }
  }

  @Test
  void showsEachAnodeThenTheSilenceAndKeepsWhatWasSeen() throws Exception {
    append(1);
    until(model -> model.alert() == null && model.figure() != null);
    for (int anode = 0; anode < 3; anode++) {
      now.updateAndGet(time -> time.plusSeconds(30));
      append(1);
      String mass = lines.get(written - 1).split(",")[9];
      until(model -> Objects.requireNonNull(model.figure()).number().equals(mass));
    }
    picture("board-live.png");

    now.updateAndGet(time -> time.plusSeconds(1800));
    BoardModel silent = until(model -> model.alert() != null);
    // By its own clock: cast at 17:54:50, and it is 18:25:30 now.
    assertThat(Objects.requireNonNull(silent.alert()).large()).isEqualTo("30 min 40 s");
    picture("board-silent.png");
    append(1);
    until(model -> model.alert() == null);

    String lead = board().model().signals().get(0).lead();
    press(KeyEvent.VK_S);
    untilTrue(() -> note().isFocusOwner());
    type(KeyEvent.VK_O, KeyEvent.VK_K, KeyEvent.VK_SPACE, KeyEvent.VK_S);
    assertThat(onEventThread(() -> note().getText())).isEqualTo("ok s");
    picture("board-note.png");
    press(KeyEvent.VK_ENTER);
    BoardModel seen =
        until(
            model ->
                model.signals().stream()
                    .anyMatch(one -> one.lead().equals(lead) && one.seen().endsWith("ok s")));
    assertThat(seen.signals().get(0).lead()).isNotEqualTo(lead);
    List<Seen> kept = SeenFile.beside(log).read();
    assertThat(kept).isNotEmpty().allSatisfy(one -> assertThat(one.note()).isEqualTo("ok s"));
  }

  @Test
  void hearsTheKeysOfTheBoardAndOfTheWindow() throws Exception {
    append(1);
    until(model -> model.signals().size() > 1);
    press(KeyEvent.VK_DOWN);
    until(model -> model.signals().get(1).isChosen());
    press(KeyEvent.VK_C);
    until(model -> model.ringTitle().contains("wedge"));
    press(KeyEvent.VK_U, KeyEvent.VK_CONTROL);
    until(model -> Objects.requireNonNull(model.figure()).unit().equals("lb"));
    assertThat(board().model().ringTitle()).as("choices outlive the look").contains("wedge");
    press(KeyEvent.VK_D, KeyEvent.VK_CONTROL);
    untilTrue(() -> shown().getBackground().getRed() < 64);
    picture("board-dark.png");
  }

  @Test
  void followsThroughFullScreenAndEndsWithTheWindow() throws Exception {
    close();
    now.set(Instant.parse("2026-03-07T20:54:00Z"));
    Viewer.follow(
        log,
        new PlantFiles(List.of(), SAMPLE.resolve("profile.yaml"), SAMPLE.resolve("events.csv")),
        "es",
        true,
        now::get);
    untilTrue(() -> follower() != null);
    BoardScreen before = found();
    untilTrue(() -> before.model().figure() != null);
    press(KeyEvent.VK_F11);
    untilTrue(() -> frameOf(found()).isUndecorated() && found().isShowing());
    append(1);
    String mass = lines.get(written - 1).split(",")[9];
    untilTrue(() -> Objects.requireNonNull(found().model().figure()).number().equals(mass));
    assertThat(found().model().place()).contains("Rueda T1", "Molde");
    onEventThread(
        () -> {
          frameOf(found()).dispose();
          return true;
        });
    untilTrue(
        () ->
            Thread.getAllStackTraces().keySet().stream()
                .noneMatch(thread -> thread.getName().startsWith("evenpour-")));
  }

  private static JFrame frameOf(BoardScreen screen) {
    return (JFrame) Objects.requireNonNull(SwingUtilities.getWindowAncestor(screen));
  }

  private static BoardScreen found() {
    return Objects.requireNonNull(follower());
  }

  /** The board of the window that is open. */
  private static @Nullable BoardScreen follower() {
    for (Frame frame : Frame.getFrames()) {
      if (frame.isShowing()) {
        for (Component part : Screens.all(frame)) {
          if (part instanceof BoardScreen screen) {
            return screen;
          }
        }
      }
    }
    return null;
  }

  private BoardScreen board() {
    return onEventThread(this::shown);
  }

  private BoardScreen shown() {
    return find(window.frame(), "board", BoardScreen.class);
  }

  private JTextField note() {
    return find(window.frame(), "board.note", JTextField.class);
  }

  private void append(int rows) throws Exception {
    Files.write(log, lines.subList(written, written + rows), StandardOpenOption.APPEND);
    written += rows;
  }

  private BoardModel until(Predicate<BoardModel> wanted) throws InterruptedException {
    untilTrue(() -> wanted.test(shown().model()));
    return board().model();
  }

  private static void untilTrue(java.util.concurrent.Callable<Boolean> isDone)
      throws InterruptedException {
    long end = System.nanoTime() + PATIENCE_NANOS;
    while (!onEventThread(isDone)) {
      assertThat(System.nanoTime()).as("patience").isLessThan(end);
      Thread.sleep(20);
    }
  }

  private void press(int code, int... with) {
    for (int key : with) {
      robot.keyPress(key);
    }
    robot.keyPress(code);
    robot.keyRelease(code);
    for (int key : with) {
      robot.keyRelease(key);
    }
    robot.waitForIdle();
  }

  private void type(int... codes) {
    for (int code : codes) {
      press(code);
    }
  }

  private void picture(String name) throws Exception {
    robot.waitForIdle();
    robot.delay(150);
    Rectangle bounds = onEventThread(() -> window.frame().getBounds());
    Path pictures = Path.of("target", "board-pictures");
    Files.createDirectories(pictures);
    ImageIO.write(robot.createScreenCapture(bounds), "png", pictures.resolve(name).toFile());
  }
}
