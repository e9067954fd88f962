package org.evenpour.audit;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.GaugeFile;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.GaugeReport;
import org.evenpour.findings.GaugeReport.OnWheel;
import org.evenpour.findings.GaugeReport.Verdict;
import org.evenpour.stats.GaugeStudy;
import org.evenpour.stats.GuardBand;
import org.evenpour.stats.KnownMass;
import org.evenpour.stats.MeanSquare;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/** What gauge files say, and what that means for an audited record. */
final class GaugeAudit {
  /** A gauge that takes more of the tolerance can't judge anodes. Common practice, no source. */
  static final double MOST_OF_TOLERANCE = 0.3;

  /**
   * Nor can one with more than this part of the scatter from pour to pour find shifts: a choice.
   */
  static final double MOST_OF_POUR = 1.0 / 3;

  private static final double CONFIDENCE = 0.95;
  private static final double CHANCE = 0.05;
  private static final double MILLIS_A_DAY = Duration.ofDays(1).toMillis();

  private GaugeAudit() {}

  /** The report with its gauges, and with notes on what they cannot carry before all others. */
  static AuditReport added(AuditReport report, CastingRecord record, List<GaugeFile> files) {
    List<GaugeReport> gauges = new ArrayList<>();
    for (GaugeFile file : files) {
      for (GaugeFile.Study study : file.studies()) {
        gauges.add(study(file.name(), study, report, record));
      }
      for (GaugeFile.Checks checks : file.checks()) {
        gauges.add(checks(file.name(), checks, report, record));
      }
    }
    List<Remark> notes = new ArrayList<>();
    gauges.forEach(gauge -> notes(gauge, notes));
    // Behind those of the gauges, on which all other figures rest.
    notes.addAll(report.notes());
    return new AuditReport(
        report.log(),
        report.characteristics(),
        report.signals(),
        report.verdicts(),
        report.settings(),
        report.events(),
        report.setAside(),
        notes,
        report.setPoints(),
        gauges,
        report.causes(),
        report.watched(),
        report.rejects(),
        report.advice());
  }

  private static GaugeReport study(
      String file, GaugeFile.Study study, AuditReport report, CastingRecord record) {
    GaugeStudy found = GaugeStudy.of(study.measured());
    double sigma = Math.sqrt(found.gauge().value());
    boolean isPooled = found.interaction().df() == 0;
    double share = found.shareOfSpread();
    return new GaugeReport(
        file,
        study.characteristic(),
        study.displayUnit().canonicalUnit().suffix(),
        study.displayUnit().suffix(),
        study.parts().size(),
        study.operators().size(),
        (long) study.parts().size() * study.operators().size() * study.measured()[0][0].length,
        spread(found.gauge()),
        spread(found.repeatability()),
        Math.sqrt(found.reproducibility()),
        spread(found.betweenOperators()),
        isPooled ? new Estimate(0, null, null) : spread(found.operatorByPart()),
        spread(found.betweenParts()),
        CharacteristicAudit.known(found.interactionP()),
        CharacteristicAudit.known(share),
        null,
        null,
        null,
        null,
        wheels(study.characteristic(), sigma, report, record));
  }

  private static GaugeReport checks(
      String file, GaugeFile.Checks checks, AuditReport report, CastingRecord record) {
    int n = checks.readings().size();
    double[] days = new double[n];
    double[] off = new double[n];
    Instant first = checks.readings().get(0).at();
    for (int i = 0; i < n; i++) {
      GaugeFile.Reading reading = checks.readings().get(i);
      // In days and not in readings: checks are not evenly spaced, and a gauge drifts in time.
      days[i] = Duration.between(first, reading.at()).toMillis() / MILLIS_A_DAY;
      off[i] = reading.measured() - reading.reference();
    }
    KnownMass found = KnownMass.of(days, off, 0);
    Unit unit = checks.displayUnit();
    Estimate sigma = estimate(found.repeatability());
    return new GaugeReport(
        file,
        checks.characteristic(),
        unit.canonicalUnit().suffix(),
        unit.suffix(),
        0,
        0,
        found.count(),
        sigma,
        sigma,
        null,
        null,
        null,
        null,
        null,
        null,
        estimate(found.bias()),
        CharacteristicAudit.known(found.biasP()),
        Double.isNaN(found.drift().value()) ? null : estimate(found.drift()),
        CharacteristicAudit.known(found.driftP()),
        wheels(checks.characteristic(), sigma.value(), report, record));
  }

