package org.evenpour.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.evenpour.casting.PlantAdvice;
import org.junit.jupiter.api.Test;

/** The plant's texts take the place of the program's; its cautions stand beside them. */
class AdviceTest {
  private static final String DRY = "Check first that the mold is dry.";

  private static Advice advice(Map<String, PlantAdvice.Entry> entries) {
    return new Advice(new PlantAdvice(entries), Map.of());
  }

  @Test
  void aPlantsTextTakesThePlaceOfTheProgramsAndTheCautionStays() {
    Advice advice =
        advice(
            Map.of(
                "wash",
                new PlantAdvice.Entry(
                    Map.of("en", "look at wash pump 2 first"),
                    Map.of("es", "Nadie bajo la rueda."),
                    false)));
    assertThat(advice.of("wash_volume_ml", "wash"))
        .isEqualTo(DRY + " Nadie bajo la rueda. Look at wash pump 2 first.");
    assertThat(advice.look("wash", "es")).isNull();
    assertThat(advice.of("pour_rate_kg_s", "pour"))
        .isEqualTo(Advice.standard().of("pour_rate_kg_s", "pour"));
  }

  /** Whatever a plant or a profile says, nothing that the program takes for wet becomes dry. */
  @Test
  void nothingTakesTheProgramsCautionAway() throws IOException {
    Properties shipped = new Properties();
    try (var reader = Files.newBufferedReader(Path.of("shared", "advice.properties"))) {
      shipped.load(reader);
    }
    List<String> wet =
        shipped.stringPropertyNames().stream()
            .filter(key -> key.endsWith(".wets_mold") && shipped.getProperty(key).equals("yes"))
            .map(key -> key.substring(0, key.length() - ".wets_mold".length()))
            .toList();
    assertThat(wet).contains("wash", "cooling", "water", "spray", "wash_batch", "mold_temp");
    PlantAdvice.Entry dry = new PlantAdvice.Entry(Map.of("en", "look"), Map.of(), false);
    for (String key : wet) {
      Advice advice = new Advice(new PlantAdvice(Map.of(key, dry)), Map.of(key, false));
      assertThat(advice.of(key, "")).as(key).startsWith(DRY).endsWith("ook.");
      assertThat(advice.wetsMold("speed", key)).as(key).isTrue();
      assertThat(advice.wetsMold(key + "_c", "pour")).as(key).isTrue();
    }
  }

  @Test
  void everyTextOfTheProgramSaysWhetherItIsAboutAWetMold() throws IOException {
    Properties shipped = new Properties();
    try (var reader = Files.newBufferedReader(Path.of("shared", "advice.properties"))) {
      shipped.load(reader);
    }
    for (String key : shipped.stringPropertyNames()) {
      if (key.endsWith(".wets_mold")) {
        assertThat(shipped.getProperty(key)).as(key).isIn("yes", "no");
      } else if (key.endsWith(".mold_work")) {
        assertThat(shipped.getProperty(key)).as(key).isEqualTo("yes");
      } else if (!key.startsWith("caution")) {
        assertThat(shipped.getProperty(key + ".wets_mold")).as(key).isNotNull();
      }
    }
  }

  @Test
  void whatNobodyKnowsIsTakenToBeWet() {
    Advice advice = Advice.standard();
    assertThat(advice.wetsMold("hose_7", "")).isTrue();
    assertThat(advice.wetsMold("hose_7", "other")).isTrue();
    assertThat(advice.wetsMold("hose_7", "pour")).isFalse();
    assertThat(advice.wetsMold("launder_level_mm", "")).isFalse();
    assertThat(advice.wetsMold("spray_flow_l_min", "")).isTrue();
    assertThat(advice.wetsMold("mold_temp_c", "hall")).isTrue();
    Advice said = new Advice(PlantAdvice.NONE, Map.of("hose_7", false, "pour_rate_kg_s", true));
    assertThat(said.wetsMold("hose_7", "")).as("the profile says it is not").isFalse();
    assertThat(said.wetsMold("pour_rate_kg_s", "pour")).as("the profile says it is").isTrue();
    PlantAdvice.Entry entry = new PlantAdvice.Entry(Map.of(), Map.of(), false);
    assertThat(advice(Map.of("other", entry)).wetsMold("hose_7", "other")).isFalse();
  }

  @Test
  void aCautionAloneIsSaidToo() {
    PlantAdvice.Entry crane =
        new PlantAdvice.Entry(Map.of(), Map.of("en", "Keep clear of the crane"), false);
    assertThat(advice(Map.of("crane_moved", crane)).of("crane_moved", ""))
        .isEqualTo("Keep clear of the crane.");
  }

  @Test
  void aTextInOneLanguageIsToldInThatOneWhereTheProgramHasNone() {
    PlantAdvice.Entry entry =
        new PlantAdvice.Entry(Map.of("es", "revise primero la grúa"), Map.of(), false);
    assertThat(advice(Map.of("crane_moved", entry)).of("crane_moved", ""))
        .isEqualTo("revise primero la grúa");
    assertThat(advice(Map.of("pour", entry)).of("pour_rate_kg_s", "pour"))
        .isEqualTo(Advice.standard().of("pour_rate_kg_s", "pour"));
  }

  @Test
  void givesAdviceFromItsTableWithTheSafetyLineWhereWaterOrWashIsConcerned() {
    Advice advice = Advice.standard();

    assertThat(advice.of("spray_flow_l_min", "cooling"))
        .startsWith("Check first that the mold is dry. Look at its spray nozzles");
    assertThat(advice.of("pour_rate_kg_s", "pour")).isNotEmpty().doesNotContain("dry");
    assertThat(advice.of("whatever", "")).isEqualTo(DRY);
    assertThat(advice.of("whatever", "hall")).isEmpty();
  }
}
