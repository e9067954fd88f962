package org.evenpour.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import org.evenpour.audit.ProposedLimits;
import org.evenpour.casting.Unit;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsBook.Retirement;
import org.evenpour.control.LimitsBook.SpecificationRevision;
import org.evenpour.control.LimitsInForce;
import org.evenpour.control.LimitsVersion;
import org.evenpour.control.LimitsVersion.LeftOut;
import org.evenpour.control.LimitsVersion.MoldBase;
import org.evenpour.control.LimitsVersion.Reason;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.NotLookedFor;
import org.evenpour.words.Digits;
import org.jspecify.annotations.Nullable;

/** Limits, proposed or approved, in words and figures for a terminal. */
public final class LimitsText {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  /** Longer lists are cut, and say so. */
  private static final int MOST_LINES = 12;

  private static final double[] SHIFTS = {1, 1.5, 2, 3};

  /** The normal score that one pour in 1,000 passes. */
  private static final double RARE = 3.0902;

  /** Half-width of a 95 % interval, in standard errors. */
  private static final double CLEARLY = 1.96;

  private final ZoneId zone;

  /**
   * @param zone in which times are told
   */
  public LimitsText(ZoneId zone) {
    this.zone = zone;
  }

  /**
   * Limits that a base period gives, what was left out, and what they find.
   *
   * @param judged the same record, judged by them
   */
  public String proposal(ProposedLimits proposed, AuditReport judged) {
    LimitsVersion draft = proposed.draft();
    String name = name(proposed.wheel(), proposed.characteristic());
    NotLookedFor lacks = proposed.lacks();
    if (draft == null) {
      return name
          + ": this base gives no limits"
          + (lacks == null ? "" : " (" + lacks.why() + "); " + lacks.mend())
          + "\n";
    }
    Figures figures = new Figures(proposed.displayUnit());
    StringBuilder text = new StringBuilder();
    text.append(name).append(", base ").append(base(draft)).append('\n');
    figures(text, draft, figures);
    found(text, draft, judged);
    leftOut(text, draft.leftOut());
    return text.toString();
  }

  private void figures(StringBuilder text, LimitsVersion version, Figures figures) {
    LimitsInForce limits = version.limits();
    double pour = limits.pour().sigma();
    if (limits.ownPast()) {
      ownPast(text, version, figures);
      return;
    }
    line(
        text,
        "center %s, sigma from pour to pour %s, from turn to turn %s (%s)",
        figures.mean(limits.center()),
        figures.spread(pour),
        figures.spread(limits.wheel().sigma()),
        figures.unit().symbol());
    line(
        text,
        "a single pour signals beyond %s and %s, a single turn beyond ±%s",
        figures.signed(limits.pourReach(-1), figures.decimals()),
        figures.signed(limits.pourReach(1), figures.decimals()),
        figures.size(limits.wheelPointLimit() * limits.wheel().sigma(), figures.decimals() + 1));
    distribution(text, limits, figures);
    List<String> finds = new ArrayList<>();
    for (double shift : SHIFTS) {
      double by = shift * pour;
      finds.add(
          String.format(
              Locale.ROOT,
              "%s in %.0f and %.0f",
              figures.size(by, figures.decimals() + 1),
              limits.pour().turnsToFind(by),
              limits.wheel().turnsToFind(by)));
    }
    line(
        text,
        "turns until a lasting shift is found, in one mold and of the whole wheel: %s",
        String.join("; ", finds));
    offsets(text, version, figures);
    wear(text, version, figures);
  }

  /** Where turns have too few values to tell molds from turns. */
  private void ownPast(StringBuilder text, LimitsVersion version, Figures figures) {
    LimitsInForce limits = version.limits();
    line(
        text,
        "each mold against its own past alone: center %s, sigma %s (%s)",
        figures.mean(limits.center()),
        figures.spread(limits.pour().sigma()),
        figures.unit().symbol());
    line(
        text,
        "a single pour signals beyond %s and %s",
        figures.signed(limits.pourReach(-1), figures.decimals()),
        figures.signed(limits.pourReach(1), figures.decimals()));
    distribution(text, limits, figures);
    offsets(text, version, figures);
  }

  private static void offsets(StringBuilder text, LimitsVersion version, Figures figures) {
    List<String> offsets = new ArrayList<>();
    for (MoldBase mold : version.molds()) {
      double offset = version.offset(mold.mold());
      offsets.add(
          mold.mold()
              + " "
              + (Double.isNaN(offset) ? "–" : figures.signed(offset, figures.decimals() + 1)));
    }
    line(text, "molds off the center: %s", String.join(", ", offsets));
  }

