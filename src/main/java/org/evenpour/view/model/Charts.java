package org.evenpour.view.model;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.IntUnaryOperator;
import java.util.function.LongFunction;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.EventKind;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.LimitsBook;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.AuditReport.TurnPoint;
import org.evenpour.findings.AuditReport.WheelChart;
import org.evenpour.picture.Mark;
import org.evenpour.picture.PeriodStrip;
import org.evenpour.picture.Points;
import org.evenpour.picture.SeriesPicture;
import org.evenpour.picture.SeriesPicture.Axis;
import org.evenpour.picture.SeriesPicture.Band;
import org.evenpour.picture.SeriesPicture.Change;
import org.evenpour.picture.SeriesPicture.Flag;
import org.evenpour.picture.SeriesPicture.Line;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** Series of an opened log as pictures: the same scale for the same thing wherever it is shown. */
public final class Charts {
  private static final List<String> WHEEL_EVENTS =
      List.of(EventKind.SCALE_CHECKED, EventKind.LADLE_RELINED, EventKind.MOLD_CHANGED);

  private Charts() {}

  /** The wheel turn by turn, with its limits and its signals. */
  public static SeriesPicture wheel(Desk desk, CharacteristicReport figured) {
    CharacteristicReport report = desk.whole(figured);
    WheelChart chart = report.wheelChart();
    return new SeriesPicture(
        turnPoints(desk, report),
        turns(desk),
        scale(desk, report),
        band(desk, report),
        chart == null
            ? List.of()
            : lines(desk, report, chart.lowerLimit(), chart.center(), chart.upperLimit()),
        flags(desk, report, signal -> signal.scope() == Scope.WHEEL),
        changes(desk, null));
  }

  /** The same without limits, thin, over the whole period. */
  public static PeriodStrip strip(Desk desk, CharacteristicReport figured) {
    CharacteristicReport report = desk.whole(figured);
    Points points = turnPoints(desk, report);
    DoubleSummaryStatistics known = known(points);
    double low = known.getCount() == 0 ? 0 : known.getMin();
    Stretch stretch = desk.selection().stretch();
    return new PeriodStrip(
        points,
        low,
        known.getMax() > low ? known.getMax() : low + 1,
        desk.wheel().first(),
        desk.wheel().last(),
        flags(desk, report, signal -> signal.scope() != Scope.POUR),
        stretch == null ? null : new PeriodStrip.Part(stretch.from(), stretch.to()),
        Moments.of(desk, new Stretch(desk.wheel().first(), desk.wheel().last())));
  }

  /** The least and the greatest value that is not missing. */
  static DoubleSummaryStatistics known(Points points) {
    return Arrays.stream(points.y()).filter(y -> !Double.isNaN(y)).summaryStatistics();
  }

  /** One mold's record, with its classic limits, its signals and what was done to it. */
  public static SeriesPicture mold(Desk desk, CharacteristicReport figured, String mold) {
    CharacteristicReport report = desk.whole(figured);
    MoldReport its = OpenedLog.mold(report, mold);
    Unit unit = desk.unit(report);
    return new SeriesPicture(
        points(desk, report, desk.wheel().rows(mold), unit),
        turns(desk),
        scale(desk, report),
        band(desk, report),
        its == null
            ? List.of()
            : lines(desk, report, its.lowerLimit(), its.center(), its.upperLimit()),
        flags(desk, report, signal -> mold.equals(signal.mold())),
        changes(desk, mold));
  }

  /** The anodes of one ladle side, pour by pour. */
  public static SeriesPicture side(Desk desk, CharacteristicReport report, String side) {
    WheelRows wheel = desk.wheel();
    int index = wheel.record().sides().find(side);
    int[] rows =
        IntStream.range(0, wheel.at().length)
            .filter(i -> wheel.record().side().get(i) == index)
            .toArray();
    return new SeriesPicture(
        points(desk, report, rows, desk.unit(report)),
        turns(desk),
        scale(desk, report),
        band(desk, report),
        List.of(),
        flags(desk, report, signal -> signal.scope() == Scope.SIDE && side.equals(signal.side())),
        changes(desk, null));
  }

  /** The turns that are visible. */
  static Axis turns(Desk desk) {
    Stretch turns = desk.turns();
    return new Axis(
        desk.look().say("axis.turn"), turns.from(), turns.to(), Moments.of(desk, turns));
  }

  /** The one scale of a characteristic: all anodes and the tolerance, with a little air. */
  static Axis scale(Desk desk, CharacteristicReport figured) {
    CharacteristicReport report = desk.whole(figured);
    Unit unit = desk.unit(report);
    double low = unit.fromCanonical(report.overall().minimum());
    double high = unit.fromCanonical(report.overall().maximum());
    Band band = band(desk, report);
    Double lower = band.lower();
    Double upper = band.upper();
    low = lower == null ? low : Math.min(low, lower);
    high = upper == null ? high : Math.max(high, upper);
    double air = high > low ? (high - low) * 0.04 : 1;
    return new Axis(desk.title(report), low - air, high + air);
  }

  /** The tolerance in the unit that is shown. */
  static Band band(Desk desk, CharacteristicReport report) {
    Specification specification = report.specification();
    Unit unit = desk.unit(report);
    return new Band(
        shown(unit, specification.lower()),
        shown(unit, specification.target()),
        shown(unit, specification.upper()),
        specification.hasLimits() ? desk.look().say("chart.tolerance") : "");
  }

  private static @Nullable Double shown(Unit unit, @Nullable Double computed) {
    return computed == null ? null : (Double) unit.fromCanonical(computed);
  }