  private static Estimate spread(MeanSquare.Combination variance) {
    return new Estimate(
        Math.sqrt(variance.value()),
        // Limits of a difference of mean squares may lie below 0, and a variance may not.
        CharacteristicAudit.known(Math.sqrt(Math.max(0, variance.low()))),
        CharacteristicAudit.known(Math.sqrt(Math.max(0, variance.high()))));
  }

  private static Estimate estimate(KnownMass.Estimate its) {
    return new Estimate(
        its.value(), CharacteristicAudit.known(its.low()), CharacteristicAudit.known(its.high()));
  }

  private static List<OnWheel> wheels(
      String name, double sigma, AuditReport report, CastingRecord record) {
    List<OnWheel> all = new ArrayList<>();
    for (CharacteristicReport one : report.characteristics()) {
      if (one.name().equals(name)) {
        all.add(wheel(one, sigma, values(record, one)));
      }
    }
    return all;
  }

  private static double[] values(CastingRecord record, CharacteristicReport report) {
    return record.wheels().stream()
        .filter(wheel -> wheel.wheel().equals(report.wheel()))
        .map(WheelRecord::characteristics)
        .flatMap(List::stream)
        .filter(one -> one.name().equals(report.name()))
        .map(Characteristic::values)
        .findFirst()
        .orElseThrow()
        .toArray();
  }

  private static OnWheel wheel(CharacteristicReport report, double sigma, double[] values) {
    Specification specification = report.specification();
    Double lower = specification.lower();
    Double upper = specification.upper();
    Double sd = report.overall().sd();
    Double pour = report.monitoring().pourSigma();
    GuardBand band = GuardBand.of(lower, upper, sigma, CONFIDENCE);
    long inDoubt = 0;
    for (double x : values) {
      inDoubt += !Double.isNaN(x) && band.verdict(x) == GuardBand.Verdict.UNDECIDED ? 1 : 0;
    }
    Double ofTolerance =
        lower == null || upper == null || !(upper > lower)
            ? null
            : (Double) (6 * sigma / (upper - lower));
    Double ofPour = share(sigma, pour);
    List<Verdict> tooCoarse = new ArrayList<>();
    if (ofTolerance != null && ofTolerance > MOST_OF_TOLERANCE) {
      tooCoarse.add(Verdict.ACCEPTANCE);
    }
    if (ofPour != null && ofPour > MOST_OF_POUR) {
      tooCoarse.add(Verdict.SIGNALS);
    }
    Double ofSpread = share(sigma, sd);
    return new OnWheel(
        report.wheel(),
        // Two estimates: by chance the gauge may scatter more than all that it measured.
        ofSpread == null ? null : (Double) Math.min(1, ofSpread),
        ofPour,
        ofTolerance,
        band.acceptLow(),
        band.acceptHigh(),
        band.rejectBelow(),
        band.rejectAbove(),
        specification.hasLimits() ? (Long) inDoubt : null,
        band.leavesRoom(),
        tooCoarse);
  }

  private static @Nullable Double share(double sigma, @Nullable Double of) {
    return of == null || !(of > 0) ? null : (Double) (sigma / of);
  }

  private static void notes(GaugeReport gauge, List<Remark> notes) {
    Remark name = Notes.name(gauge.characteristic());
    for (OnWheel wheel : gauge.wheels()) {
      Double ofTolerance = wheel.shareOfTolerance();
      Double ofPour = wheel.shareOfPour();
      if (wheel.tooCoarseFor().contains(Verdict.ACCEPTANCE) && ofTolerance != null) {
        notes.add(
            Notes.at(
                wheel.wheel(),
                Remark.of("note.gauge.tolerance", name, rounded("%.0f", 100 * ofTolerance))));
      }
      if (wheel.tooCoarseFor().contains(Verdict.SIGNALS) && ofPour != null) {
        notes.add(
            Notes.at(
                wheel.wheel(), Remark.of("note.gauge.pour", name, rounded("%.0f", 100 * ofPour))));
      }
    }
    Estimate bias = gauge.bias();
    Double biasP = gauge.biasP();
    if (bias != null && biasP != null && biasP < CHANCE) {
      Unit unit = Unit.of(gauge.displayUnit());
      notes.add(
          Remark.of(
              bias.value() > 0 ? "note.gauge.high" : "note.gauge.low",
              name,
              rounded("%.2f", Math.abs(unit.differenceFromCanonical(bias.value()))),
              unit.symbol()));
    }
    Double driftP = gauge.driftP();
    if (driftP != null && driftP < CHANCE) {
      notes.add(Remark.of("note.gauge.drift", name));
    }
  }

  private static String rounded(String format, double value) {
    return String.format(Locale.ROOT, format, value);
  }
}
