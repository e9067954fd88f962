package org.evenpour.report;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.BeyondSettings;
import org.evenpour.findings.SettingsWatched;
import org.evenpour.findings.SettingsWatched.Gap;
import org.evenpour.findings.SettingsWatched.Move;
import org.evenpour.findings.SettingsWatched.Reason;
import org.evenpour.findings.SettingsWatched.Watched;
import org.evenpour.report.json.JsonReport;
import org.evenpour.words.Words;
import org.junit.jupiter.api.Test;

class SettingSentencesTest {
  private static final String ADVICE =
      "Check first that the mold is dry. Look at its spray nozzles and the water strainer.";

  private static Move move(
      String setting,
      String unit,
      String group,
      List<String> molds,
      double by,
      boolean open,
      List<String> signals,
      String lookFirst) {
    return new Move(
        "N2",
        setting,
        unit,
        group,
        molds.isEmpty() ? Scope.WHEEL : Scope.MOLD,
        molds,
        null,
        by > 0 ? Direction.HIGH : Direction.LOW,
        184,
        open ? 229 : 201,
        182,
        Instant.parse("2024-05-13T22:10:00Z"),
        Instant.parse("2024-05-14T03:00:00Z"),
        open,
        by,
        by,
        by,
        -8,
        signals,
        lookFirst);
  }

  private static Move spray(boolean open, List<String> signals) {
    return move(
        "spray_flow_l_min",
        "L/min",
        "cooling",
        List.of("13", "14", "15", "16"),
        -25,
        open,
        signals,
        ADVICE);
  }

  private static AuditReport with(Move... moves) {
    return Reports.plant()
        .withWatched(
            new SettingsWatched(
                List.of(
                    new Watched(
                        "N2",
                        "wash_volume_ml",
                        List.of(Scope.MOLD),
                        List.of(new Gap(Scope.WHEEL, Reason.WANDERS)),
                        1)),
                List.of(moves),
                BeyondSettings.NONE));
  }

  private static SettingSentences english(AuditReport report) {
    return new SettingSentences(Sentences.of(report, Words.english(), ZoneOffset.UTC));
  }

  @Test
  void saysWhatMovedWhereAndSinceWhen() {
    AuditReport report = with(spray(true, List.of()));
    assertThat(english(report).sentence(report.watched().moves().get(0)))
        .isEqualTo(
            "Spray flow of molds 13 to 16 fell by 25 L/min at turn 182 (Mon 13 May 22:10); their"
                + " anodes do not show it yet. Check first that the mold is dry. Look at its spray"
                + " nozzles and the water strainer.");
  }

  @Test
  void warnsOfWaterWhateverTheAdvice() {
    Move unadvised = move("water_bar", "bar", "", List.of("3"), 0.5, true, List.of(), "");
    AuditReport report = with(unadvised);
    assertThat(english(report).sentence(unadvised))
        .contains("of mold 3 rose by 0.50 bar")
        .contains("its anodes do not show it yet")
        .endsWith("Check first that the mold is dry.");
    assertThat(english(report).told(spray(true, List.of("S1", "S2"))))
        .startsWith("Check first that the mold is dry. Spray flow")
        .endsWith("told with S1 and S2.")
        .doesNotContain("do not show");
    assertThat(english(report).brief(spray(false, List.of())))
        .startsWith("Check first that the mold is dry. Spray flow")
        .contains("stood 25 L/min lower from turn 182");
  }

  @Test
  void speaksSpanish() {
    Words spanish =
        new Words(
            ResourceBundle.getBundle("org.evenpour.report.words", Locale.forLanguageTag("es")));
    AuditReport report = with(spray(true, List.of()));
    assertThat(
            new SettingSentences(Sentences.of(report, spanish, ZoneOffset.UTC))
                .brief(spray(true, List.of())))
        .contains("moldes 13 a 16: bajó 25 L/min en la vuelta 182")
        .startsWith("Compruebe primero que el molde esté seco.");
  }

  @Test
  void theSummaryTellsOnlyWhatStillHoldsAndNoSignalTells() {
    AuditReport report =
        with(
            spray(true, List.of()),
            move("melt_c", "°C", "melt", List.of(), 9, false, List.of(), ""),
            move("tilt_mm", "mm", "pour", List.of("2"), 9, true, List.of("S1"), ""));
    String summary = Summary.text(report, ZoneOffset.UTC);
    assertThat(summary)
        .contains("Spray flow of molds 13 to 16 fell by 25 L/min at turn 182")
        .contains("Evenpour advises and never controls")
        .doesNotContain("Melt")
        .doesNotContain("Tilt");
    assertThat(summary.lines().count()).isLessThanOrEqualTo(Summary.LINES);
    assertThat(summary.lines().mapToInt(String::length).max().orElseThrow())
        .isLessThanOrEqualTo(Summary.COLUMNS);
  }

  @Test
  void theJsonReportHasEveryMoveAndWhyASettingIsNotWatched() throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    JsonReport.write(with(spray(false, List.of("S1"))), bytes);
    JsonNode json = new ObjectMapper().readTree(bytes.toString(UTF_8));
    JsonNode move = json.get("setting_moves").get(0);
    assertThat(move.get("setting").asText()).isEqualTo("spray_flow_l_min");
    assertThat(move.get("molds").size()).isEqualTo(4);
    assertThat(move.get("open").asBoolean()).isFalse();
    assertThat(move.get("moved_by").asDouble()).isEqualTo(-25);
    assertThat(move.get("signals").get(0).asText()).isEqualTo("S1");
    JsonNode setting = json.get("settings").get(0);
    assertThat(setting.get("watched").get(0).asText()).isEqualTo("mold");
    assertThat(setting.get("not_watched").get(0).get("scope").asText()).isEqualTo("wheel");
    assertThat(setting.get("not_watched").get(0).get("reason").asText()).isEqualTo("wanders");
  }
}
