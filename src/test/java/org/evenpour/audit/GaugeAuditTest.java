package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.GaugeFile;
import org.evenpour.casting.Unit;
import org.evenpour.control.LimitsBook;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.GaugeReport;
import org.evenpour.findings.GaugeReport.Verdict;
import org.evenpour.intake.GaugeReader;
import org.evenpour.intake.Profiles;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What gauge files make of an audit. */
class GaugeAuditTest {
  private static AuditReport run(CastingRecord record, GaugeFile gauge) {
    return Audit.run(record, new PlantRecords(LimitsBook.NONE, List.of(gauge), List.of()));
  }

  private static final String PROFILE =
      "characteristics:\n  mass: {unit: kg, lower: 388, target: 390, upper: 392}\n";

  @TempDir Path folder;

  private CastingRecord record(double sigma) throws Exception {
    Random random = new Random(23);
    double[] x = random.doubles(60).map(u -> 390 + sigma * (u - 0.5)).toArray();
    return MadeWheel.of(folder, 60, t -> x[t], null, PROFILE);
  }

  /**
   * The worked example of the measurement systems analysis manual (AIAG), through a file: standard
   * deviations after pooling as printed (from memory): repeatability 0.199933, operators 0.226838,
   * gauge 0.302373, parts 1.04233, 27.9 % of the spread.
   */
  @Test
  void theManualsExampleComesThroughAFile() throws Exception {
    List<String> rows = new ArrayList<>(List.of("part,operator,mass_kg"));
    for (String line : Files.readAllLines(Path.of("shared/reference/gauge-study.csv"))) {
      if (!line.startsWith("#") && !line.startsWith("part")) {
        rows.add(studyRow(line));
      }
    }
    Path file = Files.write(folder.resolve("manual.csv"), rows);
    GaugeReport its = run(record(1), GaugeReader.read(file, Profiles.NONE)).gauges().get(0);
    assertThat(its.parts()).isEqualTo(10);
    assertThat(its.operators()).isEqualTo(3);
    assertThat(its.readings()).isEqualTo(90);
    assertThat(its.repeatability().value()).isCloseTo(0.199933, within(5e-7));
    assertThat(its.reproducibility()).isCloseTo(0.226838, within(1e-6));
    assertThat(its.sigma().value()).isCloseTo(0.302373, within(2e-6));
    assertThat(Objects.requireNonNull(its.partToPart()).value()).isCloseTo(1.04233, within(5e-6));
    assertThat(its.shareOfStudy()).isCloseTo(0.279, within(0.0005));
    GaugeReport.OnWheel wheel = its.wheels().get(0);
    // 6·0.302373/4, and 1.644854·0.302373 from either limit
    assertThat(wheel.shareOfTolerance()).isCloseTo(0.45356, within(1e-5));
    assertThat(wheel.acceptLow()).isCloseTo(388.49736, within(1e-5));
    assertThat(wheel.acceptHigh()).isCloseTo(391.50264, within(1e-5));
    assertThat(wheel.tooCoarseFor()).contains(Verdict.ACCEPTANCE);
  }

  private static String studyRow(String line) {
    String[] cells = line.split(",", -1);
    return cells[0] + "," + cells[1] + "," + cells[3];
  }

  private static GaugeFile checks(double bias, double driftPerDay, double scatter) {
    Random random = new Random(29);
    List<GaugeFile.Reading> readings = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      Instant at = Instant.parse("2026-03-01T08:00:00Z").plus(Duration.ofHours(6L * i));
      double days = 6 * i / 24.0;
      double off = bias + driftPerDay * days + scatter * random.nextGaussian();
      // two reference masses: each reading counts against its own
      double reference = i % 2 == 0 ? 400 : 380;
      readings.add(new GaugeFile.Reading(at, reference, reference + off));
    }
    return new GaugeFile(
        "checks.csv", List.of(), List.of(new GaugeFile.Checks("mass", Unit.KG, readings)));
  }

  @Test
  void aBiasAndADriftAreFoundAndSaidFirst() throws Exception {
    AuditReport report = run(record(1), checks(0.4, 0.05, 0.1));
    GaugeReport its = report.gauges().get(0);
    Estimate drift = Objects.requireNonNull(its.driftPerDay());
    assertThat(drift.low()).isLessThan(0.05);
    assertThat(drift.high()).isGreaterThan(0.05);
    // the mean over days 0 to 9.75
    assertThat(Objects.requireNonNull(its.bias()).value())
        .isCloseTo(0.4 + 0.05 * 4.875, within(0.06));
    assertThat(report.notes().subList(0, 3).toString())
        .contains("The gauge of mass reads high by 0.6")
        .contains("drifts beyond chance");
  }

  /** Anodes in doubt are those within 1.645 sigma of a limit, counted by hand. */
  @Test
  void countsTheAnodesInDoubt() throws Exception {
    CastingRecord record = record(2);
    GaugeReport its = run(record, checks(0, 0, 0.3)).gauges().get(0);
    double guard = 1.6448536269514722 * its.sigma().value();
    long inDoubt = 0;
    var values = record.wheels().get(0).characteristics().get(0).values();
    for (int i = 0; i < values.size(); i++) {
      double off = Math.abs(values.get(i) - 390);
      inDoubt += Math.abs(off - 2) <= guard ? 1 : 0;
    }
    assertThat(inDoubt).isPositive();
    assertThat(its.wheels().get(0).inDoubt()).isEqualTo(inDoubt);
  }

  @Test
  void aFineGaugeRaisesNoNote() throws Exception {
    CastingRecord record = record(1);
    AuditReport without = Audit.run(record);
    AuditReport with = run(record, checks(0, 0, 0.0001));
    assertThat(with.gauges().get(0).wheels().get(0).tooCoarseFor()).isEmpty();
    assertThat(with.notes()).isEqualTo(without.notes());
  }
}