  /** How pours are distributed, and what the base cannot tell of it. */
  private static void distribution(StringBuilder text, LimitsInForce limits, Figures figures) {
    if (limits.takesPoursAsNormal()) {
      line(text, "pours are taken to be normal: the base has too few to tell their distribution");
      return;
    }
    line(
        text,
        "one pour in 1,000 stands below %s and one above %s (normal pours: ±%s); the limits allow"
            + " for it",
        figures.signed(limits.pourAt(-RARE), figures.decimals()),
        figures.signed(limits.pourAt(RARE), figures.decimals()),
        figures.size(RARE * limits.pour().sigma(), figures.decimals()));
    line(
        text,
        "these %,d pours tell of pours as rare as 1 in %s, to within a factor of four; the asked rate"
            + " of false alarms needs 1 in %s",
        limits.poursInDistribution(),
        oneDigit(limits.rarestTold()),
        oneDigit(limits.pourRarity()));
  }

  private static String oneDigit(double x) {
    return String.format(
        Locale.ROOT, "%,d", new BigDecimal(x).round(new MathContext(1)).longValue());
  }

  private static void wear(StringBuilder text, LimitsVersion version, Figures figures) {
    List<Double> perTurn = version.limits().wear().perTurn();
    List<String> drifts = new ArrayList<>();
    for (int i = 0; i < perTurn.size(); i++) {
      drifts.add(
          version.molds().get(i).mold()
              + " "
              + figures.signed(100 * perTurn.get(i), figures.decimals() + 2));
    }
    if (!drifts.isEmpty()) {
      line(
          text,
          "molds drift against one another, as wear makes them; that is part of their level, in 100"
              + " turns: %s",
          String.join(", ", drifts));
    }
  }

  private static void found(StringBuilder text, LimitsVersion draft, AuditReport judged) {
    ProposedLimits.Found found = ProposedLimits.found(draft, judged);
    line(
        text,
        "judged by them, these logs have %d signals to the end of the base, and %d after it",
        found.within(),
        found.after());
  }

  private void leftOut(StringBuilder text, List<LeftOut> all) {
    TreeMap<Reason, long[]> counts = new TreeMap<>();
    for (LeftOut one : all) {
      long[] count = counts.computeIfAbsent(one.reason(), r -> new long[2]);
      count[0] += one.anodes();
      count[1]++;
    }
    if (all.isEmpty()) {
      line(text, "nothing was left out");
    }
    counts.forEach(
        (reason, count) -> {
          line(
              text,
              "left out: %s, %d anodes, %d %s",
              said(reason),
              count[0],
              count[1],
              count[1] == 1 ? "stretch" : "stretches");
          int shown = 0;
          for (LeftOut one : all) {
            if (one.reason() == reason && reason != Reason.START_UP) {
              if (shown++ == MOST_LINES) {
                line(text, "    … and %d more", count[1] - MOST_LINES);
                break;
              }
              line(
                  text,
                  "    %s to %s  %s  %d anodes  %s",
                  time(one.from()),
                  time(one.to()),
                  one.mold() == null ? "all molds" : "mold " + one.mold(),
                  one.anodes(),
                  one.note());
            }
          }
        });
  }

  private static String said(Reason reason) {
    return switch (reason) {
      case START_UP -> "start-up after a stop";
      case MOLD_SHIFTED -> "a mold off its usual level";
      case FAR_POUR -> "single pours far from their mold and turn";
      case TURN_SHIFTED -> "the wheel off its usual level (out of its center and sigma only)";
      case OLD_MOLD -> "molds that were changed since";
      case BEYOND_BASE -> "turns beyond the first 1,500";
      case BY_HAND -> "as you said";
    };
  }

  /** One approved version in a line or two. */
  public String approved(LimitsVersion one) {
    return name(one.wheel(), one.characteristic())
        + ": version "
        + one.version()
        + ", valid from "
        + time(one.validFrom())
        + ", base "
        + base(one)
        + "\n";
  }

