package org.evenpour.view.model;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.evenpour.casting.PouringPlace;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.casting.Unit;
import org.evenpour.control.LimitProposal;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.NotLookedFor;
import org.evenpour.live.Snapshot;
import org.evenpour.live.WheelNow;
import org.evenpour.picture.MoldRing;
import org.evenpour.report.Topic;
import org.evenpour.words.Digits;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/** Makes of a snapshot what the board says. */
public final class BoardReading {
  /** A feed that is not heard of for so long hangs: it looks several times a second. */
  private static final Duration FEED_ANSWERS = Duration.ofSeconds(20);

  /** From so long on it is told when the last anode was cast rather than how long ago. */
  private static final Duration OLD = Duration.ofHours(12);

  /** Clocks of two machines that differ by more are worth a word. */
  private static final Duration CLOCKS_DIFFER = Duration.ofMinutes(2);

  /** A choice: limits of half as many turns more are worth a word. */
  private static final double MORE_TURNS = 1.5;

  private static final List<String> RUNS = List.of(Quantity.MASS, Quantity.THICKNESS);

  private final Snapshot snapshot;
  private final Instant now;
  private final DisplayUnits units;
  private final BoardChoice choice;
  private final BoardWords words;
  private final @Nullable WheelNow wheel;
  private final ZoneId zone;
  private final @Nullable BoardSignals signals;
  private final List<BoardModel.Figure> figures;

  private BoardReading(Snapshot snapshot, Instant now, Look look, BoardChoice choice) {
    this.snapshot = snapshot;
    this.now = now;
    this.units = look.units();
    this.choice = choice;
    words = BoardWords.of(look.language());
    WheelNow shown = wheel(snapshot, choice);
    wheel = shown;
    zone = shown == null ? java.time.ZoneOffset.UTC : shown.profile().zone();
    figures = shown == null ? List.of() : new BoardFigures(words, units).of(shown);
    AuditReport report = snapshot.report();
    signals =
        shown == null || report == null
            ? null
            : new BoardSignals(snapshot, report, shown.wheel(), words, units, zone);
  }

  /**
   * What the board says.
   *
   * @param snapshot what is known
   * @param now the time of day
   * @param look language and units
   * @param choice what the crew has chosen
   */
  public static BoardModel of(Snapshot snapshot, Instant now, Look look, BoardChoice choice) {
    return new BoardReading(snapshot, now, look, choice).model();
  }

  /** The wheel that is shown; null before the first anode. */
  public static @Nullable WheelNow wheel(Snapshot snapshot, BoardChoice choice) {
    for (WheelNow one : snapshot.wheels()) {
      if (one.wheel().equals(choice.wheel())) {
        return one;
      }
    }
    return snapshot.current() < 0 ? null : snapshot.wheels().get(snapshot.current());
  }

  /** How many signals, or groups of them, the shown wheel has. */
  static int topics(Snapshot snapshot, BoardChoice choice) {
    WheelNow its = wheel(snapshot, choice);
    AuditReport report = snapshot.report();
    return its == null || report == null
        ? 0
        : Topic.of(
                report.withSignals(
                    snapshot.now().stream()
                        .filter(signal -> signal.wheel().equals(its.wheel()))
                        .toList()))
            .size();
  }

  /** The characteristics that the wheel's bars can show, in their order. */
  public static List<String> ringChoices(WheelNow wheel) {
    return wheel.characteristics().stream().map(WheelNow.Judged::name).toList();
  }

  /** The characteristic that the wheel's bars show. */
  public static String ring(WheelNow wheel, BoardChoice choice) {
    List<String> names = ringChoices(wheel);
    String chosen = choice.ring();
    if (chosen != null && names.contains(chosen)) {
      return chosen;
    }
    return names.contains(Quantity.THICKNESS) ? Quantity.THICKNESS : names.get(0);
  }

