package org.evenpour.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Audited;
import org.evenpour.audit.PlantRecords;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.Episode;
import org.evenpour.control.Replay;
import org.evenpour.control.SuccessiveMonitor;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.intake.ArrivingRecords;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.evenpour.plant.Seen;
import org.evenpour.plant.SeenFile;
import org.evenpour.simulate.Fault;
import org.evenpour.simulate.Scenario;
import org.evenpour.simulate.Simulation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("slow")
class LiveRecordTest {
  @TempDir Path folder;

  /**
   * The rest of a log comes byte by byte; whenever a turn is closed, the engine has found what a
   * batch finds that reads the log so far from its file and judges by the same limits.
   */
  @Test
  void findsTheSameEpisodesLiveAsABatchAtEveryTurn() throws Exception {
    SimulatedLog log =
        SimulatedLog.of(
            Scenario.week(11)
                .withDays(5)
                .withMolds(16)
                .withFaults(
                    List.of(
                        Fault.THIN_WASH,
                        Fault.LADLE_SCALE_BIAS,
                        Fault.SINGLE_BAD_POUR,
                        Fault.LATE_CUT_OFF)));
    int history = 70 * 16;
    LiveRecord live = live();
    ArrivingRecords arriving = new ArrivingRecords("log.csv", Profiles.NONE);
    SimulatedLog.inPieces(arriving, log.text(history), 4096, live);
    live.caughtUp(SimulatedLog.NOW);
    Audited audited = Audit.inFull(batch(log, history), PlantRecords.NONE);
    int checked = 0;
    long found = 0;
    for (int row = history; row < log.lines().size(); row++) {
      SimulatedLog.inPieces(arriving, log.lines().get(row) + "\n", 7, live);
      boolean first = log.turn(row) != log.turn(row - 1);
      if (first && log.turn(row) % 5 == 0) {
        List<List<Episode>> here = live.episodes("T1");
        assertThat(here).as("before row %d", row).isEqualTo(replayed(batch(log, row), audited));
        checked++;
        found = here.stream().mapToLong(List::size).sum();
      }
    }
    assertThat(checked).isGreaterThan(15);
    assertThat(found).isGreaterThan(4);
  }

  /**
   * What takes longer is done while more is cast: until then the new anodes are shown as they come,
   * and what is found is the same as when all had waited for it.
   */
  @Test
  void findsTheSameWhetherAnodesWaitForTheLinksOrNot() throws Exception {
    SimulatedLog log =
        SimulatedLog.of(
            Scenario.week(11)
                .withDays(5)
                .withMolds(16)
                .withFaults(List.of(Fault.THIN_WASH, Fault.SINGLE_BAD_POUR)));
    LiveRecord waiting = live();
    LiveRecord live = live();
    for (LiveRecord record : List.of(waiting, live)) {
      SimulatedLog.open(record);
      for (int row = 0; row < 150 * 16; row++) {
        log.row(record, row);
      }
    }
    waiting.caughtUp(SimulatedLog.NOW);
    int row = 150 * 16;
    Settling first = Objects.requireNonNull(live.settling());
    while (row < log.lines().size() - 3 * 16) {
      Settling begun = row == 150 * 16 ? first : live.settling();
      for (int more = 0; more < 11; more++, row++) {
        log.row(live, row);
        log.row(waiting, row);
        if (row > 150 * 16 + 11) {
          WheelNow wheel = live.snapshot(0).wheels().get(0);
          WheelNow same = waiting.snapshot(0).wheels().get(0);
          assertThat(wheel.last().castAtMillis()).isEqualTo(same.last().castAtMillis());
          assertThat(wheel.characteristics()).isEqualTo(same.characteristics());
        }
      }
      if (begun != null) {
        live.settled(begun.run());
      }
      waiting.caughtUp(SimulatedLog.NOW);
      assertThat(live.episodes("T1")).as("row %d", row).isEqualTo(waiting.episodes("T1"));
    }
    // Links see the turn under way as far as it is cast: both are asked at the same anode.
    do {
      log.row(live, row);
      log.row(waiting, row);
      row++;
    } while (log.turn(row - 1) == log.turn(row - 2));
    live.caughtUp(SimulatedLog.NOW);
    waiting.caughtUp(SimulatedLog.NOW);
    List<Signal> signals = Objects.requireNonNull(live.snapshot(0).report()).signals();
    assertThat(signals)
        .isEqualTo(Objects.requireNonNull(waiting.snapshot(0).report()).signals())
        .isNotEmpty();
    // The same that a batch finds that reads the log from its file.
    Audited audited = Audit.inFull(batch(log, 150 * 16), PlantRecords.NONE);
    assertThat(live.episodes("T1")).isEqualTo(replayed(batch(log, row - 1), audited));
    assertThat(signals.stream().mapToLong(signal -> signal.links().size()).sum()).isPositive();
  }

