package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.function.Function;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.Setting;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.column.DoubleColumn;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.picture.Points;
import org.evenpour.picture.SeriesPicture;
import org.evenpour.picture.SeriesPicture.Axis;
import org.evenpour.picture.SeriesPicture.Band;
import org.evenpour.picture.SeriesPicture.Change;
import org.evenpour.picture.SeriesPicture.Flag;
import org.evenpour.picture.StackPicture;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.report.table.Columns;
import org.evenpour.table.Cell;
import org.evenpour.table.Column;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** What speaks for a signal: the setting over the characteristic, the moves, the shares. */
public final class EvidenceView {
  private EvidenceView() {}

  /**
   * The setting over the characteristic on the same turns; the characteristic alone where no
   * setting goes with it. Both carry where the signal began, and where the link did.
   *
   * @param setting whose series is shown; null = none
   * @param link that is chosen; null = none
   */
  public static StackPicture stack(
      Desk desk,
      Signal signal,
      CharacteristicReport report,
      @Nullable String setting,
      @Nullable Link link) {
    List<SeriesPicture> rows = new ArrayList<>();
    SeriesPicture lower =
        switch (signal.scope()) {
          case WHEEL -> Charts.wheel(desk, report);
          case SIDE -> Charts.side(desk, report, String.valueOf(signal.side()));
          case MOLD, POUR -> Charts.mold(desk, report, String.valueOf(signal.mold()));
        };
    Flag onset = onset(signal, desk);
    List<Change> began = link == null ? List.of() : began(link, desk);
    if (setting != null) {
      SeriesPicture upper = setting(desk, setting, signal.mold(), List.of(onset));
      if (upper != null) {
        rows.add(with(upper, List.of(onset), began));
      }
    }
    List<Flag> flags = new ArrayList<>(lower.flags());
    flags.replaceAll(flag -> flag.name().equals(signal.id()) ? onset : flag);
    List<Change> changes = new ArrayList<>(lower.changes());
    changes.addAll(0, began);
    rows.add(with(lower, flags, changes));
    return new StackPicture(rows);
  }

  private static SeriesPicture with(SeriesPicture series, List<Flag> flags, List<Change> changes) {
    return new SeriesPicture(
        series.points(),
        series.across(),
        series.up(),
        series.band(),
        series.lines(),
        flags,
        changes);
  }

  private static Flag onset(Signal signal, Desk desk) {
    String state = Charts.mark(signal).sign() + " " + desk.sentences().state(signal);
    return new Flag(
        desk.from(signal),
        desk.to(signal),
        Charts.mark(signal),
        desk.look().say("chart.since", state, signal.sinceTurn()),
        signal.id(),
        desk.sentences().signal(signal));
  }

  /** Where a setting began to move, or an event was written down. */
  private static List<Change> began(Link link, Desk desk) {
    Integer turn = link.sinceTurn();
    if (turn == null) {
      return List.of();
    }
    Sentences sentences = desk.sentences();
    String name =
        Words.capital(link.event() ? sentences.event(link.name()) : sentences.setting(link.name()));
    String key = link.event() ? "chart.event" : "chart.moved";
    return List.of(
        new Change(turn, desk.look().say(key, turn), desk.look().say(key + ".says", name, turn)));
  }

  /**
   * A setting along the turns; null where it is no number.
   *
   * @param mold only its pours; null = all
   */
  public static @Nullable SeriesPicture setting(
      Desk desk, String name, @Nullable String mold, List<Flag> flags) {
    WheelRows wheel = desk.wheel();
    Setting setting =
        wheel.record().settings().stream()
            .filter(one -> one.name().equals(name))
            .findFirst()
            .orElse(null);
    DoubleColumn numbers = setting == null ? null : setting.numbers();
    if (setting == null || numbers == null) {
      return null;
    }
    int[] rows = mold == null ? null : wheel.rows(mold);
    Points points =
        wheel
            .points(numbers, Unit.NONE, rows, castAt -> Specification.NONE)
            .saying(
                Charts.anodes(
                    desk, rows, i -> written(setting, numbers.get(rows == null ? i : rows[i]))));
    DoubleSummaryStatistics shown = Charts.known(points);
    if (shown.getCount() == 0) {
      return null;
    }
    double low = shown.getMin();
    double high = shown.getMax();
    double air = high > low ? (high - low) * 0.05 : 1;
    String symbol = setting.unit().symbol();
    String title = Words.capital(desk.sentences().setting(name));
    return new SeriesPicture(
        points,
        Charts.turns(desk),
        new Axis(symbol.isEmpty() ? title : title + ", " + symbol, low - air, high + air),
        Band.NONE,
        List.of(),
        flags,
        List.of());
  }

  /** A value of a setting, with its unit. */
  static String written(Setting setting, double value) {
    String symbol = setting.unit().symbol();
    String number = Digits.number(value, new Figures(setting.unit()).decimals());
    return symbol.isEmpty() ? number : number + " " + symbol;
  }

