package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.CapabilityInFull.Group;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.picture.IntervalBar;
import org.evenpour.picture.Mark;
import org.evenpour.picture.MoldIntervals;
import org.evenpour.picture.SparkLine;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.report.table.CapabilityTable;
import org.evenpour.report.table.Columns;
import org.evenpour.report.table.MoldTable;
import org.evenpour.table.Cell;
import org.evenpour.table.Column;
import org.evenpour.table.Column.Kind;
import org.evenpour.words.Digits;
import org.jspecify.annotations.Nullable;

/** The desk's tables: their rows and columns. */
public final class Tables {
  private static final int LAST = 50;

  private Tables() {}

  /** A mold with the signal that it carries. */
  public record MoldRow(MoldTable.Row row, @Nullable Signal signal) {
    /** Its label. */
    public String mold() {
      return report().mold();
    }

    /** What was computed of it. */
    MoldReport report() {
      return row.mold();
    }
  }

  /** Molds, those with a signal first, then by how far they stand from the wheel's center. */
  public static List<MoldRow> molds(Desk desk, CharacteristicReport report) {
    List<MoldRow> rows = new ArrayList<>();
    for (MoldReport mold : report.molds()) {
      rows.add(
          new MoldRow(
              new MoldTable.Row(report, mold), WheelView.signalOf(desk, report, mold.mold())));
    }
    rows.sort(
        Comparator.comparing((MoldRow row) -> row.signal() == null)
            .thenComparing(row -> -Math.abs(orZero(row.report().offset()))));
    return rows;
  }

  /** What is shown of a mold. */
  public static List<Column<MoldRow>> moldColumns(Desk desk, CharacteristicReport report) {
    Figures figures = desk.figures(report);
    String unit = figures.unit().symbol();
    double span = span(report, figures);
    double[] scale = sparkScale(desk, report);
    Sentences sentences = desk.sentences();
    Columns<MoldTable.Row> declared =
        MoldTable.columns(Columns.narrow(sentences), desk.report(), sentences);
    Columns<MoldRow> columns =
        Columns.<MoldRow>narrow(sentences)
            .from(declared, MoldRow::row, "mold")
            .wide(6)
            .cell("shift", Kind.WORDS, row -> shift(desk, figures, row.signal()))
            .in(unit)
            .wide(17)
            .cell("verdict", Kind.WORDS, row -> verdict(desk, report, row.mold()))
            .wide(15)
            .from(declared, MoldRow::row, "offset")
            .in(unit)
            .cell("offset_bar", Kind.PICTURES, row -> offsetBar(desk, figures, span, row))
            .wide(15)
            .cell("last", Kind.PICTURES, row -> spark(desk, report, scale, row.mold()))
            .wide(16)
            .from(declared, MoldRow::row, "mean")
            .in(unit)
            .from(declared, MoldRow::row, "sd")
            .in(unit);
    if (report.specification().hasLimits()) {
      columns.from(declared, MoldRow::row, "cpk").wide(5).from(declared, MoldRow::row, "outside");
    }
    return columns.from(declared, MoldRow::row, "anodes").list();
  }

  /** What to do with the mold; the gravest first when sorted. */
  private static Cell verdict(Desk desk, CharacteristicReport report, String mold) {
    MoldVerdict its = WheelView.verdict(desk, report.wheel(), mold);
    if (its == null || its.verdict() == null) {
      return new Cell.Marked(Cell.MISSING, null);
    }
    return new Cell.Marked(desk.verdicts().verdict(its), (double) its.verdict().ordinal());
  }

  private static Cell shift(Desk desk, Figures figures, @Nullable Signal signal) {
    if (signal == null) {
      return new Cell.Marked("", null);
    }
    String size = figures.signed(signal.size(), figures.decimalsOf(signal.size()));
    return new Cell.Marked(
        Charts.mark(signal),
        desk.look().say("cell.since", size, signal.sinceTurn()),
        Math.abs(signal.sizeSigma()));
  }

  private static double span(CharacteristicReport report, Figures figures) {
    double most = 0;
    for (MoldReport mold : report.molds()) {
      most = Math.max(most, Math.abs(orZero(mold.offsetLow())));
      most = Math.max(most, Math.abs(orZero(mold.offsetHigh())));
      most = Math.max(most, Math.abs(orZero(mold.offset())));
    }
    return MoldIntervals.roundSpan(figures.unit().differenceFromCanonical(most));
  }

