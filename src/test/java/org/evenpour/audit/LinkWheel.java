package org.evenpour.audit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.IntFunction;
import org.evenpour.findings.AuditReport;
import org.evenpour.intake.IntakeException;

/**
 * A wheel of {@link LinkTrial}: mass = center + offset of the mold + what the turn does by itself +
 * what recorded settings do to it + pour. It is made of plain numbers, apart from the simulator,
 * and read and audited as any log is.
 *
 * <p>Pours, offsets and the scale are choices of the size that the trade knows: 20 molds, pours of
 * 1.5 kg, weighed to 0.1 kg, offsets of 1 kg, an anode every 28.8 s.
 *
 * <p>Owned by one thread.
 */
final class LinkWheel {
  static final int MOLDS = 20;

  private static final double CENTER = 390;
  private static final double OFFSET = 1;
  private static final double POUR = 1.5;
  private static final long INTERVAL_MILLIS = 28_800;
  private static final Instant START = Instant.parse("2026-03-02T06:00:00Z");

  /** What stands in a column, by turn and mold. */
  private interface Column {
    String at(int turn, int mold);
  }

  private final int turns;
  private final SplittableRandom random;
  private final double[][] mass;
  private final double sound;
  private final Map<String, Column> columns = new LinkedHashMap<>();

  /**
   * A sound wheel.
   *
   * @param seed of all its luck
   * @param turnSd s.d. of what turns do by themselves, in kg
   * @param turnPhi its autocorrelation from turn to turn
   */
  LinkWheel(long seed, int turns, double turnSd, double turnPhi) {
    this.turns = turns;
    this.random = new SplittableRandom(seed);
    this.mass = new double[turns][MOLDS];
    double[] offset = new double[MOLDS];
    for (int m = 0; m < MOLDS; m++) {
      offset[m] = OFFSET * random.nextGaussian();
    }
    this.sound = CENTER + Arrays.stream(offset).average().orElse(0);
    double[] own = wander(turnSd, turnPhi);
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < MOLDS; m++) {
        mass[t][m] = CENTER + offset[m] + own[t] + POUR * random.nextGaussian();
      }
    }
  }

  /** What the wheel pours on the average where nothing acts, in kg. */
  double sound() {
    return sound;
  }

  SplittableRandom random() {
    return random;
  }

  /** A stationary first-order autoregression, turn by turn. */
  double[] wander(double sd, double phi) {
    double[] x = new double[turns];
    double at = random.nextGaussian();
    for (int t = 0; t < turns; t++) {
      x[t] = sd * at;
      at = phi * at + Math.sqrt(1 - phi * phi) * random.nextGaussian();
    }
    return x;
  }

  /** A random walk, which knows no place of its own. */
  double[] walk(double step) {
    double[] x = new double[turns];
    for (int t = 1; t < turns; t++) {
      x[t] = x[t - 1] + step * random.nextGaussian();
    }
    return x;
  }

  /** Records a setting that stands alike for a whole turn. */
  void record(String column, double[] byTurn) {
    columns.put(column, byTurn(t -> written(byTurn[t])));
  }

  /** Records a setting pour by pour. */
  void record(String column, double[][] byPour) {
    columns.put(column, (t, m) -> written(byPour[t][m]));
  }

  /** Records a category, by the turn. */
  void record(String column, IntFunction<String> byTurn) {
    columns.put(column, byTurn(byTurn));
  }

  private Column byTurn(IntFunction<String> of) {
    String[] all = new String[turns];
    Arrays.setAll(all, of);
    return (t, m) -> all[t];
  }

  private static String written(double value) {
    return String.format(Locale.ROOT, "%.3f", value);
  }

  /** Every pour of a turn gets so many kg for each unit. */
  void act(double[] byTurn, double kgPerUnit) {
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < MOLDS; m++) {
        mass[t][m] += kgPerUnit * byTurn[t];
      }
    }
  }

  /** Every pour gets so many kg for each unit. */
  void act(double[][] byPour, double kgPerUnit) {
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < MOLDS; m++) {
        mass[t][m] += kgPerUnit * byPour[t][m];
      }
    }
  }

  /** What the program says of the wheel's log. */
  AuditReport audit() {
    StringBuilder log = new StringBuilder("cast_at,turn,mold,mass_kg");
    columns.keySet().forEach(name -> log.append(',').append(name));
    log.append('\n');
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < MOLDS; m++) {
        long cast = (long) t * MOLDS + m;
        log.append(START.plusMillis(cast * INTERVAL_MILLIS)).append(',').append(t + 1);
        log.append(',').append(m + 1).append(',');
        // The scale shows tenths.
        log.append(Math.round(10 * mass[t][m]) / 10.0);
        for (Column column : columns.values()) {
          log.append(',').append(column.at(t, m));
        }
        log.append('\n');
      }
    }
    try {
      Path folder = Files.createTempDirectory("links");
      try {
        return Audit.run(WanderingWheel.read(folder, log, "molds: " + MOLDS + "\n"));
      } finally {
        Files.deleteIfExists(folder.resolve("log.csv"));
        Files.deleteIfExists(folder.resolve("p.yaml"));
        Files.delete(folder);
      }
    } catch (IOException | IntakeException e) {
      throw new IllegalStateException(e);
    }
  }
}
