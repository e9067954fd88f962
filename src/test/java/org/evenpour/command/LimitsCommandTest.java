package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.evenpour.audit.Sample;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole life of limits, as typed. */
class LimitsCommandTest {
  @TempDir Path folder;
  private Path log;
  private Path profile;

  @BeforeEach
  void copiesTheSample() throws IOException {
    log = Files.copy(Sample.TORDILLA.resolve("casting-log.csv"), folder.resolve("log.csv"));
    profile = Files.copy(Sample.TORDILLA.resolve("profile.yaml"), folder.resolve("n.yaml"));
  }

  private CommandLineCall approve(Object... more) {
    Object[] typed =
        new Object[] {
          "limits",
          "approve",
          log,
          "--profile",
          profile,
          "--to",
          "2026-03-05",
          "--who",
          "Ana",
          "--why",
          "sound days",
          "--valid-from",
          "2026-03-05"
        };
    Object[] all = java.util.Arrays.copyOf(typed, typed.length + more.length);
    System.arraycopy(more, 0, all, typed.length, more.length);
    return CommandLineCall.of(all);
  }

  @Test
  void approvedLimitsAreUsedListedComparedAndRetired() throws IOException {
    Path file = folder.resolve("n.yaml.limits.jsonl");
    assertThat(CommandLineCall.of("limits", "list", "--profile", profile).out())
        .contains("Nothing is approved");

    CommandLineCall approved = approve();
    assertThat(approved.err()).isEmpty();
    assertThat(approved.status()).isZero();
    assertThat(approved.out()).contains("mass: version 1", "approved by Ana in " + file);
    assertThat(Files.readAllLines(file)).hasSize(4);

    CommandLineCall audit = CommandLineCall.of("audit", log, "--profile", profile, "--json", "-");
    assertThat(audit.out()).contains("\"source\": \"approved\", \"version\": 1,", "sound days");
    assertThat(CommandLineCall.of("audit", log, "--profile", profile, "--json", "-").out())
        .isEqualTo(audit.out());
    assertThat(CommandLineCall.of("audit", log, "--profile", profile).out())
        .contains("Approved limits", "version 1 (Ana, ");

    assertThat(approve("--leave-out", "2026-03-04T07:00/2026-03-04T10:00=relined").status())
        .isZero();
    assertThat(Files.readAllLines(file)).hasSize(8);
    CommandLineCall compared =
        CommandLineCall.of("limits", "compare", "1", "2", "--profile", profile);
    assertThat(compared.status()).isZero();
    assertThat(compared.out()).contains("mass: version 1, and how version 2 differs", "center");

    CommandLineCall retired =
        CommandLineCall.of(
            "limits",
            "retire",
            "2",
            "--profile",
            profile,
            "--who",
            "Ana",
            "--why",
            "mistake",
            "--from",
            "2026-03-05");
    assertThat(retired.out()).contains("from then on version 1 is in force");
    assertThat(CommandLineCall.of("audit", log, "--profile", profile, "--json", "-").out())
        .isEqualTo(audit.out());
    assertThat(CommandLineCall.of("limits", "list", "--profile", profile).out())
        .contains("retired from 2026-03-05 00:00 by Ana (mistake)", "in force; approved");
  }

  @Test
  void proposesWithoutWriting() throws IOException {
    CommandLineCall call =
        CommandLineCall.of(
            "limits",
            "propose",
            log,
            "--profile",
            profile,
            "--to",
            "2026-03-05",
            "--leave-out",
            "2026-03-04T07:00/2026-03-04T10:00=ladle relined");

    assertThat(call.err()).isEmpty();
    assertThat(call.status()).isZero();
    assertThat(call.out())
        .contains("mass, base 2026-03-02", "start-up after a stop", "ladle relined")
        .contains("turns until a lasting shift is found")
        .doesNotContain("NaN");
    try (var files = Files.list(folder)) {
      assertThat(files).hasSize(2);
    }
  }

