package org.evenpour.view.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.evenpour.view.screen.Screens.find;
import static org.evenpour.view.screen.Screens.onEventThread;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JTable;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.live.LiveEngine;
import org.evenpour.live.RecordNow;
import org.evenpour.live.Snapshot;
import org.evenpour.picture.Points;
import org.evenpour.plant.PlantFiles;
import org.evenpour.plant.PlantNow;
import org.evenpour.view.model.BoardSample;
import org.evenpour.view.model.Charts;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.DisplayUnits;
import org.evenpour.view.model.Language;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.Sample;
import org.evenpour.view.model.Selection;
import org.evenpour.view.model.Stretch;
import org.evenpour.view.model.WheelRows;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;

/** A log that grows while it lies on the desk. */
class GrowingDeskTest {
  private static final Path LOG = Path.of("samples", "tordilla-week", "casting-log.csv");
  private static final long PATIENCE_NANOS = 60_000_000_000L;
  private static final Look LOOK = Look.of(false, Language.of("en"), DisplayUnits.METRIC, 720);

  @RegisterExtension final EventThreadGuard guard = new EventThreadGuard();

  @TempDir
  @SuppressWarnings("NullAway.Init") // made before each test
  Path folder;

  @SuppressWarnings("NullAway.Init") // made before each test
  private Path log;

  @SuppressWarnings("NullAway.Init") // made before each test
  private List<String> lines;

  @SuppressWarnings("NullAway.Init") // made before each test
  private DeskPlace place;

  @SuppressWarnings("NullAway.Init") // made before each test
  private JComponent screen;

  @BeforeEach
  void beginWithTheFirstRows() throws Exception {
    lines = Files.readAllLines(LOG);
    log = folder.resolve("casting-log.csv");
    int begin = 0;
    while (turn(begin) < 204) {
      begin++;
    }
    // As many rows as the desk knows before it hears more: the last turn is not whole.
    Files.write(log, lines.subList(0, begin + 9));
    onEventThread(
        () -> {
          Theme.install(LOOK.ink());
          place = new DeskPlace(Asks.NOBODY, InstantSource.system(), opened -> {});
          screen = place.screen(LOOK);
          return true;
        });
  }

  @AfterEach
  void close() {
    onEventThread(
        () -> {
          place.close();
          return true;
        });
  }

  private OpenedLog opened() {
    return Objects.requireNonNull(place.log());
  }

  private int turn(int line) {
    return line == 0 ? 0 : Integer.parseInt(lines.get(line).split(",")[3]);
  }

  private PlantFiles sources() {
    return new PlantFiles(List.of(log), Sample.SOURCES.profile(), Sample.SOURCES.events());
  }

  private static void until(Callable<Boolean> isDone) throws InterruptedException {
    long end = System.nanoTime() + PATIENCE_NANOS;
    while (!onEventThread(isDone)) {
      assertThat(System.nanoTime()).as("patience").isLessThan(end);
      Thread.sleep(10);
    }
  }

  private static Points mold(OpenedLog opened, String mold) {
    Selection selection = new Selection();
    opened.fit(selection);
    Desk desk = new Desk(opened, selection, LOOK);
    CharacteristicReport report = Objects.requireNonNull(desk.characteristic());
    return Charts.mold(desk, report, mold).points();
  }

  @Test
  void aFollowedLogIsJudgedWithItsGaugeToo() throws Exception {
    PlantFiles withGauge =
        new PlantFiles(
            List.of(log),
            Sample.SOURCES.profile(),
            Sample.SOURCES.events(),
            List.of(LOG.resolveSibling("gauge.csv")));
    try (LiveEngine engine =
        LiveEngine.following(
            log, new PlantNow(withGauge), InstantSource.system(), Duration.ofMillis(10))) {
      onEventThread(
          () -> {
            place.follow(engine::snapshot, engine::onSnapshot, withGauge);
            return true;
          });
      engine.start();
      until(() -> place.log() != null);
      assertThat(opened().report().gauges()).isNotEmpty();
    }
  }

