package org.evenpour.report.table;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.CapabilityInFull.ByPercentiles;
import org.evenpour.findings.CapabilityInFull.Group;
import org.evenpour.findings.CapabilityInFull.Source;
import org.evenpour.findings.CapabilityInFull.WhatIf;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Column.Kind;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * Capability of every characteristic and mold, as formulas over the cells beside them where those
 * cells say it all, so that a meeting can try another limit; and of ladle sides, charges and crews.
 */
public final class CapabilityTable {
  private static final double SAME = 1e-9;
  private static final Digits INDEX = Digits.plain(2);
  private static final Digits SHARE = Digits.share(1);

  private CapabilityTable() {}

  /**
   * All molds together, or one of them.
   *
   * @param mold null for all together
   */
  public record Row(CharacteristicReport of, @Nullable MoldReport mold) {

    /** The indices; null where there is no tolerance. */
    public @Nullable CapabilityReport capability() {
      return mold == null ? of.overall().capability() : mold.capability();
    }

    /** On how many anodes they rest. */
    public long count() {
      return mold == null ? of.overall().count() : mold.count();
    }

    private double mean() {
      return mold == null ? of.overall().mean() : mold.mean();
    }

    private @Nullable Double sd() {
      return mold == null ? of.overall().sd() : mold.sd();
    }

    private @Nullable Double within() {
      return mold == null ? null : mold.sigmaWithin();
    }
  }

  /** The table of a report. */
  public static Table<Row> of(AuditReport report, Sentences sentences) {
    List<Row> rows = new ArrayList<>();
    for (CharacteristicReport of : report.characteristics()) {
      rows.add(new Row(of, null));
      of.molds().forEach(mold -> rows.add(new Row(of, mold)));
    }
    rows.removeIf(row -> row.capability() == null);
    Words words = sentences.words();
    Function<Row, Figures> figures = row -> sentences.figures(row.of().wheel(), row.of().name());
    return new Table<>(
        "capability",
        words.say("sheet.capability"),
        Columns.<Row>of(sentences)
            .wheel(row -> row.of().wheel())
            .characteristic(row -> row.of().name())
            .unit(figures)
            .cell(
                "mold",
                Kind.WORDS,
                row ->
                    row.mold() == null
                        ? Cell.words(words.say("mold.all"))
                        : new Cell.Label(row.mold().mold()))
            .count("anodes", Row::count)
            .value("mean", figures, Row::mean)
            .spread("sd", figures, Row::sd)
            .spread("sigma", figures, Row::within)
            .value("lower", figures, row -> row.of().specification().lower())
            .value("target", figures, row -> row.of().specification().target())
            .value("upper", figures, row -> row.of().specification().upper())
            .figure("cpk", row -> nearer(row, figures, CapabilityReport::cpk, "sigma"))
            .interval(
                "cpk",
                row -> part(row.capability(), CapabilityReport::cpk, Estimate::low),
                row -> part(row.capability(), CapabilityReport::cpk, Estimate::high))
            .figure("ppk", row -> nearer(row, figures, CapabilityReport::ppk, "sd"))
            .interval(
                "ppk",
                row -> part(row.capability(), CapabilityReport::ppk, Estimate::low),
                row -> part(row.capability(), CapabilityReport::ppk, Estimate::high))
            .figure("cp", row -> spread(row, figures, CapabilityReport::cp, "sigma"))
            .figure("pp", row -> spread(row, figures, CapabilityReport::pp, "sd"))
            .figure("cpl", row -> side(row, figures, CapabilityReport::cpl, true))
            .figure("cpu", row -> side(row, figures, CapabilityReport::cpu, false))
            .figure("cpm", row -> value(row.capability(), CapabilityReport::cpm))
            .figure("expected_outside", row -> expected(row.capability()))
            .count("outside", row -> row.mold() == null ? null : row.mold().outside())
            .figure("observed_outside", row -> share(row.mold(), row.capability()))
            .said("stable", row -> stable(row.of()))
            .text("normal", row -> normal(words, row))
            .index("percentile", CapabilityTable::percentile)
            .list(),
        rows);
  }

  /** The wording of whether a characteristic is stable; where nobody looked, nobody knows. */
  static String stable(CharacteristicReport characteristic) {
    return characteristic.monitoring().notLookedFor() != null
        ? "stable.unknown"
        : characteristic.inFull().isStable() ? "stable.yes" : "stable.no";
  }

