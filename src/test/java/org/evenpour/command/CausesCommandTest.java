package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.audit.Sample;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Causes of the sample's signals, as typed. */
class CausesCommandTest {
  @TempDir Path folder;
  private Path log;
  private Path profile;
  private Path events;
  private Path file;

  @BeforeEach
  void copiesTheSample() throws IOException {
    log = Files.copy(Sample.TORDILLA.resolve("casting-log.csv"), folder.resolve("log.csv"));
    profile = Files.copy(Sample.TORDILLA.resolve("profile.yaml"), folder.resolve("n.yaml"));
    events = Files.copy(Sample.TORDILLA.resolve("events.csv"), folder.resolve("events.csv"));
    file = folder.resolve("n.yaml.causes.jsonl");
  }

  private CommandLineCall call(List<String> command, Object... more) {
    List<Object> typed = new ArrayList<>(command);
    typed.addAll(List.of(log, "--profile", profile, "--events", events));
    typed.addAll(List.of(more));
    return CommandLineCall.of(typed.toArray());
  }

  private CommandLineCall mark(Object... more) {
    List<Object> typed = new ArrayList<>(List.of(more));
    typed.addAll(List.of("--who", "Ana", "--why", "saw the strainer"));
    return call(List.of("causes", "mark"), typed.toArray());
  }

  /** The mold's last. */
  private JsonNode signal(JsonNode report, String mold, String characteristic) {
    JsonNode last = null;
    for (JsonNode one : report.get("signals")) {
      if (mold.equals(one.get("mold").asText())
          && characteristic.equals(one.get("characteristic").asText())) {
        last = one;
      }
    }
    if (last == null) {
      throw new AssertionError("no signal of mold " + mold);
    }
    return last;
  }

  private static JsonNode link(JsonNode signal, String setting) {
    for (JsonNode one : signal.get("links")) {
      if (one.has("setting") && setting.equals(one.get("setting").asText())) {
        return one;
      }
    }
    throw new AssertionError("no link " + setting);
  }

  private JsonNode audit(Object... more) throws IOException {
    List<Object> typed = new ArrayList<>(List.of(more));
    typed.addAll(List.of("--json", "-"));
    return new ObjectMapper().readTree(call(List.of("audit"), typed.toArray()).out());
  }

  @Test
  void aMarkedCauseStandsInEveryLaterAudit() throws IOException {
    String before = call(List.of("audit"), "--json", "-").out();
    String summary = call(List.of("audit")).out();
    assertThat(before).doesNotContain("\"mark\"", "\"causes\"", "other_causes");
    assertThat(summary).doesNotContain("Causes:");
    JsonNode thin = signal(audit(), "1", "thickness");
    String id = thin.get("id").asText();
    assertThat(link(thin, "spray_flow_l_min").get("evidence").asText()).isEqualTo("strong");

    CommandLineCall marked = mark("--signal", id, "--setting", "spray_flow_l_min", "--right");
    assertThat(marked.err()).isEmpty();
    assertThat(marked.status()).isZero();
    assertThat(marked.out())
        .contains(id + "  Mold 1 ran thick", "marked right by Ana: saw the strainer")
        .contains("written to " + file);
    assertThat(mark("--signal", id, "--other", "scale drifted", "--wrong").status()).isZero();
    assertThat(Files.readAllLines(file)).hasSize(2);

    // The whole log, and a part of it in which ids are others.
    JsonNode whole = signal(audit(), "1", "thickness");
    JsonNode part = signal(audit("--from", "2026-03-04"), "1", "thickness");
    assertThat(part.get("id").asText()).isNotEqualTo(id);
    for (JsonNode signal : List.of(whole, part)) {
      JsonNode its = link(signal, "spray_flow_l_min").get("mark");
      assertThat(its.get("verdict").asText()).isEqualTo("right");
      assertThat(its.get("who").asText()).isEqualTo("Ana");
      assertThat(its.get("why").asText()).isEqualTo("saw the strainer");
      assertThat(its.get("at").asText()).endsWith("Z");
      assertThat(signal.get("other_causes").get(0).get("cause").asText())
          .isEqualTo("scale drifted");
    }
    JsonNode causes = audit().get("causes");
    assertThat(causes.get("signals_confirmed").asInt()).isEqualTo(1);
    assertThat(causes.get("counted")).hasSize(2);
    assertThat(causes.get("counted").get(0).get("cumulative_share").asDouble()).isEqualTo(1);
    assertThat(call(List.of("audit")).out())
        .contains("\nCauses: 1 of ", "most often spray flow (1).\n");

    assertThat(CommandLineCall.of("causes", "list", "--profile", profile).out())
        .contains("Ana marked right: spray_flow_l_min (setting)", "mold 1, thickness high")
        .contains("Ana marked wrong: \"scale drifted\"");
    assertThat(call(List.of("causes", "signals")).out())
        .contains("spray_flow_l_min (setting)  ●● strong  marked right by Ana: saw the strainer");

    mark("--signal", id, "--setting", "spray_flow_l_min", "--take-back");
    mark("--signal", id, "--other", "Scale drifted", "--take-back");
    assertThat(call(List.of("audit")).out()).isEqualTo(summary);
    assertThat(Files.readAllLines(file)).hasSize(4);
    assertThat(CommandLineCall.of("causes", "list", "--profile", profile).out())
        .contains("Ana took back the mark on: spray_flow_l_min", "(replaced later)");
  }

