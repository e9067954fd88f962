package org.evenpour;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * What documents say of each other and of the sample, against the files and the sample's report.
 */
class DocumentsTest {
  private static final Path ROOT = Path.of("");
  private static final Path GOLDEN = Path.of("src", "test", "resources", "golden");
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)\\)");
  private static final Pattern HEADING = Pattern.compile("^#+ +(.*)$", Pattern.MULTILINE);
  private static final Pattern CODE = Pattern.compile("(?s)```.*?```|(?m)^    .*$|`[^`\n]*`");

  private static List<Path> documents() throws IOException {
    List<Path> documents = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md")));
    for (String folder : List.of("docs", "samples", "shared")) {
      try (Stream<Path> files = Files.walk(Path.of(folder))) {
        files.filter(file -> file.toString().endsWith(".md")).forEach(documents::add);
      }
    }
    return documents;
  }

  @TestFactory
  Stream<DynamicTest> everyLinkLeadsSomewhere() throws IOException {
    return documents().stream()
        .map(document -> DynamicTest.dynamicTest(document.toString(), () -> followLinks(document)));
  }

  private static void followLinks(Path document) throws IOException {
    String text = CODE.matcher(Files.readString(document)).replaceAll("");
    Matcher links = LINK.matcher(text);
    while (links.find()) {
      String link = links.group(1);
      if (link.startsWith("http")) {
        continue;
      }
      int anchor = link.indexOf('#');
      String file = anchor < 0 ? link : link.substring(0, anchor);
      Path to = file.isEmpty() ? document : ROOT.resolve(document).resolveSibling(file).normalize();
      assertThat(to).as(link).exists();
      if (anchor >= 0) {
        assertThat(anchors(to)).as(link).contains(link.substring(anchor + 1));
      }
    }
  }

  /** As the places that host such documents make them of headings: common practice, no source. */
  private static List<String> anchors(Path document) throws IOException {
    List<String> anchors = new ArrayList<>();
    Matcher headings = HEADING.matcher(Files.readString(document));
    while (headings.find()) {
      anchors.add(
          headings
              .group(1)
              .toLowerCase(Locale.ROOT)
              .replaceAll("[^\\p{L}\\p{N} _-]", "")
              .replace(' ', '-'));
    }
    return anchors;
  }

  @Test
  void theReadmeShowsTheSamplesSummaryWordForWord() throws IOException {
    String shown = Files.readString(Path.of("README.md"));
    assertThat(shown).contains(Files.readString(GOLDEN.resolve("tordilla-week.txt")).strip());
  }

  /**
   * Figures that documents quote from the sample, as {@code quoted-figures.csv} lists them: the
   * words about each, where it stands in the JSON report ({@code #} counts a list), its decimals.
   */
  @TestFactory
  Stream<DynamicTest> figuresQuotedFromTheSampleAreItsReports() throws IOException {
    JsonNode report =
        new ObjectMapper().readTree(Files.readAllBytes(GOLDEN.resolve("tordilla-week.json")));
    try (CSVParser parser =
        CSVParser.parse(
            Files.readString(Path.of("src", "test", "resources", "quoted-figures.csv")),
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get())) {
      return parser.getRecords().stream()
          .map(quoted -> DynamicTest.dynamicTest(quoted.get("phrase"), () -> check(quoted, report)))
          .toList()
          .stream();
    }
  }

  private static void check(CSVRecord quoted, JsonNode report) throws IOException {
    String pointer = quoted.get("pointer");
    boolean isCount = pointer.endsWith("#");
    JsonNode node = report.at(isCount ? pointer.substring(0, pointer.length() - 1) : pointer);
    assertThat(node.isMissingNode()).as(pointer).isFalse();
    BigDecimal value = isCount ? BigDecimal.valueOf(node.size()) : node.decimalValue().abs();
    String figure =
        value.setScale(Integer.parseInt(quoted.get("decimals")), RoundingMode.HALF_EVEN).toString();
    String text =
        Files.readString(Path.of(requireNonNull(quoted.get("document")))).replaceAll("\\s+", " ");
    assertThat(text).contains(quoted.get("phrase").replace("{}", figure));
  }
}