  /** An index. */
  public static Cell value(
      @Nullable CapabilityReport capability, Function<CapabilityReport, @Nullable Estimate> index) {
    return part(capability, index, Estimate::value);
  }

  private static Cell part(
      @Nullable CapabilityReport capability,
      Function<CapabilityReport, @Nullable Estimate> index,
      Function<Estimate, @Nullable Double> part) {
    Estimate estimate = capability == null ? null : index.apply(capability);
    return new Cell.Figure(estimate == null ? null : part.apply(estimate), INDEX);
  }

  /** The share outside that a normal distribution would have. */
  public static Cell expected(@Nullable CapabilityReport capability) {
    return new Cell.Figure(capability == null ? null : capability.fractionOutsideExpected(), SHARE);
  }

  /** The observed share outside, as a division where the counts are known. */
  public static Cell share(@Nullable MoldReport mold, @Nullable CapabilityReport capability) {
    Double observed = capability == null ? null : (Double) capability.fractionOutsideObserved();
    Cell.Figure figure = new Cell.Figure(observed, SHARE);
    Long outside = mold == null ? null : mold.outside();
    return observed != null
            && mold != null
            && outside != null
            && isSame((double) outside / mold.count(), observed)
        ? new Cell.Computed("{outside}/{anodes}", figure)
        : figure;
  }

  private static String normal(Words words, Row row) {
    Boolean normal = row.mold() == null ? row.of().inFull().isNormal() : null;
    if (normal == null) {
      return "";
    }
    boolean isFew = row.of().inFull().percentiles() == null;
    return words.say(normal ? "normal.yes" : isFew ? "normal.few" : "normal.no");
  }

  /** The index without a normal distribution, where that is refused. */
  private static @Nullable Estimate percentile(Row row) {
    ByPercentiles by = row.mold() == null ? row.of().inFull().percentiles() : null;
    return by == null ? null : by.ppk();
  }

  /** What the cells that formulas name hold; null where one is missing. */
  private record Parts(
      double mean, @Nullable Double lower, @Nullable Double upper, @Nullable Double sigma) {

    static Parts of(Row row, Figures figures, String sigma) {
      Unit unit = figures.unit();
      Specification specification = row.of().specification();
      return new Parts(
          unit.fromCanonical(row.mean()),
          Columns.value(unit, specification.lower()),
          Columns.value(unit, specification.upper()),
          Columns.difference(unit, sigma.equals("sd") ? row.sd() : row.within()));
    }
  }

  private static Cell spread(
      Row row,
      Function<Row, Figures> figures,
      Function<CapabilityReport, @Nullable Estimate> index,
      String sigma) {
    Parts parts = Parts.of(row, figures.apply(row), sigma);
    return parts.lower() == null || parts.upper() == null || parts.sigma() == null
        ? value(row.capability(), index)
        : computed(
            row,
            index,
            "({upper}-{lower})/(6*{" + sigma + "})",
            (parts.upper() - parts.lower()) / (6 * parts.sigma()));
  }

  private static Cell nearer(
      Row row,
      Function<Row, Figures> figures,
      Function<CapabilityReport, @Nullable Estimate> index,
      String sigma) {
    Parts parts = Parts.of(row, figures.apply(row), sigma);
    Double lower = parts.lower();
    Double upper = parts.upper();
    if (parts.sigma() == null || (lower == null && upper == null)) {
      return value(row.capability(), index);
    }
    double room =
        Math.min(
            upper == null ? Double.POSITIVE_INFINITY : upper - parts.mean(),
            lower == null ? Double.POSITIVE_INFINITY : parts.mean() - lower);
    String nearest =
        upper == null
            ? "({mean}-{lower})"
            : lower == null ? "({upper}-{mean})" : "MIN({upper}-{mean},{mean}-{lower})";
    return computed(row, index, nearest + "/(3*{" + sigma + "})", room / (3 * parts.sigma()));
  }

