package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Limits of a base of any length, from one side or two, whether these alternate by pour or by turn:
 * either limits that can be written and read again, or a sentence that says what the base lacks.
 *
 * <p>{@code -Devenpour.bases=N} tries N bases of random lengths, {@code -Devenpour.seed=S} others.
 */
@Tag("slow")
class ShortBasesTest {
  private static final Path SAMPLE = Path.of("samples", "tordilla-week");
  private static final int BASES = Integer.getInteger("evenpour.bases", 3);
  private static final long SEED = Long.getLong("evenpour.seed", 14);

  @TempDir Path folder;

  private CommandLineCall limits(String what, Path log, Object... more) throws IOException {
    Path profile = folder.resolve("p.yaml");
    Files.writeString(profile, Files.readString(SAMPLE.resolve("profile.yaml")));
    List<Object> typed = new ArrayList<>(List.of("limits", what, log, "--profile", profile));
    typed.addAll(List.of(more));
    return CommandLineCall.of(typed.toArray());
  }

  private Path log(int from, int rows, boolean byTurn) throws IOException {
    List<String> lines = Files.readAllLines(SAMPLE.resolve("casting-log.csv"));
    List<String> headings = List.of(lines.get(0).split(",", -1));
    int turn = headings.indexOf("turn");
    int ladle = headings.indexOf("ladle");
    StringBuilder text = new StringBuilder(lines.get(0)).append('\n');
    for (String line : lines.subList(from, from + rows)) {
      String[] cells = line.split(",", -1);
      if (byTurn) {
        cells[ladle] = Integer.parseInt(cells[turn]) % 2 == 0 ? "A" : "B";
      }
      text.append(String.join(",", cells)).append('\n');
    }
    return Files.writeString(folder.resolve("log.csv"), text);
  }

  private void tryBase(int from, int rows, boolean byTurn) throws IOException {
    Path log = log(from, rows, byTurn);
    Path file = folder.resolve("p.yaml.limits.jsonl");
    Files.deleteIfExists(file);
    String base = "rows " + from + " to " + (from + rows) + (byTurn ? ", sides by turn" : "");
    CommandLineCall proposed = limits("propose", log);
    CommandLineCall approved = limits("approve", log, "--who", "Ana", "--why", "sound");
    assertThat(approved.status()).as(base).isEqualTo(proposed.status());
    assertThat(approved.out() + approved.err() + proposed.out() + proposed.err())
        .as(base)
        .doesNotContain("NaN", "Infinity", "internal error");
    if (approved.status() == 0) {
      assertThat(CommandLineCall.of("limits", "list", "--limits", file).out())
          .as(base)
          .contains("version 1");
    } else {
      assertThat(file).as(base).doesNotExist();
      assertThat(approved.err()).as(base).contains("nothing was approved", "this base gives no");
      assertThat(proposed.err().replace("nothing can be proposed", "nothing was approved"))
          .as(base)
          .isEqualTo(approved.err());
    }
  }

  /** The lengths of which limits were not numbers. */
  @ParameterizedTest
  @ValueSource(ints = {249, 400, 500})
  void givesLimitsOfTheFirstRowsOfTheSample(int rows) throws IOException {
    tryBase(1, rows, false);
  }

  @ParameterizedTest
  @ValueSource(ints = {249, 600})
  void givesLimitsWhereSidesAlternateByTurn(int rows) throws IOException {
    tryBase(1, rows, true);
  }

  @Test
  void givesLimitsOfTheFirstDay() throws IOException {
    CommandLineCall call =
        limits(
            "approve",
            SAMPLE.resolve("casting-log.csv"),
            "--to",
            "2026-03-03",
            "--who",
            "Ana",
            "--why",
            "first day");
    assertThat(call.status()).isZero();
    assertThat(call.out()).contains("mass: version 1").doesNotContain("NaN");
  }

  @Test
  void saysHowMuchLongerABaseMustBe() throws IOException {
    CommandLineCall call = limits("approve", log(1, 120, false), "--who", "Ana", "--why", "short");
    assertThat(call.status()).isEqualTo(2);
    assertThat(call.err().lines())
        .hasSize(3)
        .allMatch(
            line -> line.matches(".*and 8 are needed\\); take a base that is \\d turns? longer"));
    assertThat(folder.resolve("p.yaml.limits.jsonl")).doesNotExist();
  }

  @Test
  void givesLimitsOrASentenceOfEveryBase() throws IOException {
    Random random = new Random(SEED);
    for (int i = 0; i < BASES; i++) {
      int rows = 1 + random.nextInt(random.nextBoolean() ? 400 : 1500);
      tryBase(1 + random.nextInt(4000), rows, random.nextInt(3) == 0);
    }
    System.out.println(BASES + " bases from seed " + SEED);
  }
}