  private static Cell offsetBar(Desk desk, Figures figures, double span, MoldRow row) {
    MoldReport mold = row.report();
    Double low = difference(figures, mold.offsetLow());
    Double high = difference(figures, mold.offsetHigh());
    Double middle = difference(figures, mold.offset());
    Signal signal = row.signal();
    int decimals = figures.decimals() + 1;
    String text =
        low == null || high == null
            ? "—"
            : desk.look()
                .say("cell.range", Digits.number(low, decimals), Digits.number(high, decimals));
    return new Cell.Drawn(
        new IntervalBar(
            -span, span, 0, low, middle, high, signal == null ? Mark.NONE : Charts.mark(signal)),
        text,
        middle == null ? null : (Double) Math.abs(middle));
  }

  /** The molds' own scale: their limits and means, so that a line is seen and outliers are cut. */
  private static double[] sparkScale(Desk desk, CharacteristicReport figured) {
    CharacteristicReport report = desk.whole(figured);
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (MoldReport mold : report.molds()) {
      Double lower = mold.lowerLimit();
      Double upper = mold.upperLimit();
      low = Math.min(low, lower == null ? mold.mean() : lower);
      high = Math.max(high, upper == null ? mold.mean() : upper);
    }
    var unit = desk.unit(report);
    return new double[] {
      unit.fromCanonical(low),
      unit.fromCanonical(high > low ? high : low + 1),
      unit.fromCanonical(report.overall().mean())
    };
  }

  private static Cell spark(Desk desk, CharacteristicReport report, double[] scale, String mold) {
    WheelRows wheel = desk.wheel();
    Characteristic column = wheel.characteristic(report.name());
    int[] rows = wheel.rows(mold);
    int end = Arrays.binarySearch(rows, wheel.rowAt(desk.turns().to()));
    end = end < 0 ? -end - 1 : end;
    int from = Math.max(0, end - LAST);
    double[] values = new double[end - from];
    for (int i = from; i < end && column != null; i++) {
      values[i - from] = desk.unit(report).fromCanonical(column.values().get(rows[i]));
    }
    double last = values.length == 0 ? Double.NaN : values[values.length - 1];
    int decimals = desk.figures(report).decimals();
    return new Cell.Drawn(
        new SparkLine(values, scale[0], scale[1], scale[2]),
        Double.isNaN(last) ? "—" : Digits.number(last, decimals),
        Double.isNaN(last) ? null : (Double) last);
  }

  /**
   * One line of capability: the whole wheel, a mold, a ladle side, a charge or a crew.
   *
   * @param mold null unless the line is a mold's
   * @param signals null where none were looked for
   */
  public record CapabilityRow(
      String name,
      @Nullable String mold,
      @Nullable CapabilityReport capability,
      @Nullable Long signals,
      long count) {}

  /** All characteristics of the chosen wheel. */
  public static List<CapabilityRow> capability(Desk desk) {
    List<CapabilityRow> rows = new ArrayList<>();
    for (CharacteristicReport report : desk.figured().characteristics()) {
      if (report.wheel().equals(desk.selection().wheel())) {
        rows.add(
            new CapabilityRow(
                desk.name(report.name()),
                null,
                report.overall().capability(),
                signals(desk, report, null),
                report.overall().count()));
      }
    }
    return rows;
  }

  /** The molds in the chosen characteristic, the least capable first. */
  public static List<CapabilityRow> capability(Desk desk, CharacteristicReport report) {
    List<CapabilityRow> rows = new ArrayList<>();
    for (MoldReport mold : report.molds()) {
      rows.add(
          new CapabilityRow(
              mold.mold(),
              mold.mold(),
              mold.capability(),
              signals(desk, report, mold.mold()),
              mold.count()));
    }
    rows.sort(Comparator.comparingDouble(Tables::cpk));
    Long signals = signals(desk, report, null);
    for (Group group : report.inFull().groups()) {
      String name = desk.look().say("group." + group.by(), group.name());
      rows.add(
          new CapabilityRow(
              group.isFew() ? desk.look().say("group.few", name) : name,
              null,
              capability(group),
              signals,
              group.count()));
    }
    return rows;
  }

