package org.evenpour.audit;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;

/**
 * A wheel on which crews come in turn, ten turns each: it is known what each does to the mass. Each
 * pour differs by 1 kg by itself. A wash batch lasts for 40 turns and never comes back.
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
    SplittableRandom random = new SplittableRandom(20261125);
    StringBuilder log = new StringBuilder("cast_at,turn,mold,mass_kg,crew,wash_batch\n");
    for (int t = 0; t < TURNS; t++) {
      int crew = t / 10 % truly.length;
      for (int m = 0; m < MOLDS; m++) {
        Instant at = Instant.parse("2026-03-02T06:00:00Z").plusSeconds(600L * t + 30L * m);
        log.append(
            String.format(
                Locale.ROOT,
                "%s,%d,%d,%.4f,K%d,W%d\n",
                at,
                t + 1,
                m + 1,
                390 + truly[crew] + random.nextGaussian(),
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
