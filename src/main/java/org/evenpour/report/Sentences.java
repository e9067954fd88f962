package org.evenpour.report;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Unit;
import org.evenpour.findings.Advice;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * Says what was found as a person at the wheel would say it.
 *
 * @param words the language
 * @param zone in which times are told
 * @param nameWheels whether sentences name the wheel, because there are several
 * @param nameYears whether times carry their year, because the record is long
 * @param units in which each wheel's characteristics are shown; by wheel and characteristic
 * @param advice what to look at first, and what keeps people safe
 */
public record Sentences(
    Words words,
    ZoneId zone,
    boolean nameWheels,
    boolean nameYears,
    Map<List<String>, Unit> units,
    Advice advice) {

  private static final Duration LONG = Duration.ofDays(300);

  /** From this probability of the other side on, no side is named without saying so. A choice. */
  private static final double UNSURE = 0.1;

  private static final int LABEL = 40;
  private static final Pattern ABBREVIATED = Pattern.compile("\\btemp\\b");

  /** Copies the map. */
  public Sentences {
    units = Map.copyOf(units);
  }

  /** With the advice that comes with the program. */
  public Sentences(
      Words words,
      ZoneId zone,
      boolean nameWheels,
      boolean nameYears,
      Map<List<String>, Unit> units) {
    this(words, zone, nameWheels, nameYears, units, Advice.standard());
  }

  /** For one report. */
  public static Sentences of(AuditReport report, Words words, ZoneId zone) {
    Map<List<String>, Unit> units = new LinkedHashMap<>();
    for (CharacteristicReport characteristic : report.characteristics()) {
      units.put(
          List.of(characteristic.wheel(), characteristic.name()),
          unit(characteristic.displayUnit()));
    }
    Duration length = Duration.between(report.log().firstCastAt(), report.log().lastCastAt());
    return new Sentences(
        words,
        zone,
        report.log().wheels().size() > 1,
        length.compareTo(LONG) > 0,
        units,
        report.advice());
  }

  /** A unit by its suffix; one that is not known is shown as it is written. */
  public static Unit unit(String suffix) {
    if (suffix.isEmpty()) {
      return Unit.NONE;
    }
    try {
      return Unit.of(suffix);
    } catch (IllegalArgumentException unknown) {
      return new Unit(suffix, suffix, suffix, 1, 0);
    }
  }

  /** The zone as people name it. */
  public String zoneName() {
    if (zone.normalized().equals(ZoneOffset.UTC)) {
      return "UTC";
    }
    return zone instanceof ZoneOffset ? "UTC" + zone.getId().replace('-', '−') : zone.getId();
  }

  /** A label from the log, cut where it would swamp the sentence. */
  String label(@Nullable String label) {
    if (label == null) {
      return words.say("missing");
    }
    return label.length() <= LABEL
        ? label
        : label.substring(0, label.offsetByCodePoints(0, LABEL / 2)) + "…";
  }

  /** How the figures of a characteristic are shown. */
  public Figures figures(String wheel, String characteristic) {
    return new Figures(units.getOrDefault(List.of(wheel, characteristic), Unit.NONE));
  }

  /** A characteristic with a capital, and its wheel where there are several. */
  public String title(String wheel, String characteristic) {
    String name = Words.capital(words.characteristic(characteristic));
    return nameWheels ? wheel + ": " + name : name;
  }

  /**
   * What happened, what goes with it and what to look at first; where nothing goes with it, {@link
   * NextSteps} says so and what is left.
   */
  public String signal(Signal signal) {
    return topic(new Topic(List.of(signal)));
  }

  /** The same for signals that are said together. */
  public String topic(Topic topic) {
    return said(topic, lead(topic));
  }

  /** The same without intervals, for a screen that is short of room. */
  public String brief(Topic topic) {
    return said(topic, lead(topic, this::plainSize));
  }

  private String said(Topic topic, String lead) {
    Signal explained = topic.explained();
    Link best = topic.best();
    if (explained == null || best == null) {
      return lead;
    }
    boolean isOfAll =
        topic.signals().stream()
            .allMatch(
                one ->
                    one.characteristic().equals(explained.characteristic())
                        || one.links().stream()
                            .anyMatch(
                                link ->
                                    link.evidence() != Evidence.NONE
                                        && link.name().equals(best.name())));
    return lead
        + " "
        + (isOfAll
            ? link(best)
            : words.say(
                "link.of",
                Words.capital(words.characteristic(explained.characteristic())),
                link(best)));
  }

  /** What happened: who, which way, since when, by how much. */
  public String lead(Topic topic) {
    return lead(topic, this::size);
  }

  private String lead(Topic topic, Function<Signal, String> sizeOf) {
    Signal first = topic.first();
    if (first.scope() == Scope.POUR) {
      return anodes(topic, sizeOf);
    }
    boolean several = topic.signals().stream().map(Signal::mold).distinct().count() > 1;
    String form = !first.open() ? "poured" : several ? "pours.many" : "pours.one";
    List<Topic> onsets = topic.onsets();
    StringBuilder said = new StringBuilder(one(form, onsets.get(0), sizeOf));
    for (Topic more : onsets.subList(1, onsets.size())) {
      said.append("; ").append(one(first.open() ? "pours.also" : "poured.also", more, sizeOf));
    }
    String lead = Advice.stop(said.toString());
    return isSideUnsure(topic) ? lead + " " + words.say("side.unsure") : lead;
  }

  private String one(String form, Topic topic, Function<Signal, String> sizeOf) {
    int onset = topic.signals().stream().mapToInt(Signal::sinceTurn).min().orElseThrow();
    Instant at =
        topic.signals().stream().map(Signal::sinceAt).min(Instant::compareTo).orElseThrow();
    int last = topic.signals().stream().mapToInt(Signal::lastTurn).max().orElseThrow();
    return words.say(form, who(topic), states(topic), onset, time(at), size(topic, sizeOf), last);
  }

  /** Whether so far the other of two ladle sides may as well have moved, the other way. */
  private static boolean isSideUnsure(Topic topic) {
    return topic.signals().stream()
        .allMatch(signal -> signal.otherSide() != null && signal.otherSide() >= UNSURE);
  }

  private String anodes(Topic topic, Function<Signal, String> sizeOf) {
    Signal far = topic.first();
    String mold = label(far.mold());
    String time = time(far.sinceAt());
    String wheel = nameWheels ? ".wheel" : "";
    if (topic.signals().size() == 1) {
      return Advice.stop(
          words.say(
              nameWheels ? "anode.wheel" : "anode.mold",
              mold,
              state(far),
              far.sinceTurn(),
              time,
              sizeOf.apply(far),
              label(far.wheel())));
    }
    return Advice.stop(
        words.say(
            "anodes" + wheel,
            words.count(topic.signals().size()),
            state(far),
            mold,
            far.sinceTurn(),
            time,
            sizeOf.apply(far),
            label(far.wheel())));
  }

  /** Who departs in any of these, in the midst of a sentence. */
  public String places(List<Topic> topics) {
    Set<String> places = new LinkedHashSet<>();
    Map<String, Set<String>> molds = new LinkedHashMap<>(); // by wheel
    for (Topic topic : topics) {
      for (Signal one : topic.signals()) {
        switch (one.scope()) {
          case WHEEL -> places.add(placed(words.say("moved.whole"), one.wheel()));
          case SIDE -> places.add(placed(words.say("moved.side", label(one.side())), one.wheel()));
          default ->
              molds
                  .computeIfAbsent(one.wheel(), any -> new LinkedHashSet<>())
                  .add(label(one.mold()));
        }
      }
    }
    molds.forEach(
        (wheel, its) ->
            places.add(
                placed(
                    words.say(
                        its.size() > 1 ? "moved.molds" : "moved.mold",
                        words.list(List.copyOf(its))),
                    wheel)));
    return words.list(List.copyOf(places));
  }

  private String placed(String place, String wheel) {
    return nameWheels ? words.say("moved.wheel", place, label(wheel)) : place;
  }

  /** Who departs: the whole wheel, a ladle side, a mold. */
  String who(Signal signal) {
    return who(new Topic(List.of(signal)));
  }

  private String who(Topic topic) {
    Signal first = topic.first();
    String wheel = nameWheels ? ".wheel" : "";
    List<String> molds =
        topic.signals().stream().map(signal -> label(signal.mold())).distinct().toList();
    String key;
    String name;
    switch (first.scope()) {
      case WHEEL -> {
        key = "who.whole";
        name = "";
      }
      case SIDE -> {
        key = "who.side";
        name = label(first.side());
      }
      default -> {
        key = molds.size() > 1 ? "who.molds" : "who.mold";
        name = words.list(molds);
      }
    }
    return nameWheels ? words.say(key + wheel, label(first.wheel()), name) : words.say(key, name);
  }

  /** Heavy, thin, more scattered, …: which way a characteristic goes. */
  public String state(String characteristic, Direction direction) {
    String way = "." + direction.id();
    String own = "state." + characteristic + way;
    return words.has(own)
        ? words.say(own)
        : words.say("state.other" + way, words.characteristic(characteristic));
  }

  public String state(Signal signal) {
    return state(signal.characteristic(), signal.direction());
  }

  private String states(Topic topic) {
    return words.list(topic.signals().stream().map(this::state).distinct().toList());
  }

  private String size(Topic topic, Function<Signal, String> sizeOf) {
    if (topic.signals().size() == 1) {
      return sizeOf.apply(topic.first());
    }
    if (topic.signals().stream().map(Signal::characteristic).distinct().count() > 1) {
      return words.list(topic.signals().stream().map(this::plainSize).toList());
    }
    double least = topic.signals().stream().mapToDouble(Signal::size).min().orElseThrow();
    double most = topic.signals().stream().mapToDouble(Signal::size).max().orElseThrow();
    Signal any = topic.first();
    Figures figures = figures(any.wheel(), any.characteristic());
    double near = Math.abs(least) < Math.abs(most) ? least : most;
    double far = Math.abs(least) < Math.abs(most) ? most : least;
    int decimals = figures.decimalsOf(near);
    if (any.direction() == Direction.SPREAD) {
      return words.say(
          "size.spread",
          words.say(
              "size.range",
              Digits.number(figures.unit().differenceFromCanonical(near), decimals),
              figures.size(far, decimals)));
    }
    String first = figures.signed(near, decimals);
    return first.equals(figures.signed(far, decimals))
        ? words.say("size.each", figures.departure(far, decimals))
        : words.say("size.range", first, figures.departure(far, decimals));
  }

  /** By how much, with its interval: {@code −1.1 mm (95 %: −1.3 to −0.9)}. */
  public String size(Signal signal) {
    Figures figures = figures(signal.wheel(), signal.characteristic());
    int decimals = figures.decimalsOf(signal.size());
    boolean spread = signal.direction() == Direction.SPREAD;
    String size = plainSize(signal);
    Double low = signal.sizeLow();
    Double high = signal.sizeHigh();
    if (low == null || high == null) {
      return size;
    }
    return words.say(
        "size.interval",
        size,
        spread
            ? Digits.number(figures.unit().differenceFromCanonical(low), decimals)
            : figures.signed(low, decimals),
        spread
            ? Digits.number(figures.unit().differenceFromCanonical(high), decimals)
            : figures.signed(high, decimals));
  }

  private String plainSize(Signal signal) {
    Figures figures = figures(signal.wheel(), signal.characteristic());
    int decimals = figures.decimalsOf(signal.size());
    return signal.direction() == Direction.SPREAD
        ? words.say("size.spread", figures.size(signal.size(), decimals))
        : figures.departure(signal.size(), decimals);
  }

  /** What goes with a signal, and what to look at first. */
  public String link(Link link) {
    if (link.evidence() == Evidence.NONE) {
      return words.say("link.none");
    }
    String said = moved(link);
    Double share = link.explainedShare();
    if (link.evidence() == Evidence.STRONG && share != null && share > 0) {
      said =
          share >= 0.95
              ? words.say("link.all", said)
              : words.say("link.share", said, Digits.number(share * 100, 0));
    } else if (link.evidence() == Evidence.MOVED && link.isUsualMove() && share != null) {
      said =
          share >= 0.95
              ? words.say("link.usual.all", said)
              : words.say("link.usual", said, Digits.number(share * 100, 0));
    } else if (link.evidence() == Evidence.MOVED && !link.event()) {
      said = words.say("link.moved", said);
    }
    if (!link.togetherWith().isEmpty()) {
      said =
          words.say(
              "link.together",
              said,
              link.togetherWith().stream().map(this::setting).collect(Collectors.joining(", ")));
    }
    String advice = advice(link);
    if (advice.isEmpty()) {
      return Advice.stop(said);
    }
    // An advice that begins small goes on with the sentence.
    return Character.isLowerCase(advice.codePointAt(0))
        ? said + "; " + Advice.stop(advice)
        : Advice.stop(said) + " " + advice;
  }

  private String moved(Link link) {
    return link.event() && link.sinceTurn() != null
        ? words.say("link.event.turn", event(link.name()), link.sinceTurn())
        : plainly(link);
  }

  /** What a link names, with a capital. */
  String named(Link link) {
    return Words.capital(link.event() ? event(link.name()) : setting(link.name()));
  }

  /** How a setting moved with a signal, or that an event was recorded beside it. */
  String plainly(Link link) {
    if (link.event()) {
      return words.say("link.event", event(link.name()));
    }
    String name = named(link);
    Double by = link.movedBy();
    if (by == null || by == 0) {
      return words.say("link.changed", name);
    }
    return words.say(by > 0 ? "link.rose" : "link.fell", name, Figures.move(by, unit(link.unit())));
  }

  /**
   * What to look at first; never without the words that keep people safe before it where water,
   * wash or a mold is concerned, and these alone where nothing else is said.
   */
  public String advice(Link link) {
    String advice = link.lookFirst().strip();
    if (advice.isEmpty()) {
      return link.evidence() == Evidence.NONE ? "" : cautioned("", link.name(), link.group());
    }
    for (String key : List.of(link.name(), link.group())) {
      String own = this.advice.look(key, words.locale().getLanguage());
      if (own != null) {
        return cautioned(own, link.name(), link.group());
      }
      if (words.has("advice." + key)) {
        return cautioned(words.say("advice." + key), link.name(), link.group());
      }
    }
    return cautioned(Advice.uncautioned(advice), link.name(), link.group());
  }

  /**
   * A sentence about a setting or an event, every caution before it: where a mold may be wet or is
   * worked on the program's own, then those of the plant.
   */
  String cautioned(String sentence, String name, String group) {
    return Advice.before(cautions().of(name, group), sentence);
  }

  /** What keeps people safe. */
  public Cautions cautions() {
    return new Cautions(words, advice);
  }

  /** {@code 1.15 (1.07 to 1.23)}: an index with its 95 % interval, where it has one. */
  public String estimate(@Nullable Estimate its) {
    if (its == null) {
      return words.say("missing");
    }
    String value = Digits.number(its.value(), 2);
    return its.low() == null || its.high() == null
        ? value
        : words.say(
            "summary.estimate", value, Digits.number(its.low(), 2), Digits.number(its.high(), 2));
  }

  /** A setting's readable name: {@code wash_volume_ml} is the wash volume. */
  public String setting(String column) {
    String suffix = Unit.ofColumn(column).suffix();
    String name =
        suffix.isEmpty() ? column : column.substring(0, column.length() - suffix.length() - 1);
    String key = "setting." + name;
    if (words.has(key)) {
      return words.say(key);
    }
    String spelled = ABBREVIATED.matcher(name.replace('_', ' ').strip()).replaceAll("temperature");
    return label(spelled);
  }

  /** What people call an event. */
  public String event(String kind) {
    String key = "event." + kind;
    return words.has(key) ? words.say(key) : label(kind.replace('_', ' '));
  }

  /** A cause that was marked: a setting, an event, or words. */
  public String cause(CauseMark.Cause cause) {
    return switch (cause.kind()) {
      case SETTING -> setting(cause.name());
      case EVENT -> event(cause.name());
      case OTHER -> label(cause.name());
    };
  }

  /** A time as people at the wheel tell it: {@code Tue 14 May 06:20}. */
  public String time(Instant at) {
    return DateTimeFormatter.ofPattern(words.say(nameYears ? "time.year" : "time"), words.locale())
        .format(at.atZone(zone));
  }

  /** A time with its year: {@code 14 May 2024 06:20}. */
  public String date(Instant at) {
    return DateTimeFormatter.ofPattern(words.say("date.year"), words.locale())
        .format(at.atZone(zone));
  }

  /** A percentage that never rounds something to nothing: {@code 0.3}, {@code <0.1}. */
  public static String percent(@Nullable Double fraction, Words words) {
    if (fraction == null) {
      return words.say("missing");
    }
    return Digits.percent(fraction);
  }
}
