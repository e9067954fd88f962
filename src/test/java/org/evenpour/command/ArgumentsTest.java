package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.evenpour.casting.SmallDisk;
import org.evenpour.simulate.Fault;
import org.evenpour.simulate.Scenario;
import org.evenpour.simulate.Simulation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is typed by mistake is refused in one line, and what goes wrong is said in plain words. */
class ArgumentsTest {
  @TempDir Path folder;

  private void isRefused(String part, Object... arguments) {
    CommandLineCall call = CommandLineCall.of(arguments);
    assertThat(call.status()).as("%s", List.of(arguments)).isEqualTo(2);
    assertThat(call.out()).isEmpty();
    isOneLine(call.err(), part);
  }

  private static void isOneLine(String said, String part) {
    assertThat(said.lines()).as(said).hasSize(1);
    assertThat(said).startsWith("evenpour: ").contains(part).contains("; ");
    assertThat(said).doesNotContain("Exception", "java.", "null", "internal error");
  }

  private Path log() throws IOException {
    StringBuilder rows = new StringBuilder("cast_at,mold,mass_kg\n");
    for (int i = 0; i < 120; i++) {
      rows.append("2026-01-01T%02d:%02d:%02dZ,".formatted(i / 60, i % 60, i % 7));
      rows.append(i % 6 + 1).append(',').append(388 + (i * 7) % 5).append('\n');
    }
    return Files.writeString(folder.resolve("june.csv"), rows);
  }

  @Test
  void slipsOfThePen() throws IOException {
    Path log = log();
    isRefused("--out", "audit", log, "--out", "");
    isRefused("--json", "audit", log, "--json", " ");
    isRefused("--workbook", "audit", log, "--workbook", "");
    isRefused("LOG", "audit", "");
    isRefused("--profile", "audit", log, "--profile", "");
    isRefused("--json", "audit", log, "--json", "a", "--json", "b");
    isRefused("no such file", "audit", "@june.csv");
    isRefused("--rows", "simulate", "--out", folder, "--rows", 5, "--fault", "thin-wash");
    isRefused("--rows", "simulate", "--out", folder, "--rows", 5, "--days", 5);
    isRefused("--live", "simulate", "--out", folder, "--live", folder.resolve("x"));
    isRefused("--size", "simulate", "--out", folder, "--size", "NaN");
    isRefused("--speed", "simulate", "--live", folder.resolve("x"), "--speed", "NaN");
    isRefused("--history", "simulate", "--live", folder.resolve("x"), "--history-hours", "NaN");
    isRefused("--size", "score", "--seeds", 1, "--size", "Infinity");
    isRefused("--lower", "limits", "specify", "--lower", "NaN", "--log", log);
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).containsExactly(log);
    }
  }

  /** It would say the program's version, retire nothing, and end with 0. */
  @Test
  void onlyTheProgramItselfHasAVersion() throws IOException {
    Path log = log();
    isRefused(
        "--version", "limits", "retire", "--version", 1, "--log", log, "--who", "a", "--why", "b");
    isRefused("--version", "audit", log, "--version");
    assertThat(CommandLineCall.of("--version").out()).startsWith("evenpour ");
    for (String command : List.of("audit", "limits", "causes", "view", "simulate", "score")) {
      assertThat(CommandLineCall.of(command, "--help").status()).isZero();
      assertThat(CommandLineCall.of(command, "--help").out()).doesNotContain("--version");
    }
    assertThat(CommandLineCall.of("limits", "retire", "--help").out()).contains("--who");
  }

  @Test
  void foldersThatCannotBeUsed() throws IOException {
    Path log = log();
    isRefused("june.csv", "audit", log, "--out", log);
    isRefused("june.csv", "simulate", "--days", 3, "--out", log.resolve("below"));
    isRefused("a folder", "audit", folder);
    isRefused("a folder", "audit", log, "--json", folder);
    isRefused("nowhere", "audit", log, "--causes", folder.resolve("nowhere"));
  }

  @Test
  void aFullDiskIsNamed() throws IOException {
    Path log = log();
    try (SmallDisk disk = SmallDisk.at(folder.resolve("disk"), 64)) {
      disk.fill(0);
      String there = disk.folder().toString();
      isRefused(there, "audit", log, "--json", disk.folder().resolve("a.json"));
      isRefused(there, "audit", log, "--workbook", disk.folder().resolve("a.xlsx"));
      isRefused(there, "audit", log, "--out", disk.folder().resolve("out"));
      isRefused(there, "simulate", "--days", 3, "--out", disk.folder());
      isRefused(there, "simulate", "--rows", 9000, "--out", disk.folder().resolve("large"));
      try (Stream<Path> files = Files.walk(disk.folder())) {
        assertThat(files.filter(Files::isRegularFile))
            .containsExactly(disk.folder().resolve("rest"));
      }
    }
  }

  /** Rights bind everybody but root: so root runs it without what makes root of it. */
  @Test
  void aUserHearsWhatTheyMayNotDo() throws Exception {
    Path readable = Files.createDirectory(folder.resolve("readable"));
    Path log = Files.move(log(), readable.resolve("june.csv"));
    Path shut = Files.createDirectory(folder.resolve("shut"));
    Path secret = Files.writeString(shut.resolve("secret.csv"), "cast_at,mold,mass_kg\n");
    Files.setPosixFilePermissions(shut, PosixFilePermissions.fromString("---------"));
    Files.setPosixFilePermissions(readable, PosixFilePermissions.fromString("r-xr-xr-x"));
    for (Object[] arguments :
        new Object[][] {
          {"audit", secret},
          {"audit", log, "--json", shut.resolve("a.json")},
          {"audit", log, "--json", readable.resolve("a.json")},
          {"audit", log, "--out", readable.resolve("new")},
          {"audit", log, "--profile", secret},
          {"simulate", "--days", 3, "--out", readable},
          {"limits", "list", "--limits", secret},
          {
            "limits",
            "specify",
            "--log",
            log,
            "--characteristic",
            "mass",
            "--lower",
            380,
            "--from",
            "2026-01-01T00:00Z",
            "--who",
            "a",
            "--why",
            "b"
          }
        }) {
      CommandLineCall call = Running.withoutRights(folder, Running.words(List.of(), arguments));
      assertThat(call.status()).as("%s: %s", List.of(arguments), call.err()).isEqualTo(2);
      isOneLine(call.err(), folder.toString());
    }
    Files.setPosixFilePermissions(shut, PosixFilePermissions.fromString("rwx------"));
    Files.setPosixFilePermissions(readable, PosixFilePermissions.fromString("rwx------"));
  }

  /** A heap that cannot hold what is read: one line, and no half file. */
  @Test
  void tooLittleMemoryIsOneLine() throws Exception {
    Path log = folder.resolve("large.csv");
    Path out = Files.createDirectory(folder.resolve("out"));
    StringBuilder text = new StringBuilder(Simulation.header()).append('\n');
    Simulation rows = Simulation.rows(Scenario.week(5).withFault(Fault.THIN_WASH));
    while (rows.hasNext()) {
      text.append(rows.next().line()).append('\n');
    }
    Files.writeString(log, text);
    CommandLineCall call =
        Running.shell(
            folder, "\"$@\"", Running.words(List.of("-Xmx14m"), "audit", log, "--out", out));
    assertThat(call.status()).as(call.err()).isEqualTo(2);
    isOneLine(call.err(), "not enough memory");
    assertThat(out).isEmptyDirectory();
  }
}
