package org.evenpour.view.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.evenpour.view.screen.Screens.find;
import static org.evenpour.view.screen.Screens.onEventThread;
import static org.evenpour.view.screen.Screens.press;
import static org.evenpour.view.screen.Screens.type;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import javax.swing.AbstractButton;
import javax.swing.JComponent;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import org.evenpour.casting.CauseMark;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.plant.PlantFiles;
import org.evenpour.store.CausesFile;
import org.evenpour.view.model.DisplayUnits;
import org.evenpour.view.model.Language;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.Sample;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;

/** Marking on the desk, without a display. */
class CauseFormTest {
  private static final Instant NOW = Instant.parse("2026-03-09T12:00:00.5Z");
  private static final long PATIENCE_NANOS = 20_000_000_000L;

  @RegisterExtension final EventThreadGuard guard = new EventThreadGuard();

  @TempDir
  @SuppressWarnings("NullAway.Init") // made before each test
  Path folder;

  @SuppressWarnings("NullAway.Init") // made before each test
  private DeskPlace place;

  @SuppressWarnings("NullAway.Init") // made before each test
  private JComponent screen;

  @SuppressWarnings("NullAway.Init") // made before each test
  private Path file;

  @BeforeEach
  void showASignal() {
    file = folder.resolve("causes.jsonl");
    onEventThread(
        () -> {
          Look look = Look.of(false, Language.of("en"), DisplayUnits.METRIC, 720);
          Theme.install(look.ink());
          place = new DeskPlace(Asks.NOBODY, InstantSource.fixed(NOW), log -> {});
          screen = place.screen(look);
          place.turnTo("signals");
          place.show(
              Sample.opened(),
              new PlantFiles(Sample.SOURCES.logs(), null, null, List.of(), null, file));
          place.selection().chooseSignal(signal("1"));
          return true;
        });
  }

  /** The mold's last. */
  private static Signal signal(String mold) {
    return Sample.opened().report().signals().stream()
        .filter(one -> mold.equals(one.mold()) && one.characteristic().equals("thickness"))
        .reduce((one, later) -> later)
        .orElseThrow();
  }

  private String said() {
    return onEventThread(() -> find(screen, "cause.said", JTextArea.class).getText());
  }

  private void until(Callable<Boolean> isDone) throws InterruptedException {
    long end = System.nanoTime() + PATIENCE_NANOS;
    while (!onEventThread(isDone)) {
      assertThat(System.nanoTime()).as("patience").isLessThan(end);
      Thread.sleep(10);
    }
  }

  @Test
  void whatCannotBeWrittenIsSaidAndStaysToBeWrittenAgain() throws Exception {
    Files.createDirectory(file); // no file can be written where a folder is
    press(screen, "cause.right");
    press(screen, "cause.keep");
    assertThat(said()).isEqualTo("Not kept yet; still empty: Who.");
    type(screen, "cause.who", "Ana");
    type(screen, "cause.why", " \t");
    press(screen, "cause.keep");
    assertThat(said()).isEqualTo("Not kept yet; still empty: Why: what was seen.");
    type(screen, "cause.why", "pump");
    press(screen, "cause.keep");
    until(() -> find(screen, "cause.said", JTextArea.class).getText().startsWith("Not kept, and"));
    assertThat(said()).contains(file.toString(), "press Keep again");
    assertThat(onEventThread(() -> find(screen, "cause.why", JTextField.class).getText()))
        .isEqualTo("pump");

    // Another signal is looked at meanwhile: what is asked names its own.
    onEventThread(
        () -> {
          place.selection().chooseSignal(signal("13"));
          return true;
        });
    assertThat(onEventThread(() -> find(screen, "cause.asks", JTextArea.class).getText()))
        .startsWith("Mold 1 ran thick")
        .endsWith("It was: Spray flow.");
    Files.delete(file);
    press(screen, "cause.keep");
    until(() -> "Kept.".equals(find(screen, "cause.said", JTextArea.class).getText()));
    CauseMark mark = new CausesFile(file).read().marks().get(0);
    assertThat(mark.place().mold()).isEqualTo("1");
    assertThat(mark.cause().name()).isEqualTo("spray_flow_l_min");
    assertThat(mark.who() + mark.why()).isEqualTo("Anapump");
    assertThat(mark.at()).isEqualTo(NOW);
    OpenedLog log = Objects.requireNonNull(place.log());
    assertThat(log.report().causes().marks()).hasSize(1);
  }

  @Test
  void aLogThatWasReadBeforeTheMarkWasWrittenDoesNotHideIt() throws Exception {
    press(screen, "cause.other");
    type(screen, "cause.cause", "wash pump\nwithout prime");
    type(screen, "cause.who", "Ana");
    type(screen, "cause.why", "seen");
    press(screen, "cause.keep");
    until(() -> place.log() != null && !place.log().report().causes().isEmpty());
    onEventThread(
        () -> {
          place.renew(Sample.opened());
          return true;
        });
    OpenedLog log = Objects.requireNonNull(place.log());
    assertThat(log.report().causes().besideLinks(signal("1")).get(0).cause().name())
        .isEqualTo("wash pump without prime");
  }

  @Test
  void readersHearWhatAButtonIsAbout() {
    assertThat(
            onEventThread(
                () ->
                    find(screen, "cause.right", AbstractButton.class)
                        .getAccessibleContext()
                        .getAccessibleName()))
        .isEqualTo("Spray flow: it was this…");
    assertThat(onEventThread(() -> find(screen, "cause.back", AbstractButton.class).isVisible()))
        .isFalse();
  }
}
