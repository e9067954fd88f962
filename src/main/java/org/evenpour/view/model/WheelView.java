package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.CapabilityInFull.Part;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.picture.AnodeOutline;
import org.evenpour.picture.DistributionPicture;
import org.evenpour.picture.Mark;
import org.evenpour.picture.MoldIntervals;
import org.evenpour.picture.MoldRing;
import org.evenpour.picture.SpreadBar;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.words.Digits;
import org.jspecify.annotations.Nullable;

/** Pictures of the wheel as a whole and of one mold. */
public final class WheelView {
  private WheelView() {}

  /** The wheel from above, each mold with its offset and its signal. */
  public static MoldRing ring(Desk desk, CharacteristicReport report) {
    Sentences sentences = desk.sentences();
    Figures figures = desk.figures(report);
    List<MoldRing.Mold> molds = new ArrayList<>();
    double most = 0;
    // All molds stand on the wheel, also those that cast nothing in the stretch.
    for (MoldReport standing : desk.whole(report).molds()) {
      MoldReport cast = OpenedLog.mold(report, standing.mold());
      MoldReport mold = cast == null ? idle(standing) : cast;
      Double offset = mold.offset();
      Double shown =
          offset == null ? null : (Double) figures.unit().differenceFromCanonical(offset);
      most = Math.max(most, shown == null ? 0 : Math.abs(shown));
      List<Signal> signals = signalsOf(desk, report, mold.mold());
      StringBuilder says = new StringBuilder(offsetWords(desk, report, mold));
      signals.forEach(signal -> says.append(' ').append(sentences.signal(signal)));
      molds.add(
          new MoldRing.Mold(
              mold.mold(),
              shown,
              signals.stream().map(Charts::mark).toList(),
              signals.isEmpty() ? "" : sentences.state(signals.get(0)),
              says.toString(),
              null));
    }
    double span = MoldIntervals.roundSpan(most / 1.5);
    int decimals = span < 0.1 ? 3 : span < 1 ? 2 : span < 10 ? 1 : 0;
    String unit = figures.unit().symbol();
    return new MoldRing(
        molds,
        new MoldRing.Bearing(90, true, lastMold(desk)),
        span,
        desk.look().say("ring.span", plain(span, decimals) + (unit.isEmpty() ? "" : " " + unit)),
        desk.look().say("ring.pouring"),
        desk.selection().mold());
  }

  private static MoldReport idle(MoldReport mold) {
    return new MoldReport(
        mold.mold(),
        0,
        0,
        null,
        null,
        0,
        null,
        null,
        java.util.Map.of(),
        null,
        null,
        null,
        null,
        null);
  }

  /** 0.5 and not 0.50. */
  private static String plain(double value, int decimals) {
    String text = Digits.number(value, decimals);
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
  }

  private static int lastMold(Desk desk) {
    WheelRows wheel = desk.wheel();
    int rows = wheel.record().rows();
    return rows == 0 ? 0 : wheel.record().mold().get(rows - 1);
  }

  /**
   * The signal that a mold carries: the largest that holds at the end of the record, or that
   * touches the chosen stretch; null where there is none.
   */
  public static @Nullable Signal signalOf(Desk desk, CharacteristicReport report, String mold) {
    List<Signal> all = signalsOf(desk, report, mold);
    return all.isEmpty() ? null : all.get(0);
  }

  /** All such signals, the largest first. */
  private static List<Signal> signalsOf(Desk desk, CharacteristicReport report, String mold) {
    Stretch stretch = desk.selection().stretch();
    return desk.report().signals().stream()
        .filter(signal -> signal.scope() == Scope.MOLD && mold.equals(signal.mold()))
        .filter(signal -> signal.wheel().equals(report.wheel()))
        .filter(signal -> signal.characteristic().equals(report.name()))
        .filter(
            signal ->
                stretch == null
                    ? signal.open()
                    : stretch.touches(desk.from(signal), desk.to(signal)))
        .sorted(Comparator.comparingDouble(signal -> -Math.abs(signal.sizeSigma())))
        .toList();
  }

  /** What to do with a mold; null where nothing is known of it. */
  public static @Nullable MoldVerdict verdict(Desk desk, String wheel, String mold) {
    return desk.report().verdicts().stream()
        .filter(one -> one.wheel().equals(wheel) && one.mold().equals(mold))
        .findFirst()
        .orElse(null);
  }

  private static String offsetWords(Desk desk, CharacteristicReport report, MoldReport mold) {
    Double offset = mold.offset();
    return offset == null
        ? desk.look().say("mold.name", mold.mold()) + "."
        : desk.look().say("mold.offset", mold.mold(), departure(desk.figures(report), offset));
  }

  static String departure(Figures figures, double computed) {
    return figures.departure(computed, figures.decimals() + 1);
  }

