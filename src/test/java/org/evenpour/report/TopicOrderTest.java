package org.evenpour.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Sample;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.report.table.SignalTables;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What is looked at first, and what is left where no setting explains it. */
class TopicOrderTest {
  private static final String CAUTION =
      "Check first that the mold is dry. Mold work is hot and heavy: wheel stopped and locked,"
          + " people back. ";

  private static Signal signal(
      String id,
      String characteristic,
      Scope scope,
      @Nullable String mold,
      int since,
      int last,
      boolean open,
      Direction direction,
      double size,
      Link... links) {
    return new Signal(
        id,
        "N2",
        characteristic,
        scope,
        mold,
        scope == Scope.SIDE ? "B" : null,
        since + 3,
        last,
        Reports.at(since + 3),
        Reports.at(last),
        since,
        Reports.at(since),
        open,
        List.of(),
        direction,
        size,
        size - 0.05,
        size + 0.05,
        size / 0.2,
        null,
        List.of(links));
  }

  private static Signal thin(String id, String mold, int since, double size, Link... links) {
    return signal(id, "thickness", Scope.MOLD, mold, since, 229, true, Direction.LOW, size, links);
  }

  private static Link strong(String setting) {
    return new Link(
        setting,
        false,
        "pour",
        "",
        Evidence.STRONG,
        1.0,
        1.0,
        0.9,
        0.8,
        1.0,
        0.01,
        211,
        "",
        List.of());
  }

  private static List<String> order(Signal... signals) {
    List<Signal> mixed = new ArrayList<>(List.of(signals));
    Collections.shuffle(mixed, new Random(7));
    return Topic.of(Reports.with(Reports.plant(), mixed)).stream()
        .map(topic -> topic.first().id())
        .toList();
  }

  @Test
  void whatCanBeDoneNowComesFirst() {
    assertThat(
            order(
                signal("wheel", "mass", Scope.WHEEL, null, 220, 229, true, Direction.HIGH, 1),
                signal("side", "mass", Scope.SIDE, null, 225, 229, true, Direction.LOW, -0.5),
                thin("known", "3", 210, -0.3, strong("pour_rate_kg_s")),
                thin("near", "5", 200, -1.2),
                thin("far", "9", 205, -0.4),
                thin("old", "20", 40, -0.15),
                signal("passed", "mass", Scope.WHEEL, null, 90, 120, false, Direction.HIGH, 4),
                signal("anode", "mass", Scope.POUR, "2", 99, 99, false, Direction.LOW, -14)))
        .containsSubsequence("known", "near", "far", "old", "passed", "anode")
        .startsWith(
            order(
                    signal("wheel", "mass", Scope.WHEEL, null, 220, 229, true, Direction.HIGH, 1),
                    signal("side", "mass", Scope.SIDE, null, 225, 229, true, Direction.LOW, -0.5))
                .toArray(String[]::new));
  }

  @Test
  void anOldDriftThatTakesItsRoomStaysUp() {
    assertThat(order(thin("old", "20", 40, -1.2), thin("new", "9", 205, -0.4)))
        .containsExactly("old", "new");
    assertThat(order(thin("old", "20", 40, -0.15), thin("new", "9", 205, -0.4)))
        .containsExactly("new", "old");
  }

  @Test
  void aListSaysWhatOneMoldDoesInOneLineHoweverLongAgoEachBegan() {
    AuditReport report =
        Reports.with(
            Reports.plant(),
            List.of(
                thin("S1", "9", 100, -0.9),
                signal("S2", "wedge", Scope.MOLD, "9", 180, 229, true, Direction.HIGH, 0.3),
                signal("S3", "wedge", Scope.MOLD, "9", 20, 60, false, Direction.HIGH, 0.4)));
    Sentences sentences = Sentences.of(report, Words.english(), ZoneOffset.UTC);
    List<Topic> topics = Topic.of(report);
    assertThat(topics).hasSize(2);
    assertThat(sentences.brief(topics.get(0)))
        .matches(
            "Mold 9 runs thin since turn 100 .*: −0\\.90 mm; more wedge since turn 180 \\(.*\\):"
                + " \\+0\\.30 mm\\.");
    assertThat(sentences.topic(topics.get(1))).startsWith("Mold 9 ran more wedge from turn 20");
  }

