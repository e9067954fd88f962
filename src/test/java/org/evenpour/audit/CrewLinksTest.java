package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A crew whose every visit is a signal of the wheel, on wheels where that is known. */
class CrewLinksTest {
  private static final IntToDoubleFunction NOTHING = turn -> 0;

  @TempDir Path folder;

  private static List<Signal> highs(AuditReport report) {
    return report.signals().stream()
        .filter(one -> one.scope() == Scope.WHEEL && one.direction() == Direction.HIGH)
        .toList();
  }

  private static boolean isFirstAndMoved(Signal signal) {
    Link first = signal.links().get(0);
    return first.name().equals("crew") && first.evidence() == Evidence.MOVED;
  }

  /** 2.5 kg against some 0.5 kg by which turns' means differ: every visit is a signal. */
  private void namesTheCrew(int turns, int visit) throws Exception {
    int signals = 0;
    int named = 0;
    for (int seed = 1; seed <= 6; seed++) {
      double[] truly = seed % 2 == 0 ? new double[] {0, 2.5, 0} : new double[] {2.5, 0, 0, 0};
      AuditReport report = MadeCrews.visits(folder, seed, turns, visit, NOTHING, truly);
      for (Signal signal : highs(report)) {
        signals++;
        named += isFirstAndMoved(signal) ? 1 : 0;
        assertThat(signal.links()).noneMatch(one -> one.evidence() == Evidence.STRONG);
      }
    }
    assertThat(signals).isGreaterThan(12);
    assertThat(named).isGreaterThanOrEqualTo((int) Math.ceil(0.9 * signals));
  }

  @Test
  void namesACrewThatComesForTwentyTurns() throws Exception {
    namesTheCrew(360, 20);
  }

  @Test
  void namesACrewThatComesForSixtyTurns() throws Exception {
    namesTheCrew(900, 60);
  }

  /** What it explains is known from its other visits, and is all of it. */
  @Test
  void tellsHowMuchOfTheSignalTheCrewExplains() throws Exception {
    List<Signal> signals = highs(MadeCrews.visits(folder, 7, 360, 20, NOTHING, 0, 2.5, 0));
    assertThat(signals).isNotEmpty();
    for (Signal signal : signals) {
      Link crew = signal.links().get(0);
      assertThat(crew.explainedShare()).isBetween(0.7, 1.4);
      assertThat(crew.explainedLow()).isLessThan(1.0);
      assertThat(crew.explainedHigh()).isGreaterThan(1.0);
    }
  }

  /** A fault that befell one visit from its first turn to its last is not the crew's. */
  @Test
  void doesNotBlameACrewForWhatBefellOneOfItsVisits() throws Exception {
    for (int visit : new int[] {20, 60}) {
      int from = 7 * visit;
      AuditReport report =
          MadeCrews.visits(
              folder, 9, 15 * visit, visit, t -> t >= from && t < from + visit ? 2.5 : 0, 0, 0, 0);
      assertThat(highs(report)).isNotEmpty();
      for (Signal signal : highs(report)) {
        assertThat(signal.links())
            .filteredOn(one -> one.name().equals("crew"))
            .allMatch(one -> one.evidence() == Evidence.NONE);
      }
    }
  }

  /** A record that begins with the last turns of its visit: its signal is over when others come. */
  @Test
  void namesACrewThatPouredAlreadyWhenTheRecordBegins() throws Exception {
    int signals = 0;
    for (int seed = 1; seed <= 4; seed++) {
      int turns = 320;
      int before = 12 + seed;
      LinkWheel wheel = new LinkWheel(seed, turns, 0.4, 0);
      double[] heavy = new double[turns];
      Arrays.setAll(heavy, t -> (t + before) / 20 % 3 == 0 ? 1 : 0);
      wheel.record("crew", t -> "K" + ((t + before) / 20 % 3 + 1));
      wheel.act(heavy, 2.5);
      for (Signal signal : highs(wheel.audit())) {
        if (signal.firstTurn() <= 20 - before) {
          signals++;
          assertThat(isFirstAndMoved(signal)).as("seed %d, %s", seed, signal.id()).isTrue();
        }
      }
    }
    assertThat(signals).isPositive();
  }
}
