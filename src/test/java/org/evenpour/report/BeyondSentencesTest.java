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
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.BeyondSettings;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.findings.BeyondSettings.Taken;
import org.evenpour.findings.BeyondSettings.View;
import org.evenpour.findings.SettingsWatched;
import org.evenpour.report.json.JsonReport;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class BeyondSentencesTest {
  private static final Instant SINCE = Instant.parse("2024-05-13T22:10:00Z");

  private static Departure departure(
      String characteristic,
      double size,
      boolean open,
      List<String> signals,
      @Nullable String toldWith) {
    return new Departure(
        "N2",
        characteristic,
        List.of("launder_level_mm"),
        size > 0 ? Direction.HIGH : Direction.LOW,
        188,
        230,
        182,
        SINCE,
        SINCE.plusSeconds(36_000),
        open,
        size,
        size - 0.25,
        size + 0.25,
        1.8,
        signals,
        signals.isEmpty(),
        toldWith);
  }

  private static View view(Departure... departures) {
    return new View(
        "N2",
        departures[0].characteristic(),
        List.of(new Taken("launder_level_mm", 0.25, 0.01, 200)),
        1,
        210,
        0.66,
        0.3,
        2.1,
        List.of(departures));
  }

  private static AuditReport with(AuditReport report, View... views) {
    return report.withWatched(
        new SettingsWatched(List.of(), List.of(), new BeyondSettings(List.of(views))));
  }

  private static BeyondSentences said(AuditReport report, Words words) {
    return new BeyondSentences(report, Sentences.of(report, words, ZoneOffset.UTC));
  }

  @Test
  void saysWhatStandsOffBeyondWhatTheSettingExplains() {
    Departure mass = departure("mass", 1.2, true, List.of(), null);
    AuditReport report = with(Reports.plant(), view(mass));
    assertThat(said(report, Words.english()).sentence(mass))
        .isEqualTo(
            "The whole wheel runs heavy since turn 182 (Mon 13 May 22:10): +1.2 kg (95 %: +0.9 to"
                + " +1.4) beyond what launder level explains.");
    Departure past = departure("mass", -1.2, false, List.of("S4"), null);
    assertThat(said(with(Reports.plant(), view(past)), Words.english()).told(past))
        .contains("ran light from turn 182 (Mon 13 May 22:10) to turn 230")
        .endsWith("beyond what launder level explains. Told with S4.");
  }

  @Test
  void characteristicsThatDepartTogetherAreOneSentence() {
    Departure mass = departure("mass", 1.2, true, List.of(), null);
    AuditReport report =
        with(
            Reports.plant(),
            view(mass),
            view(departure("thickness", 0.15, true, List.of(), "mass")));
    BeyondSentences said = said(report, Words.english());
    assertThat(said.holding()).containsExactly(mass);
    assertThat(said.sentence(mass))
        .contains("runs heavy and thick since turn 182")
        .contains("+1.2 kg and +0.15 mm beyond");
  }

  @Test
  void speaksSpanish() {
    Words spanish =
        new Words(
            ResourceBundle.getBundle("org.evenpour.report.words", Locale.forLanguageTag("es")));
    Departure mass = departure("mass", 1.2, true, List.of(), null);
    assertThat(said(with(Reports.plant(), view(mass)), spanish).sentence(mass))
        .startsWith("La rueda entera cuela pesado desde la vuelta 182")
        .endsWith("además de lo que explica nivel de la canaleta.");
  }

  @Test
  void theSummaryHasItAmongWhatToLookAtFirst() {
    View one = view(departure("mass", 1.2, true, List.of(), null));
    String summary = Summary.text(with(Reports.plant(), one), ZoneOffset.UTC);
    assertThat(summary)
        .containsPattern("Look first at:(?s:.*)beyond\\s+what launder level explains");
    String quiet = Summary.text(with(Reports.plant().withSignals(List.of()), one), ZoneOffset.UTC);
    assertThat(quiet)
        .containsPattern("Look first at:(?s:.*)beyond\\s+what launder level explains")
        .contains("Nothing else stands out: no signal in this log.");
    for (String text : List.of(summary, quiet)) {
      assertThat(text.lines().count()).isLessThanOrEqualTo(Summary.LINES);
      assertThat(text.lines().mapToInt(String::length).max().orElseThrow())
          .isLessThanOrEqualTo(Summary.COLUMNS);
    }
    View told = view(departure("mass", 1.2, true, List.of("S1"), null));
    assertThat(Summary.text(with(Reports.plant(), told), ZoneOffset.UTC))
        .doesNotContain("launder level explains");
  }

  @Test
  void theJsonReportHasWhatIsTakenOffAndEveryDeparture() throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    JsonReport.write(
        with(Reports.plant(), view(departure("mass", 1.2, true, List.of("S1"), null))), bytes);
    JsonNode view =
        new ObjectMapper().readTree(bytes.toString(UTF_8)).get("beyond_settings").get(0);
    assertThat(view.get("settings").get(0).get("per_unit").asDouble()).isEqualTo(0.25);
    assertThat(view.get("clearer").asDouble()).isEqualTo(2.1);
    JsonNode departure = view.get("departures").get(0);
    assertThat(departure.get("direction").asText()).isEqualTo("high");
    assertThat(departure.get("size_high").asDouble()).isEqualTo(1.45);
    assertThat(departure.get("alone").asBoolean()).isFalse();
    assertThat(departure.get("told_with").isNull()).isTrue();
    assertThat(departure.get("signals").get(0).asText()).isEqualTo("S1");
  }
}
