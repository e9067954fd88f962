package org.evenpour.report.table;

import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Rests;
import org.evenpour.findings.CapabilityInFull.ByPercentiles;
import org.evenpour.report.table.CapabilityTable.Row;
import org.evenpour.table.Cell;
import org.evenpour.words.Digits;
import org.jspecify.annotations.Nullable;

/**
 * The cells of the table of capability: formulas over the limits' names and the cells beside them.
 *
 * @param places of the molds in the table of molds
 */
record CapabilityCells(Following following, Map<MoldReport, Integer> places) {
  private static final Digits INDEX = Digits.plain(2);
  private static final Digits SHARE = Digits.share(1);

  private Unit unit(Row row) {
    return following.sentences().figures(row.of().wheel(), row.of().name()).unit();
  }

  private static Cell.Figure index(Row row, Function<CapabilityReport, @Nullable Estimate> index) {
    CapabilityReport its = row.capability();
    return CapabilityTable.end(its == null ? null : index.apply(its), Estimate::value);
  }

  /** Sigma within: a mold's own; of all together what their Cpk rests on, pooled over molds. */
  @Nullable Double within(Row row) {
    if (row.mold() != null) {
      return row.mold().sigmaWithin();
    }
    CapabilityReport its = row.capability();
    return its == null ? null : following.spread(row.of(), row.mean(), its.cpk());
  }

  Cell cpk(Row row) {
    return following.nearest(
        row.of(), row.mean(), "mean", within(row), "sigma", index(row, CapabilityReport::cpk));
  }

  Cell ppk(Row row) {
    return following.nearest(
        row.of(), row.mean(), "mean", row.sd(), "sd", index(row, CapabilityReport::ppk));
  }

  /** An end of the interval of Cpk or Ppk. */
  Cell interval(Row row, boolean isWithin, boolean isLow) {
    CapabilityReport its = row.capability();
    Estimate index = its == null ? null : isWithin ? its.cpk() : its.ppk();
    Cell.Figure found = CapabilityTable.end(index, isLow ? Estimate::low : Estimate::high);
    Rests rests = its == null ? null : its.rests();
    if (index == null || rests == null) {
      return Following.audited(found);
    }
    double shrink = isWithin ? 1 : rests.shrink();
    double count = isWithin ? rests.countWithin() : rests.count();
    double freedom = isWithin ? rests.freedomWithin() : rests.freedom();
    return following.bissell(
        isWithin ? "{cpk}" : "{ppk}*{drawn_in}",
        isWithin ? "{worth_within}" : "{worth}",
        isWithin ? "{freedom_within}" : "{freedom}",
        isLow,
        Following.bissell(index.value() * shrink, count, freedom, isLow),
        found);
  }

  static @Nullable Double rests(Row row, ToDoubleFunction<Rests> part) {
    CapabilityReport its = row.capability();
    Rests rests = its == null ? null : its.rests();
    return rests == null ? null : (Double) part.applyAsDouble(rests);
  }

  /** Cp or Pp. */
  Cell spread(
      Row row,
      Function<CapabilityReport, @Nullable Estimate> index,
      @Nullable Double sigma,
      String key) {
    Specification its = row.of().specification();
    Cell.Figure found = index(row, index);
    Double shown = Columns.difference(unit(row), sigma);
    return its.lower() == null || its.upper() == null || shown == null
        ? Following.audited(found)
        : Following.follows(
            "({upper}-{lower})/(6*{" + key + "})",
            unit(row).differenceFromCanonical(its.upper() - its.lower()) / (6 * shown),
            found);
  }

  /** Cpl or Cpu. */
  Cell side(Row row, boolean isLower) {
    Specification its = row.of().specification();
    Double limit = isLower ? its.lower() : its.upper();
    Cell.Figure found = index(row, isLower ? CapabilityReport::cpl : CapabilityReport::cpu);
    Double sigma = within(row);
    return limit == null || sigma == null
        ? Following.audited(found)
        : Following.follows(
            isLower ? "({mean}-{lower})/(3*{sigma})" : "({upper}-{mean})/(3*{sigma})",
            (isLower ? row.mean() - limit : limit - row.mean()) / (3 * sigma),
            found);
  }

