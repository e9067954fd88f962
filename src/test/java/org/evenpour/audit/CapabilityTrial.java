package org.evenpour.audit;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.intake.IntakeException;
import org.jspecify.annotations.Nullable;

/**
 * How often the 95 % intervals of capability that a whole audit gives hold the true index: logs of
 * mass with turn effects that resemble each other, made from numbers, read and audited as any log
 * is. {@code stats.CapabilityExperiment} tries the formulas on many more records.
 *
 * <p>The truth is that of the same molds for ever: pours of 1.5 kg, turns and offsets as the row
 * says, the specification 390 kg and 7 kg to either side. Within is what a mean moving range comes
 * to, √(σ_t²(1 − φ) + σ_p²). The center lies 1 kg high, so that Ppk is not Pp.
 */
public final class CapabilityTrial {
  private static final int MOLDS = 20;
  private static final double POUR = 1.5;
  private static final double TOLERANCE = 7;
  private static final double HIGH = 1;

  private CapabilityTrial() {}

  /** One row: turns of a record, s.d. of the molds' offsets and of the turns in kg, φ of turns. */
  private record Row(double phi, int turns, double turnSd, double offsets) {
    String name() {
      return String.format(
          Locale.ROOT, "phi%.1f-%dturns-turn%.1fkg-offsets%.1fkg", phi, turns, turnSd, offsets);
    }

    double truth(boolean isWithin, boolean isNearer) {
      double turn = turnSd * turnSd * (isWithin ? 1 - phi : 1);
      double offset = isWithin ? 0 : offsets * offsets;
      return (TOLERANCE - (isNearer ? HIGH : 0)) / 3 / Math.sqrt(turn + offset + POUR * POUR);
    }

    /** Whether the intervals of Pp, Ppk and Cpk held. */
    double[] held(long seed) {
      SplittableRandom random = new SplittableRandom(seed);
      StringBuilder log = new StringBuilder("cast_at,turn,mold,mass_kg\n");
      double level = random.nextGaussian();
      // Evenly spaced, so that their s.d. is the same in each record; in an order that is no trend.
      double evenly = Math.sqrt((MOLDS * MOLDS - 1.0) / 12);
      for (int t = 0; t < turns; t++) {
        for (int m = 0; m < MOLDS; m++) {
          double offset = offsets * (7 * m % MOLDS - (MOLDS - 1) / 2.0) / evenly;
          double mass = 390 + HIGH + offset + turnSd * level + POUR * random.nextGaussian();
          log.append(
                  Instant.parse("2026-03-02T06:00:00Z")
                      .plusMillis(((long) t * MOLDS + m) * 28_800L))
              .append(String.format(Locale.ROOT, ",%d,%d,%.3f%n", t + 1, m + 1, mass));
        }
        level = phi * level + Math.sqrt(1 - phi * phi) * random.nextGaussian();
      }
      CapabilityReport capability = requireNonNull(audit(log).overall().capability());
      return new double[] {
        holds(capability.pp(), truth(false, false)),
        holds(capability.ppk(), truth(false, true)),
        holds(capability.cpk(), truth(true, true))
      };
    }
  }

  private static double holds(@Nullable Estimate of, double truth) {
    Estimate estimate = requireNonNull(of);
    return requireNonNull(estimate.low()) <= truth && truth <= requireNonNull(estimate.high())
        ? 1
        : 0;
  }

  private static CharacteristicReport audit(StringBuilder log) {
    try {
      Path folder = Files.createTempDirectory("capability");
      try {
        String profile =
            String.format(
                Locale.ROOT,
                "molds: %d%ncharacteristics:%n  mass: {unit: kg, lower: %.1f, upper: %.1f}%n",
                MOLDS,
                390 - TOLERANCE,
                390 + TOLERANCE);
        return Audit.run(WanderingWheel.read(folder, log, profile)).characteristics().get(0);
      } finally {
        Files.deleteIfExists(folder.resolve("log.csv"));
        Files.deleteIfExists(folder.resolve("p.yaml"));
        Files.delete(folder);
      }
    } catch (IOException | IntakeException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String share(double[][] held, int column) {
    double mean = Arrays.stream(held).mapToDouble(one -> one[column]).average().orElse(Double.NaN);
    double error = Math.sqrt(mean * (1 - mean) / Math.max(1, held.length - 1));
    return String.format(Locale.ROOT, "%.1f ± %.1f %%", 100 * mean, 100 * error);
  }

  /**
   * Prints the table.
   *
   * @param args how many records a row (default 400), the first seed (default 1946), and what the
   *     names of rows must begin with (default: all)
   */
  public static void main(String[] args) {
    int records = args.length > 0 ? Integer.parseInt(args[0]) : 400;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1946;
    String wanted = args.length > 2 ? args[2] : "";
    System.out.println(
        "\nWhole audits, "
            + records
            + " records a row, seeds from "
            + seed
            + "\n\n"
            + "| record | pp | ppk | cpk |\n|---|---|---|---|");
    for (Row row :
        List.of(
            new Row(0.5, 60, 1, 1.5),
            new Row(0.5, 120, 0.5, 1),
            new Row(0.5, 120, 1.5, 1),
            new Row(0, 120, 1, 1),
            new Row(0.7, 120, 1, 1))) {
      if (row.name().startsWith(wanted)) {
        double[][] held =
            LongStream.range(seed, seed + records)
                .parallel()
                .mapToObj(row::held)
                .toArray(double[][]::new);
        System.out.printf(
            Locale.ROOT,
            "| %s | %s | %s | %s |%n",
            row.name(),
            share(held, 0),
            share(held, 1),
            share(held, 2));
      }
    }
  }
}
