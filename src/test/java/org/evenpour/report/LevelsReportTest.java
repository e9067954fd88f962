package org.evenpour.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Objects;
import java.util.ResourceBundle;
import org.evenpour.audit.MadeCrews;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.EffectInFull.Level;
import org.evenpour.findings.EffectInFull.Levels;
import org.evenpour.report.json.JsonReport;
import org.evenpour.words.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the levels of a category do, in figures for programs and in words. */
class LevelsReportTest {
  @TempDir Path folder;

  private static String said(AuditReport report, Words words, String name) {
    SettingReport setting = MadeCrews.setting(report, name);
    Effect effect = setting.effects().get(0);
    return String.join(
        " ", new EffectSentences(Sentences.of(report, words, ZoneOffset.UTC)).of(setting, effect));
  }

  @Test
  void writesEachLevelAsJson() throws Exception {
    AuditReport report = MadeCrews.audit(folder, 0.12, 0.04, -0.16);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    JsonReport.write(report, bytes);
    JsonNode effect = new ObjectMapper().readTree(bytes.toByteArray()).at("/settings/0/effects/0");
    Levels levels =
        Objects.requireNonNull(
            MadeCrews.setting(report, "crew").effects().get(0).inFull().levels());
    assertThat(effect.get("known").asText()).isEqualTo("proven");
    assertThat(effect.get("per_unit").isNull()).isTrue();
    assertThat(effect.get("p_value").asDouble()).isEqualTo(levels.p());
    assertThat(effect.get("levels")).hasSize(3);
    for (int i = 0; i < 3; i++) {
      JsonNode node = effect.get("levels").get(i);
      Level level = levels.each().get(i);
      assertThat(node.get("level").asText()).isEqualTo(level.name());
      assertThat(node.get("effect").asDouble()).isEqualTo(level.effect());
      assertThat(node.get("low").asDouble()).isEqualTo(level.low());
      assertThat(node.get("high").asDouble()).isEqualTo(level.high());
      assertThat(node.get("visits").asInt()).isEqualTo(level.visits());
      assertThat(node.get("turns").asInt()).isEqualTo(level.turns());
      assertThat(node.get("compared").asBoolean()).isTrue();
    }
  }

  @Test
  void namesTheHighestFirstInEitherLanguage() throws Exception {
    AuditReport report = MadeCrews.audit(folder, 0.12, 0.04, -0.16);
    assertThat(said(report, Words.english(), "crew"))
        .startsWith(
            "From one crew to another the mass differs (by chance alone as much in <0.1 % of records). ")
        .containsPattern(
            "came back: K1 \\+0\\.\\d+ kg \\(.*; 8 visits\\); K2 .*; K3 −0\\.\\d+ kg \\(−.* to −.*;")
        .containsPattern("That makes \\d\\.\\d % of the variance\\.$");
    assertThat(
            said(
                report,
                new Words(
                    ResourceBundle.getBundle(
                        "org.evenpour.report.words", Locale.forLanguageTag("es"))),
                "crew"))
        .contains("8 visitas")
        .contains("de la varianza");
    assertThat(said(report, Words.english(), "wash_batch"))
        .isEqualTo(
            "Check first that the mold is dry. This record cannot tell what wash batch does: too few came back, early and late, to be"
                + " compared.");
  }

  @Test
  void saysThatCrewsDoNextToNothing() throws Exception {
    AuditReport report = MadeCrews.audit(folder, 0, 0, 0);
    assertThat(said(report, Words.english(), "crew"))
        .isEqualTo("Whichever crew, the mass differs by next to nothing.");
    assertThat(Summary.text(report, ZoneOffset.UTC)).doesNotContain("What goes with");
  }

  @Test
  void ofManyLevelsNamesThoseAtTheEnds() throws Exception {
    AuditReport report = MadeCrews.audit(folder, 3, 2, 1, 0, 0, -1, -2, -3);
    assertThat(said(report, Words.english(), "crew"))
        .containsPattern("K1 .*; K2 .*; K3 .*; …; K6 .*; K7 .*; K8 ")
        .doesNotContain("K4")
        .doesNotContain("K5");
  }

  @Test
  void theSummarySaysWhatActs() throws Exception {
    AuditReport report = MadeCrews.audit(folder, 0.12, 0.04, -0.16);
    assertThat(Summary.text(report, ZoneOffset.UTC))
        .containsPattern(
            "What goes with mass \\(its part of the variance\\): crew, −0\\.\\d+ to \\+0\\.\\d+ kg"
                + " \\(\\d\\.\\d\u00a0%\\)\\.\n");
  }
}
