package org.evenpour.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Predicate;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.PouringPlace;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.Profiles;
import org.evenpour.plant.PlantFiles;
import org.evenpour.plant.PlantNow;
import org.evenpour.plant.Seen;
import org.evenpour.plant.SeenFile;
import org.evenpour.simulate.Fault;
import org.evenpour.simulate.Scenario;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What changes beside the log while it is followed: events, profile, notes of others, the clock.
 */
@Tag("slow")
class LiveChangesTest {
  private static final Duration PAUSE = Duration.ofMillis(10);

  @TempDir Path folder;
  private final AtomicReference<Instant> clock = new AtomicReference<>(SimulatedLog.NOW);

  /** One mold shifts for good: with the mold change that explains it, it is a new level. */
  @Test
  void judgesAMoldAnewFromAChangeThatIsWrittenDownLater() throws Exception {
    SimulatedLog log =
        SimulatedLog.of(Scenario.week(9).withDays(6).withMolds(20).withFault(Fault.UNEXPLAINED));
    LiveRecord live = live();
    SimulatedLog.open(live);
    int row = 0;
    while (log.turn(row) <= 70) {
      log.row(live, row++);
    }
    live.caughtUp(SimulatedLog.NOW);
    List<Signal> signals = List.of();
    while (signals.isEmpty()) {
      log.row(live, row++);
      live.caughtUp(SimulatedLog.NOW);
      signals = molds(live);
    }
    int until = Math.min(log.lines().size(), row + 20 * 12);
    while (row < until) {
      log.row(live, row++);
    }
    live.caughtUp(SimulatedLog.NOW);
    assertThat(molds(live)).hasSize(1);
    Signal signal = molds(live).get(0);
    WheelNow.Judged before = judged(live, signal);
    int mold = live.snapshot(0).wheels().get(0).molds().indexOf(signal.mold());

    assertThat(live.events(List.of())).as("nothing new").isFalse();
    List<CastingEvent> events =
        List.of(
            new CastingEvent(
                signal.sinceAt(), "", signal.mold(), "mold_changed", "", "events.csv:2"));
    assertThat(live.events(events)).isTrue();
    live.caughtUp(SimulatedLog.NOW);

    assertThat(molds(live)).as("the new mold is no signal").isEmpty();
    WheelNow.Judged after = judged(live, signal);
    assertThat(after.limits()).as("the limits stay").isEqualTo(before.limits());
    for (int other = 0; other < 20; other++) {
      if (other != mold) {
        assertThat(after.usual().get(other)).isEqualTo(before.usual().get(other));
      }
    }
    // As if the event had stood in the file from the start.
    LiveRecord fromTheStart =
        new LiveRecord("log.csv", Profiles.NONE, events, new SeenFile(folder.resolve("none")));
    SimulatedLog.open(fromTheStart);
    int again = 0;
    while (log.turn(again) <= 70) {
      log.row(fromTheStart, again++);
    }
    fromTheStart.caughtUp(SimulatedLog.NOW);
    while (again < until) {
      log.row(fromTheStart, again++);
    }
    assertThat(live.episodes("T1")).isEqualTo(fromTheStart.episodes("T1"));
  }

  /** How many rows it takes until a mold has a signal, and some turns more. */
  private int tellingRows(SimulatedLog log) throws IntakeException {
    LiveRecord live = live();
    SimulatedLog.open(live);
    int row = 0;
    while (row < 20 * 70) {
      log.row(live, row++);
    }
    live.caughtUp(SimulatedLog.NOW);
    while (molds(live).isEmpty()) {
      log.row(live, row++);
      live.caughtUp(SimulatedLog.NOW);
    }
    // A mold that is new has to have some casts before it is judged by them.
    return Math.min(log.lines().size() - 2, row + 20 * 12);
  }

  private static List<Signal> molds(LiveRecord live) {
    return molds(live.snapshot(0));
  }

  private static List<Signal> molds(Snapshot snapshot) {
    return snapshot.now().stream()
        .filter(signal -> signal.scope() == Scope.MOLD && signal.open())
        .toList();
  }