  /** Mass off: pour or scale. Thickness off at constant mass: cavity, level, warp. Wedge: level. */
  @Test
  void thePatternOfMassThicknessAndWedgeSaysWhatIsLeft() {
    Signal thin = thin("S1", "9", 200, -0.9);
    Signal light = signal("S2", "mass", Scope.MOLD, "9", 201, 229, true, Direction.LOW, -3);
    Signal wedge = signal("S3", "wedge", Scope.MOLD, "9", 200, 229, true, Direction.HIGH, 0.3);
    String cavity = CAUTION + "Check level, cavity, warp (same mass).";
    assertThat(step(thin)).isEqualTo(cavity);
    assertThat(step(wedge)).isEqualTo(CAUTION + "Check the level: wedge is tilt.");
    assertThat(step(thin, wedge)).isEqualTo(cavity);
    assertThat(step(thin, light))
        .startsWith("Mass is off, so look at the pour")
        .doesNotContain("cavity");
    assertThat(step(light)).startsWith("Mass is off, so look at the pour");
    Signal before = signal("S4", "mass", Scope.MOLD, "9", 20, 60, false, Direction.LOW, -3);
    assertThat(step(thin, before)).as("mass was off, and is not now").isEqualTo(cavity);
    Signal scattered =
        signal("S5", "thickness", Scope.MOLD, "9", 200, 229, true, Direction.SPREAD, 0.3);
    assertThat(step(scattered))
        .isEqualTo("Check first that the mold is dry. Look at the wash and spray nozzles.");
    assertThat(step(signal("S6", "mass", Scope.SIDE, null, 200, 229, true, Direction.HIGH, 3)))
        .startsWith("Weigh a known mass");
    Signal swollen =
        signal("S7", "thickness", Scope.WHEEL, null, 200, 229, true, Direction.HIGH, 0.4);
    assertThat(step(swollen)).contains("thickness gauge");
    assertThat(
            step(
                swollen,
                signal("S8", "mass", Scope.WHEEL, null, 205, 229, true, Direction.HIGH, 3)))
        .startsWith("Weigh a known mass");
    assertThat(step(signal("S9", "mass", Scope.POUR, "2", 99, 99, false, Direction.LOW, -14)))
        .isEmpty();
    assertThat(step(thin("S1", "9", 200, -0.9, strong("pour_rate_kg_s")))).isEmpty();
  }

  private static String step(Signal... signals) {
    AuditReport report = Reports.with(Reports.plant(), List.of(signals));
    Sentences sentences = Sentences.of(report, Words.english(), ZoneOffset.UTC);
    return new NextSteps(report, sentences).step(Topic.of(report).get(0));
  }

  @Test
  void thatNothingExplainsIsSaidOnceInASummaryAndWithNoLineOfIt() throws Exception {
    AuditReport report = Audit.run(Sample.read(Sample.TORDILLA));
    String summary = Summary.text(report, ZoneOffset.UTC);
    assertThat(summary.split("No recorded setting", -1)).hasSize(2);
    Sentences sentences = Sentences.of(report, Words.english(), ZoneOffset.UTC);
    assertThat(Topic.of(report))
        .allSatisfy(
            topic -> assertThat(sentences.topic(topic)).doesNotContain("No recorded setting"));
    assertThat(SignalTables.signals(report, sentences).rows().stream().map(Signal::id))
        .as("the workbook's order")
        .startsWith(
            Topic.of(report).stream()
                .flatMap(topic -> topic.signals().stream())
                .map(Signal::id)
                .toArray(String[]::new));
  }
}
