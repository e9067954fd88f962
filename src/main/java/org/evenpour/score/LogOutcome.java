package org.evenpour.score;

import java.util.List;
import org.evenpour.findings.AuditReport;
import org.evenpour.simulate.PlantedShift;
import org.evenpour.simulate.TrueEffect;

/**
 * What an audit made of one log.
 *
 * @param faults in the order of the truth
 * @param strong all its strong links
 * @param effects one for each row of the effects file
 * @param signals how many there are
 * @param matched how many of them are of a planted fault
 */
record LogOutcome(
    List<FaultOutcome> faults,
    List<StrongLink> strong,
    List<EffectOutcome> effects,
    int signals,
    int matched) {

  static LogOutcome of(AuditReport report, List<PlantedShift> truth, TrueEffects effects) {
    // A log of one wheel need not name it as the truth does.
    if (report.log().wheels().size() == 1
        && truth.stream().map(PlantedShift::wheel).distinct().count() <= 1) {
      return judged(
          report,
          truth.stream().map(PlantedShift::atAnyWheel).toList(),
          new TrueEffects(
              effects.known(), effects.rows().stream().map(TrueEffect::atAnyWheel).toList()));
    }
    return judged(report, truth, effects);
  }

  private static LogOutcome judged(
      AuditReport report, List<PlantedShift> truth, TrueEffects effects) {
    List<Planted> faults = Planted.of(truth);
    long matched =
        report.signals().stream()
            .filter(signal -> faults.stream().anyMatch(fault -> fault.isShownBy(signal)))
            .count();
    return new LogOutcome(
        faults.stream().map(fault -> FaultOutcome.of(fault, report.signals())).toList(),
        StrongLink.of(report, faults, effects),
        EffectOutcome.of(report, effects),
        report.signals().size(),
        (int) matched);
  }
}
