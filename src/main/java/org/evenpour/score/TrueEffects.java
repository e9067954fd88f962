package org.evenpour.score;

import java.util.List;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.score.StrongLink.Truly;
import org.evenpour.simulate.TrueEffect;

/**
 * What the settings of one log truly do.
 *
 * @param known whether anybody tells
 * @param rows empty where nobody does
 */
record TrueEffects(boolean known, List<TrueEffect> rows) {
  static final TrueEffects UNKNOWN = new TrueEffects(false, List.of());

  /** How much of a signal shall be explained for a setting to have made it: a good part. */
  private static final double GOOD_PART = 0.3;

  /**
   * What a linked setting truly does to a signal's characteristic, and by its move to the signal.
   */
  Truly truly(Signal signal, Link link) {
    if (!known || link.event()) {
      return Truly.UNKNOWN;
    }
    double effect = perUnit(signal, link.name());
    Double moved = link.movedBy();
    if (effect == 0) {
      return Truly.IDLE;
    }
    return moved != null && effect * moved / signal.size() >= GOOD_PART
        ? Truly.CARRIES
        : Truly.ACTS;
  }

  /** What has no row does nothing, where there are rows at all. */
  private double perUnit(Signal signal, String setting) {
    return rows.stream()
        .filter(row -> row.wheel().isEmpty() || row.wheel().equals(signal.wheel()))
        .filter(row -> row.setting().equals(setting))
        .filter(row -> Planted.isOf(row.characteristic(), signal))
        .mapToDouble(TrueEffect::perUnit)
        .findFirst()
        .orElse(0);
  }
}
