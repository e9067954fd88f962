package org.evenpour.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.evenpour.score.HandMade.link;
import static org.evenpour.score.HandMade.moldShift;
import static org.evenpour.score.HandMade.moldSignal;
import static org.evenpour.score.HandMade.report;
import static org.evenpour.score.HandMade.setting;
import static org.evenpour.score.HandMade.shift;
import static org.evenpour.score.HandMade.signal;
import static org.evenpour.score.HandMade.signalOf;

import java.util.List;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.score.Score.FalseLinks;
import org.evenpour.simulate.PlantedShift;
import org.evenpour.simulate.TrueEffect;
import org.junit.jupiter.api.Test;

/** Every figure here was counted by hand. */
class ScoreTest {

  private static Score score(AuditReport report, List<PlantedShift> truth, TrueEffect... effects) {
    return Score.of(
        List.of(
            LogOutcome.of(report, truth, new TrueEffects(effects.length > 0, List.of(effects)))));
  }

  private static TrueEffect effect(String setting, double perUnit) {
    return new TrueEffect("W", setting, "thickness", perUnit);
  }

  @Test
  void findsAFaultByPlaceCharacteristicDirectionAndTime() {
    List<PlantedShift> truth = List.of(moldShift("worn", "7", 100, 120, ""));
    record Case(Signal signal, boolean isFound) {}
    List<Case> cases =
        List.of(
            new Case(moldSignal("7", 100, 104, 118), true),
            new Case(moldSignal("7", 80, 90, 100), true),
            new Case(moldSignal("7", 80, 90, 99), false),
            new Case(moldSignal("7", 125, 125, 130), true),
            new Case(moldSignal("7", 126, 126, 130), false),
            new Case(moldSignal("7", 118, 127, 130), true),
            new Case(moldSignal("8", 100, 104, 118), false),
            new Case(signal(Scope.POUR, "7", null, Direction.HIGH, 100, 104, 118), false),
            new Case(signal(Scope.WHEEL, null, null, Direction.HIGH, 100, 104, 118), false),
            new Case(signal(Scope.MOLD, "7", null, Direction.LOW, 100, 104, 118), false),
            new Case(signal(Scope.MOLD, "7", null, Direction.SPREAD, 100, 104, 118), false));
    for (Case one : cases) {
      assertThat(score(report(List.of(one.signal())), truth).all().found().count())
          .as(one.signal().toString())
          .isEqualTo(one.isFound() ? 1 : 0);
    }
  }

  @Test
  void matchesASideByItsNameAndAWheelByNothingElse() {
    List<PlantedShift> truth =
        List.of(
            shift("scale", Scope.SIDE, "", "B", "thickness", 10, 20, ""),
            shift("melt", Scope.WHEEL, "", "", "thickness", 40, 50, ""));
    Score score =
        score(
            report(
                List.of(
                    signal(Scope.SIDE, null, "A", Direction.HIGH, 10, 11, 20),
                    signal(Scope.WHEEL, null, null, Direction.HIGH, 40, 42, 50))),
            truth);
    assertThat(score.byFault().get(0).name()).isEqualTo("melt");
    assertThat(score.byFault().get(0).found().count()).isEqualTo(1);
    assertThat(score.byFault().get(1).found().count()).isZero();
    assertThat(score.signalsOfFaults().count()).isEqualTo(1);
    assertThat(score.signalsOfFaults().of()).isEqualTo(2);
  }

  /** Both ways would be wrong: a truth of the set-point's deviation says nothing of mass itself. */
  @Test
  void aSignalAgainstTheSetPointIsOfAFaultOfMass() {
    Signal deviation =
        signalOf("mass_deviation", Scope.WHEEL, null, null, Direction.HIGH, 11, 12, 20);
    Signal mass = signalOf("mass", Scope.WHEEL, null, null, Direction.HIGH, 11, 12, 20);
    List<PlantedShift> ofMass = List.of(shift("late", Scope.WHEEL, "", "", "mass", 10, 20, ""));
    List<PlantedShift> ofDeviation =
        List.of(shift("trim", Scope.WHEEL, "", "", "mass_deviation", 10, 20, ""));
    assertThat(score(report(List.of(deviation)), ofMass).all().found().count()).isEqualTo(1);
    assertThat(score(report(List.of(deviation)), ofDeviation).all().found().count()).isEqualTo(1);
    assertThat(score(report(List.of(mass)), ofDeviation).all().found().count()).isZero();
  }