  @Test
  void datesASpecificationInTheProfilesUnit() throws IOException {
    Path pounds =
        Files.writeString(
            folder.resolve("lb.yaml"), "characteristics: {mass: {unit: lb, lower: 840}}\n");
    CommandLineCall call =
        CommandLineCall.of(
            "limits",
            "specify",
            "--profile",
            pounds,
            "--characteristic",
            "mass",
            "--lower",
            "850",
            "--upper",
            "870",
            "--from",
            "2026-03-05",
            "--who",
            "Ana",
            "--why",
            "contract");

    assertThat(call.err()).isEmpty();
    assertThat(call.status()).isZero();
    assertThat(Files.readString(folder.resolve("lb.yaml.limits.jsonl")))
        .contains("\"lower\":385.5535145,", "\"unit\":\"kg\"");
    assertThat(
            CommandLineCall.of(
                    "limits",
                    "specify",
                    "--profile",
                    pounds,
                    "--characteristic",
                    "mass",
                    "--lower",
                    "870",
                    "--upper",
                    "850",
                    "--from",
                    "2026-03-05",
                    "--who",
                    "Ana",
                    "--why",
                    "x")
                .status())
        .isEqualTo(2);
  }

  @Test
  void saysWhatIsWrongAndWritesNothing() throws IOException {
    check("reason", "--leave-out", "2026-03-04T07:00/2026-03-04T10:00");
    check("ends before it begins", "--leave-out", "2026-03-05/2026-03-04=x");
    check("no such wheel", "--wheel", "T9");
    CommandLineCall few =
        CommandLineCall.of(
            "limits",
            "approve",
            log,
            "--profile",
            profile,
            "--to",
            "2026-03-02T07:00",
            "--who",
            "Ana",
            "--why",
            "x");
    assertThat(few.status()).isEqualTo(2);
    assertThat(few.err()).contains("nothing was approved", "8 are needed", "longer");
    assertThat(CommandLineCall.of("limits", "list").err()).contains("--limits F");
    assertThat(CommandLineCall.of("audit", log, "--limits", folder.resolve("no.jsonl")).status())
        .isEqualTo(2);
    CommandLineCall missing =
        CommandLineCall.of(
            "limits", "approve", log, "--profile", profile, "--who", " ", "--why", "x");
    assertThat(missing.status()).isEqualTo(2);
    assertThat(missing.err()).contains("--who is empty");
    assertThat(folder.resolve("n.yaml.limits.jsonl")).doesNotExist();

    Path file = folder.resolve("n.yaml.limits.jsonl");
    Files.writeString(file, "{\"format\":\"evenpour.limits/1\"}\n{\"format\":1");
    CommandLineCall damaged = CommandLineCall.of("audit", log, "--profile", profile);
    assertThat(damaged.status()).isEqualTo(2);
    assertThat(damaged.err()).contains("n.yaml.limits.jsonl:1: this line is damaged", "; put back");
    Files.writeString(file, "{\"format\":1");
    CommandLineCall cut = CommandLineCall.of("audit", log, "--profile", profile);
    assertThat(cut.status()).isZero();
    assertThat(cut.err()).contains("n.yaml.limits.jsonl:1: the last line was cut off");
  }

  private void check(String said, Object... more) {
    CommandLineCall call = approve(more);
    assertThat(call.status()).isEqualTo(2);
    assertThat(call.err()).contains(said);
  }

  @Test
  void aFileOfLimitsThatIsNamedToBeReadMustBeThere() {
    Path none = folder.resolve("none.jsonl");
    for (CommandLineCall call :
        List.of(
            CommandLineCall.of("audit", log, "--limits", none),
            CommandLineCall.of("view", log, "--limits", none),
            CommandLineCall.of("limits", "list", "--limits", none),
            CommandLineCall.of("limits", "compare", "1", "2", "--limits", none),
            CommandLineCall.of(
                "limits", "retire", "1", "--limits", none, "--who", "Ana", "--why", "x"))) {
      assertThat(call.status()).isEqualTo(2);
      assertThat(call.err()).contains("none.jsonl: there is no such file");
    }
    assertThat(none).doesNotExist();
  }
}