  private static Cell side(
      Row row,
      Function<Row, Figures> figures,
      Function<CapabilityReport, @Nullable Estimate> index,
      boolean isLower) {
    Parts parts = Parts.of(row, figures.apply(row), "sigma");
    Double limit = isLower ? parts.lower() : parts.upper();
    if (limit == null || parts.sigma() == null) {
      return value(row.capability(), index);
    }
    return computed(
        row,
        index,
        isLower ? "({mean}-{lower})/(3*{sigma})" : "({upper}-{mean})/(3*{sigma})",
        (isLower ? parts.mean() - limit : limit - parts.mean()) / (3 * parts.sigma()));
  }

  /** A formula only where it gives what the audit found, which stands in the cell either way. */
  private static Cell computed(
      Row row, Function<CapabilityReport, @Nullable Estimate> index, String formula, double gives) {
    CapabilityReport capability = row.capability();
    Estimate estimate = capability == null ? null : index.apply(capability);
    Cell value = value(capability, index);
    return value instanceof Cell.Figure figure
            && estimate != null
            && isSame(gives, estimate.value())
        ? new Cell.Computed(formula, figure)
        : value;
  }

  private static boolean isSame(double one, double other) {
    return Math.abs(one - other) <= SAME * Math.max(1, Math.abs(other));
  }

  /** A ladle side, a charge or a crew in one characteristic. */
  public record InGroup(CharacteristicReport of, Group group) {}

  /** Every characteristic by ladle side, charge and crew. */
  public static Table<InGroup> groups(AuditReport report, Sentences sentences) {
    List<InGroup> rows = new ArrayList<>();
    for (CharacteristicReport of : report.characteristics()) {
      of.inFull().groups().forEach(group -> rows.add(new InGroup(of, group)));
    }
    Words words = sentences.words();
    Function<InGroup, Figures> figures =
        row -> sentences.figures(row.of().wheel(), row.of().name());
    return new Table<>(
        "groups",
        words.say("sheet.groups"),
        Columns.<InGroup>of(sentences)
            .wheel(row -> row.of().wheel())
            .characteristic(row -> row.of().name())
            .unit(figures)
            .said("by", row -> "by." + row.group().by())
            .label("which", row -> row.group().name())
            .count("anodes", row -> row.group().count())
            .value("mean", figures, row -> row.group().mean())
            .spread("sd", figures, row -> row.group().sd())
            .index("cpk", row -> row.group().cpk())
            .index("ppk", row -> row.group().ppk())
            .count("outside", row -> row.group().outside())
            .text("note", row -> row.group().isFew() ? words.say("few") : "")
            .list(),
        rows);
  }

  /** Every characteristic as a whole, for the first page. */
  public static Table<CharacteristicReport> overall(AuditReport report, Sentences sentences) {
    Function<CharacteristicReport, Figures> figures =
        one -> sentences.figures(one.wheel(), one.name());
    // Beside those with a tolerance the others have nothing to say here.
    List<CharacteristicReport> specified =
        report.characteristics().stream().filter(one -> one.specification().hasLimits()).toList();
    return new Table<>(
        "overall",
        sentences.words().say("sheet.summary"),
        Columns.<CharacteristicReport>of(sentences)
            .text(
                "characteristic",
                one -> {
                  String unit = figures.apply(one).unit().symbol();
                  return sentences.title(one.wheel(), one.name())
                      + (unit.isEmpty() ? "" : ", " + unit);
                })
            .value("lower", figures, one -> one.specification().lower())
            .value("target", figures, one -> one.specification().target())
            .value("upper", figures, one -> one.specification().upper())
            .value("mean", figures, one -> one.overall().mean())
            .spread("sd", figures, one -> one.overall().sd())
            .index(
                "ppk",
                one -> {
                  CapabilityReport capability = one.overall().capability();
                  return capability == null ? null : capability.ppk();
                })
            .figure("observed_outside", one -> share(null, one.overall().capability()))
            .figure("ppk_median", Digits.plain(2), one -> likeTheMedian(one))
            .said("stable", CapabilityTable::stable)
            .list(),
        specified.isEmpty() ? report.characteristics() : specified);
  }

  /** What Ppk would be if every mold ran like the median one. */
  private static @Nullable Double likeTheMedian(CharacteristicReport of) {
    return of.inFull().whatIfs().stream()
        .filter(one -> one.without() == Source.MOLD)
        .findFirst()
        .map(WhatIf::ppk)
        .orElse(null);
  }
}
