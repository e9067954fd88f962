package org.evenpour.report.table;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Rests;
import org.evenpour.findings.CapabilityInFull.ByPercentiles;
import org.evenpour.findings.CapabilityInFull.Group;
import org.evenpour.findings.CapabilityInFull.Source;
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
  private static final Digits INDEX = Digits.plain(2);
  private static final Digits SHARE = Digits.share(1);
  private static final Digits WORTH = Digits.plain(0);

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

    double mean() {
      return mold == null ? of.overall().mean() : mold.mean();
    }

    @Nullable Double sd() {
      return mold == null ? of.overall().sd() : mold.sd();
    }

    long outside() {
      return mold != null
          ? mold.outside() == null ? 0 : mold.outside()
          : of.molds().stream().mapToLong(one -> one.outside() == null ? 0 : one.outside()).sum();
    }
  }

  /** The table of a report. */
  public static Table<Row> of(AuditReport report, Sentences sentences) {
    return of(report, sentences, AnodeCells.NONE);
  }

  /** The same, where anodes can be counted anew. */
  public static Table<Row> of(AuditReport report, Sentences sentences, AnodeCells anodes) {
    Following following = new Following(report, sentences, anodes);
    Map<MoldReport, Integer> places = new IdentityHashMap<>();
    List<Row> rows = new ArrayList<>();
    for (CharacteristicReport of : report.characteristics()) {
      rows.add(new Row(of, null));
      for (MoldReport mold : of.molds()) {
        rows.add(new Row(of, mold));
        places.put(mold, places.size());
      }
    }
    rows.removeIf(row -> row.capability() == null);
    Words words = sentences.words();
    CapabilityCells cells = new CapabilityCells(following, places);
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
            .spread("sigma", figures, cells::within)
            .figure("lower", row -> following.limit(row.of(), "lower"))
            .figure("target", row -> following.limit(row.of(), "target"))
            .figure("upper", row -> following.limit(row.of(), "upper"))
            .figure("cpk", cells::cpk)
            .interval(
                "cpk",
                row -> cells.interval(row, true, true),
                row -> cells.interval(row, true, false))
            .figure("ppk", cells::ppk)
            .interval(
                "ppk",
                row -> cells.interval(row, false, true),
                row -> cells.interval(row, false, false))
            .figure(
                "cp", row -> cells.spread(row, CapabilityReport::cp, cells.within(row), "sigma"))
            .figure("pp", row -> cells.spread(row, CapabilityReport::pp, row.sd(), "sd"))
            .figure("cpl", row -> cells.side(row, true))
            .figure("cpu", row -> cells.side(row, false))
            .figure("cpm", cells::cpm)
            .figure("expected_outside", cells::expected)
            .figure("outside", cells::outside)
            .figure("observed_outside", cells::share)
            .said("stable", row -> stable(row.of()))
            .text("normal", row -> normal(words, row))
            .figure("percentile", cells::percentile)
            .interval(
                "percentile",
                row -> CapabilityCells.percentileEnd(row, Estimate::low),
                row -> CapabilityCells.percentileEnd(row, Estimate::high))
            .value(
                "percentile_135",
                figures,
                row -> CapabilityCells.percentiles(row, ByPercentiles::low))
            .value(
                "percentile_50",
                figures,
                row -> CapabilityCells.percentiles(row, ByPercentiles::median))
            .value(
                "percentile_99",
                figures,
                row -> CapabilityCells.percentiles(row, ByPercentiles::high))
            .figure("worth_within", WORTH, row -> CapabilityCells.rests(row, Rests::countWithin))
            .figure(
                "freedom_within", WORTH, row -> CapabilityCells.rests(row, Rests::freedomWithin))
            .figure("worth", WORTH, row -> CapabilityCells.rests(row, Rests::count))
            .figure("freedom", WORTH, row -> CapabilityCells.rests(row, Rests::freedom))
            .figure("drawn_in", Digits.plain(4), row -> CapabilityCells.rests(row, Rests::shrink))
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
    return observed == null || mold == null || outside == null
        ? figure
        : Following.follows("{outside}/{anodes}", (double) outside / mold.count(), figure);
  }

  private static String normal(Words words, Row row) {
    Boolean normal = row.mold() == null ? row.of().inFull().isNormal() : null;
    if (normal == null) {
      return "";
    }
    boolean isFew = row.of().inFull().percentiles() == null;
    return words.say(normal ? "normal.yes" : isFew ? "normal.few" : "normal.no");
  }

  /** A ladle side, a charge or a crew in one characteristic. */
  public record InGroup(CharacteristicReport of, Group group) {}

  /** Every characteristic by ladle side, charge and crew. */
  public static Table<InGroup> groups(AuditReport report, Sentences sentences) {
    return groups(report, sentences, AnodeCells.NONE);
  }

  /** The same, where anodes can be counted anew. */
  public static Table<InGroup> groups(AuditReport report, Sentences sentences, AnodeCells anodes) {
    Following following = new Following(report, sentences, anodes);
    List<InGroup> rows = new ArrayList<>();
    for (CharacteristicReport of : report.characteristics()) {
      of.inFull().groups().forEach(group -> rows.add(new InGroup(of, group)));
    }
    Words words = sentences.words();
    Function<InGroup, Figures> figures =
        row -> sentences.figures(row.of().wheel(), row.of().name());
    Function<InGroup, @Nullable Double> within =
        row -> following.spread(row.of(), row.group().mean(), row.group().cpk());
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
            .figure(
                "cpk",
                row ->
                    following.nearest(
                        row.of(),
                        row.group().mean(),
                        "mean",
                        within.apply(row),
                        "sigma",
                        figure(row.group().cpk())))
            .interval(
                "cpk",
                row -> Following.audited(end(row.group().cpk(), Estimate::low)),
                row -> Following.audited(end(row.group().cpk(), Estimate::high)))
            .figure(
                "ppk",
                row ->
                    following.nearest(
                        row.of(),
                        row.group().mean(),
                        "mean",
                        row.group().sd(),
                        "sd",
                        figure(row.group().ppk())))
            .interval(
                "ppk",
                row -> Following.audited(end(row.group().ppk(), Estimate::low)),
                row -> Following.audited(end(row.group().ppk(), Estimate::high)))
            .figure("outside", row -> outside(row, sentences, following))
            .text("note", row -> row.group().isFew() ? words.say("few") : "")
            .spread("sigma", figures, within)
            .list(),
        rows);
  }

  private static Cell outside(InGroup row, Sentences sentences, Following following) {
    Group group = row.group();
    Long count = group.outside();
    return following.outside(
        row.of(),
        group.by().equals("ladle") ? "side" : "set " + group.by(),
        group.name(),
        "{which}",
        new Cell.Figure(
            count == null ? null : (Double) count.doubleValue(),
            Digits.count(sentences.words().say("thousands"))));
  }

  private static Cell.Figure figure(@Nullable Estimate estimate) {
    return end(estimate, Estimate::value);
  }

  static Cell.Figure end(@Nullable Estimate estimate, Function<Estimate, @Nullable Double> part) {
    return new Cell.Figure(estimate == null ? null : part.apply(estimate), INDEX);
  }

  /** Every characteristic as a whole, for the first page. */
  public static Table<CharacteristicReport> overall(AuditReport report, Sentences sentences) {
    return overall(report, sentences, AnodeCells.NONE);
  }

  /** The same, where anodes can be counted anew. */
  public static Table<CharacteristicReport> overall(
      AuditReport report, Sentences sentences, AnodeCells anodes) {
    Following following = new Following(report, sentences, anodes);
    Table<Row> capability = of(report, sentences, anodes);
    Table<SpreadTables.Left> without = SpreadTables.without(report, sentences);
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
            .figure("lower", one -> following.limit(one, "lower"))
            .figure("target", one -> following.limit(one, "target"))
            .figure("upper", one -> following.limit(one, "upper"))
            .value("mean", figures, one -> one.overall().mean())
            .spread("sd", figures, one -> one.overall().sd())
            .figure("ppk", one -> linked(capability, one, "ppk"))
            .interval(
                "ppk",
                one -> linked(capability, one, "ppk_low"),
                one -> linked(capability, one, "ppk_high"))
            .figure("observed_outside", one -> linked(capability, one, "observed_outside"))
            .figure("ppk_median", one -> likeTheMedian(without, one))
            .said("stable", CapabilityTable::stable)
            .list(),
        specified.isEmpty() ? report.characteristics() : specified);
  }

  /** What stands in the table of capability for all molds together. */
  private static Cell linked(Table<Row> capability, CharacteristicReport of, String key) {
    for (int i = 0; i < capability.rows().size(); i++) {
      Row row = capability.rows().get(i);
      if (row.of() == of && row.mold() == null) {
        return Following.linked(
            capability.column(key).cell().apply(row),
            "{capability/" + key + ":" + i + "-" + i + "}");
      }
    }
    return Cell.BLANK;
  }

  /** What Ppk would be if every mold ran like the median one. */
  private static Cell likeTheMedian(Table<SpreadTables.Left> without, CharacteristicReport of) {
    for (int i = 0; i < without.rows().size(); i++) {
      SpreadTables.Left row = without.rows().get(i);
      if (row.of() == of && row.without().without() == Source.MOLD) {
        return Following.linked(
            without.column("ppk").cell().apply(row), "{without/ppk:" + i + "-" + i + "}");
      }
    }
    return Cell.BLANK;
  }
}
