package org.evenpour.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class RemarkTest {
  private static final Locale SPANISH = Locale.forLanguageTag("es");
  private static final Path WORDINGS = Path.of("src/main/resources/org/evenpour/words");
  private static final Pattern BLANK = Pattern.compile("\\{\\d}");

  /** Keys are whole texts in the sources; those of a family are made of a beginning. */
  private static final Pattern TEXT = Pattern.compile("\"([a-z][a-z0-9.]*)\"");

  private static final List<String> FAMILIES =
      List.of(
          "gauge.",
          "gauge.parts",
          "gauge.operators",
          "gauge.times",
          "limits.",
          "name.",
          "profile.want.");

  private static Properties wordings(String file) throws IOException {
    Properties all = new Properties();
    try (var reader = Files.newBufferedReader(WORDINGS.resolve(file))) {
      all.load(reader);
    }
    return all;
  }

  private static List<String> blanks(String wording) {
    return BLANK
        .matcher(wording)
        .results()
        .map(found -> found.group())
        .distinct()
        .sorted()
        .toList();
  }

  @Test
  void everyLanguageHasTheSameWordingsWithTheSameBlanks() throws IOException {
    Properties english = wordings("remarks.properties");
    Properties spanish = wordings("remarks_es.properties");
    assertThat(spanish.stringPropertyNames()).isEqualTo(english.stringPropertyNames());
    for (String key : new TreeSet<>(english.stringPropertyNames())) {
      assertThat(blanks(spanish.getProperty(key)))
          .as(key)
          .isEqualTo(blanks(english.getProperty(key)));
    }
  }

  @Test
  void everyWordingIsSaidSomewhere() throws IOException {
    Set<String> said = new TreeSet<>();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/org/evenpour"))) {
      for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
        Matcher text = TEXT.matcher(Files.readString(file));
        while (text.find()) {
          said.add(text.group(1));
        }
      }
    }
    assertThat(wordings("remarks.properties").stringPropertyNames())
        .allMatch(
            key ->
                said.contains(key) || FAMILIES.stream().anyMatch(family -> key.startsWith(family)));
  }

  @Test
  void everyRemarkThatIsMadeHasAWordingWithAsManyBlanks() throws IOException {
    Pattern made = Pattern.compile("Remark\\.of\\(\\s*\"([a-z0-9.]+)\"\\s*([,)])");
    Properties english = wordings("remarks.properties");
    TreeMap<String, Boolean> remarks = new TreeMap<>();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/org/evenpour"))) {
      for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
        Matcher one = made.matcher(Files.readString(file));
        while (one.find()) {
          remarks.put(one.group(1), one.group(2).equals(","));
        }
      }
    }
    assertThat(remarks.size()).isGreaterThan(50);
    remarks.forEach(
        (key, hasValues) -> {
          if (!key.endsWith(".")) {
            assertThat(english.getProperty(key)).as(key).isNotNull();
            assertThat(blanks(english.getProperty(key)).isEmpty()).as(key).isNotEqualTo(hasValues);
          }
        });
  }

  @Test
  void aRemarkWithinARemarkIsSaidInTheSameLanguage() {
    Remark remark =
        Remark.of(
            "at.line", "junio.csv", 7, Remark.of("log.none", Remark.of("row.missing", "{0}")));
    assertThat(remark.in(SPANISH))
        .isEqualTo(
            "junio.csv:7: ninguna fila de este registro se puede usar, la primera por esto: falta"
                + " {0}; corrija eso y exporte de nuevo el registro");
    assertThat(remark)
        .hasToString(
            "junio.csv:7: no row of this log can be used, this first one because {0} is missing;"
                + " correct that and export the log again");
  }

  /** An eleventh blank is one too; a brace that holds no number stands as it is. */
  @Test
  void fillsInMoreThanTenBlanks() {
    Object[] values = {"a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "{0}"};
    assertThat(Remark.filled("{10} of {1} in {9}, {x} {} {1", values))
        .isEqualTo("{0} of b in j, {x} {} {1");
  }

  @Test
  void aLanguageThatIsNotKnownIsEnglishWhateverTheMachineSpeaks() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(SPANISH);
      assertThat(Remark.of("row.missing", "mass_kg").in(Locale.GERMAN))
          .isEqualTo("mass_kg is missing");
      assertThat(Remark.of("row.missing", "mass_kg").in(Locale.ROOT))
          .isEqualTo("mass_kg is missing");
    } finally {
      Locale.setDefault(before);
    }
  }
}
