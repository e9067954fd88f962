package org.evenpour.view.model;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import org.evenpour.audit.Audit;
import org.evenpour.audit.Comparison;
import org.evenpour.audit.PlantRecords;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.CauseMark;
import org.evenpour.findings.CausesReport.Marked;
import org.evenpour.findings.ComparisonReport;
import org.evenpour.report.Sentences;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * Which stretches can be held against one another: the chosen one against what was before it, one
 * week against the last, and before an event against after it.
 */
public final class Comparing {
  /** So many turns on either side of an event, two days and more of casting. A choice. */
  private static final double ABOUT_EVENT = 60;

  /** Fewer turns on either side are not offered. A choice. */
  private static final double LEAST = 6;

  private static final long WEEK_MILLIS = 7L * 24 * 3600 * 1000;

  private Comparing() {}

  /**
   * Two stretches.
   *
   * @param said what is compared, in words
   * @param when in words; empty where the first says it
   * @param mold that is asked about; null = none
   * @param isEvent whether it is about an event or a cause
   */
  public record Offer(
      String said,
      String when,
      String wheel,
      Stretch first,
      Stretch second,
      @Nullable String mold,
      boolean isEvent) {}

  /**
   * What is offered, the most asked first, then events and confirmed causes, the newest first.
   *
   * @param kept a stretch that was kept as the first; null = none
   */
  public static List<Offer> offers(Desk desk, @Nullable Stretch kept) {
    List<Offer> offers = new ArrayList<>();
    Look look = desk.look();
    WheelRows rows = desk.wheel();
    Stretch chosen = desk.selection().stretch();
    if (chosen != null && kept != null && !kept.equals(chosen)) {
      add(offers, desk, look.say("compare.kept", turns(desk, kept)), kept, chosen);
    }
    if (chosen != null) {
      double length = chosen.to() - chosen.from();
      Stretch before = new Stretch(Math.max(rows.first(), chosen.from() - length), chosen.from());
      add(offers, desk, look.say("compare.before"), before, chosen);
      if (before.from() > rows.first()) {
        Stretch all = new Stretch(rows.first(), chosen.from());
        add(offers, desk, look.say("compare.all"), all, chosen);
      }
    }
    Instant end = desk.report().log().lastCastAt();
    Instant week = end.minusMillis(WEEK_MILLIS);
    double from = Math.rint(rows.place(week));
    if (from > rows.first() + LEAST) {
      double earlier = Math.rint(rows.place(week.minusMillis(WEEK_MILLIS)));
      Stretch last = new Stretch(from, rows.last());
      Stretch other = new Stretch(Math.max(rows.first(), earlier), from);
      add(offers, desk, look.say("compare.week"), other, last);
    }
    double half = Math.rint((rows.first() + rows.last()) / 2);
    Stretch early = new Stretch(rows.first(), half);
    add(offers, desk, look.say("compare.half"), early, new Stretch(half, rows.last()));
    List<Offer> happened = new ArrayList<>();
    for (CastingEvent event : desk.report().events()) {
      if (event.wheel().isEmpty() || event.wheel().equals(desk.selection().wheel())) {
        addEvent(happened, desk, event);
      }
    }
    for (Marked one : desk.report().causes().marks()) {
      if (one.mark().verdict() == CauseMark.Verdict.RIGHT) {
        addCause(happened, desk, one.mark());
      }
    }
    happened.sort(Comparator.comparingDouble((Offer one) -> one.second().from()).reversed());
    offers.addAll(happened);
    return offers;
  }

  /** The offer about an event; null where there is too little on either side of it. */
  private static void addEvent(List<Offer> offers, Desk desk, CastingEvent event) {
    WheelRows rows = desk.wheel();
    double at = Math.ceil(rows.place(event.at()));
    double from = Math.max(rows.first(), at - ABOUT_EVENT);
    double to = Math.min(rows.last(), at + ABOUT_EVENT);
    // What else was done to the same mold would be mixed into it.
    for (CastingEvent other : desk.report().events()) {
      if (event.mold() != null
          && Objects.equals(other.mold(), event.mold())
          && other.wheel().equals(event.wheel())
          && !other.at().equals(event.at())) {
        double place = Math.ceil(rows.place(other.at()));
        from = other.at().isBefore(event.at()) ? Math.max(from, place) : from;
        to = other.at().isAfter(event.at()) ? Math.min(to, place) : to;
      }
    }
    Sentences sentences = desk.sentences();
    String name = Words.capital(sentences.event(event.kind()));
    String said =
        event.mold() == null ? name : desk.look().say("compare.event", name, event.mold());
    add(
        offers,
        desk,
        said,
        desk.look().say("compare.about", sentences.time(event.at())),
        new Stretch(from, Math.max(from, at)),
        new Stretch(at, Math.max(at, to)),
        event.mold(),
        true);
  }

  /** While a cause held against after it: whether it is gone. */
  private static void addCause(List<Offer> offers, Desk desk, CauseMark mark) {
    if (!mark.place().wheel().equals(desk.selection().wheel())) {
      return;
    }
    WheelRows rows = desk.wheel();
    double from = Math.floor(rows.place(mark.from()));
    double to = Math.ceil(rows.place(mark.to())) + 1;
    double end = Math.min(rows.last(), to + Math.max(to - from, ABOUT_EVENT));
    Sentences sentences = desk.sentences();
    String cause = Words.capital(sentences.cause(mark.cause()));
    String its = mark.place().mold();
    add(
        offers,
        desk,
        its == null ? cause : desk.look().say("compare.event", cause, its),
        desk.look().say("compare.held", sentences.time(mark.to())),
        new Stretch(from, Math.max(from, to)),
        new Stretch(to, Math.max(to, end)),
        its,
        true);
  }

  private static void add(
      List<Offer> offers, Desk desk, String said, Stretch first, Stretch second) {
    String when = desk.look().say("compare.turns", turns(desk, first), turns(desk, second));
    add(offers, desk, said, when, first, second, null, false);
  }

  private static void add(
      List<Offer> offers,
      Desk desk,
      String said,
      String when,
      Stretch first,
      Stretch second,
      @Nullable String mold,
      boolean isEvent) {
    if (first.to() - first.from() >= LEAST && second.to() - second.from() >= LEAST) {
      offers.add(new Offer(said, when, desk.selection().wheel(), first, second, mold, isEvent));
    }
  }

  private static String turns(Desk desk, Stretch its) {
    return desk.look().say("compare.range", (int) its.from(), (int) its.to() - 1);
  }

  /**
   * Compares; takes as long as two audits of so many rows, on whatever thread asks. Null where one
   * of them holds nothing.
   *
   * @param isGivenUp whether nobody waits any more; then nothing comes of it
   */
  public static @Nullable ComparisonReport of(
      OpenedLog log, Offer offer, BooleanSupplier isGivenUp) {
    Comparison.Part first =
        isGivenUp.getAsBoolean() ? null : part(log, offer.wheel(), offer.first());
    Comparison.Part second =
        isGivenUp.getAsBoolean() ? null : part(log, offer.wheel(), offer.second());
    return first == null || second == null ? null : Comparison.of(first, second, offer.mold());
  }

  private static Comparison.@Nullable Part part(OpenedLog log, String wheel, Stretch turns) {
    CastingRecord record = StretchReport.record(log, wheel, turns);
    return record == null
        ? null
        : new Comparison.Part(record, Audit.run(record, PlantRecords.of(log.plant().book())));
  }
}
