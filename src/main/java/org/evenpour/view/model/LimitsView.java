package org.evenpour.view.model;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.evenpour.audit.ProposedLimits;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.MoldOrder;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsBook.Retirement;
import org.evenpour.control.LimitsVersion;
import org.evenpour.control.LimitsVersion.LeftOut;
import org.evenpour.control.LimitsVersion.MoldBase;
import org.evenpour.control.LimitsVersion.Reason;
import org.evenpour.findings.AuditReport;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.report.table.Columns;
import org.evenpour.table.Column;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * Limits to look at before somebody approves them: what a base gives, what was left out and why,
 * what they would find and how fast, and how they differ from those in force. The figures are those
 * of {@code evenpour limits propose}, by the same classes.
 */
public final class LimitsView {
  private static final double[] SHIFTS = {1, 2, 3};

  /** Half-width of a 95 % interval, in standard errors. */
  private static final double CLEARLY = 1.96;

  private LimitsView() {}

  /**
   * Proposed limits.
   *
   * @param turns that they are of; null = the whole record
   * @param judged the record, judged by them
   */
  public record Proposal(
      String wheel, @Nullable Stretch turns, List<ProposedLimits> all, AuditReport judged) {

    /** Those of a characteristic; null where it was not asked. */
    public @Nullable ProposedLimits of(String characteristic) {
      return all.stream()
          .filter(one -> one.characteristic().equals(characteristic))
          .findFirst()
          .orElse(null);
    }
  }

  /** Proposes; takes as long as two audits, on whatever thread asks. */
  public static Proposal propose(OpenedLog log, String wheel, @Nullable Stretch turns) {
    WheelRows rows = log.wheel(wheel);
    CastingRecord record = log.record();
    Instant from = turns == null ? null : at(rows, turns.from());
    Instant to = turns == null ? null : at(rows, turns.to());
    List<ProposedLimits> all =
        ProposedLimits.of(record, from, to, List.of()).stream()
            .filter(one -> one.wheel().equals(rows.record().wheel()))
            .toList();
    return new Proposal(wheel, turns, all, ProposedLimits.judged(record, all));
  }

  /** When the first anode at or after a place was cast; null where there is none any more. */
  private static @Nullable Instant at(WheelRows rows, double place) {
    int row = rows.rowAt(place);
    return row >= rows.record().rows()
        ? null
        : Instant.ofEpochMilli(rows.record().castAtMillis().get(row));
  }

  /**
   * A figure of the limits.
   *
   * @param inForce empty where nothing is
   * @param proposed empty where nothing is
   * @param difference empty where there is none to tell
   */
  public record Row(String what, String inForce, String proposed, String difference) {}

  /** Every figure, those in force beside those proposed. */
  public static List<Row> rows(
      Desk desk, @Nullable LimitsVersion inForce, @Nullable LimitsVersion proposed) {
    LimitsVersion any = proposed != null ? proposed : inForce;
    if (any == null) {
      return List.of();
    }
    Look look = desk.look();
    Figures figures = desk.sentences().figures(any.wheel(), any.characteristic());
    int more = figures.decimals() + 1;
    Rows rows = new Rows(new ArrayList<>(), figures, inForce, proposed);
    rows.words(look.say("limits.base"), one -> base(desk, one));
    rows.words(look.say("limits.base.time"), one -> time(desk, one));
    rows.value(look.say("limits.center"), one -> one.limits().center());
    rows.size(look.say("limits.pour"), one -> one.limits().pour().sigma());
    boolean isWheel = !any.limits().ownPast();
    if (isWheel) {
      rows.size(look.say("limits.turn"), one -> one.limits().wheel().sigma());
    }
    rows.departure(look.say("limits.low"), one -> one.limits().pourReach(-1));
    rows.departure(look.say("limits.high"), one -> one.limits().pourReach(1));
    if (isWheel) {
      rows.size(
          look.say("limits.wheel"),
          one -> one.limits().wheelPointLimit() * one.limits().wheel().sigma());
      double pour = any.limits().pour().sigma();
      for (double shift : SHIFTS) {
        double by = shift * pour;
        String size = figures.size(by, more);
        rows.turns(look.say("limits.finds.mold", size), one -> one.limits().pour().turnsToFind(by));
        rows.turns(
            look.say("limits.finds.wheel", size), one -> one.limits().wheel().turnsToFind(by));
      }
    }
    return rows.all();
  }

