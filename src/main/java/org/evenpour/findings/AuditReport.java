package org.evenpour.findings;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.casting.Specification;
import org.evenpour.link.Finding;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * All that one audit found: the only source of every number on a screen, in the workbook and in the
 * JSON report.
 *
 * <p>Figures are in the units that they are computed in (kg, mm, °C); NaN never occurs: what is
 * undefined is null.
 *
 * @param log what was read
 * @param characteristics one for each wheel and characteristic
 * @param signals in the order of wheels and onsets
 * @param verdicts one for each mold that casts, by wheels, the gravest first
 * @param settings one for each wheel and setting
 * @param events in the order of their times
 * @param setAside the first rows that could not be used
 * @param notes what the reader must know before using the figures, in whole sentences
 * @param setPoints one for each wheel and ladle side
 * @param gauges one for each gauge file and characteristic
 * @param causes what people said of the signals' causes
 * @param watched where the recorded settings themselves moved
 * @param rejects one for each wheel whose log says what was rejected
 * @param advice what to look at first, and what keeps people safe
 */
public record AuditReport(
    Log log,
    List<CharacteristicReport> characteristics,
    List<Signal> signals,
    List<MoldVerdict> verdicts,
    List<SettingReport> settings,
    List<CastingEvent> events,
    List<SetAsideRow> setAside,
    List<Remark> notes,
    List<SetPointReport> setPoints,
    List<GaugeReport> gauges,
    CausesReport causes,
    SettingsWatched watched,
    List<RejectReport> rejects,
    Advice advice) {

  /** Name and version of the JSON form. */
  public static final String SCHEMA = "evenpour.audit/1";

  /** The note that says that much of the record was set aside; the first where it stands. */
  public static final String MUCH_SET_ASIDE = "note.aside";

  /** Copies the lists, so that a report never changes. */
  public AuditReport {
    characteristics = List.copyOf(characteristics);
    signals = List.copyOf(signals);
    verdicts = List.copyOf(verdicts);
    settings = List.copyOf(settings);
    events = List.copyOf(events);
    setAside = List.copyOf(setAside);
    notes = List.copyOf(notes);
    setPoints = List.copyOf(setPoints);
    gauges = List.copyOf(gauges);
    rejects = List.copyOf(rejects);
  }

  /** Where nobody said anything of causes. */
  public AuditReport(
      Log log,
      List<CharacteristicReport> characteristics,
      List<Signal> signals,
      List<MoldVerdict> verdicts,
      List<SettingReport> settings,
      List<CastingEvent> events,
      List<SetAsideRow> setAside,
      List<Remark> notes,
      List<SetPointReport> setPoints,
      List<GaugeReport> gauges) {
    this(
        log,
        characteristics,
        signals,
        verdicts,
        settings,
        events,
        setAside,
        notes,
        setPoints,
        gauges,
        CausesReport.NONE,
        SettingsWatched.NONE,
        List.of(),
        Advice.standard());
  }

  /** The same with some of its signals alone; what people said of their causes stays. */
  public AuditReport withSignals(List<Signal> others) {
    return new AuditReport(
        log,
        characteristics,
        others,
        verdicts,
        settings,
        events,
        setAside,
        notes,
        setPoints,
        gauges,
        causes,
        watched,
        rejects,
        advice);
  }

  /** The same with what became of its settings since. */
  public AuditReport withWatched(SettingsWatched others) {
    return new AuditReport(
        log,
        characteristics,
        signals,
        verdicts,
        settings,
        events,
        setAside,
        notes,
        setPoints,
        gauges,
        causes,
        others,
        rejects,
        advice);
  }

  /** The same with these causes, and the note on them in the place of the one before. */
  public AuditReport withCauses(CausesReport others) {
    List<Remark> told = new ArrayList<>(notes);
    told.remove(causes.note());
    Remark note = others.note();
    if (note != null) {
      told.add(note);
    }
    return new AuditReport(
        log,
        characteristics,
        signals,
        verdicts,
        settings,
        events,
        setAside,
        told,
        setPoints,
        gauges,
        others,
        watched,
        rejects,
        advice);
  }

  /**
   * What was read.
   *
   * @param files the logs' names
   * @param molds how many molds cast, all wheels together
   * @param turns how many turns, all wheels together
   */
  public record Log(
      List<String> files,
      long rowsRead,
      long rowsKept,
      long rowsSetAside,
      Instant firstCastAt,
      Instant lastCastAt,
      List<String> wheels,
      int molds,
      int turns) {}

  /**
   * One characteristic of one wheel.
   *
   * @param name {@code mass}, {@code thickness}, {@code wedge}, …
   * @param unit in which the figures here are
   * @param displayUnit suffix of the unit in which people read them
   * @param specification that the newest anode was judged by
   * @param inFull what stands beside the capability indices
   * @param wheelChart null where the turns cannot be told from the molds
   * @param specifications that were in force one after another; empty where there was only the
   *     profile's
   */
  public record CharacteristicReport(
      String wheel,
      String name,
      String unit,
      String displayUnit,
      Specification specification,
      Overall overall,
      Variance variance,
      CapabilityInFull inFull,
      @Nullable WheelChart wheelChart,
      Monitoring monitoring,
      List<MoldReport> molds,
      List<SpecificationUsed> specifications) {}

  /**
   * A specification, and which anodes were judged by it. Capability is of those of the last one.
   *
   * @param from null = the profile's, before the first revision
   * @param who revised it; empty for the profile's
   * @param anodes how many were cast while it was in force
   */
  public record SpecificationUsed(
      @Nullable Instant from, Specification specification, String who, String why, long anodes) {}

  /** All anodes together; the normality test and capability are null where they are not defined. */
  public record Overall(
      long count,
      double mean,
      @Nullable Double sd,
      double minimum,
      double maximum,
      @Nullable Normality normality,
      @Nullable CapabilityReport capability) {}

  /** The Anderson–Darling test for a normal distribution with estimated mean and s.d. */
  public record Normality(double andersonDarling, double pValue) {}

  /**
   * Where the spread comes from, as variances; null where the record cannot tell.
   *
   * @param mold between molds
   * @param turn between turns
   * @param pour what is left: from pour to pour
   */
  public record Variance(
      @Nullable Double mold,
      @Nullable Double turn,
      @Nullable Double pour,
      @Nullable Double moldF,
      @Nullable Integer moldFDf1,
      @Nullable Integer moldFDf2,
      @Nullable Double moldFP) {}

  /**
   * What the whole wheel did, turn by turn: an individuals chart of turn effects.
   *
   * @param tests run test id to count
   * @param autocorrelation lag-1, of the turn effects in the base period
   */
  public record WheelChart(
      double center,
      double lowerLimit,
      double upperLimit,
      double sigma,
      Map<String, Long> tests,
      @Nullable Double autocorrelation,
      List<TurnPoint> points) {}

  /**
   * One turn of the wheel.
   *
   * @param value mean over the molds present, corrected for which were present, on the
   *     characteristic's own scale
   * @param anodes how many it rests on
   * @param startUp the first turn after a stop: shown, not charted
   */
  public record TurnPoint(int turn, Instant at, double value, int anodes, boolean startUp) {}

  /**
   * The limits that signals were judged by.
   *
   * @param source such as "proposed by this audit"
   * @param baseTurns how many turns they rest on
   * @param pourSigma pour to pour, robust
   * @param turnSigma of the turn effects, allowing for their autocorrelation
   * @param shiftLimit the cumulative-sum decision interval h for mold shifts, in sigma
   * @param pourLimit single pours beyond this many sigma are a signal
   * @param falseAlarmsPerShift that all charts of the wheel together may raise
   * @param finds how fast a shift is found; null without limits
   * @param used which turns were judged by what, in the order of time; the other figures are of the
   *     last limits among them
   * @param notLookedFor why no signals were looked for in any turn; null where they were
   */
  public record Monitoring(
      String source,
      int baseTurns,
      @Nullable Double pourSigma,
      @Nullable Double turnSigma,
      @Nullable Double shiftLimit,
      @Nullable Double pourLimit,
      double falseAlarmsPerShift,
      @Nullable Finds finds,
      List<LimitsUsed> used,
      @Nullable NotLookedFor notLookedFor) {

    /** Where nothing is said of which turns were judged by what. */
    public Monitoring(
        String source,
        int baseTurns,
        @Nullable Double pourSigma,
        @Nullable Double turnSigma,
        @Nullable Double shiftLimit,
        @Nullable Double pourLimit,
        double falseAlarmsPerShift,
        @Nullable Finds finds) {
      this(
          source,
          baseTurns,
          pourSigma,
          turnSigma,
          shiftLimit,
          pourLimit,
          falseAlarmsPerShift,
          finds,
          List.of(),
          null);
    }
  }

  /**
   * Limits, and which turns were judged by them.
   *
   * @param source {@code approved}, {@code proposed} (by the audit, from these very turns) or
   *     {@code none}
   * @param version null where nobody approved them, and so the next four
   * @param baseTurns how many turns they rest on
   * @param notLookedFor why no signals were looked for in these turns; null where they were
   */
  public record LimitsUsed(
      String source,
      @Nullable Integer version,
      @Nullable Instant approvedAt,
      @Nullable String who,
      @Nullable String why,
      @Nullable Instant validFrom,
      int firstTurn,
      int lastTurn,
      int turns,
      Instant firstCastAt,
      Instant lastCastAt,
      int baseTurns,
      @Nullable Double center,
      @Nullable Double pourSigma,
      @Nullable Double turnSigma,
      @Nullable NotLookedFor notLookedFor) {}

  /**
   * How fast a lasting shift is found, on average, from when it begins.
   *
   * @param shift a round size near one and a half sigma of a pour, in the unit
   * @param moldTurns turns until it is found in one mold
   * @param wheelTurns turns until it is found where the whole wheel shifts
   */
  public record Finds(double shift, double moldTurns, double wheelTurns) {}

  /**
   * One mold: its classic individuals chart, its capability and how far it stands from the wheel.
   *
   * @param sigmaWithin mean moving range / d2
   * @param tests run test id to count
   * @param offset how far the mold stands from the wheel's center; null where turns cannot be told
   *     from molds
   * @param offsetLow lower end of its 95 % interval
   * @param offsetHigh upper end
   * @param outside how many anodes lie outside the specification; null without one
   */
  public record MoldReport(
      String mold,
      long count,
      double mean,
      @Nullable Double sd,
      @Nullable Double sigmaWithin,
      double center,
      @Nullable Double lowerLimit,
      @Nullable Double upperLimit,
      Map<String, Long> tests,
      @Nullable CapabilityReport capability,
      @Nullable Double offset,
      @Nullable Double offsetLow,
      @Nullable Double offsetHigh,
      @Nullable Long outside) {}

  /**
   * Capability and performance indices; null where the specification has no such side.
   *
   * @param rests what the intervals of Cpk and Ppk rest on; null where that is not told
   */
  public record CapabilityReport(
      @Nullable Estimate cp,
      @Nullable Estimate cpk,
      @Nullable Estimate cpl,
      @Nullable Estimate cpu,
      @Nullable Estimate pp,
      @Nullable Estimate ppk,
      @Nullable Estimate cpm,
      @Nullable Double fractionOutsideExpected,
      double fractionOutsideObserved,
      @Nullable Rests rests) {}

  /**
   * What the intervals of Cpk and Ppk rest on, whatever the limits: index · shrink ± 1.96 √(1/(9 n)
   * + (index · shrink)²/(2 df)) (Bissell 1990), for Cpk without shrink.
   *
   * @param countWithin how many independent values they are worth to the mean, for Cpk
   * @param freedomWithin degrees of freedom of the within sigma
   * @param count the same for Ppk
   * @param freedom of the overall s.d.
   * @param shrink the expected overall s.d. over the true one
   */
  public record Rests(
      double countWithin, double freedomWithin, double count, double freedom, double shrink) {}

  /** A value with its 95 % confidence interval; the ends are null where there is none. */
  public record Estimate(double value, @Nullable Double low, @Nullable Double high) {}

  /**
   * Violations that belong together.
   *
   * @param id stable for the same input: {@code S1}, {@code S2}, …
   * @param mold null unless the scope is a mold or a pour
   * @param side null unless a ladle side is concerned
   * @param firstTurn turn of the first violation
   * @param lastTurn last turn to which it holds
   * @param sinceTurn estimated onset
   * @param sinceAt when the onset turn began
   * @param open whether it still held when the log ended
   * @param tests ids of the detectors and run tests that fired
   * @param size mean departure since the onset, in the characteristic's unit; for a spread, the
   *     added s.d.
   * @param sizeLow lower end of its 95 % interval
   * @param sizeHigh upper end
   * @param sizeSigma size in sigma of its scope
   * @param otherSide of two ladle sides, the probability that the other one moved, the other way;
   *     null unless one of two sides is concerned
   * @param links best first
   */
  public record Signal(
      String id,
      String wheel,
      String characteristic,
      Scope scope,
      @Nullable String mold,
      @Nullable String side,
      int firstTurn,
      int lastTurn,
      Instant firstCastAt,
      Instant lastCastAt,
      int sinceTurn,
      Instant sinceAt,
      boolean open,
      List<String> tests,
      Direction direction,
      double size,
      @Nullable Double sizeLow,
      @Nullable Double sizeHigh,
      double sizeSigma,
      @Nullable Double otherSide,
      List<Link> links) {

    /** The same with other links. */
    public Signal withLinks(List<Link> others) {
      return new Signal(
          id,
          wheel,
          characteristic,
          scope,
          mold,
          side,
          firstTurn,
          lastTurn,
          firstCastAt,
          lastCastAt,
          sinceTurn,
          sinceAt,
          open,
          tests,
          direction,
          size,
          sizeLow,
          sizeHigh,
          sizeSigma,
          otherSide,
          others);
    }
  }

  /** How well a setting or an event goes with a signal. */
  public enum Evidence {
    /** It moved, beyond chance, and its effect explains a good part. */
    STRONG,
    /** It moved, but its effect or its move is unproven. */
    MOVED,
    /** Nothing speaks for it. */
    NONE
  }

  /**
   * What was found of one setting or event beside one signal. Evidence, never "the cause".
   *
   * @param name the setting's column, or the event's kind
   * @param event whether it is an event
   * @param unit of the setting; empty for events and categories
   * @param movedBy how far the setting moved, in its unit; null for events
   * @param expectedEffect what that move would do to the characteristic, by this plant's own
   *     history
   * @param explainedShare expected effect over the signal's size
   * @param explainedLow lower end of its 95 % interval
   * @param explainedHigh upper end
   * @param qValue false discovery rate over the whole audit at which this move counts as real
   * @param sinceTurn when the setting itself moved, or the event's turn
   * @param lookFirst what to look at first, in the trade's words; empty where nothing is advised
   * @param togetherWith settings that moved together with this one through the whole record, so
   *     that their effects cannot be told apart on it; empty for most
   */
  public record Link(
      String name,
      boolean event,
      String group,
      String unit,
      Evidence evidence,
      @Nullable Double movedBy,
      @Nullable Double expectedEffect,
      @Nullable Double explainedShare,
      @Nullable Double explainedLow,
      @Nullable Double explainedHigh,
      @Nullable Double qValue,
      @Nullable Integer sinceTurn,
      String lookFirst,
      List<String> togetherWith) {

    /** The same with another effect, and what that explains. */
    public Link withEffect(
        Double expected, @Nullable Double explained, @Nullable Double low, @Nullable Double high) {
      return new Link(
          name,
          event,
          group,
          unit,
          evidence,
          movedBy,
          expected,
          explained,
          low,
          high,
          qValue,
          sinceTurn,
          lookFirst,
          togetherWith);
    }

    /** What it names, as a cause. */
    public CauseMark.Cause cause() {
      return new CauseMark.Cause(event ? CauseMark.Kind.EVENT : CauseMark.Kind.SETTING, name);
    }

    /**
     * Whether the setting moved no further than it often does by itself; if there is evidence all
     * the same, it is that its effect is known and explains a good part of the signal.
     */
    public boolean isUsualMove() {
      Double q = qValue;
      return !event && (q == null || q >= Finding.FALSE_DISCOVERIES);
    }
  }

  /**
   * One recorded setting over the whole log.
   *
   * @param category whether it is a category; then {@code mean} to {@code maximum} are null
   * @param levels how many categories
   * @param effects what one unit of it, or each of its levels, does to each characteristic
   */
  public record SettingReport(
      String wheel,
      String name,
      String unit,
      String group,
      int lagTurns,
      boolean category,
      long count,
      long missing,
      @Nullable Double mean,
      @Nullable Double sd,
      @Nullable Double minimum,
      @Nullable Double maximum,
      int levels,
      List<Effect> effects) {}

  /**
   * The effect of one unit of a setting on a characteristic, molds and turns taken out.
   *
   * @param perUnit null where the record cannot tell (the setting never moved), and of a category
   * @param low lower end of its 95 % interval
   * @param high upper end
   * @param inFull what stands beside it
   */
  public record Effect(
      String characteristic,
      @Nullable Double perUnit,
      @Nullable Double low,
      @Nullable Double high,
      EffectInFull inFull) {

    /** An effect with nothing beside it. */
    public Effect(
        String characteristic,
        @Nullable Double perUnit,
        @Nullable Double low,
        @Nullable Double high) {
      this(characteristic, perUnit, low, high, EffectInFull.NOTHING);
    }
  }
}