  private static WheelNow.Judged judged(LiveRecord live, Signal signal) {
    return live.snapshot(0).wheels().get(0).characteristics().stream()
        .filter(one -> one.name().equals(signal.characteristic()))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void readsEventsAndProfileAgainAndKeepsTheOldOnesWhileTheNewAreBroken() throws Exception {
    SimulatedLog log =
        SimulatedLog.of(Scenario.week(9).withDays(6).withMolds(20).withFault(Fault.UNEXPLAINED));
    int rows = tellingRows(log);
    Path file = folder.resolve("log.csv");
    Path profile = Files.writeString(folder.resolve("profile.yaml"), "molds: 20\n");
    Path events = Files.writeString(folder.resolve("events.csv"), "at,mold,event\n");
    int atStart = 20 * 70;
    Files.writeString(file, log.text(atStart));
    try (LiveEngine engine =
        LiveEngine.following(
            file,
            new PlantNow(new PlantFiles(List.of(file), profile, events)),
            clock::get,
            PAUSE)) {
      engine.start();
      until(engine, snapshot -> !snapshot.reading());
      append(file, String.join("\n", log.lines().subList(atStart, rows)) + "\n");
      until(engine, snapshot -> snapshot.rows() == rows);
      Snapshot begun = settled(engine);
      Signal signal = molds(begun).get(0);

      append(events, signal.sinceAt() + ",x");
      Snapshot broken = until(engine, snapshot -> snapshot.plantTrouble() != null);
      assertThat(broken.plantTrouble()).asString().contains("events.csv:2");
      assertThat(broken.rows()).isEqualTo(rows);
      assertThat(molds(broken)).extracting(Signal::mold).contains(signal.mold());
      Files.writeString(
          events, "at,mold,event\n" + signal.sinceAt() + "," + signal.mold() + ",mold_changed\n");
      Snapshot changed =
          until(
              engine,
              snapshot ->
                  molds(snapshot).stream()
                      .noneMatch(one -> Objects.equals(one.mold(), signal.mold())));
      assertThat(changed.plantTrouble()).isNull();

      Files.writeString(profile, "molds: 20\npouring_place: west\n");
      until(engine, snapshot -> String.valueOf(snapshot.plantTrouble()).contains("profile.yaml:2"));
      append(file, log.lines().get(rows) + "\n");
      Snapshot goesOn = until(engine, snapshot -> snapshot.rows() == rows + 1);
      assertThat(goesOn.wheels().get(0).profile().pouringPlace()).isEqualTo(PouringPlace.RIGHT);

      Files.writeString(
          profile,
          "molds: 20\npouring_place: top\nturns: counterclockwise\n"
              + "characteristics: {mass: {target: 388}}\n");
      Snapshot renewed =
          until(
              engine,
              snapshot -> snapshot.wheels().get(0).profile().pouringPlace() == PouringPlace.TOP);
      assertThat(renewed.plantTrouble()).isNull();
      assertThat(renewed.reading()).isFalse();
      assertThat(renewed.rows()).isEqualTo(rows + 1);
      assertThat(renewed.rowsSetAside()).isZero();
      assertThat(renewed.wheels().get(0).profile().clockwise()).isFalse();
      assertThat(renewed.wheels().get(0).characteristics().get(0).specification().target())
          .isEqualTo(Double.valueOf(388));
      append(file, log.lines().get(rows + 1) + "\n");
      until(engine, snapshot -> snapshot.rows() == rows + 2);
    }
  }

  @Test
  void refusesAProfileThatIsBrokenFromTheStart() throws Exception {
    Path profile = Files.writeString(folder.resolve("profile.yaml"), "turns: widdershins\n");
    assertThatThrownBy(() -> new PlantFiles(List.of(), profile, null).profiles())
        .isInstanceOf(IntakeException.class)
        .hasMessageContaining("profile.yaml:1")
        .hasMessageContaining("clockwise, counterclockwise");
  }

  /** Two programs follow one log, and each shows what was said at the other. */
  @Test
  void showsWhatAnotherProgramAcknowledged() throws Exception {
    SimulatedLog log = SimulatedLog.of(Scenario.week(2).withDays(2));
    Path file = folder.resolve("log.csv");
    Files.writeString(file, log.text(600));
    try (LiveEngine one = engine(file);
        LiveEngine other = engine(file)) {
      one.start();
      other.start();
      until(one, snapshot -> !snapshot.reading());
      until(other, snapshot -> !snapshot.reading());
      one.acknowledge(Signals.thinMold("7", 12, 14), "Ana", "nozzle");
      until(one, snapshot -> snapshot.seen().size() == 1);
      until(other, snapshot -> snapshot.seen().size() == 1);
      other.acknowledge(Signals.thinMold("8", 12, 14), "", "strainer");
      until(other, snapshot -> snapshot.seen().size() == 2);
      Snapshot both = until(one, snapshot -> snapshot.seen().size() == 2);
      assertThat(both.seen()).extracting(Seen::who).containsExactly("Ana", "");
      assertThat(both.noteTrouble()).isNull();
      assertThat(SeenFile.beside(file).read()).isEqualTo(both.seen());
    }
  }

  /** Else an hour's silence would not be noticed for an hour. */
  @Test
  void goesOnCountingTheSilenceWhenTheClockIsSetBack() throws Exception {
    SimulatedLog log = SimulatedLog.of(Scenario.week(7).withDays(1));
    LiveRecord live = live();
    SimulatedLog.open(live);
    Instant t = SimulatedLog.NOW;
    for (int row = 0; row < 100; row++) {
      live.row(row + 2L, bytes(log.lines().get(row)), t);
    }
    live.caughtUp(t.plusSeconds(15));
    Instant after = t.plusSeconds(16).minus(Duration.ofHours(1));
    live.caughtUp(after);
    Instant arrived = Objects.requireNonNull(live.snapshot(0).arrivedAt());
    assertThat(Duration.between(arrived, after).toSeconds()).isBetween(14L, 16L);
    live.row(102, bytes(log.lines().get(100)), after.plusSeconds(10));
    live.caughtUp(after.plusSeconds(12));
    assertThat(live.snapshot(0).arrivedAt()).isEqualTo(after.plusSeconds(10));
    assertThat(live.snapshot(0).silentAfterMillis()).isPositive();
  }

  @Test
  void tellsHowFarTheLogIsAheadOfTheClock() throws Exception {
    SimulatedLog log = SimulatedLog.of(Scenario.week(7).withDays(1));
    LiveRecord live = live();
    SimulatedLog.open(live);
    Instant castAt = OffsetDateTime.parse(log.lines().get(0).split(",")[0]).toInstant();
    live.row(2, bytes(log.lines().get(0)), castAt.minusSeconds(3_600));
    live.caughtUp(castAt.minusSeconds(3_600));
    assertThat(live.snapshot(0).aheadMillis()).isEqualTo(3_600_000);
    live.row(3, bytes(log.lines().get(1)), castAt.plusSeconds(3_600));
    assertThat(live.snapshot(0).aheadMillis()).isZero();
  }

  /** The log begins anew under its name: its first rows once more, and then others. */
  @Test
  void goesOnWhenTheLogIsCutOffAndWrittenAnew() throws Exception {
    SimulatedLog log = SimulatedLog.of(Scenario.week(2).withDays(2));
    Path file = folder.resolve("log.csv");
    Files.writeString(file, log.text(600));
    try (LiveEngine engine = engine(file)) {
      engine.start();
      until(engine, snapshot -> !snapshot.reading() && snapshot.rows() == 600);
      Files.writeString(file, log.text(5));
      Snapshot cut = until(engine, snapshot -> snapshot.rows() == 600);
      assertThat(cut.rowsSetAside()).as("they are known").isZero();
      assertThat(cut.wheels().get(0).last().turn()).isEqualTo(log.turn(599));
      append(file, log.lines().get(600) + "\n");
      Snapshot on = until(engine, snapshot -> snapshot.rows() == 601);
      assertThat(on.lastWasSetAside()).isFalse();
      assertThat(on.rowsSetAside()).isZero();
      Files.delete(file);
      assertThat(until(engine, snapshot -> snapshot.trouble() != null).trouble())
          .asString()
          .contains("log.csv")
          .contains("no such file");
      Files.writeString(file, log.text(0) + log.lines().get(601) + "\n");
      Snapshot back = until(engine, snapshot -> snapshot.rows() == 602);
      assertThat(back.trouble()).isNull();
      assertThat(back.rowsSetAside()).isZero();
    }
  }

  @Test
  void tellsOfEachSnapshotUntilItIsLetGo() throws Exception {
    SimulatedLog log = SimulatedLog.of(Scenario.week(2).withDays(2));
    Path file = folder.resolve("log.csv");
    Files.writeString(file, log.text(600));
    AtomicLong rows = new AtomicLong();
    try (LiveEngine engine = engine(file)) {
      Runnable letGo = engine.onSnapshot(() -> rows.set(engine.snapshot().rows()));
      engine.start();
      until(engine, snapshot -> !snapshot.reading());
      append(file, log.lines().get(600) + "\n");
      until(engine, snapshot -> rows.get() == 601);
      letGo.run();
      append(file, log.lines().get(601) + "\n");
      until(engine, snapshot -> snapshot.rows() == 602);
      assertThat(rows.get()).isEqualTo(601);
    }
  }

  private LiveEngine engine(Path file) throws IntakeException, IOException {
    return LiveEngine.following(
        file, new PlantNow(new PlantFiles(List.of(file), null, null)), clock::get, PAUSE);
  }

  private LiveRecord live() {
    return new LiveRecord(
        "log.csv", Profiles.NONE, List.of(), SeenFile.beside(folder.resolve("log.csv")));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static void append(Path file, String text) throws IOException {
    Files.writeString(file, text, StandardOpenOption.APPEND);
  }

  /** What takes longer is done beside: what is known once no more comes of it for a second. */
  private static Snapshot settled(LiveEngine engine) throws InterruptedException {
    Snapshot last = engine.snapshot();
    for (int calm = 0; calm < 20; calm++) {
      Thread.sleep(50);
      if (engine.snapshot().report() != last.report()) {
        calm = 0;
        last = engine.snapshot();
      }
    }
    return last;
  }

  private static Snapshot until(LiveEngine engine, Predicate<Snapshot> wanted)
      throws InterruptedException {
    Snapshot snapshot = engine.snapshot();
    for (int tries = 0; tries < 3000 && !wanted.test(snapshot); tries++) {
      Thread.sleep(10);
      snapshot = engine.snapshot();
    }
    assertThat(wanted.test(snapshot)).as("%s", snapshot).isTrue();
    return snapshot;
  }
}
