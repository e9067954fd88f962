package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LanguageTest {
  private static final Pattern SAID = Pattern.compile("\\bsay\\(\\s*\"([a-z_.]+)\"");

  private static Set<String> placeholders(String text) {
    Matcher matcher = Pattern.compile("\\{\\d}").matcher(text);
    Set<String> found = new TreeSet<>();
    while (matcher.find()) {
      found.add(matcher.group());
    }
    return found;
  }

  @Test
  void everyLanguageSaysEverythingWithTheSameBlanks() {
    var english = Language.of("en").screen().bundle();
    for (String tag : Language.TAGS) {
      var other = Language.of(tag).screen().bundle();
      for (String key : english.keySet()) {
        assertThat(other.containsKey(key)).as(key).isTrue();
        assertThat(placeholders(other.getString(key)))
            .as(tag + " " + key)
            .isEqualTo(placeholders(english.getString(key)));
      }
      assertThat(other.getString("language")).isEqualTo(tag);
    }
  }

  @Test
  void sentencesHaveTheSameBlanksInEveryLanguage() {
    var english = Language.of("en").report().bundle();
    var spanish = Language.of("es").report().bundle();
    for (String key : english.keySet()) {
      assertThat(placeholders(spanish.getString(key)))
          .as(key)
          .isEqualTo(placeholders(english.getString(key)));
    }
  }

  @Test
  void everyWordThatTheScreensSayIsThere() throws IOException {
    List<String> missing = new ArrayList<>();
    var words = Language.of("en").screen();
    var board = BoardWords.of(Language.of("en")).board();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/org/evenpour/view"))) {
      for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
        boolean isBoard = file.getFileName().toString().startsWith("Board");
        Matcher matcher = SAID.matcher(Files.readString(file));
        while (matcher.find()) {
          String key = matcher.group(1);
          boolean isThere = isBoard ? board.has(key) : words.has(key);
          if (!key.endsWith(".") && !isThere && !Language.of("en").report().has(key)) {
            missing.add(file.getFileName() + ": " + key);
          }
        }
      }
    }
    assertThat(missing).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"fr", "", "tr"})
  void anUnknownLanguageIsEnglish(String tag) {
    assertThat(Language.of(tag).tag()).isEqualTo("en");
  }

  @Test
  void columnsExplainThemselvesInOneSentence() {
    Desk desk = Sample.desk();
    var report = Objects.requireNonNull(desk.characteristic());
    Stream.of(
            Tables.moldColumns(desk, report),
            SettingRows.columns(desk, report),
            Tables.capabilityColumns(desk, "mold"))
        .flatMap(List::stream)
        .filter(column -> !column.key().equals("setting"))
        .forEach(column -> assertThat(column.tip()).as(column.key()).endsWith("."));
  }

  /** Every advice that the program comes with is said in every language, with its warning. */
  @Test
  void adviceIsSaidInEveryLanguage() throws IOException {
    Properties advice = new Properties();
    try (var reader = Files.newBufferedReader(Path.of("shared", "advice.properties"))) {
      advice.load(reader);
    }
    var spanish = Language.of("es").report();
    for (String key : advice.stringPropertyNames()) {
      if (!key.contains(".") && !key.equals("caution")) {
        assertThat(spanish.has("advice." + key)).as(key).isTrue();
      }
    }
    var sample = Sample.opened();
    Desk desk = Sample.desk(Look.of(false, Language.of("es"), DisplayUnits.METRIC, 720));
    for (var signal : sample.report().signals()) {
      for (var link : signal.links()) {
        String said = desk.sentences().advice(link);
        assertThat(said).doesNotContain("first").doesNotContain("look at");
        boolean isWarned = link.lookFirst().contains("mold is dry");
        assertThat(said.contains("molde esté seco")).as(said).isEqualTo(isWarned);
      }
    }
  }

  @Test
  void everySettingOfTheSampleHasASpanishName() {
    Desk desk = Sample.desk(Look.of(false, Language.of("es"), DisplayUnits.METRIC, 720));
    for (var setting : Sample.opened().report().settings()) {
      String name = setting.name();
      assertThat(desk.sentences().setting(name))
          .isNotEqualTo(Sample.desk().sentences().setting(name));
    }
  }
}