  /** Every mold's distance from the wheel's center with its interval, largest first. */
  public static MoldIntervals intervals(Desk desk, CharacteristicReport report) {
    Figures figures = desk.figures(report);
    List<MoldReport> molds = new ArrayList<>(report.molds());
    molds.removeIf(mold -> mold.offset() == null);
    molds.sort(Comparator.comparingDouble(mold -> -orZero(mold.offset())));
    List<MoldIntervals.Row> rows = new ArrayList<>();
    double most = 0;
    for (MoldReport mold : molds) {
      double middle = figures.unit().differenceFromCanonical(orZero(mold.offset()));
      Double low = mold.offsetLow();
      Double high = mold.offsetHigh();
      double from = low == null ? middle : figures.unit().differenceFromCanonical(low);
      double to = high == null ? middle : figures.unit().differenceFromCanonical(high);
      most = Math.max(most, Math.max(Math.abs(from), Math.abs(to)));
      Signal signal = signalOf(desk, report, mold.mold());
      rows.add(
          new MoldIntervals.Row(
              mold.mold(),
              from,
              middle,
              to,
              signal == null ? Mark.NONE : Charts.mark(signal),
              figures.signed(orZero(mold.offset()), figures.decimals() + 1),
              offsetWords(desk, report, mold)));
    }
    String unit = figures.unit().symbol();
    return new MoldIntervals(
        rows,
        desk.look().say("axis.offset") + (unit.isEmpty() ? "" : ", " + unit),
        MoldIntervals.roundSpan(most),
        desk.selection().mold());
  }

  private static double orZero(@Nullable Double value) {
    return value == null ? 0 : value;
  }

  /** How often each value came, of all molds or of one. */
  public static DistributionPicture distribution(
      Desk desk, CharacteristicReport report, @Nullable String mold) {
    WheelRows wheel = desk.wheel();
    Characteristic column = wheel.characteristic(report.name());
    Stretch turns = desk.turns();
    IntStream rows =
        mold == null ? IntStream.range(0, wheel.at().length) : Arrays.stream(wheel.rows(mold));
    double[] values =
        column == null
            ? new double[0]
            : rows.filter(row -> turns.holds(wheel.at()[row]))
                .mapToDouble(row -> column.values().get(row))
                .filter(value -> !Double.isNaN(value))
                .toArray();
    Double lower = report.specification().lower();
    Double upper = report.specification().upper();
    long under = lower == null ? 0 : Arrays.stream(values).filter(v -> v < lower).count();
    long over = upper == null ? 0 : Arrays.stream(values).filter(v -> v > upper).count();
    var words = desk.look().language().screen();
    return new DistributionPicture(
        Arrays.stream(values).map(desk.unit(report)::fromCanonical).toArray(),
        Charts.scale(desk, report),
        desk.look().say("axis.anodes"),
        Charts.band(desk, report),
        under == 0 ? "" : desk.look().say("chart.under", words.count(under)),
        over == 0 ? "" : desk.look().say("chart.over", words.count(over)));
  }

  /** Where the spread comes from; null where the record cannot tell. */
  public static @Nullable SpreadBar spread(Desk desk, CharacteristicReport report) {
    List<Part> parts = report.inFull().parts();
    return parts.isEmpty()
        ? null
        : new SpreadBar(parts.stream().map(part -> part(desk, report, part)).toList());
  }

  private static SpreadBar.Part part(Desk desk, CharacteristicReport report, Part part) {
    Figures figures = desk.figures(report);
    String unit = figures.unit().symbol();
    String key = "spread." + part.source().name().toLowerCase(java.util.Locale.ROOT);
    return new SpreadBar.Part(
        part.share(),
        desk.look().say(key),
        desk.look()
            .say(
                "spread.figure",
                Digits.number(100 * part.share(), 0),
                figures.spread(part.sd()) + (unit.isEmpty() ? "" : " " + unit)),
        desk.look().say(key + ".tip"));
  }

  /**
   * Thickness by point on the anode's outline, the mean over a mold's anodes in the visible turns;
   * null where no points are recorded.
   */
  public static @Nullable AnodeOutline outline(Desk desk, String mold) {
    WheelRows wheel = desk.wheel();
    if (wheel.record().points().isEmpty()) {
      return null;
    }
    Stretch turns = desk.turns();
    Figures figures = new Figures(desk.look().units().shown("mm"));
    int[] rows = wheel.rows(mold);
    List<double[]> means = new ArrayList<>();
    double sum = 0;
    int known = 0;
    int anodes = 0;
    for (var point : wheel.record().points()) {
      double total = 0;
      int count = 0;
      for (int row : rows) {
        double value = point.values().get(row);
        if (turns.holds(wheel.at()[row]) && !Double.isNaN(value)) {
          total += value;
          count++;
        }
      }
      means.add(new double[] {count == 0 ? Double.NaN : total / count});
      if (count > 0) {
        sum += total / count;
        known++;
        anodes = Math.max(anodes, count);
      }
    }
    List<AnodeOutline.Point> points = new ArrayList<>();
    for (int i = 0; i < means.size(); i++) {
      double mean = means.get(i)[0];
      if (Double.isNaN(mean)) {
        continue;
      }
      String name = wheel.record().points().get(i).point();
      points.add(
          new AnodeOutline.Point(
              name,
              figures.unit().fromCanonical(mean),
              figures.unit().differenceFromCanonical(mean - sum / known),
              desk.look().language().report().point(name) + ": " + figures.mean(mean)));
    }
    return new AnodeOutline(
        points,
        figures.unit().symbol(),
        figures.decimals(),
        desk.look()
            .say(
                "outline.caption",
                figures.unit().symbol(),
                desk.look().language().screen().count(anodes)));
  }
}