  @Test
  void everyMistakeSaysWhatWouldMendIt() throws IOException {
    assertThat(mark("--signal", "S99", "--setting", "spray_flow_l_min", "--right").err())
        .contains("there is no signal S99 in this audit, which has S1 to S", "causes signals");
    assertThat(mark("--signal", "S1", "--setting", "wash", "--right").err())
        .contains("'wash' is no setting of this log; use ", "spray_flow_l_min", "--other");
    assertThat(mark("--signal", "S1", "--event", "earthquake", "--right").err())
        .contains("'earthquake' is no event of this log; use ", "mold_changed");
    assertThat(mark("--signal", "S1", "--other", " \t", "--right").err())
        .contains("--other is empty; say it in words");
    assertThat(mark("--signal", "S1", "--other", "x").err())
        .contains("(--right | --wrong | --take-back)");
    assertThat(mark("--signal", "S1", "--other", "x", "--right", "--wrong").err())
        .startsWith("evenpour: --right, --wrong are mutually exclusive");
    assertThat(mark("--signal", "S1", "--right").err()).contains("--setting", "--event", "--other");
    assertThat(mark("--signal", "S1", "--other", "x", "--take-back").err())
        .contains("\"x\" is not marked for S1; nothing was done");
    assertThat(
            call(
                    List.of("causes", "mark"),
                    "--signal",
                    "S1",
                    "--other",
                    "x",
                    "--right",
                    "--who",
                    "A")
                .err())
        .contains("--why");
    assertThat(CommandLineCall.of("causes").err()).contains("say what: signals, mark or list");
    assertThat(CommandLineCall.of("causes", "list").err()).contains("--causes F, --profile F");
    Path missing = folder.resolve("none.jsonl");
    assertThat(call(List.of("audit"), "--causes", missing).err())
        .contains(missing + ": there is no such file");
    assertThat(CommandLineCall.of("causes", "list", "--causes", missing).status()).isEqualTo(2);
    assertThat(file).doesNotExist();
  }

  @Test
  void aDamagedFileIsAnErrorAndACutOffLineAWarning() throws IOException {
    mark("--signal", "S1", "--other", "worn", "--right");
    String whole = Files.readString(file);
    Files.writeString(file, whole + whole.substring(0, 40));
    CommandLineCall warned = call(List.of("audit"));
    assertThat(warned.status()).isZero();
    assertThat(warned.err()).contains(file + ":2: the last line was cut off");

    Files.writeString(file, whole.replace("worn", "born"));
    CommandLineCall audit = call(List.of("audit"));
    assertThat(audit.status()).isEqualTo(2);
    assertThat(audit.err()).contains(file + ":1: this line is damaged", "; put back a copy");
    assertThat(mark("--signal", "S1", "--other", "x", "--right").status()).isEqualTo(2);
    assertThat(Files.readString(file)).isEqualTo(whole.replace("worn", "born"));
  }
}
