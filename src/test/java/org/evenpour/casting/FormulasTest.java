package org.evenpour.casting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FormulasTest {

  // The beginnings that OWASP names in "CSV Injection".
  @ParameterizedTest
  @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1"})
  void whatBeginsLikeAFormulaIsDefusedAndComesBack(String text) {
    assertThat(Formulas.defused(text)).isEqualTo("'" + text);
    assertThat(Formulas.asTyped("'" + text)).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "'", "mold 7", "'7", "1=1", "''=1"})
  void otherTextStandsAsItIs(String text) {
    assertThat(Formulas.defused(text)).isEqualTo(text);
    assertThat(Formulas.asTyped(text)).isEqualTo(text);
  }

  @Test
  void oneApostropheIsTakenAway() {
    assertThat(Formulas.asTyped(Formulas.defused("-'-x"))).isEqualTo("-'-x");
  }
}
