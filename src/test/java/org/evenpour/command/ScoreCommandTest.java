package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScoreCommandTest {
  private static final Path SAMPLE = Path.of("samples", "tordilla-week");

  @TempDir Path folder;

  private Path copy(String... names) throws IOException {
    for (String name : names) {
      Files.copy(SAMPLE.resolve(name), folder.resolve(name));
    }
    return folder;
  }

  /**
   * The sample's README lists fourteen places whose figures shift; samples/tordilla-week/truth.csv
   * has their rows.
   */
  @Test
  void scoresTheSampleAndWritesTheSameFiguresTwice() throws IOException {
    Path json = folder.resolve("score.json");
    CommandLineCall call = CommandLineCall.of("score", SAMPLE, "--json", json);

    assertThat(call.err()).isEmpty();
    assertThat(call.status()).isZero();
    JsonNode score = new ObjectMapper().readTree(json.toFile());
    JsonNode found = score.at("/all/found");
    assertThat(found.get("of").asInt()).isEqualTo(14);
    assertThat(score.at("/by_fault").size()).isEqualTo(10);
    assertThat(
            score.at("/effects/acting/covered/of").asInt()
                + score.at("/effects/acting/without_interval").asInt())
        .isEqualTo(9);
    assertThat(call.out())
        .contains("logs: 1, planted faults: 14, signals: " + score.get("signals").asInt())
        .contains("of 14")
        .contains("starved-spray");
    assertThat(call.out().lines()).allMatch(line -> line.length() <= 100);
  }

  @Test
  void aTruthAloneSuffices() throws IOException {
    CommandLineCall call = CommandLineCall.of("score", copy("casting-log.csv", "truth.csv"));

    assertThat(call.status()).isZero();
    assertThat(call.out()).contains("planted faults: 14");
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).hasSize(2);
    }
  }

  @Test
  void saysWhatIsMissingAndWhichLineIsBroken() throws IOException {
    copy("casting-log.csv");
    CommandLineCall none = CommandLineCall.of("score", folder);
    assertThat(none.status()).isEqualTo(2);
    assertThat(none.err()).contains("truth.csv: there is no such file; ").hasLineCount(1);

    Files.writeString(
        folder.resolve("truth.csv"),
        "fault,characteristic,first_turn,last_turn,direction\nslip,mass,one,9,high\n");
    CommandLineCall broken = CommandLineCall.of("score", folder);
    assertThat(broken.status()).isEqualTo(2);
    assertThat(broken.err()).contains("truth.csv:2: first_turn \"one\" is no whole number; ");

    CommandLineCall gone = CommandLineCall.of("score", folder.resolve("gone"));
    assertThat(gone.status()).isEqualTo(2);
  }

  @Test
  void simulatesItsOwnWheelsTheSameEachTime() throws IOException {
    List<CommandLineCall> calls =
        Stream.generate(
                () ->
                    CommandLineCall.of(
                        "score", "--plant", "made", "--seeds", 2, "--first-seed", 7, "--json", "-"))
            .limit(2)
            .toList();
    assertThat(calls.get(0).status()).isZero();
    assertThat(calls.get(1).out()).isEqualTo(calls.get(0).out());
    JsonNode score = new ObjectMapper().readTree(calls.get(0).out());
    assertThat(score.get("schema").asText()).isEqualTo("evenpour.score/1");
    assertThat(score.get("logs").asInt()).isEqualTo(2);
    assertThat(score.get("scored").asText()).isEqualTo("seeds 7 to 8 of the plant made");
  }

  /** Folders that were simulated give what the seeds give. */
  @Test
  void aFolderScoresLikeItsSeed() throws IOException {
    CommandLineCall.of("simulate", "--plant", "made", "--seed", 9, "--out", folder);
    JsonNode folders =
        new ObjectMapper().readTree(CommandLineCall.of("score", folder, "--json", "-").out());
    JsonNode seeds =
        new ObjectMapper()
            .readTree(
                CommandLineCall.of(
                        "score", "--plant", "made", "--seeds", 1, "--first-seed", 9, "--json", "-")
                    .out());
    assertThat(folders.get("all")).isEqualTo(seeds.get("all"));
    assertThat(folders.get("effects")).isEqualTo(seeds.get("effects"));
  }

  @Test
  void refusesWhatContradictsItself() {
    for (Object[] arguments :
        new Object[][] {
          {"score", SAMPLE, "--seeds", 3},
          {"score", "--seeds", 0},
          {"score", "--size", -2},
          {"score", "--plant", "moon"},
          {"simulate", "--plant", "made", "--out", folder, "--days", 3},
          {"simulate", "--plant", "made", "--live", folder.resolve("x.csv")}
        }) {
      CommandLineCall call = CommandLineCall.of(arguments);
      assertThat(call.status()).isEqualTo(2);
      assertThat(call.err()).startsWith("evenpour: ");
    }
  }
}
