package org.evenpour.audit;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import org.evenpour.findings.AuditReport;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.evenpour.stats.Normal;

/**
 * A wheel on which crews come in turn, ten turns each unless a test says otherwise: it is known
 * what each does to the mass. Each pour differs by 1 kg by itself. A wash batch lasts for 40 turns
 * and never comes back.
 */
public final class MadeCrews {
  private static final int TURNS = 240;
  private static final int MOLDS = 10;
  private static final String PROFILE =
      "characteristics:\n  mass: {unit: kg, lower: 384, target: 390, upper: 396}\n";

  private MadeCrews() {}

  /**
   * Its audit.
   *
   * @param truly what crews K1, K2, … do, in kg
   */
  public static AuditReport audit(Path folder, double... truly)
      throws IOException, IntakeException {
    return audit(folder, 20261125, TURNS, 10, turn -> 0, truly);
  }

  /**
   * The audit of a longer record, on which turns differ by themselves too, by 0.4 kg.
   *
   * @param turns how many
   * @param visit how many turns a crew stays
   * @param fault what befell each turn besides, in kg
   * @param truly what crews K1, K2, … do, in kg
   */
  static AuditReport visits(
      Path folder, long seed, int turns, int visit, IntToDoubleFunction fault, double... truly)
      throws IOException, IntakeException {
    SplittableRandom random = new SplittableRandom(seed);
    double[] own = random.doubles(turns).map(u -> 0.4 * Normal.quantile(u)).toArray();
    return audit(folder, seed + 1, turns, visit, t -> own[t] + fault.applyAsDouble(t), truly);
  }

  private static AuditReport audit(
      Path folder, long seed, int turns, int visit, IntToDoubleFunction turn, double... truly)
      throws IOException, IntakeException {
    SplittableRandom random = new SplittableRandom(seed);
    StringBuilder log = new StringBuilder("cast_at,turn,mold,mass_kg,crew,wash_batch\n");
    for (int t = 0; t < turns; t++) {
      int crew = t / visit % truly.length;
      double does = truly[crew] + turn.applyAsDouble(t);
      for (int m = 0; m < MOLDS; m++) {
        Instant at = Instant.parse("2026-03-02T06:00:00Z").plusSeconds(600L * t + 30L * m);
        log.append(
            String.format(
                Locale.ROOT,
                "%s,%d,%d,%.4f,K%d,W%d\n",
                at,
                t + 1,
                m + 1,
                390 + does + random.nextGaussian(),
                crew + 1,
                t / 40));
      }
    }
    return audited(folder, log, PROFILE);
  }

  /** The audit of a log and a profile, which are written into a folder. */
  static AuditReport audited(Path folder, CharSequence log, String profile)
      throws IOException, IntakeException {
    Path file = Files.writeString(folder.resolve("log.csv"), log, StandardCharsets.UTF_8);
    return Audit.run(
        LogReader.read(
            List.of(file),
            ProfileReader.read(Files.writeString(folder.resolve("p.yaml"), profile)),
            List.of(),
            null,
            null,
            SetAside.nowhere(),
            Progress.NONE));
  }

  /** A setting of the report. */
  public static AuditReport.SettingReport setting(AuditReport report, String name) {
    return report.settings().stream()
        .filter(one -> one.name().equals(name))
        .findFirst()
        .orElseThrow();
  }
}
