package org.evenpour.score;

import java.util.List;
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

  /** What has no row does nothing, where there are rows at all. */
  Truly truly(String wheel, String setting, String characteristic) {
    if (!known) {
      return Truly.UNKNOWN;
    }
    return rows.stream()
            .filter(row -> row.wheel().isEmpty() || row.wheel().equals(wheel))
            .filter(row -> row.setting().equals(setting))
            .anyMatch(row -> row.characteristic().equals(characteristic) && row.perUnit() != 0)
        ? Truly.ACTS
        : Truly.IDLE;
  }
}
