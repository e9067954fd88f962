package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An output is never an input, nor another output: by whatever name or link. */
class OutputsTest {
  @TempDir Path folder;
  private Path log = Path.of("");
  private Path profile = Path.of("");
  private Path events = Path.of("");

  @BeforeEach
  void aSmallLog() throws IOException {
    StringBuilder rows = new StringBuilder("cast_at,mold,mass_kg\n");
    for (int i = 0; i < 120; i++) {
      rows.append("2026-01-01T%02d:%02d:%02dZ,".formatted(i / 60, i % 60, i % 7));
      rows.append(i % 6 + 1).append(',').append(388 + (i * 7) % 5).append('\n');
    }
    rows.append("2026-01-01T03:00:00Z,1,heavy\n");
    log = Files.writeString(folder.resolve("june.csv"), rows);
    profile = Files.writeString(folder.resolve("wheel.yaml"), "molds: 6\n");
    events = Files.writeString(folder.resolve("events.csv"), "at,wheel,mold,event,note\n");
  }

  private Map<String, String> contents() throws IOException {
    Map<String, String> all = new HashMap<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        all.put(file.getFileName().toString(), Files.readString(file));
      }
    }
    return all;
  }

  private void isRefused(String what, Object... more) throws IOException {
    Map<String, String> before = contents();
    List<Object> all = new ArrayList<>(List.of("audit", log));
    all.addAll(List.of("--profile", profile, "--events", events));
    all.addAll(List.of(more));
    CommandLineCall call = CommandLineCall.of(all.toArray());
    assertThat(call.status()).as("%s", all).isEqualTo(2);
    assertThat(call.err().lines()).hasSize(1);
    assertThat(call.err()).contains(what).contains("name another file");
    assertThat(call.out()).isEmpty();
    assertThat(contents()).isEqualTo(before);
  }

  @Test
  void noOutputIsAnInput() throws IOException {
    isRefused("a casting log", "--json", log);
    isRefused("a casting log", "--workbook", log);
    isRefused("the profile", "--json", profile);
    isRefused("the events file", "--workbook", events);
    String tries = "1,a,388\n1,a,389\n1,b,388\n1,b,387\n2,a,391\n2,a,390\n2,b,391\n2,b,392\n";
    Path gauge = Files.writeString(folder.resolve("g.csv"), "part,operator,mass_kg\n" + tries);
    isRefused("a gauge file", "--gauge", gauge, "--json", gauge);
    isRefused("the file of approved limits", "--json", folder + "/wheel.yaml.limits.jsonl");
    isRefused("the file of marked causes", "--workbook", folder + "/wheel.yaml.causes.jsonl");
    isRefused("signals that were seen", "--json", log + ".seen.csv");
  }

  @Test
  void noOutputIsAnother() throws IOException {
    Path one = folder.resolve("one");
    isRefused("what --json writes", "--json", one, "--workbook", one);
    isRefused("rows set aside", "--json", log + ".set-aside.csv");
    isRefused("what --out writes", "--out", folder, "--json", folder.resolve("audit.json"));
    isRefused("what --out writes", "--out", folder, "--workbook", folder + "/./audit.xlsx");
    isRefused("rows set aside", "--out", folder, "--workbook", log + ".set-aside.csv");
  }

  /** What was set aside is looked at itself: its rows go to a file of their own. */
  @Test
  void rowsSetAsideDoNotTakeThePlaceOfALog() throws IOException {
    Path aside = folder.resolve("june.csv.set-aside.csv");
    Files.copy(log, aside);
    isRefused("a casting log", aside);
  }

  @Test
  void linksAndOtherNamesAreSeenThrough() throws IOException {
    Path link = Files.createSymbolicLink(folder.resolve("link.json"), log);
    isRefused("a casting log", "--json", link);
    Path hard = Files.createLink(folder.resolve("hard.json"), log);
    isRefused("a casting log", "--json", hard);
    isRefused("a casting log", "--json", folder.resolve("nowhere/../june.csv"));
    Path both = Files.createSymbolicLink(folder.resolve("same"), folder);
    isRefused(
        "what --json writes", "--json", both.resolve("new"), "--workbook", folder.resolve("new"));
    Files.createSymbolicLink(folder.resolve("dangling"), Path.of("new"));
    isRefused(
        "what --json writes",
        "--json",
        folder.resolve("dangling"),
        "--workbook",
        folder.resolve("new"));
  }

  @Test
  void aDeviceTakesAsManyAsThereAre() {
    CommandLineCall call =
        CommandLineCall.of("audit", log, "--json", "/dev/null", "--workbook", "/dev/null");
    assertThat(call.err()).isEmpty();
    assertThat(call.status()).isZero();
  }

  @Test
  void theScoreDoesNotTakeThePlaceOfItsTruth() throws IOException {
    Path plant = Files.createDirectory(folder.resolve("plant"));
    Files.copy(log, plant.resolve("casting-log.csv"));
    Path truth = Files.writeString(plant.resolve("truth.csv"), "");
    CommandLineCall call = CommandLineCall.of("score", plant, "--json", truth);
    assertThat(call.status()).isEqualTo(2);
    assertThat(call.err()).contains("whose truth is known");
    assertThat(Files.readString(truth)).isEmpty();
  }

  @Test
  void aSimulationWritesOverNothingUnlessItIsTold() throws IOException {
    Path out = Files.createDirectory(folder.resolve("plant"));
    Path mine = Files.writeString(out.resolve("profile.yaml"), "molds: 6\n");
    Path large = Files.writeString(out.resolve("large-log.csv"), "mine");
    for (Object[] arguments :
        new Object[][] {
          {"simulate", "--out", out, "--days", 3, "--fault", "none"},
          {"simulate", "--plant", "made", "--out", out},
          {"simulate", "--rows", 10, "--out", out}
        }) {
      CommandLineCall call = CommandLineCall.of(arguments);
      assertThat(call.status()).isEqualTo(2);
      assertThat(call.err().lines()).hasSize(1);
      assertThat(call.err()).contains("there is such a file already", "--replace");
    }
    assertThat(Files.readString(mine)).isEqualTo("molds: 6\n");
    assertThat(Files.readString(large)).isEqualTo("mine");
    assertThat(out.resolve("casting-log.csv")).doesNotExist();
    CommandLineCall call =
        CommandLineCall.of("simulate", "--out", out, "--days", 3, "--fault", "none", "--replace");
    assertThat(call.status()).isZero();
    assertThat(Files.readString(mine)).contains("characteristics");
  }
}
