package org.evenpour.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LiveSimulationTest {
  private static final Instant BEGUN = Instant.parse("2030-01-01T00:00:00Z");

  @TempDir Path folder;
  private final Scenario scenario = Scenario.week(4).withDays(1);

  /** A clock that only sleeping moves. */
  private Instant now = BEGUN;

  @Test
  void growsTheSameLogThatIsWrittenWhole() throws Exception {
    Path file = folder.resolve("live.csv");
    run(file, new LiveSimulation.Pace(1000, Duration.ZERO, Duration.ofDays(1)), length -> {});
    Simulation.write(folder.resolve("whole"), scenario);
    assertThat(file).hasSameTextualContentAs(folder.resolve("whole").resolve(Simulation.LOG));
  }

  @Test
  void castsAsManyTimesFasterAsTold() throws Exception {
    run(
        folder.resolve("live.csv"),
        new LiveSimulation.Pace(60, Duration.ZERO, Duration.ofDays(1)),
        length -> {});
    List<Simulation.Row> rows = new ArrayList<>();
    Simulation.rows(scenario).forEachRemaining(rows::add);
    Instant last = rows.get(rows.size() - 1).castAt();
    assertThat(Duration.between(BEGUN, now))
        .isCloseTo(
            Duration.between(scenario.start().toInstant(), last).dividedBy(60),
            Duration.ofMillis(10));
  }

  @Test
  void writesWhatWasBeforeAtOnceAndThenOneAnodeAtATime() throws Exception {
    Path file = folder.resolve("live.csv");
    List<Integer> linesAtSleep = new ArrayList<>();
    run(
        file,
        new LiveSimulation.Pace(60, Duration.ofHours(3), Duration.ofSeconds(2)),
        length -> {
          assertThat(length).isLessThanOrEqualTo(Duration.ofSeconds(2));
          linesAtSleep.add(Files.readAllLines(file).size());
        });
    Instant from = scenario.start().toInstant().plus(Duration.ofHours(3));
    int before = 0;
    Simulation rows = Simulation.rows(scenario);
    while (rows.next().castAt().isBefore(from)) {
      before++;
    }
    assertThat(linesAtSleep.get(0)).isEqualTo(before + 1).isGreaterThan(200);
    for (int i = 1; i < linesAtSleep.size(); i++) {
      assertThat(linesAtSleep.get(i)).isEqualTo(linesAtSleep.get(i - 1) + 1);
    }
  }

  @Test
  void neverWritesOverAFile() throws IOException {
    Path file = folder.resolve("live.csv");
    Files.writeString(file, "somebody's log");
    assertThatThrownBy(
            () ->
                run(file, new LiveSimulation.Pace(60, Duration.ZERO, Duration.ZERO), length -> {}))
        .isInstanceOf(FileAlreadyExistsException.class);
    assertThat(file).hasContent("somebody's log");
  }

  private interface OnSleep {
    void accept(Duration length) throws IOException;
  }

  private void run(Path file, LiveSimulation.Pace pace, OnSleep onSleep) throws Exception {
    new LiveSimulation(
            file,
            scenario,
            pace,
            () -> now,
            length -> {
              try {
                onSleep.accept(length);
              } catch (IOException e) {
                throw new IllegalStateException(e);
              }
              now = now.plus(length);
            })
        .run(count -> {});
  }
}
