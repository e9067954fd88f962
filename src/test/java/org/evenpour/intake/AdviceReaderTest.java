package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.evenpour.casting.PlantAdvice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The file of advice, as {@code docs/formats.md} has it. */
class AdviceReaderTest {
  @TempDir Path folder;

  private PlantAdvice read(String text) throws Exception {
    return AdviceReader.read(Files.writeString(folder.resolve("n2.yaml.advice.yaml"), text));
  }

  private void fails(String text, String... says) {
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(IntakeException.class)
        .hasMessageContainingAll(says)
        .hasMessageContaining("n2.yaml.advice.yaml:");
  }

  @Test
  void readsTextsCautionsAndTheFlag() throws Exception {
    PlantAdvice advice =
        read(
            """
            # ours
            wash:
              look: {en: look at wash pump 2 first, es: revise primero la bomba 2}
              caution:
                en: >
                  Keep off the deck
                  while the wheel turns.
            hose_7: {wets_mold: no}
            """);
    assertThat(advice.entries())
        .isEqualTo(
            Map.of(
                "wash",
                new PlantAdvice.Entry(
                    Map.of("en", "look at wash pump 2 first", "es", "revise primero la bomba 2"),
                    Map.of("en", "Keep off the deck while the wheel turns."),
                    null),
                "hose_7",
                new PlantAdvice.Entry(Map.of(), Map.of(), false)));
  }

  @Test
  void anEmptyFileSaysNothing() throws Exception {
    assertThat(read("# nothing yet\n")).isEqualTo(PlantAdvice.NONE);
    assertThat(read("")).isEqualTo(PlantAdvice.NONE);
  }

  @Test
  void tellsTheLineAndWhatMendsIt() {
    fails("wash:\n  lok: {en: x}\n", ".yaml:2:", "lok", "did you mean look?");
    fails("wash:\n  look: {fr: x}\n", ".yaml:2:", "fr", "en, es");
    fails("wash:\n  look: x\n", ".yaml:2:", "key: value lines");
    fails("wash:\n  wets_mold: perhaps\n", ".yaml:2:", "perhaps", "yes or no");
    fails("wash: {wets_mold: no}\nwash: {}\n", ".yaml:2:", "twice");
    fails("wash: {wets_mold: no}\n---\nwash: {wets_mold: no}\n", ".yaml:3:", "twice");
    fails("wash: {look: {en: " + "x".repeat(201) + "}}\n", ".yaml:1:", "201", "200");
    fails("wash: {look: {en: ''}}\n", ".yaml:1:", "a text");
    fails("a: [\n", "no YAML");
    fails("- wash\n", "the file of advice", "key: value lines");
    StringBuilder many = new StringBuilder();
    for (int i = 0; i <= 1000; i++) {
      many.append("k").append(i).append(": {}\n");
    }
    fails(many.toString(), ".yaml:1001:", "more than 1000");
    fails("x".repeat((1 << 20) + 1), "larger than 1 MiB", "the file of advice");
  }
}
