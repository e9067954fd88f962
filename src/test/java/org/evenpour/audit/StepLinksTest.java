package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Settings that are put elsewhere for a while, again and again. */
class StepLinksTest {
  private static final int TURNS = 240;
  private static final int STEPS = 8;
  private static final int STAYS = 8;
  private static final int APART = TURNS / (STEPS + 1);

  @TempDir Path folder;

  /** Steps of seven of its own s.d., each for eight turns. */
  private static double[] stepped(double[] series, double sd, int from) {
    double[] stepped = series.clone();
    for (int k = 1; k <= STEPS; k++) {
      for (int t = k * APART + from; t < Math.min(TURNS, k * APART + from + STAYS); t++) {
        stepped[t] += 7 * sd;
      }
    }
    return stepped;
  }

  /** One s.d. makes 0.5 kg, so that a step makes 3.5; a decoy steps as often, and does nothing. */
  @Test
  void isStrongWhereASettingStepsWheneverTheWheelDoes() throws Exception {
    int signals = 0;
    int strong = 0;
    for (int seed = 1; seed <= 5; seed++) {
      MadeSettings wheel = new MadeSettings(TURNS, seed);
      double phi = new double[] {0, 0.6, 0.9}[seed % 3];
      wheel.setting("acts", stepped(wheel.wandering(phi, 2), 2, 0), 0.25);
      wheel.setting("decoy", stepped(wheel.wandering(phi, 2), 2, 13), 0);
      for (Signal signal : wheel.audit(folder).signals()) {
        List<Link> others =
            signal.links().stream().filter(one -> !one.name().equals("acts")).toList();
        assertThat(others).noneMatch(one -> one.evidence() == Evidence.STRONG);
        boolean isStep =
            signal.scope() == Scope.WHEEL
                && signal.direction() == Direction.HIGH
                && Math.abs((signal.sinceTurn() - 1 + 3) % APART - 3) <= 3;
        if (isStep) {
          signals++;
          Link first = signal.links().get(0);
          strong += first.name().equals("acts") && first.evidence() == Evidence.STRONG ? 1 : 0;
        }
      }
    }
    assertThat(signals).isGreaterThan(15);
    assertThat(strong).isGreaterThanOrEqualTo((int) Math.ceil(0.95 * signals));
  }
}
