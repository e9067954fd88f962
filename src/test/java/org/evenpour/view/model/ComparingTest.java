package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import org.evenpour.findings.ComparisonReport;
import org.evenpour.findings.ComparisonReport.Compared;
import org.evenpour.report.ComparisonText;
import org.evenpour.view.model.Comparing.Offer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The sample's truth (its README) against what the page says of it. */
class ComparingTest {
  private static Offer of(Desk desk, String mold) {
    return Comparing.offers(desk, null).stream()
        .filter(one -> mold.equals(one.mold()))
        .findFirst()
        .orElseThrow();
  }

  private static Compared asked(ComparisonReport report, String characteristic) {
    return report.asked(true).stream()
        .filter(one -> characteristic.equals(one.characteristic()))
        .findFirst()
        .orElseThrow();
  }

  /** Planted: another mold in position 4 from turn 120, −0.6 mm and +0.57 mm of wedge. */
  @ParameterizedTest
  @ValueSource(strings = {"en", "es"})
  void aMoldChangeIsAnsweredByOneChoice(String tag) {
    Desk desk = Sample.desk(Look.of(false, Language.of(tag), DisplayUnits.METRIC, 720));
    Offer offer = of(desk, "4");
    assertThat(offer.second().from()).isEqualTo(120);
    ComparisonReport report = Objects.requireNonNull(Comparing.of(desk.log(), offer, () -> false));
    Compared thickness = asked(report, "thickness");
    assertThat(thickness.isReal()).isTrue();
    assertThat(thickness.difference().value()).isCloseTo(-0.6, within(0.1));
    assertThat(asked(report, "wedge").difference().value()).isCloseTo(0.57, within(0.1));
    String first = new ComparisonText(desk.sentences()).lines(report).get(0);
    assertThat(first).contains("4", "−0.", "mm").endsWith(": real.");
  }

  /** Planted decoy: a nozzle cleaned at mold 21 in turn 87, without any effect. */
  @Test
  void anEventThatDidNothingIsSaidToHaveDoneNothing() {
    Desk desk = Sample.desk();
    ComparisonReport report =
        Objects.requireNonNull(Comparing.of(desk.log(), of(desk, "21"), () -> false));
    assertThat(report.asked(true)).isNotEmpty().noneMatch(Compared::isReal);
    String first = new ComparisonText(desk.sentences()).lines(report).get(0);
    assertThat(first).endsWith("no difference that could not be chance.");
  }

  @Test
  void theChosenStretchIsHeldAgainstWhatWasBeforeOrKept() {
    Desk desk = Sample.desk();
    desk.selection().chooseStretch(new Stretch(151, 184));
    List<Offer> offers = Comparing.offers(desk, new Stretch(1, 31));
    assertThat(offers.get(0).first()).isEqualTo(new Stretch(1, 31));
    assertThat(offers.get(1).first()).isEqualTo(new Stretch(118, 151));
    assertThat(offers.get(2).first()).isEqualTo(new Stretch(1, 151));
    assertThat(offers.subList(0, 3))
        .allSatisfy(one -> assertThat(one.second()).isEqualTo(new Stretch(151, 184)));
    // No turn stands on both sides, and none is offered that is too short.
    assertThat(offers)
        .allSatisfy(
            one -> {
              assertThat(one.first().to()).isLessThanOrEqualTo(one.second().from());
              assertThat(one.first().to() - one.first().from()).isGreaterThanOrEqualTo(6);
            });
  }
}
