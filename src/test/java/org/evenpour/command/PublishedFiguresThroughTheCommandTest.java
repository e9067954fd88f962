package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Published data sets as casting logs, through the program itself: {@code mass_kg} is the data set,
 * {@code mold} the treatment. NIST Statistical Reference Datasets (public domain), certified values
 * in {@code shared/reference}; the Dyestuff yields of Davies and Goldsmith, Statistical Methods in
 * Research and Production.
 */
class PublishedFiguresThroughTheCommandTest {
  @TempDir Path folder;

  /**
   * Digits that exact arithmetic on the doubles reaches (computed independently); 0.3 less is asked
   * for.
   */
  private static final double SLACK = 0.3;

  /**
   * One data set.
   *
   * @param treatments by treatment, in order
   */
  private record DataSet(String name, Map<String, List<String>> treatments) {}

  @TestFactory
  Stream<DynamicTest> meansAndStandardDeviations() throws IOException {
    Map<String, double[]> certified = new TreeMap<>();
    // NIST StRD univariate: certified mean and s.d., then the digits of the s.d. that the doubles
    // hold.
    certified.put("Mavro", new double[] {2.00185600000000, 0.000429123454003053, 13.1});
    certified.put("Michelso", new double[] {299.852400000000, 0.0790105478190518, 13.8});
    certified.put("NumAcc1", new double[] {10000002, 1, 15});
    certified.put("NumAcc2", new double[] {1.2, 0.1, 15});
    certified.put("NumAcc3", new double[] {1000000.2, 0.1, 9.5});
    certified.put("NumAcc4", new double[] {10000000.2, 0.1, 8.2});
    List<DynamicTest> tests = new ArrayList<>();
    certified.forEach(
        (name, figures) ->
            tests.add(
                DynamicTest.dynamicTest(
                    name,
                    () -> {
                      JsonNode overall = audit(univariate(name)).get("overall");
                      assertThat(digits(overall.get("mean").doubleValue(), figures[0]))
                          .isGreaterThanOrEqualTo(15 - SLACK);
                      assertThat(digits(overall.get("sd").doubleValue(), figures[1]))
                          .isGreaterThanOrEqualTo(figures[2] - SLACK);
                    })));
    return tests.stream();
  }

  @TestFactory
  Stream<DynamicTest> oneWayAnalysesOfVariance() {
    // NIST StRD analysis of variance, SmLs01 to SmLs09: certified F = 21, 201 and 2001 for as many
    // replicates.
    double[] certified = {21, 201, 2001};
    double[] digits = {15, 10.2, 4.2};
    String[] bases = {"1", "1000000", "1000000000000"};
    List<DynamicTest> tests = new ArrayList<>();
    for (int b = 0; b < bases.length; b++) {
      for (int r = 0; r < certified.length; r++) {
        int replicates = (int) certified[r];
        String base = bases[b];
        double reachable = digits[b];
        double f = certified[r];
        tests.add(
            DynamicTest.dynamicTest(
                "SmLs0" + (3 * b + r + 1),
                () -> {
                  JsonNode variance = audit(simonLesage(base, replicates)).get("variance");
                  assertThat(digits(variance.get("mold_f").doubleValue(), f))
                      .isGreaterThanOrEqualTo(reachable - SLACK);
                  assertThat(variance.get("mold_f_df1").intValue()).isEqualTo(8);
                  assertThat(variance.get("mold_f_df2").intValue()).isEqualTo(9 * (replicates - 1));
                }));
      }
    }
    return tests.stream();
  }

  /** Method-of-moments components of the Dyestuff data: 1764.05 between batches, 2451.25 within. */
  @TestFactory
  Stream<DynamicTest> varianceComponents() {
    return Stream.of(
        DynamicTest.dynamicTest(
            "Dyestuff",
            () -> {
              Map<String, List<String>> batches = new TreeMap<>();
              batches.put("A", List.of("1545", "1440", "1440", "1520", "1580"));
              batches.put("B", List.of("1540", "1555", "1490", "1560", "1495"));
              batches.put("C", List.of("1595", "1550", "1605", "1510", "1560"));
              batches.put("D", List.of("1445", "1440", "1595", "1465", "1545"));
              batches.put("E", List.of("1595", "1630", "1515", "1635", "1625"));
              batches.put("F", List.of("1520", "1455", "1450", "1480", "1445"));
              JsonNode variance = audit(new DataSet("Dyestuff", batches)).get("variance");
              assertThat(digits(variance.get("mold").doubleValue(), 1764.05))
                  .isGreaterThanOrEqualTo(5);
              assertThat(digits(variance.get("pour").doubleValue(), 2451.25))
                  .isGreaterThanOrEqualTo(5);
              assertThat(variance.get("turn").isNull()).isTrue();
            }));
  }

  private JsonNode audit(DataSet set) throws IOException {
    Path log = folder.resolve(set.name() + ".csv");
    StringBuilder text = new StringBuilder("cast_at,mold,mass_kg\n");
    long at = 0;
    for (Map.Entry<String, List<String>> treatment : set.treatments().entrySet()) {
      for (String value : treatment.getValue()) {
        text.append(Instant.ofEpochSecond(30 * at++));
        text.append(',').append(treatment.getKey()).append(',').append(value).append('\n');
      }
    }
    Files.writeString(log, text);
    CommandLineCall call = CommandLineCall.of("audit", log, "--json", "-");
    assertThat(call.err()).isEmpty();
    assertThat(call.status()).isZero();
    JsonNode report = new ObjectMapper().readTree(call.out());
    assertThat(report.get("log").get("rows_set_aside").intValue()).isZero();
    return report.get("characteristics").get(0);
  }

  private static DataSet univariate(String name) throws IOException {
    List<String> values = new ArrayList<>();
    switch (name) {
      case "NumAcc1" -> values.addAll(List.of("10000001", "10000003", "10000002"));
      case "NumAcc2", "NumAcc3", "NumAcc4" -> {
        String base =
            name.equals("NumAcc2") ? "1" : name.equals("NumAcc3") ? "1000000" : "10000000";
        values.add(base + ".2");
        for (int i = 0; i < 1000; i++) {
          values.add(base + (i % 2 == 0 ? ".1" : ".3"));
        }
      }
      default -> {
        for (String line :
            Files.readAllLines(Path.of("shared", "reference", "strd-univariate.csv"))) {
          if (line.startsWith(name + ",")) {
            values.add(line.substring(name.length() + 1));
          }
        }
      }
    }
    return new DataSet(name, Map.of("1", values));
  }

  /**
   * The Simon–Lesage sets by their rule: centers of the treatments, then alternately 0.1 below and
   * above.
   */
  private static DataSet simonLesage(String base, int replicates) {
    Map<String, List<String>> treatments = new TreeMap<>();
    for (int t = 1; t <= 9; t++) {
      int center = t == 1 ? 4 : t % 2 == 0 ? 3 : 5;
      List<String> values = new ArrayList<>();
      for (int i = 0; i < replicates; i++) {
        int tenth = i == 0 ? center : i % 2 == 1 ? center - 1 : center + 1;
        values.add(base + "." + tenth);
      }
      treatments.put(Integer.toString(t), values);
    }
    return new DataSet("SmLs" + base.length() + "-" + replicates, treatments);
  }

  private static double digits(double value, double certified) {
    return value == certified ? 16 : -Math.log10(Math.abs(value - certified) / Math.abs(certified));
  }
}
