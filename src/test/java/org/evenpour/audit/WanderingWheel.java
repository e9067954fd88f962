package org.evenpour.audit;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.evenpour.casting.CastingRecord;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;

/**
 * A wheel whose launder level wanders and moves the mass with it, by what is known here: 26 molds,
 * pours of 2 kg, an anode every 28.8 s. A second setting wanders without any effect.
 *
 * @param wander s.d. of what the launder level does to the turns, in kg
 * @param wanderPhi its autocorrelation from turn to turn
 * @param own s.d. of what turns do by themselves, in kg
 * @param ownPhi its autocorrelation
 * @param hasThickness whether thickness is recorded too, which follows the mass
 */
record WanderingWheel(
    double wander, double wanderPhi, double own, double ownPhi, boolean hasThickness) {
  static final int MOLDS = 26;
  static final double TURNS_PER_SHIFT = 8 * 3600 / (MOLDS * 28.8);

  /** Of one mm of launder level; its own scatter is then {@code wander / EFFECT} mm. */
  static final double EFFECT = 0.25;

  private static final double POUR = 2;
  private static final double KG_PER_MM = 7.86;

  /** What befalls the whole wheel in a turn, in kg. */
  interface Fault {
    double at(int turn);
  }

  /**
   * Its log.
   *
   * @param turns how many, numbered from 1
   * @param fault by turn index, from 0
   */
  StringBuilder log(long seed, int turns, Fault fault) {
    SplittableRandom random = new SplittableRandom(seed);
    StringBuilder log =
        new StringBuilder(
            "cast_at,turn,mold,mass_kg,launder_mm,hall_c"
                + (hasThickness ? ",thickness_mm\n" : "\n"));
    double[] offset = new double[MOLDS];
    for (int m = 0; m < MOLDS; m++) {
      offset[m] = 1.5 * random.nextGaussian();
    }
    double level = random.nextGaussian();
    double hall = random.nextGaussian();
    double its = random.nextGaussian();
    for (int t = 0; t < turns; t++) {
      level = next(level, wanderPhi, random);
      hall = next(hall, 0.9, random);
      its = next(its, ownPhi, random);
      double effect = wander * level + own * its + fault.at(t);
      for (int m = 0; m < MOLDS; m++) {
        double mass = 390 + offset[m] + effect + POUR * random.nextGaussian();
        double noise = random.nextGaussian();
        log.append(Instant.parse("2026-03-02T06:00:00Z").plusMillis((t * MOLDS + m) * 28_800L))
            .append(
                String.format(
                    Locale.ROOT,
                    ",%d,%d,%.3f,%.2f,%.2f",
                    t + 1,
                    m + 1,
                    mass,
                    200 + wander / EFFECT * level,
                    25 + 4 * hall));
        if (hasThickness) {
          log.append(String.format(Locale.ROOT, ",%.4f", mass / KG_PER_MM + 0.15 * noise));
        }
        log.append('\n');
      }
    }
    return log;
  }

  private static double next(double before, double phi, SplittableRandom random) {
    return phi * before + Math.sqrt(1 - phi * phi) * random.nextGaussian();
  }

  /** What stands in the profile beside the characteristics. */
  static String profile(double share) {
    return "molds: 26\nsettings_alarm_share: " + share + "\n";
  }

  /** A log and a profile as the program reads them. */
  static CastingRecord read(Path folder, CharSequence log, String profile)
      throws IOException, IntakeException {
    Path file = Files.writeString(folder.resolve("log.csv"), log, StandardCharsets.UTF_8);
    return LogReader.read(
        List.of(file),
        ProfileReader.read(Files.writeString(folder.resolve("p.yaml"), profile)),
        List.of(),
        null,
        null,
        SetAside.nowhere(),
        Progress.NONE);
  }

  /** The first turns of a log. */
  static CharSequence first(CharSequence log, int turns, int ofTurns) {
    String whole = log.toString();
    int end = -1;
    int lines = 1 + turns * MOLDS;
    if (turns == ofTurns) {
      return whole;
    }
    for (int i = 0; i < lines; i++) {
      end = whole.indexOf('\n', end + 1);
    }
    return whole.substring(0, end + 1);
  }
}