  /**
   * Each anode is read once and judged once, however often there is an audit; and the audit behind
   * the board has the figures that a batch has.
   */
  @Test
  void readsAndJudgesEachAnodeOnceAndAuditsAllTheSame() throws Exception {
    SimulatedLog log =
        SimulatedLog.of(
            Scenario.week(12).withDays(5).withMolds(16).withFaults(List.of(Fault.THIN_WASH)));
    LiveRecord live = live();
    SimulatedLog.open(live);
    int row = 0;
    while (row < 260 * 16) {
      log.row(live, row++);
    }
    live.caughtUp(SimulatedLog.NOW);
    WheelWatch watch = Objects.requireNonNull(live.watch("T1"));
    RecordNow before = Objects.requireNonNull(live.snapshot(0).record());
    for (int end = row + 20 * 16; row < end; ) {
      log.row(live, row++);
      if (log.turn(row) != log.turn(row - 1)) {
        log.row(live, row++);
        live.caughtUp(SimulatedLog.NOW);
      }
    }
    RecordNow now = Objects.requireNonNull(live.snapshot(0).record());
    assertThat(live.watch("T1")).isSameAs(watch);
    assertThat(watch.rows()).isEqualTo(row).isEqualTo(now.record().wheels().get(0).rows());
    assertThat(now.record().rowsRead()).isEqualTo(row);
    assertThat(now.goesOnFrom(before)).isTrue();
    int audited = Math.toIntExact(now.report().log().rowsKept());
    assertThat(audited).isGreaterThan(row - 2 * 16);
    AuditReport batch = Audit.run(batch(log, audited));
    assertThat(now.report().characteristics())
        .extracting(one -> one.overall(), one -> one.molds(), one -> one.variance())
        .isEqualTo(
            batch.characteristics().stream()
                .map(one -> tuple(one.overall(), one.molds(), one.variance()))
                .toList());
    assertThat(now.report().verdicts()).hasSameSizeAs(batch.verdicts());
    assertThat(now.report().settings()).hasSameSizeAs(batch.settings());
  }

  /** Thickness is measured from some turn on: until then there is nothing to judge it by. */
  @Test
  void judgesACharacteristicFromItsFirstValueOn() throws Exception {
    SimulatedLog log = SimulatedLog.of(Scenario.week(13).withDays(3).withMolds(16));
    List<String> headings = List.of(Simulation.header().split(",", -1));
    List<String> lines = new ArrayList<>();
    for (int row = 0; row < log.lines().size(); row++) {
      String[] cells = log.lines().get(row).split(",", -1);
      for (int i = 0; i < cells.length && row < 60 * 16; i++) {
        cells[i] = headings.get(i).startsWith("thickness") ? "" : cells[i];
      }
      lines.add(String.join(",", cells));
    }
    SimulatedLog late = new SimulatedLog(lines);
    LiveRecord live = live();
    SimulatedLog.open(live);
    for (int row = 0; row < 90 * 16; row++) {
      late.row(live, row);
      if (row >= 50 * 16 && row % 8 == 0) {
        live.caughtUp(SimulatedLog.NOW);
        assertThat(live.snapshot(0).unjudged()).isNull();
      }
    }
    assertThat(Objects.requireNonNull(live.snapshot(0).report()).characteristics())
        .extracting(AuditReport.CharacteristicReport::name)
        .contains("mass", "thickness");
  }

