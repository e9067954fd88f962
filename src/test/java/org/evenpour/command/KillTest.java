package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Processes that are killed, asked to end, or interrupted while they write. Nothing that was said
 * to stand is lost, nothing half stands, and whoever comes next goes on.
 *
 * <p>A few kills each time; {@code -Devenpour.kills=170 -Devenpour.audits=30 -Devenpour.seed=N} for
 * more.
 */
@Tag("slow")
class KillTest {
  private static final String[] SIGNALS =
      hearsInterrupts() ? new String[] {"KILL", "TERM", "INT"} : new String[] {"KILL", "TERM"};
  private static final int KILLS = Integer.getInteger("evenpour.kills", 4);
  private static final int AUDITS = Integer.getInteger("evenpour.audits", 2);

  @TempDir Path folder;
  private final long seed = Long.getLong("evenpour.seed", System.nanoTime());
  private final Random random = new Random(seed);

  @BeforeEach
  void sayTheSeed() {
    assumeThat(Path.of("/bin/kill")).exists();
    System.out.println(
        String.join(", ", SIGNALS)
            + " of "
            + getClass().getSimpleName()
            + ": -Devenpour.seed="
            + seed);
  }

  /** What a shell starts in the background does not, nor what that starts. */
  private static boolean hearsInterrupts() {
    try {
      return Files.readAllLines(Path.of("/proc/self/status")).stream()
          .filter(line -> line.startsWith("SigIgn:"))
          .noneMatch(line -> (Long.parseUnsignedLong(line.substring(7).strip(), 16) & 2) != 0);
    } catch (IOException noSuchFile) {
      return true;
    }
  }

  private static void kill(Process process, String signal) throws Exception {
    new ProcessBuilder("/bin/kill", "-" + signal, Long.toString(process.pid())).start().waitFor();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).as("it ends at once").isTrue();
  }

  /** Two processes write to one file, and one of them is killed at a random moment. */
  @Test
  void linesThatWereSaidToStandDoStand() throws Exception {
    String[] kinds = {"limits", "causes", "seen"};
    for (int i = 0; i < KILLS; i++) {
      String kind = kinds[i % 3];
      String signal = SIGNALS[i / 3 % SIGNALS.length];
      Path file = folder.resolve(kind + i);
      Path said = folder.resolve("said" + i);
      Process process = writer(kind, file, said);
      while (Files.size(said) == 0 && process.isAlive()) {
        Thread.sleep(1);
      }
      assertThat(process.isAlive()).as(Running.text(folder.resolve("err"))).isTrue();
      Thread.sleep(random.nextInt(30), random.nextInt(1_000_000));
      kill(process, signal);
      String what = "seed " + seed + ", kill " + i + ": " + kind + " by " + signal;
      int stood = (int) Running.text(said).lines().filter(line -> line.matches("[0-9]+")).count();
      int there = KilledWriter.lines(kind, file);
      // One may stand of which it had no time to say so.
      assertThat(there).as(what).isBetween(stood - 1, stood + 1);
      KilledWriter.add(kind, file, 0);
      assertThat(KilledWriter.lines(kind, file)).as(what).isBetween(there + 1, there + 2);
    }
  }

  private Process writer(String kind, Path file, Path said) throws IOException {
    List<String> words = Running.words(List.of());
    List<String> all = new ArrayList<>(words.subList(0, words.size() - 1));
    all.addAll(List.of(KilledWriter.class.getName(), kind, file.toString()));
    return new ProcessBuilder(all)
        .redirectOutput(Files.createFile(said).toFile())
        .redirectError(folder.resolve("err").toFile())
        .start();
  }

  /** An audit is ended while it writes rows set aside, report and workbook. */
  @Test
  void outputsAreWholeOrAsTheyWere() throws Exception {
    Path log = log();
    for (int i = 0; i < AUDITS; i++) {
      String signal = SIGNALS[i % SIGNALS.length];
      Path out = Files.createDirectory(folder.resolve("out" + i));
      Path temporary = Files.createDirectory(folder.resolve("tmp" + i));
      Files.writeString(out.resolve("audit.json"), "{\"old\":1}");
      List<String> options = List.of("-Djava.io.tmpdir=" + temporary);
      Process process =
          new ProcessBuilder(Running.words(options, "audit", log, "--out", out))
              .redirectOutput(folder.resolve("audit.out").toFile())
              .redirectError(folder.resolve("audit.err").toFile())
              .start();
      // It writes as soon as there is a second file; then some moment of the writing is taken.
      int wanted = random.nextBoolean() ? 2 : 3;
      while (process.isAlive() && count(out) + (wanted == 3 ? count(temporary) : 0) < wanted) {
        Thread.sleep(1);
      }
      Thread.sleep(random.nextInt(wanted == 2 ? 2500 : 600));
      kill(process, signal);
      String what = "seed " + seed + ", kill " + i + ": audit by " + signal;
      new ObjectMapper().readTree(out.resolve("audit.json").toFile());
      if (Files.exists(out.resolve("audit.xlsx"))) {
        try (ZipFile whole = new ZipFile(out.resolve("audit.xlsx").toFile())) {
          assertThat(whole.size()).as(what).isGreaterThan(10);
        }
      }
      if (!signal.equals("KILL")) {
        assertThat(names(out)).as(what).noneMatch(name -> name.endsWith(".part"));
        assertThat(names(temporary)).as(what).noneMatch(name -> name.startsWith("evenpour"));
        assertThat(Running.text(folder.resolve("audit.err"))).as(what).isEmpty();
      }
    }
  }

  private static List<String> names(Path where) throws IOException {
    try (Stream<Path> files = Files.list(where)) {
      return files.map(file -> file.getFileName().toString()).toList();
    }
  }

  private static int count(Path where) throws IOException {
    return names(where).size();
  }

  /** With rows that are set aside, and a workbook that takes a while. */
  private Path log() throws IOException {
    StringBuilder rows = new StringBuilder("cast_at,mold,mass_kg,thickness_mm\n");
    Random values = new Random(1);
    for (int i = 0; i < 2000; i++) {
      rows.append(KilledWriter.AT.plusSeconds(30L * i)).append(',').append(i % 8 + 1).append(',');
      rows.append(388 + values.nextGaussian()).append(',').append(44 + values.nextGaussian() / 9);
      rows.append('\n').append(i % 9 == 0 ? "never,1,388,44\n" : "");
    }
    return Files.writeString(folder.resolve("june.csv"), rows);
  }
}
