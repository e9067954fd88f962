package org.evenpour.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.evenpour.link.Finding.Grade.MOVED;
import static org.evenpour.link.Finding.Grade.NONE;
import static org.evenpour.link.Finding.Grade.STRONG;

import java.util.List;
import org.evenpour.casting.Setting;
import org.junit.jupiter.api.Test;

/** The grades, question by question: moved beyond chance, would explain, timing. */
class FindingTest {
  private static final double CLEAR = 0.001;
  private static final double ORDINARY = 0.7;

  private static Finding finding(
      double share, double low, double high, boolean proven, boolean fits) {
    Setting setting =
        new Cells(1, (t, m) -> 390)
            .setting("alpha", 0, (t, m) -> 1)
            .grid()
            .record()
            .settings()
            .get(0);
    return new Finding(setting, null, 3, CLEAR, 1, share, low, high, proven, fits, 1, List.of());
  }

  @Test
  void isStrongOnlyWhereAllThreeQuestionsAreAnswered() {
    assertThat(finding(0.8, 0.5, 1.1, true, true).grade(CLEAR)).isEqualTo(STRONG);
    assertThat(finding(0.8, 0.5, 1.1, false, true).grade(CLEAR)).isEqualTo(MOVED);
    assertThat(finding(0.8, 0.5, 1.1, true, false).grade(CLEAR)).isEqualTo(MOVED);
    assertThat(finding(0.2, 0.1, 0.4, true, true).grade(CLEAR)).isEqualTo(MOVED);
    assertThat(finding(0.1, 0.0, 0.2, true, true).grade(CLEAR)).isEqualTo(NONE);
  }

  /** What always wanders never moves beyond chance, but what it does is known. */
  @Test
  void tellsOfAnOrdinaryMoveOnlyWhereItsKnownEffectExplainsAGoodPart() {
    assertThat(finding(0.8, 0.5, 1.1, true, true).grade(ORDINARY)).isEqualTo(MOVED);
    assertThat(finding(0.8, 0.2, 1.4, true, true).grade(ORDINARY)).isEqualTo(NONE);
    assertThat(finding(0.8, 0.5, 1.1, false, true).grade(ORDINARY)).isEqualTo(NONE);
    assertThat(finding(0.8, 0.5, 1.1, true, false).grade(ORDINARY)).isEqualTo(NONE);
    double unknown = Double.NaN;
    assertThat(finding(unknown, unknown, unknown, true, true).grade(ORDINARY)).isEqualTo(NONE);
  }
}
