package org.evenpour.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Sample;
import org.evenpour.findings.AuditReport;
import org.evenpour.report.json.JsonReport;
import org.junit.jupiter.api.Test;

/**
 * The sample's report, word for word and figure for figure. On a difference the report is written
 * beside the expected one, with {@code .actual}; look at it, and copy it over where the change is
 * meant.
 */
class GoldenReportTest {
  private static final Path GOLDEN = Path.of("src", "test", "resources", "golden");

  /** Figures may differ in their last digits between processors, whose logarithms do. */
  private static final double RELATIVE = 1e-9;

  @Test
  void theSamplesJsonIsAsExpected() throws Exception {
    AuditReport report = Audit.run(Sample.read(Sample.TORDILLA));
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    JsonReport.write(report, bytes);
    Path expected = GOLDEN.resolve("tordilla-week.json");
    ObjectMapper mapper = new ObjectMapper();

    List<String> differences = new ArrayList<>();
    compare(
        "",
        mapper.readTree(Files.readAllBytes(expected)),
        mapper.readTree(bytes.toByteArray()),
        differences);

    if (!differences.isEmpty()) {
      Files.write(GOLDEN.resolve("tordilla-week.json.actual"), bytes.toByteArray());
    }
    assertThat(differences).isEmpty();
  }

  @Test
  void theSamplesSummaryIsAsExpected() throws Exception {
    AuditReport report = Audit.run(Sample.read(Sample.TORDILLA));
    String summary = Summary.text(report, ZoneId.of("-03:00"));
    Path expected = GOLDEN.resolve("tordilla-week.txt");

    if (!Files.readString(expected, StandardCharsets.UTF_8).equals(summary)) {
      Files.writeString(GOLDEN.resolve("tordilla-week.txt.actual"), summary);
    }
    assertThat(summary).isEqualTo(Files.readString(expected, StandardCharsets.UTF_8));
  }

  private static void compare(
      String path, JsonNode expected, JsonNode actual, List<String> differences) {
    if (differences.size() >= 20) {
      return;
    }
    if (expected.isNumber() && actual.isNumber()) {
      double e = expected.doubleValue();
      double a = actual.doubleValue();
      if (Math.abs(e - a) > RELATIVE * Math.max(Math.abs(e), 1e-6)) {
        differences.add(path + ": expected " + e + " but was " + a);
      }
    } else if (expected.isObject() && actual.isObject()) {
      Iterator<String> names = expected.fieldNames();
      while (names.hasNext()) {
        String name = names.next();
        if (actual.has(name)) {
          compare(path + "/" + name, expected.get(name), actual.get(name), differences);
        } else {
          differences.add(path + "/" + name + " is missing");
        }
      }
      actual
          .fieldNames()
          .forEachRemaining(
              name -> {
                if (!expected.has(name)) {
                  differences.add(path + "/" + name + " is new");
                }
              });
    } else if (expected.isArray() && actual.isArray() && expected.size() == actual.size()) {
      for (int i = 0; i < expected.size(); i++) {
        compare(path + "/" + i, expected.get(i), actual.get(i), differences);
      }
    } else if (!expected.equals(actual)) {
      differences.add(path + ": expected " + brief(expected) + " but was " + brief(actual));
    }
  }

  private static String brief(JsonNode node) {
    return node.isArray() ? "an array of " + node.size() : node.toString();
  }
}
