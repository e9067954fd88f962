package org.evenpour.audit;

import java.util.Arrays;
import java.util.Locale;
import java.util.function.LongFunction;
import java.util.stream.LongStream;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.EffectInFull.Known;

/** What {@link LinkTrial} reads in audits, counted by record, and shares of it with errors. */
final class LinkCounts {
  /** What the names of settings begin with that are recorded pour by pour. */
  static final String BY_POUR = "pour_";

  private LinkCounts() {}

  static double[][] each(int records, long seed, LongFunction<double[]> counts) {
    return LongStream.range(seed, seed + records)
        .parallel()
        .mapToObj(counts)
        .toArray(double[][]::new);
  }

  /**
   * Share of what is counted in one column in another's, in percent, with the standard error of a
   * ratio of sums over records.
   */
  static String share(double[][] rows, int part, int whole) {
    double parts = Arrays.stream(rows).mapToDouble(row -> row[part]).sum();
    double all = Arrays.stream(rows).mapToDouble(row -> row[whole]).sum();
    if (all == 0) {
      return "none";
    }
    double share = parts / all;
    double squares =
        Arrays.stream(rows).mapToDouble(row -> Math.pow(row[part] - share * row[whole], 2)).sum();
    double error = Math.sqrt(squares * rows.length / Math.max(1, rows.length - 1)) / all;
    return String.format(Locale.ROOT, "%.1f ± %.1f %% of %.0f", 100 * share, 100 * error, all);
  }

  static boolean isWheels(Signal signal) {
    return signal.scope() == Scope.WHEEL && signal.direction() != Direction.SPREAD;
  }

  private static Effect effect(AuditReport report, String setting) {
    return report.settings().stream()
        .filter(one -> one.name().equals(setting))
        .findFirst()
        .orElseThrow()
        .effects()
        .get(0);
  }

  static boolean isProven(AuditReport report, String setting) {
    return effect(report, setting).inFull().known() == Known.PROVEN;
  }

  /** Whether the table names the setting together with another, for one of them acts. */
  static boolean isTogether(AuditReport report, String setting) {
    return !effect(report, setting).inFull().togetherWith().isEmpty();
  }

  static Evidence evidence(Signal signal, String setting) {
    return signal.links().stream()
        .filter(one -> one.name().equals(setting))
        .map(Link::evidence)
        .findFirst()
        .orElse(Evidence.NONE);
  }

  /** Whether the setting is the first link, with something that speaks for it. */
  static boolean isFirst(Signal signal, String setting) {
    return !signal.links().isEmpty()
        && signal.links().get(0).name().equals(setting)
        && signal.links().get(0).evidence() != Evidence.NONE;
  }

  /**
   * Of a record: one, whether any effect is proven; effects that can be known, and those proven;
   * those by the turn, and next to nothing of them; those by the pour, and next to nothing of them.
   */
  static double[] known(AuditReport report) {
    double[] row = new double[8];
    row[0] = 1;
    for (SettingReport setting : report.settings()) {
      int by = setting.name().startsWith(BY_POUR) ? 6 : 4;
      for (Effect effect : setting.effects()) {
        Known known = effect.inFull().known();
        int told = known == Known.NEVER_MOVED || known == Known.CAME_ONCE ? 0 : 1;
        row[2] += told;
        row[by] += told;
        row[3] += known == Known.PROVEN ? 1 : 0;
        row[by + 1] += known == Known.SMALL ? 1 : 0;
      }
    }
    row[1] = row[3] > 0 ? 1 : 0;
    return row;
  }
}