  /** Rows in the making. */
  private record Rows(
      List<Row> all,
      Figures figures,
      @Nullable LimitsVersion inForce,
      @Nullable LimitsVersion proposed) {

    private interface Said {
      String of(LimitsVersion version);
    }

    void words(String what, Said said) {
      all.add(new Row(what, of(inForce, said), of(proposed, said), ""));
    }

    private static String of(@Nullable LimitsVersion version, Said said) {
      return version == null ? "" : said.of(version);
    }

    private void add(String what, Said said, ToDoubleFunction<LimitsVersion> figure) {
      LimitsVersion a = inForce;
      LimitsVersion b = proposed;
      String difference =
          a == null || b == null
              ? ""
              : figures.departure(
                  figure.applyAsDouble(b) - figure.applyAsDouble(a), figures.decimals() + 2);
      all.add(new Row(what, of(a, said), of(b, said), difference));
    }

    void value(String what, ToDoubleFunction<LimitsVersion> figure) {
      add(what, one -> figures.mean(figure.applyAsDouble(one)), figure);
    }

    void size(String what, ToDoubleFunction<LimitsVersion> figure) {
      int more = figures.decimals() + 2;
      add(what, one -> figures.size(figure.applyAsDouble(one), more), figure);
    }

    void departure(String what, ToDoubleFunction<LimitsVersion> figure) {
      int more = figures.decimals() + 1;
      add(what, one -> figures.departure(figure.applyAsDouble(one), more), figure);
    }

    void turns(String what, ToDoubleFunction<LimitsVersion> turns) {
      words(what, one -> Digits.number(turns.applyAsDouble(one), 0));
    }
  }

  private static String base(Desk desk, LimitsVersion one) {
    Words words = desk.sentences().words();
    return desk.look()
        .say("limits.base.of", words.count(one.base().turns()), words.count(one.base().anodes()));
  }

  private static String time(Desk desk, LimitsVersion one) {
    return desk.look()
        .say(
            "cell.range",
            desk.sentences().time(one.base().firstCastAt()),
            desk.sentences().time(one.base().lastCastAt()));
  }

  /** The columns of {@link #rows}. */
  public static List<Column<Row>> columns(Desk desk) {
    Look look = desk.look();
    return Columns.<Row>of(desk.sentences())
        .text("figure", Row::what)
        .named(look.say("limits.figure"))
        .wide(36)
        .text("in_force", Row::inForce)
        .named(look.say("limits.in_force"))
        .wide(29)
        .text("proposed", Row::proposed)
        .named(look.say("limits.proposed"))
        .wide(29)
        .text("difference", Row::difference)
        .named(look.say("limits.difference"))
        .wide(12)
        .list();
  }

  /** What was left out for one reason. */
  public record Out(Reason reason, long anodes, int stretches, List<LeftOut> all) {}

  /** What was left out of a base, the most first. */
  public static List<Out> leftOut(LimitsVersion version) {
    Map<Reason, List<LeftOut>> byReason = new EnumMap<>(Reason.class);
    for (LeftOut one : version.leftOut()) {
      byReason.computeIfAbsent(one.reason(), any -> new ArrayList<>()).add(one);
    }
    List<Out> all = new ArrayList<>();
    byReason.forEach(
        (reason, its) ->
            all.add(
                new Out(reason, its.stream().mapToLong(LeftOut::anodes).sum(), its.size(), its)));
    all.sort(Comparator.comparingLong(Out::anodes).reversed());
    return all;
  }

  /** What was left out and why, in sentences; that nothing was, where that is so. */
  public static String leftOut(Desk desk, LimitsVersion version) {
    Look look = desk.look();
    List<Out> all = leftOut(version);
    if (all.isEmpty()) {
      return look.say("limits.out.none");
    }
    Words words = desk.sentences().words();
    List<String> parts = new ArrayList<>();
    for (Out one : all) {
      List<String> molds =
          one.all().stream()
              .map(LeftOut::mold)
              .filter(mold -> mold != null)
              .map(String::valueOf)
              .distinct()
              .sorted(MoldOrder::compare)
              .toList();
      String what = look.say("limits.out." + one.reason().id(), words.count(one.anodes()));
      boolean isNamed = !molds.isEmpty() && one.reason() != Reason.FAR_POUR;
      parts.add(
          isNamed
              ? look.say(
                  molds.size() == 1 ? "limits.out.mold" : "limits.out.molds",
                  what,
                  words.list(molds))
              : what);
    }
    return look.say("limits.out", String.join("; ", parts));
  }

