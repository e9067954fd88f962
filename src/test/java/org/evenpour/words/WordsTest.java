package org.evenpour.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.report.Figures;
import org.evenpour.report.RunTests;
import org.evenpour.report.Sentences;
import org.junit.jupiter.api.Test;

class WordsTest {
  private final Words words = Words.english();

  private static String key(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }

  @Test
  void hasAWordForEverythingThatAReportCanName() {
    for (Direction direction : Direction.values()) {
      assertThat(words.has("mark." + key(direction))).isTrue();
      for (String name : List.of("mass", "thickness", "wedge", "mass_deviation", "other")) {
        assertThat(words.has("state." + name + "." + key(direction))).isTrue();
      }
    }
    for (Scope scope : Scope.values()) {
      assertThat(words.has("scope." + key(scope))).isTrue();
    }
    for (Evidence evidence : Evidence.values()) {
      assertThat(words.has("evidence.mark." + key(evidence))).isTrue();
    }
    RunTests.IDS.forEach(id -> assertThat(words.has("test." + id)).as(id).isTrue());
  }

  @Test
  void fillsInWithoutReadingWhatIsFilledIn() {
    assertThat(words.say("summary.wheel", "{0} it's {1}")).isEqualTo("Wheel {0} it's {1}");
  }

  @Test
  void setsThousandsApart() {
    assertThat(words.count(0)).isEqualTo("0");
    assertThat(words.count(999)).isEqualTo("999");
    assertThat(words.count(1000)).isEqualTo("1,000");
    assertThat(words.count(-1234567)).isEqualTo("−1,234,567");
  }

  @Test
  void listsAsPeopleDo() {
    assertThat(words.list(List.of("7"))).isEqualTo("7");
    assertThat(words.list(List.of("7", "8"))).isEqualTo("7 and 8");
    assertThat(words.list(List.of("7", "8", "9"))).isEqualTo("7, 8 and 9");
  }

  @Test
  void roundsWithoutANegativeZero() {
    assertThat(Digits.number(-0.04, 1)).isEqualTo("0.0");
    assertThat(Digits.number(-1.25, 1)).isEqualTo("−1.2");
    assertThat(new Figures(Unit.KG).departure(0.0, 1)).isEqualTo("0.0 kg");
    assertThat(new Figures(Unit.KG).departure(2.14, 1)).isEqualTo("+2.1 kg");
  }

  @Test
  void givesASmallDepartureEnoughDigits() {
    assertThat(new Figures(Unit.MM).decimalsOf(-1.1)).isEqualTo(1);
    assertThat(new Figures(Unit.MM).decimalsOf(0.31)).isEqualTo(2);
    assertThat(new Figures(Unit.MM).decimalsOf(0.0001)).isEqualTo(3);
    assertThat(new Figures(Unit.MM).decimalsOf(0)).isEqualTo(1);
  }

  @Test
  void neverRoundsAShareOutsideToNothing() {
    assertThat(Sentences.percent(0.0, words)).isEqualTo("0.0");
    assertThat(Sentences.percent(0.0004, words)).isEqualTo("<0.1");
    assertThat(Sentences.percent(0.0132, words)).isEqualTo("1.3");
    assertThat(Sentences.percent(0.25, words)).isEqualTo("25");
  }
}
