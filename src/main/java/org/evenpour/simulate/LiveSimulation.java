package org.evenpour.simulate;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.function.LongConsumer;

/**
 * A simulated wheel that casts while one looks on: its log grows in a file, anode by anode, as fast
 * as the wheel does or some times faster.
 *
 * <p>The rows are those of {@link Simulation#rows}, byte for byte; only when they are written
 * follows the clock. Owned by the thread that runs it.
 */
public final class LiveSimulation {
  private final Path file;
  private final Scenario scenario;
  private final Pace pace;
  private final InstantSource clock;
  private final Sleeper sleeper;

  /**
   * How fast the log grows.
   *
   * @param speed simulated seconds in a second, above 0
   * @param before so much of the scenario stands in the file at once
   * @param longestWait a stop of the wheel lasts no longer than this for those who look on
   */
  public record Pace(double speed, Duration before, Duration longestWait) {
    /** Refuses what cannot be. */
    public Pace {
      if (!(speed > 0) || Double.isInfinite(speed)) {
        throw new IllegalArgumentException("the speed must be above 0, not " + speed);
      }
      if (before.isNegative() || longestWait.isNegative()) {
        throw new IllegalArgumentException("a time must not be negative");
      }
    }
  }

  /** Waits. */
  @FunctionalInterface
  public interface Sleeper {
    /** Waits so long. */
    void sleep(Duration length) throws InterruptedException;
  }

  /**
   * A wheel before its first anode.
   *
   * @param file must not be there yet: a log that somebody keeps is never written over
   * @param scenario what to simulate
   * @param pace how fast
   * @param clock by which rows are due
   * @param sleeper waits until they are
   */
  public LiveSimulation(
      Path file, Scenario scenario, Pace pace, InstantSource clock, Sleeper sleeper) {
    this.file = file;
    this.scenario = scenario;
    this.pace = pace;
    this.clock = clock;
    this.sleeper = sleeper;
  }

  /**
   * Casts until the scenario ends or the thread is interrupted.
   *
   * @param cast is told after each row how many there are
   * @throws java.nio.file.FileAlreadyExistsException if the file is there already
   * @throws IllegalArgumentException if the scenario has no room for its faults; nothing is written
   */
  public void run(LongConsumer cast) throws IOException, InterruptedException {
    Simulation rows = Simulation.rows(scenario);
    Instant from = scenario.start().toInstant().plus(pace.before());
    try (FileChannel log =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      StringBuilder text = new StringBuilder(Simulation.header()).append('\n');
      long count = 0;
      Instant castAt = from;
      Instant due = clock.instant();
      while (rows.hasNext()) {
        Simulation.Row row = rows.next();
        if (!row.castAt().isBefore(from)) {
          write(log, text);
          Duration wait = scaled(Duration.between(castAt, row.castAt()));
          castAt = row.castAt();
          // Due times add up, so that what writing takes does not slow the wheel down.
          due = due.plus(wait);
          Duration left = Duration.between(clock.instant(), due);
          if (left.toMillis() > 0) {
            sleeper.sleep(left);
          }
        }
        text.append(row.line()).append('\n');
        count++;
        if (!row.castAt().isBefore(from)) {
          write(log, text);
        }
        cast.accept(count);
      }
      write(log, text);
    }
  }

  /** The profile of the scenario's wheel, to be kept beside the log. */
  public static String profile(Scenario scenario) {
    return Profile.text(scenario);
  }

  private Duration scaled(Duration simulated) {
    Duration real = Duration.ofNanos(Math.round(simulated.toNanos() / pace.speed()));
    return real.isNegative()
        ? Duration.ZERO
        : real.compareTo(pace.longestWait()) > 0 ? pace.longestWait() : real;
  }

  private static void write(FileChannel log, StringBuilder text) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(text.toString().getBytes(StandardCharsets.UTF_8));
    while (bytes.hasRemaining()) {
      log.write(bytes);
    }
    text.setLength(0);
  }
}