  /** The limits that are known and the center. */
  private static List<Line> lines(
      Desk desk,
      CharacteristicReport report,
      @Nullable Double lower,
      double center,
      @Nullable Double upper) {
    Figures figures = desk.figures(report);
    List<Line> lines = new ArrayList<>();
    for (int side = 1; side >= -1; side--) {
      boolean isCenter = side == 0;
      Double computed = isCenter ? (Double) center : side > 0 ? upper : lower;
      if (computed != null) {
        double shown = figures.unit().fromCanonical(computed);
        String number = Digits.number(shown, figures.decimals() + 1);
        String key = isCenter ? "chart.center" : "chart.limit";
        lines.add(new Line(shown, desk.look().say(key, number), isCenter));
      }
    }
    return lines;
  }

  private static Points turnPoints(Desk desk, CharacteristicReport report) {
    WheelChart chart = report.wheelChart();
    Figures figures = desk.figures(report);
    Unit unit = figures.unit();
    WheelRows wheel = desk.wheel();
    if (chart == null) {
      return points(desk, report, null, unit);
    }
    List<TurnPoint> turns = chart.points();
    double[] x = new double[turns.size()];
    double[] y = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      TurnPoint point = turns.get(i);
      x[i] = wheel.place(point.turn(), point.at()) + 0.5;
      y[i] = unit.fromCanonical(point.value());
    }
    return new Points(x, y, new int[0])
        .saying(
            turns(
                desk,
                i -> turns.get(i).turn(),
                i -> turns.get(i).at(),
                i -> figures.mean(turns.get(i).value())));
  }

  private static Points points(
      Desk desk, CharacteristicReport report, int @Nullable [] rows, Unit unit) {
    WheelRows wheel = desk.wheel();
    Characteristic column = wheel.characteristic(report.name());
    Figures figures = desk.figures(report);
    return column == null
        ? Points.NONE
        : wheel
            .points(column.values(), unit, rows, specification(desk, report, column))
            .saying(
                anodes(
                    desk,
                    rows,
                    i -> figures.value(column.values().get(rows == null ? i : rows[i]))));
  }

  /**
   * What anodes tell who points at them: when each was cast, in which turn and mold, its value. It
   * keeps the rows, and not the log with all that was computed of it.
   *
   * @param rows of the anodes; null = all
   * @param value of an anode, with its unit
   */
  static IntFunction<String> anodes(Desk desk, int @Nullable [] rows, IntFunction<String> value) {
    WheelRecord record = desk.wheel().record();
    Look look = desk.look();
    Sentences sentences = desk.sentences();
    return anode -> {
      int row = rows == null ? anode : rows[anode];
      return look.say(
          "chart.anode",
          sentences.time(Instant.ofEpochMilli(record.castAtMillis().get(row))),
          record.turn().get(row),
          record.molds().names().get(record.mold().get(row)),
          value.apply(anode));
    };
  }

  /** The same of turns. */
  static IntFunction<String> turns(
      Desk desk, IntUnaryOperator turn, IntFunction<Instant> at, IntFunction<String> value) {
    Look look = desk.look();
    Sentences sentences = desk.sentences();
    return i ->
        look.say("chart.turn", sentences.time(at.apply(i)), turn.applyAsInt(i), value.apply(i));
  }

  /** What anodes had to meet when they were cast. */
  private static LongFunction<Specification> specification(
      Desk desk, CharacteristicReport report, Characteristic column) {
    LimitsBook book = desk.log().plant().book();
    return book.revisions().isEmpty()
        ? castAt -> column.specification()
        : castAt ->
            book.specification(
                report.wheel(),
                report.name(),
                column.specification(),
                Instant.ofEpochMilli(castAt));
  }

  /** Signals of a characteristic as flags. */
  static List<Flag> flags(
      Desk desk, CharacteristicReport report, Predicate<AuditReport.Signal> isWanted) {
    List<Flag> flags = new ArrayList<>();
    var sentences = desk.sentences();
    for (Signal signal : desk.report().signals()) {
      if (signal.wheel().equals(report.wheel())
          && signal.characteristic().equals(report.name())
          && isWanted.test(signal)) {
        flags.add(
            new Flag(
                desk.from(signal),
                desk.to(signal),
                mark(signal),
                mark(signal).sign() + " " + sentences.state(signal),
                signal.id(),
                sentences.signal(signal)));
      }
    }
    flags.sort(Comparator.comparingDouble(Flag::from));
    return flags;
  }

  /** What was done to a mold; or, for the whole wheel, what may have moved all of it. */
  private static List<Change> changes(Desk desk, @Nullable String mold) {
    List<Change> changes = new ArrayList<>();
    var sentences = desk.sentences();
    WheelRows wheel = desk.wheel();
    for (CastingEvent event : desk.log().record().events()) {
      boolean isHere = event.wheel().isEmpty() || event.wheel().equals(wheel.record().wheel());
      boolean isWanted =
          mold == null
              ? event.mold() == null && WHEEL_EVENTS.contains(event.kind())
              : mold.equals(event.mold());
      if (isHere && isWanted) {
        String kind = sentences.event(event.kind());
        String note = event.note().isBlank() ? "" : " (" + event.note() + ")";
        changes.add(
            new Change(
                wheel.place(event.at()),
                kind,
                Words.capital(kind) + ", " + sentences.time(event.at()) + note));
      }
    }
    return changes;
  }

  /** The shape that stands for a signal. */
  public static Mark mark(Signal signal) {
    return switch (signal.direction()) {
      case HIGH -> Mark.HIGH;
      case LOW -> Mark.LOW;
      case SPREAD -> Mark.SPREAD;
    };
  }
}
