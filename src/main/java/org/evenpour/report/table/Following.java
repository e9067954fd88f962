package org.evenpour.report.table;

import java.util.List;
import java.util.regex.Pattern;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.table.Cell;
import org.evenpour.words.Digits;
import org.jspecify.annotations.Nullable;

/**
 * What follows when somebody changes a limit in a spreadsheet: each limit's name there, and
 * formulas over names and over the cells of a row, that give what the audit found. Where a formula
 * does not give it, the figure stays as audited and says so.
 *
 * @param anodes where anodes can be counted anew
 */
public record Following(AuditReport report, Sentences sentences, AnodeCells anodes) {
  /** By this part of it a formula may differ from what was found, by the order of its sums. */
  private static final double SAME = 1e-9;

  /** Half of a 95 % interval in standard errors. */
  private static final String Z = "1.959963984540054";

  /** A characteristic's name that is fit to name a cell; others get a number. */
  private static final Pattern FIT = Pattern.compile("[a-z][a-z_]{2,30}");

  /** The name of a limit's cell; null where there is no such limit. */
  @Nullable String name(CharacteristicReport of, String which) {
    if (value(of, which) == null) {
      return null;
    }
    List<CharacteristicReport> all = report.characteristics();
    int wheel = report.log().wheels().indexOf(of.wheel());
    String base =
        FIT.matcher(of.name()).matches() ? of.name() : "characteristic_" + (all.indexOf(of) + 1);
    return base + "_" + which + (wheel > 0 ? "_wheel_" + (wheel + 1) : "");
  }

  private static @Nullable Double value(CharacteristicReport of, String which) {
    Specification its = of.specification();
    return which.equals("lower") ? its.lower() : which.equals("upper") ? its.upper() : its.target();
  }

  private Figures figures(CharacteristicReport of) {
    return sentences.figures(of.wheel(), of.name());
  }

  /** A limit in the unit that is shown, for a cell. */
  Cell.Figure figure(CharacteristicReport of, String which) {
    Figures its = figures(of);
    return new Cell.Figure(
        Columns.value(its.unit(), value(of, which)), Digits.plain(its.decimals() + 1));
  }

  /** A limit, as it stands in its named cell. */
  Cell limit(CharacteristicReport of, String which) {
    String name = name(of, which);
    Cell.Figure figure = figure(of, which);
    return name == null ? figure : new Cell.Computed(name, figure);
  }

  /** The distance to the nearer limit, from a cell of the row; null without limits. */
  private @Nullable String nearest(CharacteristicReport of, String mean) {
    String lower = name(of, "lower");
    String upper = name(of, "upper");
    String above = upper + "-{" + mean + "}";
    String below = "{" + mean + "}-" + lower;
    return lower == null
        ? upper == null ? null : "(" + above + ")"
        : upper == null ? "(" + below + ")" : "MIN(" + above + "," + below + ")";
  }

  /** What {@link #nearest} gives, in the unit that is shown. */
  private double distance(CharacteristicReport of, double mean) {
    Unit unit = figures(of).unit();
    Double lower = Columns.value(unit, value(of, "lower"));
    Double upper = Columns.value(unit, value(of, "upper"));
    double shown = unit.fromCanonical(mean);
    return Math.min(
        upper == null ? Double.POSITIVE_INFINITY : upper - shown,
        lower == null ? Double.POSITIVE_INFINITY : shown - lower);
  }

  /**
   * The distance to the nearer limit over three of a spread.
   *
   * @param sd of the row
   * @param key of the column that shows it
   */
  Cell nearest(
      CharacteristicReport of,
      double mean,
      String meanKey,
      @Nullable Double sd,
      String key,
      Cell.Figure found) {
    String nearest = nearest(of, meanKey);
    Double shown = Columns.difference(figures(of).unit(), sd);
    return nearest == null || shown == null
        ? audited(found)
        : follows(nearest + "/(3*{" + key + "})", distance(of, mean) / (3 * shown), found);
  }

  /** The spread that makes an index of this distance: what a Cpk rests on. */
  @Nullable Double spread(CharacteristicReport of, double mean, @Nullable Estimate index) {
    if (index == null || index.value() == 0) {
      return null;
    }
    Specification its = of.specification();
    double room =
        Math.min(
            its.upper() == null ? Double.POSITIVE_INFINITY : its.upper() - mean,
            its.lower() == null ? Double.POSITIVE_INFINITY : mean - its.lower());
    double spread = room / (3 * index.value());
    return Double.isFinite(spread) && spread > 0 ? (Double) spread : null;
  }

  /**
   * An end of Bissell's interval.
   *
   * @param index formula of the index, drawn in where it is
   * @param found what the audit found
   * @param gives what the formula gives
   */
  Cell bissell(
      String index, String count, String freedom, boolean isLow, double gives, Cell.Figure found) {
    return follows(
        index
            + (isLow ? "-" : "+")
            + Z
            + "*SQRT(1/(9*"
            + count
            + ")+("
            + index
            + ")^2/(2*"
            + freedom
            + "))",
        gives,
        found);
  }

  /** What {@link #bissell} gives. */
  static double bissell(double index, double count, double freedom, boolean isLow) {
    double half =
        Double.parseDouble(Z) * Math.sqrt(1 / (9 * count) + index * index / (2 * freedom));
    return isLow ? index - half : index + half;
  }

  /** The share outside that a normal distribution has. */
  Cell expected(CharacteristicReport of, String mean, String sd, Cell.Figure found) {
    String lower = name(of, "lower");
    String upper = name(of, "upper");
    // Each tail by itself, mirrored where it is the upper one: 1 − Φ loses its digits far out.
    String below = lower == null ? "" : "NORMDIST(" + lower + ",{" + mean + "},{" + sd + "},TRUE)";
    String above = upper == null ? "" : "NORMDIST({" + mean + "}," + upper + ",{" + sd + "},TRUE)";
    Double value = found.value();
    return value == null || (lower == null && upper == null)
        ? audited(found)
        : new Cell.Computed(
            below.isEmpty() ? above : above.isEmpty() ? below : below + "+" + above, found);
  }

  /** How many anodes of a label lie outside. */
  Cell outside(CharacteristicReport of, String by, String label, String cell, Cell.Figure found) {
    // Over several specifications each anode was judged by the one of its time.
    String formula =
        of.specifications().size() > 1
            ? null
            : anodes.outside(
                of.wheel(), of.name(), by, label, cell, name(of, "lower"), name(of, "upper"));
    return formula == null || found.value() == null
        ? audited(found)
        : new Cell.Computed(formula, found);
  }

  /** What a cell of another table shows, where that follows; else as audited. */
  static Cell linked(Cell its, String place) {
    return its instanceof Cell.Computed computed
        ? new Cell.Computed(place, computed.figure())
        : its;
  }

  /** A formula only where it gives what the audit found, which stands in the cell either way. */
  static Cell follows(String formula, double gives, Cell.Figure found) {
    Double value = found.value();
    return value == null || Math.abs(gives - value) > SAME * Math.max(1, Math.abs(value))
        ? audited(found)
        : new Cell.Computed(formula, found);
  }

  /** A figure that does not follow. */
  static Cell audited(Cell.Figure found) {
    return found.value() == null ? found : new Cell.AsAudited(found);
  }
}