  /** Two characteristics of one mold are one fault; the same fault at another time is another. */
  @Test
  void countsAFaultOnceHoweverManyCharacteristicsItShifts() {
    List<PlantedShift> truth =
        List.of(
            shift("rate", Scope.WHEEL, "", "", "mass", 100, 120, "pour"),
            shift("rate", Scope.WHEEL, "", "", "thickness", 101, 120, "pour"),
            shift("rate", Scope.WHEEL, "", "", "thickness", 150, 160, "pour"),
            moldShift("rate", "3", 100, 120, "pour"));
    Score score =
        score(
            report(List.of(signal(Scope.WHEEL, null, null, Direction.HIGH, 103, 107, 120))), truth);
    assertThat(score.all().found().of()).isEqualTo(3);
    assertThat(score.all().found().count()).isEqualTo(1);
    // The fault began in turn 100, in mass.
    assertThat(score.all().onsetError().median()).isEqualTo(3.0);
    assertThat(score.all().delay().median()).isEqualTo(7.0);
  }

  /** Errors 0, 2, 4, 6, 8, either way: median 4; rank 0.9·(5 + 1) = 5.4 is held at the largest. */
  @Test
  void onsetErrorsCountEitherWay() {
    List<PlantedShift> truth =
        List.of(
            moldShift("a", "1", 100, 120, ""),
            moldShift("a", "2", 100, 120, ""),
            moldShift("a", "3", 100, 120, ""),
            moldShift("a", "4", 100, 120, ""),
            moldShift("a", "5", 100, 120, ""));
    Score score =
        score(
            report(
                List.of(
                    moldSignal("1", 100, 103, 120),
                    moldSignal("2", 98, 103, 120),
                    moldSignal("3", 104, 104, 120),
                    moldSignal("4", 94, 99, 120),
                    moldSignal("5", 108, 110, 120))),
            truth);
    assertThat(score.all().onsetError().median()).isEqualTo(4.0);
    assertThat(score.all().onsetError().ninetieth()).isEqualTo(8.0);
    assertThat(score.all().delay().median()).isEqualTo(3.0);
  }

  @Test
  void theTopLinkIsTheFirstWithEvidenceOfTheFirstSignal() {
    List<PlantedShift> truth = List.of(moldShift("thin", "7", 100, 140, "wash"));
    Signal right = moldSignal("7", 100, 103, 110, link("wash", Evidence.MOVED));
    Signal afterNone =
        moldSignal("7", 100, 103, 110, link("spray", Evidence.NONE), link("wash", Evidence.STRONG));
    Signal wrong =
        moldSignal("7", 100, 103, 110, link("spray", Evidence.MOVED), link("wash", Evidence.MOVED));
    Signal together = moldSignal("7", 100, 103, 110, link("spray", Evidence.STRONG, "wash"));
    Signal later = moldSignal("7", 120, 123, 140, link("wash", Evidence.STRONG));

    assertThat(tops(truth, right)).containsExactly(1, 1, 1);
    assertThat(tops(truth, afterNone)).containsExactly(1, 1, 1);
    assertThat(tops(truth, wrong)).containsExactly(0, 0, 0);
    assertThat(tops(truth, together)).containsExactly(1, 0, 1);
    assertThat(tops(truth, later, wrong)).containsExactly(0, 0, 1);
    assertThat(tops(truth, moldSignal("7", 100, 103, 110))).containsExactly(0, 0, 0);
  }

  /** Right, right by name, right in any signal. */
  private static List<Integer> tops(List<PlantedShift> truth, Signal... signals) {
    Score.Faults all = score(report(List.of(signals)), truth).all();
    assertThat(all.topRight().of()).isEqualTo(1);
    return List.of(
        (int) all.topRight().count(),
        (int) all.topExact().count(),
        (int) all.anyTopRight().count());
  }

