package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.evenpour.audit.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AuditCommandTest {
  @TempDir Path folder;

  private static final Path LOG = Sample.TORDILLA.resolve("casting-log.csv");
  private static final Path PROFILE = Sample.TORDILLA.resolve("profile.yaml");
  private static final Path EVENTS = Sample.TORDILLA.resolve("events.csv");

  @Test
  void tellsTheCrewLeadInUnderTenLinesWhatToLookAt() {
    CommandLineCall call =
        CommandLineCall.of("audit", LOG, "--profile", PROFILE, "--events", EVENTS);

    assertThat(call.status()).isZero();
    assertThat(call.err()).isEmpty();
    assertThat(call.out().lines().count()).isLessThanOrEqualTo(32);
    assertThat(call.out().lines()).allMatch(line -> line.length() <= 100);
    String look = call.out().substring(call.out().indexOf("Look first at:"));
    assertThat(look.lines().takeWhile(line -> !line.isBlank()).count()).isLessThan(11);
  }

  @Test
  void writesTheSameBytesEachTime() throws IOException {
    for (String name : new String[] {"a", "b"}) {
      CommandLineCall.of(
          "audit",
          LOG,
          "--profile",
          PROFILE,
          "--events",
          EVENTS,
          "--json",
          folder.resolve(name + ".json"),
          "--workbook",
          folder.resolve(name + ".xlsx"));
    }

    assertThat(folder.resolve("b.json")).hasSameBinaryContentAs(folder.resolve("a.json"));
    assertThat(folder.resolve("b.xlsx")).hasSameBinaryContentAs(folder.resolve("a.xlsx"));
  }

  @Test
  void writesEverythingIntoOneFolder() throws IOException {
    Path log = folder.resolve("log.csv");
    Files.writeString(log, Files.readString(LOG) + "not a row\n");
    Path out = folder.resolve("out");

    CommandLineCall call = CommandLineCall.of("audit", log, "--profile", PROFILE, "--out", out);

    assertThat(call.status()).isZero();
    assertThat(out.resolve("audit.json")).exists();
    assertThat(out.resolve("audit.xlsx")).exists();
    assertThat(out.resolve("log.csv.set-aside.csv")).exists();
    assertThat(folder.resolve("log.csv.set-aside.csv")).doesNotExist();
  }

  @Test
  void auditsAPartOfTheTimeAndSaysWhichRowsItLeftOut() throws IOException {
    CommandLineCall call =
        CommandLineCall.of(
            "audit",
            LOG,
            "--profile",
            PROFILE,
            "--from",
            "2026-03-04",
            "--to",
            "2026-03-06T12:00",
            "--json",
            "-");
    JsonNode log = new ObjectMapper().readTree(call.out()).get("log");

    assertThat(log.get("first_cast_at").asText()).isGreaterThanOrEqualTo("2026-03-04T03:00:00Z");
    assertThat(log.get("last_cast_at").asText()).isLessThan("2026-03-06T15:00:00Z");
    assertThat(log.get("rows_kept").intValue()).isBetween(1000, 4000);
  }

  @Test
  void readsLogsInAnyOrder() throws IOException {
    var lines = Files.readAllLines(LOG);
    Path first = folder.resolve("zz.csv");
    Path second = folder.resolve("aa.csv");
    Files.write(first, lines.subList(0, 3000));
    var rest = new java.util.ArrayList<>(lines.subList(3000, lines.size()));
    rest.add(0, lines.get(0));
    Files.write(second, rest);

    String whole =
        characteristics(CommandLineCall.of("audit", LOG, "--profile", PROFILE, "--json", "-"));
    String parts =
        characteristics(
            CommandLineCall.of("audit", second, first, "--profile", PROFILE, "--json", "-"));

    assertThat(parts).isEqualTo(whole);
  }

  private static String characteristics(CommandLineCall call) throws IOException {
    return new ObjectMapper().readTree(call.out()).get("characteristics").toString();
  }

  @Test
  void everyCommandHelps() {
    for (String command : new String[] {"audit", "simulate"}) {
      CommandLineCall call = CommandLineCall.of(command, "--help");
      assertThat(call.status()).isZero();
      assertThat(call.out()).contains("Usage: evenpour " + command);
    }
    assertThat(CommandLineCall.of("--help").out()).contains("audit", "simulate");
    assertThat(CommandLineCall.of().status()).isEqualTo(2);
  }

  @Test
  void simulatesTheSampleAgain() {
    CommandLineCall call =
        CommandLineCall.of("simulate", "--seed", "20260307", "--out", folder.resolve("sim"));

    assertThat(call.status()).isZero();
    for (String name :
        new String[] {"casting-log.csv", "events.csv", "profile.yaml", "truth.csv"}) {
      assertThat(folder.resolve("sim").resolve(name))
          .hasSameBinaryContentAs(Sample.TORDILLA.resolve(name));
    }
  }

  @Test
  void namesTheFaultsThatItKnows() {
    CommandLineCall call = CommandLineCall.of("simulate", "--out", folder, "--fault", "gremlin");

    assertThat(call.status()).isEqualTo(2);
    assertThat(call.err()).contains("gremlin", "thin-wash");
  }
}
