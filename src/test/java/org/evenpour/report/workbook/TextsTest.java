package org.evenpour.report.workbook;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class TextsTest {
  @Test
  void keepsWhatXmlCanHold() {
    assertThat(Texts.cell("a\tb\nc é 😀")).isEqualTo("a\tb\nc é 😀");
    assertThat(Texts.cell("a\u0000\u001b\ufffe")).isEqualTo("a\ufffd\ufffd\ufffd");
    assertThat(Texts.cell("a\r\nb\rc")).isEqualTo("a\nb\nc");
  }

  /** ECMA-376 part 1, 22.9.2.19 (ST_Xstring): _x005F_ stands for an underscore. */
  @Test
  void keepsTextThatLooksLikeAnEscape() {
    assertThat(Texts.cell("_x0041_")).isEqualTo("_x005F_x0041_");
    assertThat(Texts.cell("wash_x1")).isEqualTo("wash_x1");
  }

  @Test
  void cutsWhatIsTooLongWithoutBreakingACharacter() {
    assertThat(Texts.cell("x".repeat(32_767))).hasSize(32_767).endsWith("x");
    assertThat(Texts.cell("x".repeat(32_768))).hasSize(32_767).endsWith("x…");
    String cut = Texts.cell("x".repeat(32_765) + "😀😀");
    assertThat(cut).endsWith("x…").hasSize(32_766);
  }

  @Test
  void takesOnlyPlainNumbersForNumbers() {
    assertThat(Texts.isNumber("17")).isTrue();
    assertThat(Texts.isNumber("0")).isTrue();
    for (String label : new String[] {"007", "-2", "1e5", "12a", "", "٣", "12345678901"}) {
      assertThat(Texts.isNumber(label)).as(label).isFalse();
    }
  }

  @Test
  void countsTheLinesThatATextTakes() {
    assertThat(Printer.linesOf("", 10)).isEqualTo(1);
    assertThat(Printer.linesOf("one two three", 7)).isEqualTo(2);
    assertThat(Printer.linesOf("one\ntwo", 7)).isEqualTo(2);
    assertThat(Printer.linesOf("x".repeat(21), 7)).isEqualTo(3);
  }

  @Test
  void scalesAnAxisToRoundNumbers() {
    assertThat(Scale.over(385.2, 391.7)).isEqualTo(new Scale(384, 392, 2));
    assertThat(Scale.over(0.7, 1.71).format()).isEqualTo("0.0");
    assertThat(Scale.over(5, 5).to()).isGreaterThan(5);
    assertThat(Scale.over(5, 5).from()).isLessThanOrEqualTo(5);
  }
}