  @Test
  void whatAnEngineHearsLiesWhereTheLogReadAgainWouldPutIt() throws Exception {
    RecordNow now = Objects.requireNonNull(BoardSample.at(205).snapshot().record());
    OpenedLog before = Sample.read(sources());
    OpenedLog grown = before.grown(now, true);
    assertThat(grown.report()).isSameAs(before.report());
    OpenedLog again = OpenedLog.of(now);
    OpenedLog whole = Sample.opened();
    WheelRows rows = grown.wheels().get(0);
    assertThat(rows.at()).isEqualTo(again.wheels().get(0).at());
    assertThat(rows.rowsOfMold()).isEqualTo(again.wheels().get(0).rowsOfMold());
    int compared = 0;
    for (String mold : rows.record().molds().names()) {
      Points is = mold(grown, mold);
      Points was = mold(before, mold);
      Points will = mold(whole, mold);
      assertThat(is.size()).isGreaterThanOrEqualTo(was.size());
      for (int i = 0; i < is.size(); i++) {
        // Boxed: an anode that was not measured is NaN in both.
        assertThat(Double.valueOf(is.y()[i])).isEqualTo(Double.valueOf(will.y()[i]));
        // A turn in which molds were left out is spread out once it is whole.
        assertThat(Math.floor(is.x()[i])).isEqualTo(Math.floor(will.x()[i]));
        assertThat(i == 0 || is.x()[i] > is.x()[i - 1]).isTrue();
        compared++;
      }
    }
    assertThat(compared).isGreaterThan(1000);
    assertThat(rows.last()).isEqualTo(206);
  }

  @Test
  void newAnodesAreSeenAtOnceAndNothingElseMoves() throws Exception {
    // The engine's own: a first audit, then the same audit and more anodes.
    RecordNow later = Objects.requireNonNull(BoardSample.at(205).snapshot().record());
    OpenedLog first = Sample.read(sources());
    Object reading = new Object();
    List<Snapshot> snapshots =
        List.of(
            heard(new RecordNow(first.record(), first.report(), first.plant(), reading)),
            heard(new RecordNow(later.record(), first.report(), first.plant(), reading)));
    AtomicInteger at = new AtomicInteger();
    List<Runnable> listeners = new ArrayList<>();
    onEventThread(
        () -> {
          place.follow(
              () -> snapshots.get(at.get()),
              listener -> {
                listeners.add(listener);
                return () -> {};
              },
              sources());
          return true;
        });
    until(() -> place.desk() != null);
    DeskScreen desk = Objects.requireNonNull(onEventThread(place::desk));
    onEventThread(
        () -> {
          place.turnTo("molds");
          place.selection().chooseMold("17");
          JTable table = find(screen, "molds.table", JTable.class);
          table.getRowSorter().toggleSortOrder(5);
          return true;
        });
    JTable table = find(screen, "molds.table", JTable.class);
    List<Object> order = onEventThread(() -> order(table));
    int chosen = onEventThread(table::getSelectedRow);
    long rows = onEventThread(() -> opened().record().rowsKept());
    at.set(1);
    listeners.forEach(Runnable::run);
    until(() -> opened().record().rowsKept() > rows);
    onEventThread(
        () -> {
          assertThat(place.desk()).isSameAs(desk);
          assertThat(order(table)).isEqualTo(order);
          assertThat(table.getSelectedRow()).isEqualTo(chosen);
          assertThat(find(screen, "strip.turns", JLabel.class).getText()).contains("205");
          assertThat(find(screen, "strip.until", JLabel.class).getText()).contains("204");
          return true;
        });
  }

  private static Snapshot heard(RecordNow record) {
    return new Snapshot(
        "casting-log.csv",
        false,
        0,
        0,
        null,
        false,
        0,
        null,
        null,
        null,
        null,
        0,
        null,
        null,
        null,
        0,
        List.of(),
        -1,
        record,
        List.of(),
        List.of());
  }

  private static List<Object> order(JTable table) {
    List<Object> order = new ArrayList<>();
    for (int i = 0; i < table.getRowCount(); i++) {
      order.add(table.getValueAt(i, 0));
    }
    return order;
  }

