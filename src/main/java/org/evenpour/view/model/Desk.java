package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.report.Figures;
import org.evenpour.report.NextSteps;
import org.evenpour.report.Quiet;
import org.evenpour.report.Sentences;
import org.evenpour.report.VerdictSentences;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * An opened log, what is chosen in it and how it is shown: all that a page needs.
 *
 * @param source of the rows and the report, which may grow
 * @param selection what is chosen
 * @param look how it is shown
 * @param marking keeps what people say of causes; null where that cannot be kept
 * @param approving keeps which limits people approve; null where that cannot be kept
 */
public record Desk(
    Supplier<OpenedLog> source,
    Selection selection,
    Look look,
    @Nullable Marking marking,
    @Nullable Approving approving) {

  /** Where nothing can be said of causes, and no limits can be approved. */
  public Desk(Supplier<OpenedLog> source, Selection selection, Look look) {
    this(source, selection, look, null, null);
  }

  /** A log that does not grow. */
  public Desk(OpenedLog log, Selection selection, Look look) {
    this(() -> log, selection, look);
  }

  /** The rows and the report. */
  public OpenedLog log() {
    return source.get();
  }

  /** As it is now: what any thread may read, whatever is chosen or opened meanwhile. */
  public Desk asNow() {
    OpenedLog now = log();
    return new Desk(() -> now, selection.copy(), look, marking, approving);
  }

  /** The chosen wheel. */
  public WheelRows wheel() {
    return log().wheel(selection.wheel());
  }

  /**
   * What is computed of the chosen characteristic, of the chosen stretch by itself once that is
   * audited; null where the record has none.
   */
  public @Nullable CharacteristicReport characteristic() {
    CharacteristicReport its =
        OpenedLog.characteristic(figured(), selection.wheel(), selection.characteristic());
    return its != null
        ? its
        : OpenedLog.characteristic(report(), selection.wheel(), selection.characteristic());
  }

  /** The same characteristic in the report of the whole record, which pictures take limits from. */
  public CharacteristicReport whole(CharacteristicReport characteristic) {
    CharacteristicReport whole =
        OpenedLog.characteristic(report(), characteristic.wheel(), characteristic.name());
    return whole == null ? characteristic : whole;
  }

  /** The report that figures and tables are taken from: the stretch's, or the whole record's. */
  public AuditReport figured() {
    StretchReport part = log().part();
    return part != null && part.isOf(selection.wheel(), selection.stretch())
        ? part.report()
        : report();
  }

  /** The unit that a characteristic is shown in. */
  public Unit unit(CharacteristicReport characteristic) {
    return look.units().shown(characteristic.unit());
  }

  /** What tables are about: the chosen characteristic of the chosen wheel. */
  public String about() {
    return selection.wheel() + "\n" + selection.characteristic();
  }

  /** How figures of a characteristic are written. */
  public Figures figures(CharacteristicReport characteristic) {
    return new Figures(unit(characteristic));
  }

  /** What people call a characteristic, with a capital. */
  public String name(String characteristic) {
    return Words.capital(look.language().report().characteristic(characteristic));
  }

  /** A title: the name and the unit. */
  public String title(CharacteristicReport characteristic) {
    String symbol = unit(characteristic).symbol();
    String name = name(characteristic.name());
    return symbol.isEmpty() ? name : name + ", " + symbol;
  }

  /** Says signals in the units and the language of the look. */
  public Sentences sentences() {
    Map<List<String>, Unit> units = new LinkedHashMap<>();
    for (CharacteristicReport one : log().report().characteristics()) {
      units.put(List.of(one.wheel(), one.name()), unit(one));
    }
    Sentences plain = Sentences.of(log().report(), look.language().report(), log().zone());
    return new Sentences(
        plain.words(), plain.zone(), plain.nameWheels(), plain.nameYears(), units, plain.advice());
  }

  /** Says verdicts on molds, of the whole record, in the units and the language of the look. */
  /** What is left to look at where no setting explains a signal. */
  public NextSteps nextSteps() {
    return new NextSteps(report(), sentences());
  }

  public VerdictSentences verdicts() {
    return new VerdictSentences(report(), sentences());
  }

  /** The turns that pages show: the chosen stretch or the whole period. */
  public Stretch turns() {
    Stretch chosen = selection.stretch();
    return chosen != null ? chosen : new Stretch(wheel().first(), wheel().last());
  }

  /** What was looked for at the chosen wheel, in the whole record. */
  public Quiet quiet() {
    return Quiet.of(
        report().characteristics().stream()
            .filter(one -> one.wheel().equals(selection.wheel()))
            .toList(),
        sentences());
  }

  /** What was looked for of a characteristic, in the whole record, whatever stretch is figured. */
  public Quiet quiet(CharacteristicReport figured) {
    CharacteristicReport whole =
        OpenedLog.characteristic(report(), figured.wheel(), figured.name());
    return Quiet.of(List.of(whole == null ? figured : whole), sentences());
  }

  /** The signals of the chosen wheel that touch the chosen stretch, what matters most first. */
  public List<Signal> signals() {
    List<Signal> signals = new ArrayList<>();
    Stretch turns = turns();
    for (Signal signal : log().ranked()) {
      if (signal.wheel().equals(selection.wheel()) && turns.touches(from(signal), to(signal))) {
        signals.add(signal);
      }
    }
    return signals;
  }

  /** Where a signal began. */
  public double from(Signal signal) {
    return log().wheel(signal.wheel()).place(signal.sinceTurn(), signal.sinceAt());
  }

  /** Where a signal ended, or the record did. */
  public double to(Signal signal) {
    WheelRows rows = log().wheel(signal.wheel());
    return signal.open() ? rows.last() : rows.place(signal.lastTurn(), signal.lastCastAt()) + 1;
  }

  /** The report of the whole record. */
  public AuditReport report() {
    return log().report();
  }
}
