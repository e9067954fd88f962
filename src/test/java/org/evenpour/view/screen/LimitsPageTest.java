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
import javax.swing.JComponent;
import javax.swing.JTable;
import javax.swing.JTextArea;
import org.evenpour.audit.ProposedLimits;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsVersion;
import org.evenpour.plant.PlantFiles;
import org.evenpour.store.LimitsFile;
import org.evenpour.view.model.DisplayUnits;
import org.evenpour.view.model.Language;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.Sample;
import org.evenpour.view.model.Stretch;
import org.evenpour.view.model.WheelRows;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;

/** A person proposes, approves and retires limits; the file then says what the command would. */
class LimitsPageTest {
  @RegisterExtension final EventThreadGuard guard = new EventThreadGuard();

  private static final Instant NOW = Instant.parse("2026-03-09T08:00:00Z");

  @TempDir
  @SuppressWarnings("NullAway.Init") // made before each test
  Path folder;

  @SuppressWarnings("NullAway.Init") // made before each test
  private DeskPlace place;

  @SuppressWarnings("NullAway.Init") // made before each test
  private JComponent screen;

  @BeforeEach
  void open() throws Exception {
    onEventThread(
        () -> {
          Look look = Look.of(false, Language.of("en"), DisplayUnits.METRIC, 720);
          Theme.install(look.ink());
          place = new DeskPlace(Asks.NOBODY, InstantSource.fixed(NOW), log -> {});
          screen = place.screen(look);
          place.show(
              Sample.opened(),
              new PlantFiles(
                  Sample.SOURCES.logs(),
                  Sample.SOURCES.profile(),
                  Sample.SOURCES.events(),
                  List.of(),
                  file(),
                  null));
          place.selection().chooseCharacteristic("mass");
          place.turnTo("limits");
          return true;
        });
    until(() -> text("limits.state").contains("no limits are approved"));
  }

  private Path file() {
    return folder.resolve("limits.jsonl");
  }

  private LimitsBook book() throws Exception {
    return new LimitsFile(file()).read().book();
  }

  private String text(String name) {
    return find(screen, name, JTextArea.class).getText();
  }

  private static void until(Callable<Boolean> isDone) throws InterruptedException {
    for (int i = 0; i < 600 && !onEventThread(isDone); i++) {
      Thread.sleep(50);
    }
    assertThat(onEventThread(isDone)).isTrue();
  }

  private void propose(Stretch turns) throws InterruptedException {
    onEventThread(
        () -> {
          place.selection().chooseStretch(turns);
          return true;
        });
    press(screen, "limits.propose");
    until(() -> text("limits.said").contains("Judged by them"));
  }

  @Test
  void whatIsApprovedIsWhatTheCommandWouldPropose() throws Exception {
    Stretch sound = new Stretch(1, 61);
    propose(sound);
    assertThat(text("limits.said")).contains("anodes of start-up");
    press(screen, "limits.approve");
    press(screen, "limits.keep"); // nobody said who
    assertThat(text("limits.kept")).isEqualTo("Not kept yet; still empty: Who decides.");
    assertThat(Files.exists(file())).isFalse();
    type(screen, "limits.name", " A. Rojas ");
    type(screen, "limits.reason", "sixty sound turns");
    press(screen, "limits.keep");
    until(() -> text("limits.state").contains("version 1 is in force"));

    WheelRows rows = Sample.opened().wheels().get(0);
    Instant from = castAt(rows, rows.rowAt(sound.from()));
    Instant to = castAt(rows, rows.rowAt(sound.to()));
    List<LimitsVersion> wanted =
        ProposedLimits.drafts(ProposedLimits.of(Sample.opened().record(), from, to, List.of()));
    assertThat(book().versions())
        .usingRecursiveComparison()
        .isEqualTo(
            wanted.stream()
                .map(one -> one.numbered(1).approved(NOW, NOW, "A. Rojas", "sixty sound turns"))
                .toList());
    assertThat(rowCount("limits.history")).isEqualTo(1);
  }

  private static Instant castAt(WheelRows rows, int row) {
    return Instant.ofEpochMilli(rows.record().castAtMillis().get(row));
  }

  private int rowCount(String table) {
    return onEventThread(() -> find(screen, table, JTable.class).getRowCount());
  }

  @Test
  void ofOneCharacteristicAloneAfterItsBaseAndRetiredAgain() throws Exception {
    propose(new Stretch(1, 61));
    press(screen, "limits.approve");
    press(screen, "limits.all");
    press(screen, "limits.from_base");
    type(screen, "limits.name", "A. Rojas");
    type(screen, "limits.reason", "sound");
    press(screen, "limits.keep");
    until(() -> text("limits.kept").startsWith("Approved. Read the log again"));
    LimitsVersion its = book().versions().get(0);
    assertThat(book().versions()).hasSize(1);
    assertThat(its.characteristic()).isEqualTo("mass");
    assertThat(its.validFrom()).isEqualTo(its.base().lastCastAt().plusMillis(1));

    press(screen, "limits.retire");
    assertThat(text("limits.asks")).isEqualTo("Mass: retire version 1 from now on.");
    // Who decided last is there already.
    type(screen, "limits.reason", "new scale");
    press(screen, "limits.keep");
    until(() -> text("limits.state").contains("no limits are approved"));
    assertThat(Objects.requireNonNull(book().retirement(its)).why()).isEqualTo("new scale");
    assertThat(rowCount("limits.history")).isEqualTo(1);
  }

  @Test
  void aDamagedFileIsNotAddedToAndSaysWhere() throws Exception {
    Files.writeString(file(), "this is no line of limits\n");
    propose(new Stretch(1, 61));
    press(screen, "limits.approve");
    type(screen, "limits.name", "A. Rojas");
    type(screen, "limits.reason", "sound");
    press(screen, "limits.keep");
    until(() -> text("limits.kept").contains("Not kept, and nothing is lost"));
    assertThat(text("limits.kept")).contains("limits.jsonl:1");
    assertThat(Files.readString(file())).isEqualTo("this is no line of limits\n");
  }

  /** Esc gives the form up, and only then the stretch. */
  @Test
  void escapeLeavesTheFormFirst() throws Exception {
    propose(new Stretch(1, 61));
    press(screen, "limits.approve");
    onEventThread(
        () -> {
          place.back();
          assertThat(find(screen, "limits.form", JComponent.class).isVisible()).isFalse();
          assertThat(place.selection().stretch()).isNotNull();
          place.back();
          assertThat(place.selection().stretch()).isNull();
          return true;
        });
    assertThat(Files.exists(file())).isFalse();
  }
}
