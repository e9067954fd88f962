package org.evenpour.audit;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.function.IntToDoubleFunction;
import org.evenpour.casting.CastingRecord;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;

/** A wheel of eight molds whose turns are given, as a log that is read like any other. */
final class MadeWheel {
  private static final int MOLDS = 8;

  private MadeWheel() {}

  /**
   * A record. Mold offsets are ±1 kg and cancel; a mold is missing in every fifth turn.
   *
   * @param turns how many
   * @param mass level of each turn, from turn 0
   * @param setPoint of each turn; null = no such column
   * @param profile YAML; empty = none
   */
  static CastingRecord of(
      Path folder,
      int turns,
      IntToDoubleFunction mass,
      @org.jspecify.annotations.Nullable IntToDoubleFunction setPoint,
      String profile)
      throws Exception {
    StringBuilder log = new StringBuilder("cast_at,turn,mold,mass_kg");
    log.append(setPoint == null ? "\n" : ",target_mass_kg\n");
    for (int t = -1; t < turns; t++) {
      for (int m = 0; m < MOLDS; m++) {
        if (t > 0 && t % 5 == 0 && m == 7) {
          continue;
        }
        Instant at = Instant.parse("2026-03-02T06:00:00Z").plusSeconds(300L * t + 30L * m);
        double offset = m % 2 == 0 ? 1 : -1;
        // the first turn is start-up, and far off
        double level = t < 0 ? 300 : mass.applyAsDouble(t);
        log.append(String.format(Locale.ROOT, "%s,%d,%d,%.9f", at, t + 2, m + 1, level + offset));
        if (setPoint != null) {
          log.append(String.format(Locale.ROOT, ",%.3f", setPoint.applyAsDouble(Math.max(0, t))));
        }
        log.append('\n');
      }
    }
    Path file =
        Files.writeString(folder.resolve("log.csv"), log.toString(), StandardCharsets.UTF_8);
    Profiles profiles = Profiles.NONE;
    if (!profile.isEmpty()) {
      profiles = ProfileReader.read(Files.writeString(folder.resolve("p.yaml"), profile));
    }
    return LogReader.read(
        List.of(file), profiles, List.of(), null, null, SetAside.nowhere(), Progress.NONE);
  }
}
