package org.evenpour.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import org.evenpour.casting.Direction;
import org.evenpour.casting.PlantAdvice;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Unit;
import org.evenpour.findings.Advice;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class SentencesTest {
  private final Sentences sentences =
      new Sentences(
          Words.english(),
          ZoneId.of("America/Santiago"),
          false,
          false,
          Map.of(
              List.of("N2", "mass"), Unit.KG,
              List.of("N2", "thickness"), Unit.MM,
              List.of("N2", "wedge"), Unit.MM,
              List.of("N3", "mass"), Unit.of("lb"),
              List.of("N3", "thickness"), Unit.of("in")));

  private static Signal signal(
      String wheel, String characteristic, Scope scope, Direction direction, double size) {
    return new Signal(
        "S1",
        wheel,
        characteristic,
        scope,
        scope == Scope.MOLD || scope == Scope.POUR ? "17" : null,
        scope == Scope.SIDE ? "B" : null,
        214,
        230,
        Reports.at(214),
        Reports.at(230),
        212,
        Reports.at(212),
        true,
        List.of(),
        direction,
        size,
        null,
        null,
        3,
        null,
        List.of());
  }

  private static Link link(
      String name,
      boolean event,
      String group,
      String unit,
      Evidence evidence,
      @Nullable Double movedBy,
      @Nullable Double share,
      String lookFirst) {
    return new Link(
        name, event, group, unit, evidence, movedBy, null, share, null, null, 0.01, 211, lookFirst,
        List.of());
  }

  private static Signal side(double otherSide) {
    Signal s = signal("N2", "mass", Scope.SIDE, Direction.HIGH, 2.14);
    return new Signal(
        s.id(),
        s.wheel(),
        s.characteristic(),
        s.scope(),
        s.mold(),
        s.side(),
        s.firstTurn(),
        s.lastTurn(),
        s.firstCastAt(),
        s.lastCastAt(),
        s.sinceTurn(),
        s.sinceAt(),
        s.open(),
        s.tests(),
        s.direction(),
        s.size(),
        null,
        null,
        s.sizeSigma(),
        otherSide,
        List.of());
  }

  @Test
  void namesNoSideWithoutSayingThatItMayBeTheOther() {
    String lead = "Ladle side B runs heavy since turn 212 (Tue 14 May 04:38): +2.1 kg.";

    assertThat(sentences.lead(new Topic(List.of(side(0.02))))).isEqualTo(lead);
    assertThat(sentences.lead(new Topic(List.of(side(0.3)))))
        .isEqualTo(lead + " Which side moved is not clear: the other may have gone the other way.");
  }

  @Test
  void saysHeavyAndLightOfMass() {
    assertThat(sentences.signal(signal("N2", "mass", Scope.MOLD, Direction.HIGH, 2.14)))
        .isEqualTo("Mold 17 runs heavy since turn 212 (Tue 14 May 04:38): +2.1 kg.");
    assertThat(sentences.signal(signal("N2", "mass", Scope.SIDE, Direction.LOW, -3.06)))
        .startsWith("Ladle side B runs light since turn 212 (Tue 14 May 04:38): −3.1 kg.");
  }

  @Test
  void saysThickAndThinOfThicknessAndMoreOrLessOfWedge() {
    assertThat(sentences.signal(signal("N2", "thickness", Scope.WHEEL, Direction.HIGH, 0.31)))
        .startsWith("The whole wheel runs thick since turn 212 (Tue 14 May 04:38): +0.31 mm.");
    assertThat(sentences.signal(signal("N2", "wedge", Scope.MOLD, Direction.LOW, -0.5)))
        .startsWith("Mold 17 runs less wedge since");
  }

  @Test
  void saysMoreScatteredOfASpread() {
    assertThat(sentences.signal(signal("N2", "mass", Scope.MOLD, Direction.SPREAD, 0.83)))
        .startsWith(
            "Mold 17 runs more scattered in mass since turn 212 (Tue 14 May 04:38): s.d. up 0.83"
                + " kg.");
  }

  @Test
  void namesACharacteristicThatHasNoWordsOfItsOwn() {
    assertThat(sentences.signal(signal("N2", "lug_gap", Scope.MOLD, Direction.HIGH, 2)))
        .startsWith("Mold 17 runs high in lug gap since turn 212 (Tue 14 May 04:38): +2.00.");
  }

  @Test
  void showsSizesInTheUnitThatPeopleRead() {
    // 1 lb = 0.45359237 kg and 1 in = 25.4 mm, exactly (international yard and pound, 1959)
    assertThat(sentences.signal(signal("N3", "mass", Scope.MOLD, Direction.HIGH, 0.45359237)))
        .contains(": +1.0 lb.");
    assertThat(sentences.signal(signal("N3", "thickness", Scope.MOLD, Direction.LOW, -1.27)))
        .contains(": −0.050 in.");
  }

  @Test
  void saysNothingOfSettingsForASingleAnode() {
    assertThat(sentences.signal(signal("N2", "mass", Scope.POUR, Direction.HIGH, 9.3)))
        .isEqualTo("One anode of mold 17 came out heavy at turn 212 (Tue 14 May 04:38): +9.3 kg.");
  }

  @Test
  void saysHowASettingMovedAndWhatToLookAtFirst() {
    assertThat(
            sentences.link(
                link(
                    "wash_volume_ml",
                    false,
                    "wash",
                    "ml",
                    Evidence.STRONG,
                    -40.2,
                    0.62,
                    "Look at its spray nozzle first.")))
        .isEqualTo(
            "Wash volume fell with it by 40 mL (that would explain about 62 % of it). Check first"
                + " that the mold is dry. Look at its spray nozzle first.");
    assertThat(
            sentences.link(
                link("pour_rate_kg_s", false, "pour", "kg_s", Evidence.MOVED, 0.234, null, "")))
        .isEqualTo("Pour rate rose with it by 0.23 kg/s (whether that matters is unproven).");
    Link usual =
        new Link(
            "pour_rate_kg_s",
            false,
            "pour",
            "kg_s",
            Evidence.MOVED,
            0.234,
            1.4,
            0.81,
            0.5,
            1.1,
            0.7,
            211,
            "",
            List.of());
    assertThat(sentences.link(usual))
        .isEqualTo(
            "Pour rate rose with it by 0.23 kg/s, as it often does by itself (that would explain"
                + " about 81 % of it).");
    assertThat(sentences.link(link("furnace", false, "melt", "", Evidence.STRONG, null, 0.99, "")))
        .isEqualTo("Furnace changed with it (that would explain all of it).");
    assertThat(sentences.link(link("scale_checked", true, "", "", Evidence.MOVED, null, null, "")))
        .isEqualTo("Recorded when it began: scale check (turn 211).");
  }

  @Test
  void neverSendsAnybodyToWaterOrWashWithoutTheWarning() {
    for (String name : List.of("spray_flow_l_min", "cooling_water_c", "mold_temp_c", "wash_l")) {
      assertThat(sentences.advice(link(name, false, "", "", Evidence.STRONG, 1.0, 1.0, "raise it")))
          .isEqualTo("Check first that the mold is dry. Raise it.");
    }
    assertThat(
            sentences.advice(link("speed", false, "cooling", "", Evidence.STRONG, 1.0, 1.0, "x.")))
        .isEqualTo("Check first that the mold is dry. X.");
    assertThat(
            sentences.advice(link("pour_rate", false, "pour", "", Evidence.STRONG, 1.0, 1.0, "x.")))
        .isEqualTo("x.");
  }

  @Test
  void aPlantsOwnAdviceIsSaidInItsLanguageWithTheProgramsCautionBeforeIts() {
    PlantAdvice.Entry wash =
        new PlantAdvice.Entry(
            Map.of("es", "revise primero la bomba 2"), Map.of("en", "Keep off the deck"), false);
    Sentences spanish =
        new Sentences(
            new Words(
                ResourceBundle.getBundle("org.evenpour.report.words", Locale.forLanguageTag("es"))),
            ZoneOffset.UTC,
            false,
            false,
            Map.of(),
            new Advice(new PlantAdvice(Map.of("wash", wash)), Map.of()));
    assertThat(
            spanish.advice(
                link("wash_l", false, "wash", "", Evidence.STRONG, 1.0, 1.0, "look at it first")))
        .isEqualTo(
            "Compruebe primero que el molde esté seco. Keep off the deck. Revise primero la bomba"
                + " 2.");
  }

  @Test
  void saysNeighborsTogetherAndRoundTheWheel() {
    List<Signal> signals = new ArrayList<>();
    signals.add(Reports.moldSignal("S1", "8", 212, -1.04));
    signals.add(Reports.moldSignal("S2", "7", 210, -1.31));
    signals.add(Reports.moldSignal("S3", "9", 214, -0.98));
    signals.add(Reports.moldSignal("S4", "26", 100, -0.5));
    signals.add(Reports.moldSignal("S5", "1", 101, -0.5));
    signals.add(Reports.moldSignal("S6", "10", 100, -0.5)); // another time: another matter
    signals.add(Reports.moldSignal("S8", "8", 40, -0.7)); // once before: another matter
    signals.add(Reports.moldSignal("S7", "2", 101, +0.5)); // the other way: another matter
    var report = Reports.with(Reports.plant(), signals);
    assertThat(Topic.of(report).stream().map(sentences::topic))
        .satisfiesExactlyInAnyOrder(
            one ->
                assertThat(one)
                    .startsWith(
                        "Molds 7, 8 and 9 run thin since turn 210 (Tue 14 May 04:10): −1.0 to −1.3"
                            + " mm. Wash volume fell"),
            one ->
                assertThat(one)
                    .startsWith(
                        "Molds 26 and 1 run thin since turn 100 (Mon 13 May 01:53): −0.50 mm each."),
            one -> assertThat(one).startsWith("Mold 8 runs thin since turn 40"),
            one -> assertThat(one).startsWith("Mold 10 runs thin since turn 100"),
            one -> assertThat(one).startsWith("Mold 2 runs thick since turn 101"));
  }

  @Test
  void saysTogetherWhatOneMoldDidToSeveralCharacteristics() {
    Signal thin = signal("N2", "thickness", Scope.MOLD, Direction.LOW, -0.5);
    Signal light = signal("N2", "mass", Scope.MOLD, Direction.LOW, -2.1);
    Signal scattered = signal("N2", "wedge", Scope.MOLD, Direction.SPREAD, 0.3);
    var report = Reports.with(Reports.plant(), List.of(thin, light, scattered));
    assertThat(Topic.of(report).stream().map(sentences::lead))
        .containsExactly(
            "Mold 17 runs thin and light since turn 212 (Tue 14 May 04:38): −0.50 mm and −2.1 kg;"
                + " more scattered in wedge since turn 212 (Tue 14 May 04:38): s.d. up 0.30 mm.");
  }

  @Test
  void spellsSettingsOut() {
    assertThat(sentences.setting("melt_temp_c")).isEqualTo("melt temperature");
    assertThat(sentences.setting("spray_flow_l_min")).isEqualTo("spray flow");
    assertThat(sentences.setting("tempo")).isEqualTo("tempo");
  }

  @Test
  void putsWhatStillHoldsBeforeWhatHasPassedAndSingleAnodesLast() {
    assertThat(Topic.of(Reports.plant()).stream().map(topic -> topic.first().id()))
        .containsExactly("S3", "S1", "S2", "S4");
  }

  @Test
  void namesTheWheelWhereThereAreSeveralAndTheYearWhereTheRecordIsLong() {
    Sentences long2 =
        new Sentences(
            Words.english(), ZoneId.of("America/Santiago"), true, true, sentences.units());
    assertThat(long2.signal(signal("N2", "mass", Scope.MOLD, Direction.HIGH, 2.14)))
        .startsWith("Wheel N2: mold 17 runs heavy since turn 212 (Tue 14 May 2024 04:38)");
    assertThat(long2.signal(signal("N2", "mass", Scope.WHEEL, Direction.HIGH, 2.14)))
        .startsWith("Wheel N2 as a whole runs heavy since");
  }
}