  /**
   * Everything that stands in the file.
   *
   * @param now tells which versions are in force
   */
  public String list(LimitsBook book, Instant now) {
    StringBuilder text = new StringBuilder();
    for (LimitsVersion one : book.versions()) {
      Retirement end = book.retirement(one);
      boolean inForce = one.equals(book.inForce(one.wheel(), one.characteristic(), now));
      text.append(approved(one));
      line(
          text,
          "%s; approved %s by %s: %s",
          end != null
              ? "retired from " + time(end.from()) + " by " + end.who() + " (" + end.why() + ")"
              : inForce ? "in force" : "not in force",
          time(one.approvedAt()),
          one.who(),
          one.why());
    }
    for (SpecificationRevision one : book.revisions()) {
      text.append(specified(one));
    }
    return text.isEmpty() ? "Nothing is approved or specified.\n" : text.toString();
  }

  /** One dated specification in a line. */
  public String specified(SpecificationRevision one) {
    String wheel = one.wheel();
    return (wheel == null
            ? "Every wheel, " + one.characteristic()
            : name(wheel, one.characteristic()))
        + ": specification from "
        + time(one.from())
        + ": lower "
        + some(one.specification().lower())
        + ", target "
        + some(one.specification().target())
        + ", upper "
        + some(one.specification().upper())
        + " "
        + one.unit()
        + "; "
        + one.who()
        + ": "
        + one.why()
        + "\n";
  }

  private static String some(@Nullable Double value) {
    return value == null ? "none" : value.toString();
  }

  /** What differs between two versions of the same characteristic. */
  public String comparison(LimitsVersion one, LimitsVersion other) {
    Figures figures = new Figures(Unit.of(one.unit()));
    int more = figures.decimals() + 2;
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "%s: version %d, and how version %d differs\n",
            name(one.wheel(), one.characteristic()),
            one.version(),
            other.version()));
    LimitsInForce a = one.limits();
    LimitsInForce b = other.limits();
    change(text, figures, "center", a.center(), b.center(), hypot(one, other));
    change(
        text, figures, "sigma from pour to pour", a.pour().sigma(), b.pour().sigma(), Double.NaN);
    change(
        text, figures, "sigma from turn to turn", a.wheel().sigma(), b.wheel().sigma(), Double.NaN);
    change(
        text, figures, "a single pour signals below", a.pourReach(-1), b.pourReach(-1), Double.NaN);
    change(
        text, figures, "a single pour signals above", a.pourReach(1), b.pourReach(1), Double.NaN);
    change(
        text,
        figures,
        "a single turn signals beyond ±",
        a.wheelPointLimit() * a.wheel().sigma(),
        b.wheelPointLimit() * b.wheel().sigma(),
        Double.NaN);
    int same = 0;
    for (MoldBase mold : other.molds()) {
      double before = one.offset(mold.mold());
      double after = other.offset(mold.mold());
      double error =
          CLEARLY * Math.hypot(one.offsetError(mold.mold()), other.offsetError(mold.mold()));
      if (Double.isNaN(before) != Double.isNaN(after)) {
        line(text, "mold %s has an offset in one of them only", mold.mold());
      } else if (Math.abs(after - before) > error) {
        line(
            text,
            "mold %s off the center: %s, now %s (moved by %s ± %s)",
            mold.mold(),
            figures.signed(before, more),
            figures.signed(after, more),
            figures.signed(after - before, more),
            figures.size(error, more));
      } else {
        same++;
      }
    }
    line(
        text,
        "%d molds moved by no more than the error of their offsets (95 %%; one in twenty moves more"
            + " by chance)",
        same);
    return text.toString();
  }

  private static double hypot(LimitsVersion one, LimitsVersion other) {
    return CLEARLY * Math.hypot(one.centerError(), other.centerError());
  }

  private static void change(
      StringBuilder text, Figures figures, String what, double a, double b, double error) {
    int more = figures.decimals() + 2;
    line(
        text,
        "%s %s, %s%s",
        what,
        Digits.number(figures.unit().fromCanonical(a), more),
        figures.departure(b - a, more),
        Double.isNaN(error) ? "" : " ± " + figures.size(error, more));
  }

  private String base(LimitsVersion one) {
    return String.format(
        Locale.ROOT,
        "%s to %s, %d turns, %d anodes",
        time(one.base().firstCastAt()),
        time(one.base().lastCastAt()),
        one.base().turns(),
        one.base().anodes());
  }

  private static void line(StringBuilder text, String form, Object... figures) {
    text.append("  ").append(String.format(Locale.ROOT, form, figures).stripTrailing());
    text.append('\n');
  }

  private static String name(String wheel, String characteristic) {
    return wheel.isEmpty() ? characteristic : "Wheel " + wheel + ", " + characteristic;
  }

  private String time(Instant at) {
    return TIME.format(at.atZone(zone));
  }
}