  @Test
  void whatCarriesTheEffectIsRightButNotByName() {
    PlantedShift starved =
        new PlantedShift(
            "starved",
            Scope.MOLD,
            "W",
            "7",
            "",
            "thickness",
            100,
            120,
            Direction.HIGH,
            "spray",
            "mold_temp",
            2.4);
    assertThat(
            tops(
                List.of(starved),
                moldSignal("7", 100, 103, 110, link("mold_temp", Evidence.STRONG))))
        .containsExactly(1, 0, 1);
  }

  @Test
  void anUnrecordedFaultIsCalledSoWithoutStrongLinks() {
    List<PlantedShift> truth =
        List.of(
            moldShift("a", "1", 100, 120, ""),
            moldShift("a", "2", 100, 120, ""),
            moldShift("a", "3", 100, 120, ""),
            moldShift("a", "4", 100, 120, ""),
            moldShift("caused", "5", 100, 120, "wash"));
    Score.Faults all =
        score(
                report(
                    List.of(
                        moldSignal("1", 100, 103, 110, link("wash", Evidence.NONE)),
                        moldSignal("2", 100, 103, 110, link("wash", Evidence.MOVED)),
                        moldSignal("3", 100, 103, 110, link("wash", Evidence.NONE)),
                        moldSignal("3", 113, 115, 118, link("wash", Evidence.STRONG)),
                        moldSignal("5", 100, 103, 110, link("wash", Evidence.STRONG)))),
                truth)
            .all();
    // Mold 4 was not found, and mold 5 has a cause: three count.
    assertThat(all.noStrong().of()).isEqualTo(3);
    assertThat(all.noStrong().count()).isEqualTo(2);
    assertThat(all.noLink().count()).isEqualTo(1);
  }

  @Test
  void sortsStrongLinksIntoRightAndFalse() {
    List<PlantedShift> truth =
        List.of(moldShift("thin", "7", 100, 120, "wash"), moldShift("a", "8", 100, 120, ""));
    AuditReport report =
        report(
            List.of(
                moldSignal(
                    "7",
                    100,
                    103,
                    110,
                    link("wash", Evidence.STRONG),
                    link("spray", Evidence.STRONG),
                    link("pour", Evidence.MOVED)),
                moldSignal("8", 100, 103, 110, link("launder", Evidence.STRONG)),
                moldSignal(
                    "9",
                    100,
                    103,
                    110,
                    link("spray", Evidence.STRONG),
                    link("launder", Evidence.STRONG),
                    link("mold_changed", Evidence.STRONG))));
    Score told = score(report, truth, effect("wash", 0.1), effect("spray", 0.2));
    assertThat(told.links().right().count()).isEqualTo(1);
    assertThat(told.links().right().of()).isEqualTo(6);
    assertThat(told.links().besideFault()).isEqualTo(new FalseLinks(0, 1, 1, 0));
    assertThat(told.links().besideNothing()).isEqualTo(new FalseLinks(0, 1, 1, 1));
    assertThat(told.links().besideNothing().count()).isEqualTo(3);
    Score untold = score(report, truth);
    assertThat(untold.links().besideFault()).isEqualTo(new FalseLinks(0, 0, 0, 2));
    assertThat(untold.links().besideNothing()).isEqualTo(new FalseLinks(0, 0, 0, 3));
  }

  /** The hand-made signals are of one size; a link's move times the true effect is held to it. */
  @Test
  void whatTrulyMadeASignalThatNobodyPlantedIsReal() {
    AuditReport report =
        report(
            List.of(
                moldSignal("9", 100, 103, 110, moved(link("much", Evidence.STRONG), 2)),
                moldSignal("9", 200, 203, 210, moved(link("little", Evidence.STRONG), 2)),
                moldSignal("9", 300, 303, 310, moved(link("against", Evidence.STRONG), 2)),
                moldSignal("9", 400, 403, 410, moved(link("idle", Evidence.STRONG), 2))));
    double size = report.signals().get(0).size();
    Score score =
        score(
            report,
            List.of(),
            effect("much", 0.31 * size / 2),
            effect("little", 0.29 * size / 2),
            effect("against", -size / 2),
            effect("idle", 0));
    assertThat(score.links().right().count()).isZero();
    assertThat(score.links().real().count()).isEqualTo(1);
    assertThat(score.links().besideNothing()).isEqualTo(new FalseLinks(1, 2, 1, 0));
  }

