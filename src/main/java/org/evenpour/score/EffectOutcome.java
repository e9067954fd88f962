package org.evenpour.score;

import java.util.List;
import java.util.Optional;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.simulate.TrueEffect;

/**
 * What an audit says of one setting's effect on one characteristic, beside the truth.
 *
 * @param acts whether it truly does anything
 * @param hasInterval whether the audit gives an interval
 * @param covers whether that holds the truth
 * @param relativeWidth its width over the true effect; NaN without either
 */
record EffectOutcome(boolean acts, boolean hasInterval, boolean covers, double relativeWidth) {

  static List<EffectOutcome> of(AuditReport report, TrueEffects effects) {
    return effects.rows().stream().map(row -> of(report, row)).toList();
  }

  private static EffectOutcome of(AuditReport report, TrueEffect row) {
    Optional<Effect> found =
        report.settings().stream()
            .filter(one -> row.wheel().isEmpty() || row.wheel().equals(one.wheel()))
            .filter(one -> one.name().equals(row.setting()))
            .flatMap(one -> one.effects().stream())
            .filter(one -> one.characteristic().equals(row.characteristic()))
            .findFirst();
    Double low = found.map(Effect::low).orElse(null);
    Double high = found.map(Effect::high).orElse(null);
    boolean acts = row.perUnit() != 0;
    if (low == null || high == null) {
      return new EffectOutcome(acts, false, false, Double.NaN);
    }
    return new EffectOutcome(
        acts,
        true,
        low <= row.perUnit() && row.perUnit() <= high,
        acts ? (high - low) / Math.abs(row.perUnit()) : Double.NaN);
  }
}