  /** What was begun does not see what is cast while it runs. */
  @Test
  void judgesTheRecordAsItStoodWhateverIsCastMeanwhile() throws Exception {
    SimulatedLog log =
        SimulatedLog.of(
            Scenario.week(11).withDays(5).withMolds(16).withFaults(List.of(Fault.THIN_WASH)));
    LiveRecord live = live();
    SimulatedLog.open(live);
    int row = 0;
    while (row < 100 * 16) {
      log.row(live, row++);
    }
    Settling begun = Objects.requireNonNull(live.settling());
    Settling.Settled atOnce = begun.run();
    while (row < log.lines().size()) {
      log.row(live, row++);
    }
    Settling.Settled later = begun.run();
    assertThat(Objects.requireNonNull(later.audited()).report())
        .isEqualTo(Objects.requireNonNull(atOnce.audited()).report());
    assertThat(begun.record().wheels().get(0).rows()).isEqualTo(100 * 16);
  }

  private static List<List<Episode>> replayed(CastingRecord record, Audited audited) {
    WheelRecord wheel = record.wheels().get(0);
    List<List<Episode>> episodes = new ArrayList<>();
    for (Characteristic characteristic : wheel.characteristics()) {
      SuccessiveMonitor monitor =
          new SuccessiveMonitor(
              audited.terms("T1", characteristic.name()),
              wheel.profile(),
              wheel.molds(),
              wheel.sides(),
              wheel.serials(),
              (turn, at, value, anodes, startUp) -> {});
      Replay.run(wheel, characteristic.values().toArray(), List.of(), monitor);
      episodes.add(monitor.episodes());
    }
    return episodes;
  }

  private CastingRecord batch(SimulatedLog log, int rows) throws Exception {
    Path file = folder.resolve("batch.csv");
    Files.writeString(file, log.text(rows));
    return LogReader.read(
        List.of(file), Profiles.NONE, List.of(), null, null, SetAside.nowhere(), Progress.NONE);
  }

  @Test
  void showsTheLastAnodeTheMoldsAndTheLastTurns() throws Exception {
    SimulatedLog log = SimulatedLog.of(Scenario.week(3).withDays(4).withFault(Fault.UNEXPLAINED));
    LiveRecord live = live();
    SimulatedLog.open(live);
    for (int row = 0; row < 2000; row++) {
      log.row(live, row);
    }
    Snapshot before = live.snapshot(0);
    assertThat(before.reading()).isTrue();
    live.caughtUp(SimulatedLog.NOW);
    for (int row = 2000; row < 2070; row++) {
      log.row(live, row);
      live.caughtUp(SimulatedLog.NOW);
    }
    Snapshot snapshot = live.snapshot(2);
    assertThat(snapshot.reading()).isFalse();
    assertThat(snapshot.rows()).isEqualTo(2070);
    assertThat(snapshot.rowsLost()).isEqualTo(2);
    WheelNow wheel = snapshot.wheels().get(snapshot.current());
    String[] cells = log.lines().get(2069).split(",");
    assertThat(wheel.wheel()).isEqualTo("T1");
    assertThat(wheel.charge()).isEqualTo(cells[2]);
    assertThat(wheel.crew()).isEqualTo(cells[7]);
    assertThat(wheel.last().turn()).isEqualTo(Integer.parseInt(cells[3]));
    assertThat(wheel.molds().get(wheel.last().mold())).isEqualTo(cells[4]);
    assertThat(wheel.last().values()[0]).isEqualTo(Double.parseDouble(cells[9]));
    assertThat(wheel.inOrder().stream().map(wheel.molds()::get))
        .startsWith("1", "2", "3")
        .endsWith("25", "26");
    assertThat(wheel.turns()).hasSize(WheelWatch.TURNS);
    WheelNow.Turn closed = wheel.turns().get(WheelWatch.TURNS - 2);
    assertThat(closed.turn()).isEqualTo(wheel.last().turn() - 1);
    assertThat(closed.anodes()).hasSize(26);
    // Mean of 26 anodes with an s.d. of some 1.5 kg: 5 standard errors.
    assertThat(closed.means().get(0))
        .isCloseTo(
            closed.anodes().stream()
                .mapToDouble(anode -> anode.values()[0])
                .average()
                .orElseThrow(),
            org.assertj.core.data.Offset.offset(1.5));
    assertThat(wheel.characteristics())
        .extracting(WheelNow.Judged::name)
        .containsExactly("mass", "thickness", "wedge");
    assertThat(wheel.characteristics().get(0).departures()).hasSize(26).doesNotContainNull();
  }