  private static @Nullable CapabilityReport capability(Group group) {
    Long outside = group.outside();
    return outside == null
        ? null
        : new CapabilityReport(
            null,
            group.cpk(),
            null,
            null,
            null,
            group.ppk(),
            null,
            null,
            (double) outside / group.count(),
            null);
  }

  private static double cpk(CapabilityRow row) {
    CapabilityReport capability = row.capability();
    Estimate cpk = capability == null ? null : capability.cpk();
    return cpk == null ? Double.POSITIVE_INFINITY : cpk.value();
  }

  private static @Nullable Long signals(
      Desk desk, CharacteristicReport report, @Nullable String mold) {
    if (!desk.quiet(report).isWhole()) {
      return null;
    }
    Stretch turns = desk.turns();
    return desk.report().signals().stream()
        .filter(signal -> signal.wheel().equals(report.wheel()))
        .filter(signal -> turns.touches(desk.from(signal), desk.to(signal)))
        .filter(signal -> signal.characteristic().equals(report.name()))
        .filter(
            signal -> mold == null || mold.equals(signal.mold()) || signal.scope() == Scope.WHEEL)
        .count();
  }

  private static Cell stable(Look look, @Nullable Long signals) {
    if (signals == null) {
      return new Cell.Text(look.say("cell.unlooked"));
    }
    if (signals == 0) {
      return new Cell.Marked(look.say("cell.stable"), 0.0);
    }
    return new Cell.Text(
        signals == 1 ? look.say("cell.unstable.one") : look.say("cell.unstable", signals));
  }

  /** What is shown of capability; {@code key} names the first column. */
  public static List<Column<CapabilityRow>> capabilityColumns(Desk desk, String key) {
    Columns<CapabilityRow> columns = Columns.narrow(desk.sentences());
    columns
        .cell(
            key,
            Kind.WORDS,
            row -> key.equals("mold") ? new Cell.Label(row.name()) : new Cell.Text(row.name()))
        .wide(9)
        .cell("stable", Kind.WORDS, row -> stable(desk.look(), row.signals()))
        .wide(19);
    index(columns, "cpk", CapabilityReport::cpk);
    bar(columns, desk, "cpk_bar", CapabilityReport::cpk);
    index(columns, "ppk", CapabilityReport::ppk);
    bar(columns, desk, "ppk_bar", CapabilityReport::ppk);
    index(columns, "cp", CapabilityReport::cp);
    index(columns, "pp", CapabilityReport::pp);
    index(columns, "cpm", CapabilityReport::cpm);
    return columns
        .figure("expected_outside", row -> CapabilityTable.expected(row.capability()))
        .figure("observed_outside", row -> CapabilityTable.share(null, row.capability()))
        .count("anodes", CapabilityRow::count)
        .list();
  }

  private static void index(
      Columns<CapabilityRow> columns,
      String key,
      Function<CapabilityReport, @Nullable Estimate> index) {
    columns.figure(key, row -> CapabilityTable.value(row.capability(), index)).wide(5);
  }

  private static void bar(
      Columns<CapabilityRow> columns,
      Desk desk,
      String key,
      Function<CapabilityReport, @Nullable Estimate> index) {
    columns.cell(key, Kind.PICTURES, row -> capabilityBar(desk, row.capability(), index)).wide(10);
  }

  private static Cell capabilityBar(
      Desk desk,
      @Nullable CapabilityReport capability,
      Function<CapabilityReport, @Nullable Estimate> index) {
    Estimate estimate = capability == null ? null : index.apply(capability);
    Double low = estimate == null ? null : estimate.low();
    Double high = estimate == null ? null : estimate.high();
    Double value = estimate == null ? null : (Double) estimate.value();
    return new Cell.Drawn(
        new IntervalBar(0, 3, 1.33, low, value, high, Mark.NONE),
        low == null || high == null
            ? "—"
            : desk.look().say("cell.range", Digits.number(low, 2), Digits.number(high, 2)),
        value);
  }

  static @Nullable Double difference(Figures figures, @Nullable Double computed) {
    return computed == null ? null : (Double) figures.unit().differenceFromCanonical(computed);
  }

  static double orZero(@Nullable Double value) {
    return value == null ? 0 : value;
  }
}
