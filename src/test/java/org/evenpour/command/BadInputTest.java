package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What people really hand over. Each time: one clear line that names the file, where and the mend;
 * exit status 2 or rows set aside; and no output that looks finished.
 */
class BadInputTest {
  private static final String HEADINGS = "cast_at,mold,mass_kg\n";

  @TempDir Path folder;

  private static String soundRows() {
    StringBuilder rows = new StringBuilder();
    for (int i = 0; i < 120; i++) {
      rows.append("2026-01-01T%02d:%02d:%02dZ,".formatted(i / 60, i % 60, i % 7));
      rows.append(i % 6 + 1).append(',').append(388 + (i * 7) % 5).append('\n');
    }
    return rows.toString();
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private CommandLineCall audit(Object... arguments) {
    List<Object> all = new ArrayList<>(List.of("audit"));
    all.addAll(List.of(arguments));
    all.addAll(List.of("--json", folder.resolve("out.json")));
    return CommandLineCall.of(all.toArray());
  }

  private void isRefused(CommandLineCall call, String... parts) throws IOException {
    assertThat(call.status()).isEqualTo(2);
    assertThat(call.out()).isEmpty();
    assertThat(call.err().lines()).hasSize(1);
    assertThat(call.err()).startsWith("evenpour: ").contains(parts).contains(";");
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .noneMatch(f -> f.startsWith("out.json") || f.endsWith(".part"));
    }
  }

  private void setsAside(CommandLineCall call, Path log, int rows, String... reasons)
      throws IOException {
    assertThat(call.err()).isEmpty();
    assertThat(call.status()).isZero();
    assertThat(call.out()).contains("rows set aside " + rows);
    String text = Files.readString(log.resolveSibling(log.getFileName() + ".set-aside.csv"));
    assertThat(text.lines()).hasSizeGreaterThanOrEqualTo(1 + rows);
    assertThat(text).contains(reasons);
  }

  @Test
  void anEmptyFile() throws IOException {
    isRefused(audit(file("june.csv", "")), "june.csv: this file is empty");
  }

  @Test
  void headingsAlone() throws IOException {
    isRefused(audit(file("june.csv", HEADINGS)), "june.csv: ", "no row");
  }

  @Test
  void binaryJunk() throws IOException {
    byte[] junk = new byte[20_000];
    new SplittableRandom(3).nextBytes(junk);
    isRefused(audit(Files.write(folder.resolve("june.csv"), junk)), "june.csv");
  }

  @Test
  void aFolder() throws IOException {
    isRefused(
        audit(Files.createDirectory(folder.resolve("june.csv"))), "june.csv: this is a folder");
  }

  @Test
  void noFileAtAll() throws IOException {
    isRefused(audit(folder.resolve("june.csv")), "june.csv: there is no such file");
  }

  @Test
  void noMoldColumn() throws IOException {
    isRefused(
        audit(file("june.csv", "cast_at,form,mass_kg\n2026-01-01T00:00:00Z,1,390\n")),
        "june.csv:1: ",
        "mold",
        "\"form\"",
        "headings");
  }

  @Test
  void noUsableRow() throws IOException {
    isRefused(
        audit(file("june.csv", HEADINGS + "yesterday,1,390\n2026-01-01T00:00:00Z,,390\n")),
        "june.csv:2: ",
        "yesterday");
  }

  @Test
  void duplicateColumns() throws IOException {
    isRefused(
        audit(file("june.csv", "cast_at,mold,mass_kg,Mass_kg\n2026-01-01T00:00:00Z,1,390,391\n")),
        "june.csv:1: ",
        "mass_kg");
  }

  @Test
  void tenThousandColumns() throws IOException {
    StringBuilder headings = new StringBuilder("cast_at,mold,mass_kg");
    for (int i = 0; i < 9_997; i++) {
      headings.append(",s").append(i);
    }
    isRefused(audit(file("june.csv", headings + "\n")), "june.csv:1: 10000 columns");
  }

  @Test
  void numbersThatAreNone() throws IOException {
    Path log =
        file(
            "june.csv",
            HEADINGS
                + soundRows()
                + "2026-01-01T03:00:00Z,1,NaN\n"
                + "2026-01-01T03:00:30Z,2,Infinity\n"
                + "2026-01-01T03:01:00Z,3,1e400\n");
    setsAside(audit(log), log, 3, "122,", "NaN", "Infinity", "1e400");
  }

  @Test
  void aClockThatRunsBackwards() throws IOException {
    Path log = file("june.csv", HEADINGS + soundRows() + "2025-12-31T00:00:00Z,1,390\n");
    setsAside(audit(log), log, 1, "122,", "before the one in line");
  }

  @Test
  void aLineOfTwoHundredMegabytes() throws IOException {
    Path log = folder.resolve("june.csv");
    try (BufferedWriter out = Files.newBufferedWriter(log, StandardCharsets.UTF_8)) {
      out.write(HEADINGS + soundRows());
      String much = "x".repeat(1_000_000);
      for (int i = 0; i < 200; i++) {
        out.write(much);
      }
      out.write("\n2026-01-01T05:00:00Z,1,390\n");
    }
    setsAside(audit(log), log, 1, "122,", "1 MiB");
    Files.delete(log);
  }

  @Test
  void aProfileWithAnUnknownKey() throws IOException {
    Path log = file("june.csv", HEADINGS + soundRows());
    Path profile = file("n2.yaml", "wheel: N2\ncharacteristics:\n  mass: {unit: kg, lowr: 380}\n");
    isRefused(audit(log, "--profile", profile), "n2.yaml:3", "lowr", "lower");
  }

  @Test
  void eventsForAMoldThatIsNotThere() throws IOException {
    Path log = file("june.csv", HEADINGS + soundRows());
    Path events =
        file("ev.csv", "at,wheel,mold,event,note\n2026-01-01T00:05:00Z,,99,nozzle_cleaned,\n");
    CommandLineCall call = audit(log, "--events", events);
    assertThat(call.status()).isZero();
    assertThat(call.out().replaceAll("\\s+", " "))
        .contains("ev.csv:2: no row of the log names the mold \"99\"; correct the event");
  }

  @Test
  void aFolderThatCannotBeWrittenTo() throws IOException {
    Path log = file("june.csv", HEADINGS + soundRows());
    CommandLineCall call =
        CommandLineCall.of("audit", log, "--json", folder.resolve("none/out.json"));
    isRefused(call, "out.json");
  }

  @Test
  void aMistypedOption() throws IOException {
    Path log = file("june.csv", HEADINGS + soundRows());
    isRefused(audit(log, "--profil", "x"), "--profil", "--help");
    isRefused(audit(log, "--from", "tomorrow"), "--from", "tomorrow");
    isRefused(CommandLineCall.of("audit"), "LOG", "--help");
  }

  @Test
  void isStrictWhereAsked() throws IOException {
    Path log = file("june.csv", HEADINGS + soundRows() + "2026-01-01T03:00:00Z,1,heavy\n");
    assertThat(audit(log, "--strict").status()).isEqualTo(1);
    assertThat(audit(log).status()).isZero();
  }
}