  private BoardModel model() {
    WheelNow its = wheel;
    List<BoardModel.Matter> matters = List.of();
    List<Signal> chosen = List.of();
    BoardSignals said = signals;
    if (said != null && !said.topics().isEmpty()) {
      int index = Math.max(0, Math.min(choice.signal(), said.topics().size() - 1));
      matters = said.matters(index);
      chosen = said.topics().get(index).signals();
    }
    BoardModel.Verdict verdict = verdict();
    BoardModel.Alert alert = alert();
    String place = its == null ? snapshot.source() : place(its);
    List<String> setPoints = said == null ? List.of() : said.setPoints();
    List<BoardModel.Matter> moves = said == null ? List.of() : said.moves();
    String lately = its == null ? "" : new BoardLately(words, units, this::clock).of(snapshot, its);
    return new BoardModel(
        place,
        age(),
        DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT).format(now.atZone(zone)),
        figures.isEmpty() ? null : figures.get(0),
        figures.size() < 2 ? List.of() : figures.subList(1, figures.size()),
        alert,
        its == null ? null : ringOf(its),
        its == null ? "" : ringTitle(its),
        its == null ? List.of() : runs(its),
        verdict,
        lately,
        matters,
        chosen,
        words.say("more", "{0}"),
        setPoints,
        moves,
        notice(),
        keys(),
        spoken(place, alert, verdict, lately, matters, setPoints, moves));
  }

  private String place(WheelNow its) {
    List<String> parts = new ArrayList<>();
    if (!its.wheel().isEmpty()) {
      parts.add(words.say("place.wheel", its.wheel()));
    }
    if (!its.charge().isEmpty()) {
      parts.add(words.say("place.charge", its.charge()));
    }
    parts.add(words.say("place.turn", its.last().turn()));
    parts.add(words.say("place.mold", its.molds().get(its.last().mold())));
    if (!its.crew().isEmpty()) {
      parts.add(words.say("place.crew", its.crew()));
    }
    return String.join("    ", parts);
  }

  /** How long no row came that could be used. */
  private @Nullable Duration sinceLast() {
    Instant usable = snapshot.usableAt();
    return usable == null ? null : Duration.between(usable, now);
  }

  /** How old the last anode is, by the time at which it was cast. */
  private Duration ageOf(WheelNow its) {
    return Duration.between(Instant.ofEpochMilli(its.last().castAtMillis()), now);
  }

  /** The clock where it is of today, and with its date where it is not. */
  private String castAt(WheelNow its) {
    return clock(Instant.ofEpochMilli(its.last().castAtMillis()));
  }

  private String clock(Instant at) {
    boolean isToday = at.atZone(zone).toLocalDate().equals(now.atZone(zone).toLocalDate());
    return isToday
        ? DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT).format(at.atZone(zone))
        : DateTimeFormatter.ofPattern(words.report().say("date.year"), words.report().locale())
            .format(at.atZone(zone));
  }

  private String age() {
    WheelNow its = wheel;
    if (its == null || sinceLast() == null) {
      return "";
    }
    Duration age = ageOf(its);
    return age.compareTo(OLD) < 0
        ? words.say("age", words.length(age))
        : words.say("age.date", castAt(its));
  }

  private BoardModel.@Nullable Alert alert() {
    WheelNow its = wheel;
    Duration since = sinceLast();
    String large = its == null || since == null ? "" : words.length(later(ageOf(its), since));
    Remark trouble = snapshot.trouble();
    if (trouble != null) {
      return new BoardModel.Alert(words.say("alert.trouble"), large, words.say(trouble));
    }
    Instant looked = snapshot.lookedAt();
    if (looked != null && Duration.between(looked, now).compareTo(FEED_ANSWERS) > 0) {
      return new BoardModel.Alert(
          words.say("alert.deaf"), large, words.say("alert.deaf.why", snapshot.source()));
    }
    if (snapshot.reading() || its == null || since == null) {
      return new BoardModel.Alert(
          words.say(snapshot.rows() == 0 ? "alert.waiting" : "alert.reading"),
          snapshot.rows() == 0 ? "" : words.board().count(snapshot.rows()),
          snapshot.source());
    }
    if (since.toMillis() <= snapshot.silentAfterMillis()) {
      return null;
    }
    String last = figures.get(0).number() + " " + figures.get(0).unit();
    String detail =
        words.say(
            "alert.silent.last",
            last.strip(),
            its.molds().get(its.last().mold()),
            its.last().turn(),
            castAt(its));
    Instant arrived = snapshot.arrivedAt();
    boolean isPouring =
        arrived != null
            && Duration.between(arrived, now).toMillis() <= snapshot.silentAfterMillis();
    // A broken scale is no silence: rows come, and none of them says anything.
    return isPouring
        ? new BoardModel.Alert(
            words.say("alert.unusable"), large, words.say("alert.unusable.why") + " " + detail)
        : new BoardModel.Alert(words.say("alert.silent"), large, detail);
  }

  private static Duration later(Duration one, Duration other) {
    return one.compareTo(other) < 0 ? other : one;
  }

  private MoldRing ringOf(WheelNow its) {
    String name = ring(its, choice);
    WheelNow.Judged judged =
        its.characteristics().stream()
            .filter(one -> one.name().equals(name))
            .findFirst()
            .orElseThrow();
    List<MoldRing.Mold> molds = new ArrayList<>();
    for (int mold : its.inOrder()) {
      String label = its.molds().get(mold);
      BoardSignals said = this.signals;
      List<Signal> signals = said == null ? List.of() : said.of(label);
      List<String> states = said == null ? List.of() : signals.stream().map(said::state).toList();
      molds.add(
          new MoldRing.Mold(
              label,
              judged.departures().get(mold),
              signals.stream().map(BoardSignals::mark).toList(),
              states.isEmpty() ? "" : states.get(0),
              words.say(
                  "ring.mold",
                  label,
                  states.isEmpty()
                      ? words.say(names(its, true).isEmpty() ? "ring.unlooked" : "ring.quiet")
                      : words.report().list(states)),
              judged.usual().get(mold)));
    }
    return new MoldRing(
        molds,
        new MoldRing.Bearing(
            (degrees(its.profile().pouringPlace()) + 45.0 * choice.eighths()) % 360,
            its.profile().clockwise() != choice.isReversed(),
            Math.max(0, its.inOrder().indexOf(its.last().mold()))),
        span(judged),
        "±" + spanText(judged),
        words.say("ring.pouring"),
        null);
  }

  private static double degrees(PouringPlace place) {
    return switch (place) {
      case RIGHT -> 0;
      case TOP -> 90;
      case LEFT -> 180;
      case BOTTOM -> 270;
    };
  }

  private String ringTitle(WheelNow its) {
    return words.say("ring.title", words.report().characteristic(ring(its, choice)));
  }

  /** 1, 2 or 5 times a power of ten, so that every mold's usual stand has room. */
  private double span(WheelNow.Judged judged) {
    return units.shown(judged.unit().suffix()).toCanonical(shownSpan(judged))
        - units.shown(judged.unit().suffix()).toCanonical(0);
  }

  private double shownSpan(WheelNow.Judged judged) {
    Double sigma = judged.pourSigma();
    double widest = sigma == null ? 1 : 2 * sigma;
    for (Double usual : judged.usual()) {
      widest = usual == null ? widest : Math.max(widest, Math.abs(usual) / 1.3);
    }
    double wanted = units.shown(judged.unit().suffix()).differenceFromCanonical(widest);
    double power = Math.pow(10, Math.floor(Math.log10(wanted)));
    double lead = wanted / power;
    return power * (lead > 5 ? 10 : lead > 2 ? 5 : lead > 1 ? 2 : 1);
  }

  private String spanText(WheelNow.Judged judged) {
    double shown = shownSpan(judged);
    Unit unit = units.shown(judged.unit().suffix());
    int decimals = (int) Math.max(0, -Math.floor(Math.log10(shown) + 1e-9));
    return (Digits.number(shown, decimals) + " " + unit.symbol()).strip();
  }

  private List<BoardRun> runs(WheelNow its) {
    List<BoardRun> runs = new ArrayList<>();
    for (int i = 0; i < its.characteristics().size(); i++) {
      WheelNow.Judged judged = its.characteristics().get(i);
      if (RUNS.contains(judged.name())) {
        BoardRun run = BoardRun.of(its, i, units.shown(judged.unit().suffix()), words);
        if (run != null) {
          runs.add(run);
        }
      }
    }
    return runs;
  }

  private BoardModel.Verdict verdict() {
    WheelNow its = wheel;
    BoardSignals said = signals;
    if (its == null || said == null) {
      return new BoardModel.Verdict(
          false,
          false,
          its == null || snapshot.unjudged() == null ? "" : words.say("verdict.unjudged"),
          List.of());
    }
    boolean known = its.characteristics().stream().anyMatch(one -> one.limits() != null);
    if (!known) {
      return new BoardModel.Verdict(false, false, unknown(its), List.of());
    }
    List<BoardModel.Part> parts = said.parts();
    if (!parts.isEmpty()) {
      return new BoardModel.Verdict(false, true, words.say("verdict.uneven"), parts);
    }
    // Nobody is told that all is even beside an anode that no refinery takes.
    return figures.stream().anyMatch(BoardModel.Figure::isOutside)
        ? new BoardModel.Verdict(
            false, true, words.say("verdict.outside", its.molds().size()), List.of())
        : new BoardModel.Verdict(true, true, even(its), List.of());
  }

  /** Why there is no judgement; where more turns help, how many. */
  private String unknown(WheelNow its) {
    AuditReport report = snapshot.report();
    if (report != null && its.turnsInAll() > LimitProposal.LEAST_TURNS) {
      for (CharacteristicReport one : report.characteristics()) {
        NotLookedFor why = one.monitoring().notLookedFor();
        if (one.wheel().equals(its.wheel())
            && why != null
            && why.reason() != NotLookedFor.Reason.FEW_TURNS) {
          return words.say("verdict.unlooked", words.say(why.why()));
        }
      }
    }
    return words.say("verdict.unknown", its.turnsInAll(), LimitProposal.LEAST_TURNS + 1);
  }

  /** That nothing stands out, of what is judged. */
  private String even(WheelNow its) {
    List<String> unlooked = names(its, false);
    return unlooked.isEmpty()
        ? words.say("verdict.even", its.molds().size())
        : words.say(
            "verdict.even.in",
            words.report().list(names(its, true)),
            words.report().list(unlooked));
  }

  private List<String> names(WheelNow its, boolean isJudged) {
    return its.characteristics().stream()
        .filter(one -> (one.limits() != null) == isJudged)
        .map(one -> words.report().characteristic(one.name()))
        .toList();
  }

  private String notice() {
    Remark notKept = snapshot.noteTrouble();
    if (notKept != null) {
      return words.say("notice.note", words.say(notKept));
    }
    if (snapshot.rowsLost() > 0) {
      return words.say("notice.lost", words.board().count(snapshot.rowsLost()));
    }
    Remark notInForce = snapshot.plantTrouble();
    if (notInForce != null) {
      return words.say("notice.plant", words.say(notInForce));
    }
    Remark unjudged = snapshot.unjudged();
    if (unjudged != null) {
      return words.say("notice.unjudged", words.say(unjudged));
    }
    SetAsideRow row = snapshot.lastSetAside();
    if (snapshot.lastWasSetAside() && row != null) {
      return words.say("notice.aside", row.line(), words.say(row.reason()));
    }
    Duration ahead = Duration.ofMillis(snapshot.aheadMillis());
    return ahead.compareTo(CLOCKS_DIFFER) > 0
        ? words.say("notice.ahead", words.length(ahead))
        : proposed();
  }

  /**
   * That limits which nobody approved rest on the turns that there were when this board began; one
   * that begins now would propose others. Empty where they would be much the same.
   */
  private String proposed() {
    WheelNow its = wheel;
    AuditReport report = snapshot.report();
    if (its == null || report == null) {
      return "";
    }
    int now = Math.min(its.turnsInAll(), LimitProposal.BASE_TURNS);
    for (CharacteristicReport one : report.characteristics()) {
      List<AuditReport.LimitsUsed> used = one.monitoring().used();
      boolean isProposed = !used.isEmpty() && used.get(used.size() - 1).source().equals("proposed");
      int base = one.monitoring().baseTurns();
      if (one.wheel().equals(its.wheel()) && isProposed && now > base * MORE_TURNS) {
        return words.say("notice.proposed", base, now);
      }
    }
    return "";
  }

  private List<BoardModel.Key> keys() {
    List<BoardModel.Key> keys = new ArrayList<>();
    BoardSignals said = signals;
    int topics = said == null ? 0 : said.topics().size();
    if (topics > 0) {
      key(keys, "seen", "S");
    }
    if (topics > 1) {
      key(keys, "next", "↑ ↓");
    }
    WheelNow its = wheel;
    if (its != null && its.characteristics().size() > 1) {
      key(keys, "ring", "C");
    }
    if (snapshot.wheels().size() > 1) {
      key(keys, "wheel", "W");
    }
    if (its != null) {
      key(keys, "pouring", "P");
      key(keys, "reverse", "R");
    }
    keys.add(new BoardModel.Key("units", words.say("key.ctrl", "U"), other(units)));
    key(keys, "dark", words.say("key.ctrl", "D"));
    key(keys, "full", "F11");
    key(keys, "desk", "F3");
    return keys;
  }

  private static String other(DisplayUnits units) {
    return (units == DisplayUnits.METRIC ? DisplayUnits.POUND_INCH : DisplayUnits.METRIC).label();
  }

  private void key(List<BoardModel.Key> keys, String act, String key) {
    keys.add(new BoardModel.Key(act, key, words.say("key." + act)));
  }

  private String spoken(
      String place,
      BoardModel.@Nullable Alert alert,
      BoardModel.Verdict verdict,
      String lately,
      List<BoardModel.Matter> matters,
      List<String> setPoints,
      List<BoardModel.Matter> moves) {
    List<String> all = new ArrayList<>();
    if (alert != null) {
      all.add((alert.title() + " " + alert.large()).strip() + ". " + alert.detail());
    }
    all.add(place.replaceAll(" {2,}", ", "));
    for (BoardModel.Figure figure : figures) {
      all.add(
          String.join(
              ", ",
              List.of(
                      figure.name() + " " + figure.number() + " " + figure.unit(),
                      figure.distance(),
                      figure.tolerance())
                  .stream()
                  .filter(part -> !part.isBlank())
                  .toList()));
    }
    if (verdict.parts().isEmpty()) {
      all.add(verdict.text());
    }
    all.add(lately);
    for (BoardModel.Matter matter : matters) {
      all.add((matter.lead() + " " + matter.advice() + " " + matter.seen()).strip());
    }
    all.addAll(setPoints);
    for (BoardModel.Matter move : moves) {
      all.add(move.lead() + " " + move.advice());
    }
    return String.join(". ", all.stream().filter(one -> !one.isBlank()).toList());
  }
}
