package org.evenpour.words;

import static java.util.Map.entry;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Whatever people can read in English they can read in Spanish: the files of wordings are compared
 * as they lie in the sources, for a bundle falls back to English without a word.
 */
class SpanishTest {
  private static final Path WORDINGS = Path.of("src/main/resources/org/evenpour");
  private static final Pattern BLANK = Pattern.compile("\\{\\d+}");

  /** What people read alike in both languages: symbols, names, units and how a time is written. */
  private static final Map<String, Set<String>> ALIKE =
      Map.ofEntries(
          entry(
              "report/words",
              Set.of(
                  "time",
                  "time.year",
                  "date.year",
                  "summary.cpk",
                  "summary.ppk",
                  "tests.source",
                  "head.cp",
                  "head.cpk",
                  "head.cpk_bar",
                  "head.cpl",
                  "head.cpu",
                  "head.pp",
                  "head.ppk",
                  "head.ppk_bar",
                  "head.cpm",
                  "head.lambda",
                  "normal.no")),
          entry("view/words", Set.of("window.title", "language.en", "language.es")),
          entry(
              "view/board", Set.of("length.seconds", "length.minutes", "length.hours", "key.ctrl")),
          entry("words/remarks", Set.of()));

  /** What English takes from a name: of a setting, a group or a point, or of the chart's test. */
  private static final List<String> NAMED_ELSEWHERE =
      List.of("setting.", "advice.", "of_group.", "point.", "test.sustained-shift");

  static Stream<String> bundles() throws IOException {
    try (Stream<Path> files = Files.walk(WORDINGS)) {
      return files
          .map(file -> WORDINGS.relativize(file).toString().replace('\\', '/'))
          .filter(name -> name.endsWith(".properties") && !name.endsWith("_es.properties"))
          .map(name -> name.substring(0, name.length() - ".properties".length()))
          .sorted()
          .toList()
          .stream();
    }
  }

  private static Properties wordings(String file) throws IOException {
    Properties all = new Properties();
    try (var reader = Files.newBufferedReader(WORDINGS.resolve(file + ".properties"))) {
      all.load(reader);
    }
    return all;
  }

  private static Set<String> keys(Properties wordings) {
    return new TreeSet<>(wordings.stringPropertyNames());
  }

  private static Set<String> blanks(String wording) {
    return new TreeSet<>(BLANK.matcher(wording).results().map(MatchResult::group).toList());
  }

  private static boolean hasWords(String wording) {
    return BLANK.matcher(wording).replaceAll("").codePoints().anyMatch(Character::isLetter);
  }

  @Test
  void comparesEveryBundle() throws IOException {
    assertThat(bundles().toList()).containsExactlyInAnyOrderElementsOf(ALIKE.keySet());
  }

  @ParameterizedTest
  @MethodSource("bundles")
  void saysEverythingThatEnglishSays(String bundle) throws IOException {
    Set<String> missing = keys(wordings(bundle));
    missing.removeAll(keys(wordings(bundle + "_es")));
    assertThat(missing).as("wordings of %s without Spanish", bundle).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("bundles")
  void saysNothingThatEnglishDoesNot(String bundle) throws IOException {
    Set<String> more = keys(wordings(bundle + "_es"));
    more.removeAll(keys(wordings(bundle)));
    more.removeIf(key -> NAMED_ELSEWHERE.stream().anyMatch(key::startsWith));
    assertThat(more).as("Spanish of %s that nothing says", bundle).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("bundles")
  void fillsInTheSameBlanks(String bundle) throws IOException {
    Properties english = wordings(bundle);
    Properties spanish = wordings(bundle + "_es");
    List<String> others = new ArrayList<>();
    for (String key : keys(english)) {
      String said = spanish.getProperty(key, "");
      if (!blanks(said).equals(blanks(english.getProperty(key)))) {
        others.add(key + ": " + said);
      }
    }
    assertThat(others).as("wordings of %s with other blanks in Spanish", bundle).isEmpty();
  }

  /** A text that stands in the Spanish file in English is not translated. */
  @ParameterizedTest
  @MethodSource("bundles")
  void isNotEnglish(String bundle) throws IOException {
    Properties english = wordings(bundle);
    Properties spanish = wordings(bundle + "_es");
    Set<String> alike = keys(english);
    alike.removeIf(
        key ->
            !english.getProperty(key).equals(spanish.getProperty(key))
                || !hasWords(english.getProperty(key)));
    assertThat(alike)
        .as("wordings of %s that are English in Spanish", bundle)
        .isEqualTo(new TreeSet<>(ALIKE.getOrDefault(bundle, Set.of())));
  }

  /** Figures have a decimal point in every language, so no point and no comma parts thousands. */
  @Test
  void partsThousandsInOneWayThatIsNoDecimalSign() throws IOException {
    for (String bundle : List.of("report/words", "view/words", "view/board")) {
      assertThat(wordings(bundle + "_es").getProperty("thousands")).as(bundle).isEqualTo("\u202f");
    }
  }

  @ParameterizedTest
  @MethodSource("bundles")
  void writesDecimalsWithAPoint(String bundle) throws IOException {
    Properties spanish = wordings(bundle + "_es");
    Set<String> commas = keys(spanish);
    commas.removeIf(
        key -> !Pattern.compile("\\d,\\d{1,2}(?!\\d)").matcher(spanish.getProperty(key)).find());
    assertThat(commas).as("decimal commas in %s", bundle).isEmpty();
  }

  /** A crew is people and a shift is hours. */
  @ParameterizedTest
  @MethodSource("bundles")
  void keepsCrewAndShiftApart(String bundle) throws IOException {
    Properties english = wordings(bundle);
    Properties spanish = wordings(bundle + "_es");
    Set<String> mixed = keys(english);
    Pattern crew = Pattern.compile("\\bcrews?\\b", Pattern.CASE_INSENSITIVE);
    mixed.removeIf(
        key ->
            crew.matcher(english.getProperty(key)).find()
                == spanish.getProperty(key, "").toLowerCase(Locale.ROOT).contains("cuadrilla"));
    assertThat(mixed).as("wordings of %s that mix crew and shift up", bundle).isEmpty();
  }
}
