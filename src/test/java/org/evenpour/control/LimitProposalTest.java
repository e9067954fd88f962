package org.evenpour.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.evenpour.casting.WheelProfile;
import org.junit.jupiter.api.Test;

/**
 * Checked against wheels made of numbers whose parameters are known; tolerances are some three
 * standard errors.
 */
class LimitProposalTest {
  private static final WheelProfile PROFILE = WheelOfNumbers.quietProfile(0.1);
  private static final AlarmBudget BUDGET = AlarmBudget.of(PROFILE, 26, 1, 1, false, 13);

  @Test
  void recoversTheParametersOfASoundWheel() {
    LimitsInForce limits = new WheelOfNumbers(400, 1.2, 0.8, 0.5, 1).limits(PROFILE);

    assertThat(limits.pour().sigma()).isCloseTo(1.2, within(0.03));
    assertThat(limits.wheel().sigma())
        .isCloseTo(Math.hypot(0.8, 1.2 / Math.sqrt(26)), within(0.12));
    assertThat(limits.wheel().correlation()).isCloseTo(0.5 * 0.64 / 0.695, within(0.17));
    assertThat(limits.center()).isCloseTo(390, within(0.25));
    for (int m = 0; m < WheelOfNumbers.MOLDS; m++) {
      assertThat(limits.offsets()[m]).isCloseTo(WheelOfNumbers.offset(m), within(0.22));
    }
  }

  @Test
  void isNotMovedByFaultsWithinTheBasePeriod() {
    LimitsInForce sound = new WheelOfNumbers(400, 1.2, 0.8, 0.5, 2).limits(PROFILE);
    LimitsInForce faulty =
        new WheelOfNumbers(400, 1.2, 0.8, 0.5, 2)
            .shift(3, 240, 400, -4)
            .shift(11, 100, 160, 5)
            .shiftAll(-1, 180, 220, 4)
            .limits(PROFILE);

    assertThat(faulty.pour().sigma()).isCloseTo(sound.pour().sigma(), within(0.03));
    assertThat(faulty.offsets()[3]).isCloseTo(sound.offsets()[3], within(0.15));
    assertThat(faulty.offsets()[11]).isCloseTo(sound.offsets()[11], within(0.15));
    assertThat(faulty.center()).isCloseTo(sound.center(), within(0.12));
    assertThat(faulty.wheel().sigma()).isCloseTo(sound.wheel().sigma(), within(0.12));
  }

  @Test
  void keepsTwoLadleSidesApart() {
    LimitsInForce limits =
        new WheelOfNumbers(300, 1.0, 0.5, 0.3, 3, true).shiftAll(1, 200, 260, 3).limits(PROFILE);

    assertThat(limits.sides()).hasSize(1);
    // Two independent means of 13 pours each.
    assertThat(limits.sides().get(0).sigma()).isCloseTo(Math.sqrt(2 / 13.0), within(0.05));
    // A mold that only one side pours leaves it open how much of its offset is the side's; no shift
    // may hide in it.
    double contrast =
        limits.sides().get(0).center() + meanOffset(limits, 1) - meanOffset(limits, 0);
    assertThat(contrast).isCloseTo(0.3, within(0.1));
  }

  private static double meanOffset(LimitsInForce limits, int parity) {
    double sum = 0;
    for (int m = parity; m < WheelOfNumbers.MOLDS; m += 2) {
      sum += limits.offsets()[m];
    }
    return sum / (WheelOfNumbers.MOLDS / 2);
  }

  @Test
  void refusesWhatCannotTellTurnsFromMolds() {
    BaseRecord oneMoldATurn =
        new BaseRecord(
            new int[] {0, 1, 2, 3, 4, 5, 6, 7, 8, 9},
            new int[] {0, 1, 0, 1, 0, 1, 0, 1, 0, 1},
            new int[10],
            new double[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10},
            10,
            2,
            1);

    assertThat(LimitProposal.propose(oneMoldATurn, BUDGET)).isNull();
    assertThat(LimitProposal.propose(new WheelOfNumbers(7, 1, 1, 0, 4).base(7), BUDGET)).isNull();
  }

  @Test
  void refusesAWheelWithoutAnyScatter() {
    assertThat(LimitProposal.propose(new WheelOfNumbers(30, 0, 0, 0, 5).base(30), BUDGET)).isNull();
  }
}