  Cell cpm(Row row) {
    Specification its = row.of().specification();
    Cell.Figure found = index(row, CapabilityReport::cpm);
    Double sd = row.sd();
    if (its.lower() == null || its.upper() == null || its.target() == null || sd == null) {
      return Following.audited(found);
    }
    double n = row.count();
    double off = row.mean() - its.target();
    return Following.follows(
        "({upper}-{lower})/(6*SQRT({sd}^2*({anodes}-1)/{anodes}+({mean}-{target})^2))",
        (its.upper() - its.lower()) / (6 * Math.sqrt(sd * sd * (n - 1) / n + off * off)),
        found);
  }

  Cell expected(Row row) {
    CapabilityReport its = row.capability();
    return following.expected(
        row.of(),
        "mean",
        "sd",
        new Cell.Figure(its == null ? null : its.fractionOutsideExpected(), SHARE));
  }

  /** How many lie outside: as on the sheet of molds, and their sum. */
  Cell outside(Row row) {
    Cell.Figure found =
        new Cell.Figure(
            (double) row.outside(), Digits.count(following.sentences().words().say("thousands")));
    CharacteristicReport of = row.of();
    boolean isCounted =
        of.molds().stream()
            .allMatch(
                mold ->
                    following.outside(of, "mold", mold.mold(), "{mold}", found)
                        instanceof Cell.Computed);
    if (!isCounted || of.molds().isEmpty()) {
      return Following.audited(found);
    }
    MoldReport mold = row.mold();
    Integer from = places.get(mold == null ? of.molds().get(0) : mold);
    Integer to = places.get(mold == null ? of.molds().get(of.molds().size() - 1) : mold);
    String range = "{molds/outside:" + from + "-" + to + "}";
    return new Cell.Computed(mold == null ? "SUM(" + range + ")" : range, found);
  }

  Cell share(Row row) {
    CapabilityReport its = row.capability();
    Cell.Figure found =
        new Cell.Figure(its == null ? null : (Double) its.fractionOutsideObserved(), SHARE);
    return outside(row) instanceof Cell.Computed
        ? Following.follows("{outside}/{anodes}", (double) row.outside() / row.count(), found)
        : Following.audited(found);
  }

  private static @Nullable ByPercentiles by(Row row) {
    return row.mold() == null ? row.of().inFull().percentiles() : null;
  }

  static @Nullable Double percentiles(Row row, ToDoubleFunction<ByPercentiles> part) {
    ByPercentiles by = by(row);
    return by == null ? null : (Double) part.applyAsDouble(by);
  }

  static Cell percentileEnd(Row row, Function<Estimate, @Nullable Double> part) {
    ByPercentiles by = by(row);
    return Following.audited(CapabilityTable.end(by == null ? null : by.ppk(), part));
  }

  /** The index without a normal distribution, where that is refused. */
  Cell percentile(Row row) {
    ByPercentiles by = by(row);
    Cell.Figure found = CapabilityTable.end(by == null ? null : by.ppk(), Estimate::value);
    if (by == null) {
      return found;
    }
    Specification its = row.of().specification();
    Double lower = its.lower();
    Double upper = its.upper();
    String below = "({percentile_50}-{lower})/({percentile_50}-{percentile_135})";
    String above = "({upper}-{percentile_50})/({percentile_99}-{percentile_50})";
    double gives =
        Math.min(
            lower == null
                ? Double.POSITIVE_INFINITY
                : (by.median() - lower) / (by.median() - by.low()),
            upper == null
                ? Double.POSITIVE_INFINITY
                : (upper - by.median()) / (by.high() - by.median()));
    return Following.follows(
        lower == null ? above : upper == null ? below : "MIN(" + below + "," + above + ")",
        gives,
        found);
  }
}
