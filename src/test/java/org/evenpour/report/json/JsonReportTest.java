package org.evenpour.report.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import java.util.concurrent.ForkJoinPool;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Sample;
import org.evenpour.casting.CastingRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.report.Reports;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JsonReportTest {
  private static String json(AuditReport report) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    JsonReport.write(report, bytes);
    return bytes.toString(UTF_8);
  }

  private static JsonNode tree(AuditReport report) throws IOException {
    return new ObjectMapper().readTree(json(report));
  }

  private static List<String> names(JsonNode object) {
    List<String> names = new ArrayList<>();
    object.fieldNames().forEachRemaining(names::add);
    return names;
  }

  /** Threads as the pool has them in which the audit is asked for: its streams go there. */
  @Test
  void isTheSameToTheLastByteWhateverTheThreads() throws Exception {
    CastingRecord record = Sample.read(Sample.TORDILLA);
    List<String> reports = new ArrayList<>();
    for (int threads : new int[] {1, 2, 8}) {
      ForkJoinPool pool = new ForkJoinPool(threads);
      try {
        reports.add(pool.submit(() -> json(Audit.run(record))).get());
      } finally {
        pool.shutdown();
      }
    }
    assertThat(reports.get(1)).isEqualTo(reports.get(0));
    assertThat(reports.get(2)).isEqualTo(reports.get(0));
  }

  @Test
  void carriesEveryNameOfTheContract() throws IOException {
    JsonNode report = tree(Reports.plant());
    assertThat(report.get("schema").asText()).isEqualTo("evenpour.audit/1");
    assertThat(names(report.get("log")))
        .contains(
            "rows_read",
            "rows_kept",
            "rows_set_aside",
            "first_cast_at",
            "last_cast_at",
            "wheels",
            "molds",
            "turns");
    JsonNode mass = report.get("characteristics").get(0);
    assertThat(names(mass))
        .contains("wheel", "name", "unit", "spec", "overall", "variance", "wheel_chart", "molds");
    assertThat(names(mass.get("spec"))).containsExactly("lower", "target", "upper");
    assertThat(names(mass.get("overall")))
        .contains("count", "mean", "sd", "minimum", "maximum", "normality", "capability");
    assertThat(names(mass.get("overall").get("normality")))
        .containsExactly("anderson_darling", "p_value");
    assertThat(names(mass.get("variance")))
        .contains("mold", "turn", "pour", "mold_f", "mold_f_df1", "mold_f_df2", "mold_f_p");
    assertThat(names(mass.get("wheel_chart")))
        .contains("center", "lower_limit", "upper_limit", "sigma", "tests", "points");
    assertThat(names(mass.get("molds").get(0)))
        .contains(
            "mold",
            "count",
            "mean",
            "sd",
            "sigma_within",
            "center",
            "lower_limit",
            "upper_limit",
            "tests",
            "capability");
    assertThat(names(mass.get("overall").get("capability")))
        .contains(
            "cp",
            "cpk",
            "cpl",
            "cpu",
            "pp",
            "ppk",
            "cpm",
            "fraction_outside_expected",
            "fraction_outside_observed");
    assertThat(names(mass.get("overall").get("capability").get("cp")))
        .containsExactly("value", "low", "high");
    JsonNode signal = report.get("signals").get(0);
    assertThat(names(signal))
        .contains(
            "id",
            "wheel",
            "characteristic",
            "scope",
            "mold",
            "first_turn",
            "last_turn",
            "first_cast_at",
            "last_cast_at",
            "since_turn",
            "tests",
            "direction",
            "size",
            "size_sigma",
            "links");
    assertThat(signal.get("scope").asText()).isEqualTo("mold");
    assertThat(signal.get("direction").asText()).isEqualTo("low");
    JsonNode link = signal.get("links").get(0);
    assertThat(names(link))
        .contains(
            "setting",
            "group",
            "evidence",
            "moved_by",
            "expected_effect",
            "explained_share",
            "q_value");
    assertThat(link.get("evidence").asText()).isEqualTo("strong");
    assertThat(report.get("signals").get(1).get("links").get(0).get("event").asText())
        .isEqualTo("mold_changed");
  }

  @Test
  void givesTheReportsOwnNumbers() throws IOException {
    AuditReport plant = Reports.plant();
    JsonNode report = tree(plant);
    assertThat(report.get("log").get("rows_read").asLong()).isEqualTo(5992);
    JsonNode thickness = report.get("characteristics").get(1);
    AuditReport.CharacteristicReport given = plant.characteristics().get(1);
    AuditReport.Estimate cpk = requireNonNull(given.overall().capability()).cpk();
    assertThat(thickness.get("overall").get("capability").get("cpk").get("value").asDouble())
        .isEqualTo(requireNonNull(cpk).value());
    JsonNode points = thickness.get("wheel_chart").get("points");
    assertThat(points.size()).isEqualTo(230);
    assertThat(points.get(229).get("value").asDouble())
        .isEqualTo(requireNonNull(given.wheelChart()).points().get(229).value());
    assertThat(points.get(0).get("at").asText()).isEqualTo("2024-05-12T06:14:20Z");
  }

  @Test
  void writesWhatIsUndefinedAsNull() throws IOException {
    JsonNode characteristic = tree(Reports.bare()).get("characteristics").get(0);
    assertThat(characteristic.get("wheel_chart").isNull()).isTrue();
    assertThat(characteristic.get("spec").get("target").isNull()).isTrue();
    assertThat(characteristic.get("overall").get("capability").isNull()).isTrue();
    assertThat(characteristic.get("overall").get("sd").isNull()).isTrue();
    assertThat(characteristic.get("variance").get("mold_f_df1").isNull()).isTrue();
    assertThat(characteristic.get("molds").get(0).get("outside").isNull()).isTrue();
  }

  @Test
  void refusesANumberThatIsNone() {
    AuditReport report = Reports.plant();
    AuditReport.Signal broken = Reports.moldSignal("S9", "3", 10, Double.NaN);
    assertThatThrownBy(() -> json(Reports.with(report, List.of(broken))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("size");
  }

  @Test
  void keepsEveryTextThatUnicodeCanHold() throws IOException {
    AuditReport nasty = Reports.nasty();
    JsonNode report = tree(nasty);
    JsonNode rows = report.get("set_aside");
    assertThat(rows.get(0).get("text").asText()).isEqualTo(nasty.setAside().get(0).text());
    assertThat(rows.get(1).get("reason").asText())
        .isEqualTo(nasty.setAside().get(1).reason().toString());
    assertThat(rows.get(1).get("text").asText()).isEqualTo("café \ud83d\ude00 \ufffd\ufffd");
  }

  @Test
  void putsEachTurnOnALineOfItsOwn() throws IOException {
    assertThat(json(Reports.plant()).lines().map(String::strip))
        .contains(
            "\"tests\": {\"beyond-limit\": 2, \"nine-one-side\": 4, \"two-of-three-outer\": 1},")
        .contains("\"spec\": {\"lower\": 378.0, \"target\": 388.0, \"upper\": 398.0},")
        .filteredOn(line -> line.startsWith("{\"turn\": "))
        .hasSize(3 * 230);
  }

  @Test
  void writesTheSameBytesWhereverItRuns(@TempDir Path folder) throws IOException {
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    Path here = folder.resolve("here.json");
    Path there = folder.resolve("there.json");
    JsonReport.write(Reports.plant(), here);
    try {
      Locale.setDefault(Locale.forLanguageTag("tr-TR"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Pago_Pago"));
      JsonReport.write(Reports.plant(), there);
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
    assertThat(Files.readAllBytes(there)).isEqualTo(Files.readAllBytes(here));
    assertThat(Files.readString(here)).doesNotContain("\r").endsWith("}\n");
  }

  /** Fewer digits would read back to another double: so says IEEE 754's round to nearest. */
  @Property(tries = 20_000, seed = "4111")
  void writesTheFewestDigitsThatReadBack(@ForAll long bits) throws IOException {
    double value = Double.longBitsToDouble(bits);
    if (Double.isFinite(value)) {
      checkShortest(value);
    }
  }

  /** The published failures of Double.toString before Java 19 (JDK-4511638), and the extremes. */
  @Test
  @SuppressWarnings("FloatingPointLiteralPrecision") // written as they were reported
  void writesTheFewestDigitsOfKnownTroublemakers() throws IOException {
    for (double value :
        new double[] {
          2.0E-3,
          1.0E23,
          2.2E-322,
          8.41E21,
          2.0E210,
          9.5E-3,
          0.1,
          1.0 / 3,
          388.0,
          5E-324,
          Double.MAX_VALUE,
          Double.MIN_NORMAL,
          0.0,
          -0.0,
          0x1p53,
          1.1E-5
        }) {
      checkShortest(value);
    }
    assertThat(written(8.41E21)).isEqualTo("8.41E21");
    assertThat(written(388)).isEqualTo("388.0");
  }

  private static void checkShortest(double value) throws IOException {
    String text = written(value);
    assertThat(Double.doubleToRawLongBits(Double.parseDouble(text)))
        .isEqualTo(Double.doubleToRawLongBits(value));
    int digits = new BigDecimal(text).stripTrailingZeros().precision();
    if (digits > 2) { // Java always writes two digits, and the nearest such: 4.9E-324
      String shorter =
          new BigDecimal(value)
              .round(new java.math.MathContext(digits - 1, java.math.RoundingMode.HALF_EVEN))
              .toString();
      assertThat(Double.parseDouble(shorter)).as("%s for %s", shorter, text).isNotEqualTo(value);
    }
  }

  private static String written(double value) throws IOException {
    AuditReport.Signal signal = Reports.moldSignal("S1", "1", 1, value);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    AuditReport.Signal plain =
        new AuditReport.Signal(
            "S1",
            "",
            "mass",
            signal.scope(),
            null,
            null,
            1,
            1,
            signal.sinceAt(),
            signal.sinceAt(),
            1,
            signal.sinceAt(),
            true,
            List.of(),
            signal.direction(),
            value,
            null,
            null,
            1,
            null,
            List.of());
    JsonReport.write(Reports.with(Reports.bare(), List.of(plain)), bytes);
    return bytes
        .toString(UTF_8)
        .lines()
        .filter(line -> line.strip().startsWith("\"size\": "))
        .map(line -> line.strip().substring(8).replace(",", ""))
        .findFirst()
        .orElseThrow();
  }
}
