package org.evenpour.audit;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import org.evenpour.findings.AuditReport;
import org.evenpour.intake.IntakeException;

/**
 * A wheel of ten molds whose settings are of the whole wheel, each turn's value given: pours differ
 * by 1 kg by themselves, turns by 0.4 kg, and what a setting does to the mass is known.
 */
final class MadeSettings {
  private static final int MOLDS = 10;
  private static final String PROFILE =
      "characteristics:\n  mass: {unit: kg, lower: 384, target: 390, upper: 396}\n";

  final int turns;
  final SplittableRandom random;
  private final double[] mass;
  private final Map<String, double[]> settings = new LinkedHashMap<>();

  MadeSettings(int turns, long seed) {
    this.turns = turns;
    random = new SplittableRandom(seed);
    mass = wandering(0, 0.4);
  }

  /** A series that wanders: a first-order autoregression of that s.d. */
  double[] wandering(double phi, double sd) {
    double[] series = new double[turns];
    double now = sd * random.nextGaussian();
    for (int t = 0; t < turns; t++) {
      series[t] = now;
      now = phi * now + sd * Math.sqrt(1 - phi * phi) * random.nextGaussian();
    }
    return series;
  }

  /** A random walk of steps of 1. */
  double[] walk() {
    double[] series = new double[turns];
    for (int t = 1; t < turns; t++) {
      series[t] = series[t - 1] + random.nextGaussian();
    }
    return series;
  }

  /**
   * A setting.
   *
   * @param perUnit what one unit of it does to the mass, in kg
   */
  MadeSettings setting(String name, double[] series, double perUnit) {
    settings.put(name, series);
    for (int t = 0; t < turns; t++) {
      mass[t] += perUnit * series[t];
    }
    return this;
  }

  AuditReport audit(Path folder) throws IOException, IntakeException {
    StringBuilder log = new StringBuilder("cast_at,turn,mold,mass_kg");
    settings.keySet().forEach(name -> log.append(',').append(name));
    log.append('\n');
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < MOLDS; m++) {
        Instant at = Instant.parse("2026-03-02T06:00:00Z").plusSeconds(600L * t + 30L * m);
        double kg = 390 + mass[t] + random.nextGaussian();
        log.append(String.format(Locale.ROOT, "%s,%d,%d,%.4f", at, t + 1, m + 1, kg));
        for (double[] series : settings.values()) {
          log.append(String.format(Locale.ROOT, ",%.4f", series[t]));
        }
        log.append('\n');
      }
    }
    return MadeCrews.audited(folder, log, PROFILE);
  }
}