  @Test
  void countsIntervalsThatHoldTheTruth() {
    AuditReport report =
        report(
            List.of(),
            setting("wash", new Effect("thickness", 0.9, 0.8, 1.0)),
            setting("spray", new Effect("thickness", 2.0, 1.0, 3.0)),
            setting("pour", new Effect("thickness", null, null, null)),
            setting("launder", new Effect("thickness", 0.1, -0.1, 0.3)),
            setting("hall", new Effect("thickness", 0.2, 0.1, 0.3)));
    Score score =
        score(
            report,
            List.of(),
            effect("wash", 0.9),
            effect("spray", -4),
            effect("pour", 1),
            effect("gone", 1),
            effect("launder", 0),
            effect("hall", 0));
    assertThat(score.acting().covered().count()).isEqualTo(1);
    assertThat(score.acting().covered().of()).isEqualTo(2);
    assertThat(score.acting().without()).isEqualTo(2);
    // 0.2 / 0.9 and 2 / 4, by their mean.
    assertThat(score.acting().relativeWidth()).isCloseTo((0.2 / 0.9 + 0.5) / 2, within(1e-12));
    assertThat(score.idle().covered().count()).isEqualTo(1);
    assertThat(score.idle().covered().of()).isEqualTo(2);
    assertThat(score.idle().relativeWidth()).isNull();
  }

  @Test
  void classesOfSizesNeedSizes() {
    assertThat(score(report(List.of()), List.of(moldShift("a", "1", 1, 9, ""))).bySize()).isEmpty();
    List<PlantedShift> truth =
        List.of(sized("1", 1.4), sized("2", 1.5), sized("3", 2.99), sized("4", 3.0), sized("5", 7));
    List<Score.Faults> sizes = score(report(List.of()), truth).bySize();
    assertThat(sizes)
        .extracting(Score.Faults::name)
        .containsExactly(
            "below 1.5 sigma",
            "1.5 to 2 sigma",
            "2 to 3 sigma",
            "3 to 4 sigma",
            "4 sigma and more");
    assertThat(sizes).allSatisfy(size -> assertThat(size.found().of()).isEqualTo(1));
  }

  private static Link moved(Link link, double by) {
    return new Link(
        link.name(),
        link.event(),
        link.group(),
        link.unit(),
        link.evidence(),
        by,
        link.expectedEffect(),
        link.explainedShare(),
        link.explainedLow(),
        link.explainedHigh(),
        link.qValue(),
        link.sinceTurn(),
        link.lookFirst(),
        link.togetherWith());
  }

  private static PlantedShift sized(String mold, double sigma) {
    return new PlantedShift(
        "a", Scope.MOLD, "W", mold, "", "thickness", 10, 20, Direction.HIGH, "", "", sigma);
  }

  /** Wilson's interval of 1 in 1 and of 0 in 0; ProportionTest has the published examples. */
  @Test
  void sharesHaveIntervalsWhereThereIsAnythingToCount() {
    Score score =
        score(
            report(List.of(moldSignal("1", 100, 103, 110))),
            List.of(moldShift("a", "1", 100, 110, "")));
    assertThat(score.all().found().value()).isEqualTo(1.0);
    assertThat(score.all().found().low()).isCloseTo(0.2065, within(0.0001));
    assertThat(score.all().topRight().value()).isNull();
    assertThat(score.all().topRight().low()).isNull();
  }

  /** A log without a column wheel names none; there is only one that can be meant. */
  @Test
  void aLogOfOneWheelNeedNotNameIt() {
    PlantedShift elsewhere =
        new PlantedShift(
            "a", Scope.MOLD, "north", "1", "", "thickness", 100, 110, Direction.HIGH, "", "", null);
    assertThat(
            score(report(List.of(moldSignal("1", 100, 103, 110))), List.of(elsewhere))
                .all()
                .found()
                .count())
        .isEqualTo(1);
  }
}