  @Test
  void aFileThatHasGrownIsReadAgainInPlace() throws Exception {
    onEventThread(
        () -> {
          place.open(sources());
          return true;
        });
    until(() -> place.log() != null);
    DeskScreen desk = Objects.requireNonNull(onEventThread(place::desk));
    long rows = onEventThread(() -> opened().report().log().rowsKept());
    Stretch stretch = new Stretch(100, 150);
    onEventThread(
        () -> {
          place.turnTo("capability");
          place.selection().chooseStretch(stretch);
          place.selection().chooseMold("17");
          return true;
        });
    Files.write(
        log,
        lines.subList(lines.size() - 300, lines.size()),
        StandardCharsets.UTF_8,
        StandardOpenOption.APPEND);
    until(() -> opened().report().log().rowsKept() > rows);
    onEventThread(
        () -> {
          assertThat(place.desk()).isSameAs(desk);
          assertThat(desk.pageKey()).isEqualTo("capability");
          assertThat(place.selection().stretch()).isEqualTo(stretch);
          assertThat(place.selection().mold()).isEqualTo("17");
          return true;
        });
  }

  @Test
  void aStretchHasFiguresOfItsOwn() throws Exception {
    onEventThread(
        () -> {
          place.show(Sample.opened());
          place.turnTo("molds");
          place.selection().chooseStretch(new Stretch(100, 150));
          assertThat(find(screen, "strip.stop", JComponent.class).isVisible()).isTrue();
          return true;
        });
    until(() -> opened().part() != null);
    onEventThread(
        () -> {
          Desk desk = new Desk(opened(), place.selection(), LOOK);
          CharacteristicReport its = Objects.requireNonNull(desk.characteristic());
          double sum = 0;
          int count = 0;
          WheelRows rows = desk.wheel();
          var values = Objects.requireNonNull(rows.characteristic(its.name())).values();
          for (int row = rows.rowAt(100); row < rows.rowAt(150); row++) {
            if (!Double.isNaN(values.get(row))) {
              sum += values.get(row);
              count++;
            }
          }
          assertThat(its.overall().count()).isEqualTo(count);
          assertThat(its.overall().mean())
              .isCloseTo(sum / count, org.assertj.core.data.Offset.offset(1e-9));
          assertThat(desk.whole(its).overall().count()).isGreaterThan(count);
          assertThat(find(screen, "strip.figures", JLabel.class).getText()).contains("100–149");
          assertThat(find(screen, "strip.stop", JComponent.class).isVisible()).isFalse();
          return true;
        });
  }

  @Test
  void aStretchIsAuditedAgainWhenItsLogIsReadAgainByHand() throws Exception {
    onEventThread(
        () -> {
          place.open(sources());
          return true;
        });
    until(() -> place.log() != null);
    onEventThread(
        () -> {
          place.selection().chooseStretch(new Stretch(100, 150));
          return true;
        });
    until(() -> opened().part() != null);
    OpenedLog before = onEventThread(this::opened);
    onEventThread(
        () -> {
          place.reload();
          assertThat(place.isReading()).isTrue();
          return true;
        });
    until(() -> opened().record() != before.record() && opened().part() != null);
    assertThat(onEventThread(() -> opened().part())).isNotSameAs(before.part());
  }

  @Test
  void whatIsShownKeepsItsOwnFileOfCausesWhileOthersAreReadOrGivenUp() throws Exception {
    onEventThread(
        () -> {
          place.open(sources());
          return true;
        });
    until(() -> place.log() != null);
    onEventThread(
        () -> {
          place.open(Sample.SOURCES);
          find(screen, "reading.cancel", javax.swing.AbstractButton.class).doClick();
          assertThat(place.isReading()).isFalse();
          assertThat(opened().record().rowsKept()).isLessThan(6107);
          place.reload();
          return true;
        });
    until(() -> !place.isReading());
    assertThat(onEventThread(() -> opened().record().rowsKept())).isLessThan(6107);
  }

  @Test
  void aStretchThatIsStoppedKeepsTheWholeLogsFigures() {
    onEventThread(
        () -> {
          place.show(Sample.opened());
          place.selection().chooseStretch(new Stretch(100, 150));
          find(screen, "strip.stop", javax.swing.AbstractButton.class).doClick();
          assertThat(find(screen, "strip.stop", JComponent.class).isVisible()).isFalse();
          Desk desk = new Desk(opened(), place.selection(), LOOK);
          assertThat(desk.figured()).isSameAs(desk.report());
          return true;
        });
  }
}