  /** How much of the record would signal, judged by what is proposed. */
  public static String found(Desk desk, Proposal proposal, LimitsVersion draft) {
    ProposedLimits.Found found = ProposedLimits.found(draft, proposal.judged());
    return desk.look().say("limits.found", found.within(), found.after());
  }

  /** Which molds moved since the limits in force, beyond the error of their offsets. */
  public static String moved(Desk desk, LimitsVersion inForce, LimitsVersion proposed) {
    Figures figures = desk.sentences().figures(proposed.wheel(), proposed.characteristic());
    int more = figures.decimals() + 1;
    List<String> moved = new ArrayList<>();
    int same = 0;
    for (MoldBase mold : proposed.molds()) {
      double by = proposed.offset(mold.mold()) - inForce.offset(mold.mold());
      double error =
          CLEARLY * Math.hypot(inForce.offsetError(mold.mold()), proposed.offsetError(mold.mold()));
      if (Math.abs(by) > error) {
        moved.add(
            desk.look()
                .say(
                    "limits.moved.one",
                    mold.mold(),
                    figures.signed(by, more),
                    figures.size(error, more)));
      } else if (!Double.isNaN(by)) {
        same++;
      }
    }
    return moved.isEmpty()
        ? desk.look().say("limits.moved.none", same)
        : desk.look().say("limits.moved", String.join("; ", moved), same);
  }

  /** A version in the history. */
  public record Past(LimitsVersion version, String state) {}

  /** Everything that was approved of a characteristic, the newest first. */
  public static List<Past> history(Desk desk, LimitsBook book, String characteristic, Instant now) {
    List<Past> all = new ArrayList<>();
    Sentences sentences = desk.sentences();
    for (LimitsVersion one : book.versions(desk.selection().wheel(), characteristic)) {
      Retirement end = book.retirement(one);
      boolean inForce = one.equals(book.inForce(one.wheel(), characteristic, now));
      String state =
          end != null
              ? desk.look().say("limits.retired", sentences.date(end.from()), end.who(), end.why())
              : desk.look().say(inForce ? "limits.holds" : "limits.rests");
      all.add(0, new Past(one, state));
    }
    return all;
  }

  /** The columns of the history. */
  public static List<Column<Past>> pastColumns(Desk desk) {
    Look look = desk.look();
    Sentences sentences = desk.sentences();
    return Columns.<Past>of(sentences)
        .text("version", one -> String.valueOf(one.version().version()))
        .named(look.say("limits.version"))
        .wide(8)
        .text("state", Past::state)
        .wide(20)
        .text("valid", one -> sentences.date(one.version().validFrom()))
        .named(look.say("limits.valid"))
        .wide(17)
        .text("who", one -> one.version().who())
        .named(look.say("limits.who"))
        .wide(12)
        .text("why", one -> one.version().why())
        .named(look.say("limits.why"))
        .wide(24)
        .list();
  }

  /** {@code Mass: version 3 is in force, approved …}; or that nothing is. */
  public static String state(
      Desk desk, @Nullable LimitsBook book, @Nullable LimitsVersion inForce) {
    String name = desk.name(desk.selection().characteristic());
    if (book == null) {
      return desk.look().say("limits.reading");
    }
    if (inForce == null) {
      return desk.look().say("limits.none", name);
    }
    return desk.look()
        .say(
            "limits.state",
            name,
            inForce.version(),
            desk.sentences().date(inForce.validFrom()),
            inForce.who(),
            inForce.why());
  }

  /** What a characteristic's base lacks to give limits. */
  public static String lacks(Desk desk, ProposedLimits proposed) {
    var lacks = proposed.lacks();
    String why = lacks == null ? "" : desk.sentences().words().say(lacks.why());
    return desk.look()
        .say("limits.lacks", desk.name(proposed.characteristic()), why.toLowerCase(Locale.ROOT));
  }
}