  /** The chosen setting over the chosen characteristic, for a mold or the whole wheel. */
  public static StackPicture settingOver(Desk desk, String setting, CharacteristicReport report) {
    String mold = desk.selection().mold();
    List<SeriesPicture> rows = new ArrayList<>();
    SeriesPicture upper = setting(desk, setting, mold, List.of());
    if (upper != null) {
      rows.add(upper);
    }
    rows.add(mold == null ? Charts.wheel(desk, report) : Charts.mold(desk, report, mold));
    return new StackPicture(rows);
  }

  /** The best link that is a setting with numbers; null where there is none. */
  public static @Nullable String bestSetting(Desk desk, Signal signal) {
    for (Link link : signal.links()) {
      boolean isNumber =
          desk.wheel().record().settings().stream()
              .anyMatch(one -> one.name().equals(link.name()) && one.numbers() != null);
      if (!link.event() && link.evidence() != Evidence.NONE && isNumber) {
        return link.name();
      }
    }
    return null;
  }

  /**
   * The key of what is chosen first: what a person marked right, else the best setting with
   * numbers, else the best link.
   */
  public static @Nullable String best(Desk desk, Signal signal) {
    for (CauseMark mark : desk.report().causes().of(signal)) {
      if (mark.verdict() == CauseMark.Verdict.RIGHT) {
        return mark.cause().key();
      }
    }
    String setting = bestSetting(desk, signal);
    if (setting != null) {
      return new Cause(Kind.SETTING, setting).key();
    }
    Link first = signal.links().isEmpty() ? null : signal.links().get(0);
    return first == null || first.evidence() == Evidence.NONE ? null : first.cause().key();
  }

  /** What is shown of a link; marks only where the signal has one. */
  public static List<Column<LinkRow>> columns(
      Desk desk, CharacteristicReport report, Signal signal) {
    Figures figures = desk.figures(report);
    String unit = figures.unit().symbol();
    Columns<LinkRow> columns =
        Columns.<LinkRow>narrow(desk.sentences()).text("link", row -> row.name(desk)).wide(20);
    if (!desk.report().causes().of(signal).isEmpty()) {
      columns.text("marked", row -> row.verdict(desk)).wide(9);
    }
    return columns
        .cell("evidence", Column.Kind.WORDS, found(link -> new Cell.Text(evidence(desk, link))))
        .wide(10)
        .figure("moved", found(link -> moved(link)))
        .figure("would", found(link -> would(figures, link)))
        .in(unit)
        .figure("share", found(link -> share(desk, link)))
        .in("%")
        .wide(10)
        .figure("chance", found(link -> chance(link)))
        .list();
  }

  private static final Cell MISSING = new Cell.Marked(Cell.MISSING, null);

  private static Function<LinkRow, Cell> found(Function<Link, Cell> with) {
    return row -> {
      Link link = row.link();
      return link == null ? MISSING : with.apply(link);
    };
  }

  private static String evidence(Desk desk, Link link) {
    return desk.look().say("evidence." + link.evidence().name().toLowerCase(java.util.Locale.ROOT));
  }

  private static Cell moved(Link link) {
    Double by = link.movedBy();
    if (by == null) {
      Integer turn = link.sinceTurn();
      return link.event() && turn != null ? new Cell.Marked("@ " + turn, (double) turn) : MISSING;
    }
    Unit unit = Sentences.unit(link.unit());
    String size = Digits.number(Math.abs(by), Math.min(4, Digits.two(by)));
    boolean isNothing = size.chars().allMatch(c -> c == '0' || c == '.');
    String number = unit.symbol().isEmpty() ? size : size + " " + unit.symbol();
    return new Cell.Marked(isNothing ? "0" : (by < 0 ? "−" : "+") + number, by);
  }

  private static Cell would(Figures figures, Link link) {
    Double effect = link.expectedEffect();
    if (effect == null) {
      return MISSING;
    }
    return new Cell.Marked(
        figures.signed(effect, figures.decimalsOf(effect)),
        figures.unit().differenceFromCanonical(effect));
  }

  private static Cell share(Desk desk, Link link) {
    Double share = link.explainedShare();
    if (share == null) {
      return MISSING;
    }
    Double low = link.explainedLow();
    Double high = link.explainedHigh();
    String middle = Digits.number(share * 100, 0);
    return new Cell.Marked(
        low == null || high == null
            ? middle
            : desk.look()
                .say(
                    "cell.interval",
                    middle,
                    Digits.number(low * 100, 0),
                    Digits.number(high * 100, 0)),
        share);
  }

  private static Cell chance(Link link) {
    Double q = link.qValue();
    return q == null ? MISSING : new Cell.Marked(q < 0.001 ? "<0.001" : Digits.number(q, 3), q);
  }
}
