package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.evenpour.simulate.Condition;
import org.evenpour.simulate.SimulatedPlant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The whole command under bad days: logs that were damaged, cut or are short, with profiles, events
 * and gauge files that can be read but should not have been written. Whatever comes: status 0, 1 or
 * 2, never an internal error, never more than ten seconds, every row accounted for, and no output
 * left where it says that it did nothing.
 *
 * <p>{@code -Devenpour.mutations=N} and {@code -Devenpour.windows=N} say how many, {@code
 * -Devenpour.seed=S} from which seed on. What fails is kept in {@code target/findings}.
 */
@Tag("slow")
class WholeCommandFuzzTest {
  private static final int MUTATIONS = Integer.getInteger("evenpour.mutations", 60);
  private static final int WINDOWS = Integer.getInteger("evenpour.windows", 60);
  private static final long SEED = Long.getLong("evenpour.seed", 14);
  private static final int PLANTS = 5;
  private static final int LONGEST_WINDOW = 400;

  /** A log, and what belongs to it. */
  private record Good(List<String> lines, Path profile, Path events) {}

  @TempDir Path folder;

  private final List<Good> logs = new ArrayList<>();

  @BeforeEach
  void goodLogs() throws IOException {
    logs.add(good(Path.of("samples", "tordilla-week")));
    for (int plant = 0; plant < PLANTS; plant++) {
      Path made = folder.resolve("made-" + plant);
      SimulatedPlant.MADE.write(made, 100 + plant, null, Condition.IDEAL);
      logs.add(good(made));
    }
  }

  private static Good good(Path of) throws IOException {
    return new Good(
        Files.readAllLines(of.resolve("casting-log.csv")),
        of.resolve("profile.yaml"),
        of.resolve("events.csv"));
  }

  private interface Case {
    /** Puts the files of a seed into an empty folder. */
    void put(Random random, Path into) throws IOException;
  }

  @Test
  void standsDamagedLogsWithOddProfiles() throws IOException {
    tryAll("mutations", MUTATIONS, this::damaged);
  }

  @Test
  void standsEveryCutOfAGoodLog() throws IOException {
    tryAll("windows", WINDOWS, this::window);
  }

  private void tryAll(String what, int count, Case files) throws IOException {
    List<String> findings = new ArrayList<>();
    Duration longest = Duration.ZERO;
    long began = System.nanoTime();
    for (int i = 0; i < count; i++) {
      long seed = SEED * 1_000_000 + i;
      Path into = Files.createDirectories(folder.resolve(what + "-" + seed));
      files.put(new Random(seed), into);
      long at = System.nanoTime();
      Optional<String> finding = TriedAudit.finding(into, seed % 2 == 0);
      Duration took = Duration.ofNanos(System.nanoTime() - at);
      longest = took.compareTo(longest) > 0 ? took : longest;
      if (finding.isPresent()) {
        findings.add(what + " " + seed + ": " + finding.get().strip());
        System.out.println(findings.get(findings.size() - 1));
        keep(into, what + "-" + seed);
      }
      remove(into);
    }
    System.out.printf(
        "%s: %d from seed %d in %d s, the longest %.1f s, %d findings%n",
        what,
        count,
        SEED * 1_000_000,
        Duration.ofNanos(System.nanoTime() - began).toSeconds(),
        longest.toMillis() / 1000.0,
        findings.size());
    assertThat(findings).isEmpty();
  }

  private void damaged(Random random, Path into) throws IOException {
    Good good = logs.get(random.nextInt(logs.size()));
    int[] sizes = {60, 150, 250, 250, 400, 400, 400, 800, 800, 1500};
    boolean whole = random.nextInt(200) == 0;
    List<String> lines = cut(good, random, whole ? 9000 : sizes[random.nextInt(sizes.length)]);
    String text = random.nextInt(6) == 0 ? joined(lines) : new DamagedLog(random).of(lines);
    Files.writeString(
        into.resolve(TriedAudit.LOG),
        text,
        random.nextInt(8) == 0 ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8);
    OddPlant plant = new OddPlant(random);
    int profile = random.nextInt(5);
    if (profile < 3) {
      Files.writeString(into.resolve(TriedAudit.PROFILE), plant.profile());
    } else if (profile == 3) {
      Files.copy(good.profile(), into.resolve(TriedAudit.PROFILE));
    }
    int events = random.nextInt(4);
    if (events == 0) {
      Files.writeString(into.resolve(TriedAudit.EVENTS), plant.events());
    } else if (events == 1) {
      Files.copy(good.events(), into.resolve(TriedAudit.EVENTS));
    }
    if (random.nextInt(8) == 0) {
      Files.writeString(into.resolve(TriedAudit.GAUGE), plant.gauge());
    }
  }

  private void window(Random random, Path into) throws IOException {
    Good good = logs.get(random.nextInt(logs.size()));
    Files.writeString(
        into.resolve(TriedAudit.LOG),
        joined(cut(good, random, random.nextInt(LONGEST_WINDOW + 1))));
    if (random.nextInt(3) > 0) {
      Files.copy(good.profile(), into.resolve(TriedAudit.PROFILE));
    }
    if (random.nextBoolean()) {
      Files.copy(good.events(), into.resolve(TriedAudit.EVENTS));
    }
  }

  /** The headings and so many rows one after another. */
  private static List<String> cut(Good good, Random random, int rows) {
    List<String> all = good.lines();
    int count = Math.min(rows, all.size() - 1);
    int from = 1 + random.nextInt(all.size() - count);
    List<String> cut = new ArrayList<>(List.of(all.get(0)));
    cut.addAll(all.subList(from, from + count));
    return cut;
  }

  private static String joined(List<String> lines) {
    return String.join("\n", lines) + "\n";
  }

  private static void keep(Path files, String name) throws IOException {
    Path kept = Files.createDirectories(Path.of("target", "findings", name));
    try (Stream<Path> all = Files.list(files)) {
      for (Path file : all.toList()) {
        Files.copy(
            file,
            kept.resolve(file.getFileName().toString()),
            java.nio.file.StandardCopyOption.REPLACE_EXISTING);
      }
    }
  }

  private static void remove(Path files) throws IOException {
    try (Stream<Path> all = Files.list(files)) {
      for (Path file : all.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(files);
  }
}
