package org.evenpour.audit;

import java.util.List;
import org.evenpour.casting.Scope;
import org.evenpour.control.LimitsInForce;
import org.evenpour.control.LimitsInForce.SeriesLimits;
import org.evenpour.control.SuccessiveMonitor.Term;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.BeyondSettings.View;
import org.jspecify.annotations.Nullable;

/**
 * An audit and the limits that it judged by.
 *
 * @param report what was found
 * @param limits one for each wheel and characteristic that had any
 * @param settings the limits of settings that are watched
 * @param views the wheels' second views, with the limits of what is left there
 */
public record Audited(
    AuditReport report, List<InForce> limits, List<OfSetting> settings, List<OfView> views) {

  /** Copies the lists. */
  public Audited {
    limits = List.copyOf(limits);
    settings = List.copyOf(settings);
    views = List.copyOf(views);
  }

  /**
   * A second view of a wheel's characteristic, and what it is judged by.
   *
   * @param limits of what is left
   */
  public record OfView(View view, SeriesLimits limits) {}

  /**
   * Limits of a setting.
   *
   * @param ofMolds whether they are of the molds' own values; else of what all molds have in common
   * @param scopes that they are good for
   */
  public record OfSetting(
      String wheel, String setting, boolean ofMolds, List<Scope> scopes, LimitsInForce limits) {

    /** Copies the list. */
    public OfSetting {
      scopes = List.copyOf(scopes);
    }

    boolean isOf(String itsWheel, String itsSetting, boolean molds) {
      return wheel.equals(itsWheel) && setting.equals(itsSetting) && ofMolds == molds;
    }
  }

  /**
   * The limits of one characteristic of one wheel.
   *
   * @param limits of the newest turns that were judged; null where none were
   * @param terms from when on what is in force, those of later included
   */
  public record InForce(
      String wheel, String characteristic, @Nullable LimitsInForce limits, List<Term> terms) {

    boolean isOf(String itsWheel, String itsCharacteristic) {
      return wheel.equals(itsWheel) && characteristic.equals(itsCharacteristic);
    }
  }

  /** From when on what is in force; empty where a characteristic is unknown. */
  public List<Term> terms(String wheel, String characteristic) {
    return limits.stream()
        .filter(one -> one.isOf(wheel, characteristic))
        .findFirst()
        .map(InForce::terms)
        .orElse(List.of());
  }

  /** The limits of a characteristic's newest turns; null where it had none. */
  public @Nullable LimitsInForce limits(String wheel, String characteristic) {
    return limits.stream()
        .filter(one -> one.isOf(wheel, characteristic))
        .findFirst()
        .map(InForce::limits)
        .orElse(null);
  }
}