  /** The planted truth: one mold shifts, by 2.5 sigma of a pour. */
  @Test
  void tellsTheSignalOfTheMoldThatShiftedAndHowFarItStands() throws Exception {
    SimulatedLog log =
        SimulatedLog.of(Scenario.week(5).withDays(6).withMolds(20).withFault(Fault.UNEXPLAINED));
    LiveRecord live = live();
    SimulatedLog.open(live);
    int row = 0;
    while (log.turn(row) <= 70) {
      log.row(live, row++);
    }
    live.caughtUp(SimulatedLog.NOW);
    List<Signal> signals = List.of();
    while (row < log.lines().size() && signals.isEmpty()) {
      log.row(live, row++);
      live.caughtUp(SimulatedLog.NOW);
      signals =
          live.snapshot(0).now().stream()
              .filter(signal -> signal.scope() == Scope.MOLD && signal.open())
              // A planted shift, for what is hardly one may be over some turns later.
              .filter(signal -> Math.abs(signal.sizeSigma()) > 2)
              .toList();
    }
    assertThat(signals).hasSize(1);
    Signal signal = signals.get(0);
    for (int more = 0; more < 200; more++) {
      log.row(live, row++);
    }
    live.caughtUp(SimulatedLog.NOW);
    WheelNow wheel = live.snapshot(0).wheels().get(0);
    int mold = wheel.molds().indexOf(signal.mold());
    WheelNow.Judged judged =
        wheel.characteristics().stream()
            .filter(one -> one.name().equals(signal.characteristic()))
            .findFirst()
            .orElseThrow();
    Double departure = Objects.requireNonNull(judged.departures().get(mold));
    Double usual = Objects.requireNonNull(judged.usual().get(mold));
    assertThat(Math.signum(departure - usual))
        .isEqualTo(signal.direction() == Direction.HIGH ? 1.0 : -1.0);
  }

  @Test
  void findsLimitsByItselfWhereTheLogBeginsEmpty() throws Exception {
    SimulatedLog log = SimulatedLog.of(Scenario.week(7).withDays(5).withMolds(16));
    LiveRecord live = live();
    SimulatedLog.open(live);
    live.caughtUp(SimulatedLog.NOW);
    assertThat(live.snapshot(0).reading()).isTrue();
    List<Integer> bases = new ArrayList<>();
    for (int row = 0; row < 16 * 90; row++) {
      log.row(live, row);
      live.caughtUp(SimulatedLog.NOW);
      WheelNow.TurnLimits limits =
          live.snapshot(0).wheels().get(0).characteristics().get(0).limits();
      int base = limits == null ? 0 : limits.baseTurns();
      if (bases.isEmpty() || bases.get(bases.size() - 1) != base) {
        bases.add(base);
      }
    }
    assertThat(bases.get(0)).isZero();
    assertThat(bases).isSorted().hasSizeBetween(4, 6);
    // 9, 19, 39 and 79 turns: the first at which there are limits, and then twice as many.
    assertThat(bases.get(bases.size() - 1)).isBetween(64, 80);
  }

  @Test
  void setsRowsAsideThatCannotBeUsedAndSaysWhy() throws Exception {
    SimulatedLog log = SimulatedLog.of(Scenario.week(7).withDays(1));
    LiveRecord live = live();
    SimulatedLog.open(live);
    log.row(live, 0);
    log.row(live, 1);
    // The clock was set back by an hour.
    String early = log.lines().get(2).replaceFirst("T0\\d", "T04");
    live.row(4, early.getBytes(java.nio.charset.StandardCharsets.UTF_8), SimulatedLog.NOW);
    live.caughtUp(SimulatedLog.NOW);
    Snapshot snapshot = live.snapshot(0);
    assertThat(snapshot.rowsSetAside()).isEqualTo(1);
    assertThat(snapshot.lastWasSetAside()).isTrue();
    assertThat(snapshot.lastSetAside()).extracting(SetAsideRow::line).isEqualTo(4L);
    log.row(live, 3);
    live.caughtUp(SimulatedLog.NOW);
    assertThat(live.snapshot(0).lastWasSetAside()).isFalse();
  }

  @Test
  void callsAFeedSilentByItsOwnPace() throws Exception {
    SimulatedLog log = SimulatedLog.of(Scenario.week(7).withDays(1));
    LiveRecord live = live();
    SimulatedLog.open(live);
    for (int row = 0; row < 100; row++) {
      log.row(live, row);
    }
    live.caughtUp(SimulatedLog.NOW);
    // Before anything comes live: four times the usual 30 s or so between two casts.
    assertThat(live.snapshot(0).silentAfterMillis()).isBetween(4 * 27_000L, 4 * 33_000L);
    Instant at = SimulatedLog.NOW;
    for (int row = 100; row < 120; row++) {
      at = at.plusMillis(5000);
      live.row(
          row + 2L, log.lines().get(row).getBytes(java.nio.charset.StandardCharsets.UTF_8), at);
    }
    assertThat(live.snapshot(0).silentAfterMillis()).isEqualTo(20_000);
    assertThat(live.snapshot(0).arrivedAt()).isEqualTo(at);
  }

  @Test
  void remembersWhatWasSeen() throws Exception {
    SimulatedLog log = SimulatedLog.of(Scenario.week(5).withDays(6).withFault(Fault.UNEXPLAINED));
    LiveRecord live = live();
    SimulatedLog.open(live);
    int row = 0;
    while (live.snapshot(0).now().stream().noneMatch(Signal::open)) {
      log.row(live, row++);
      if (row > 26 * 70) {
        live.caughtUp(SimulatedLog.NOW);
      }
    }
    Signal signal = live.snapshot(0).now().get(0);
    assertThat(live.snapshot(0).seen(signal)).isNull();
    live.seen(Seen.of(SimulatedLog.NOW, signal, "", "looked at it"));
    assertThat(live.snapshot(0).seen(signal)).isNotNull();
    // Started anew.
    LiveRecord again = live();
    assertThat(again.snapshot(0).seen(signal)).extracting(Seen::note).isEqualTo("looked at it");
  }

  @Test
  void saysThatANoteCouldNotBeKept() throws Exception {
    LiveRecord live = live();
    Files.createDirectory(SeenFile.beside(folder.resolve("log.csv")).path());
    live.seen(Seen.of(SimulatedLog.NOW, Signals.thinMold("7", 12, 14), "", "looked at it"));
    Snapshot snapshot = live.snapshot(0);
    assertThat(snapshot.seen()).isEmpty();
    assertThat(snapshot.noteTrouble())
        .asString()
        .contains("log.csv.seen.csv")
        .contains("cannot be written");
  }

  private LiveRecord live() throws IntakeException {
    return new LiveRecord(
        "log.csv", Profiles.NONE, List.of(), SeenFile.beside(folder.resolve("log.csv")));
  }
}
