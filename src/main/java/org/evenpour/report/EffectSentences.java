package org.evenpour.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.evenpour.findings.Advice;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.AuditReport.SettingReport;
import org.evenpour.findings.EffectInFull;
import org.evenpour.findings.EffectInFull.Held;
import org.evenpour.findings.EffectInFull.Known;
import org.evenpour.findings.EffectInFull.Level;
import org.evenpour.findings.EffectInFull.Levels;
import org.evenpour.findings.EffectInFull.Line;
import org.evenpour.findings.EffectInFull.Trial;
import org.evenpour.findings.EffectInFull.Window;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * Says what a setting does to a characteristic, how much of the scatter that is, where it may
 * stand, and what the record cannot tell.
 */
public record EffectSentences(Sentences sentences) {
  /** So many levels of a category are named; of more, those at either end. */
  private static final int MOST_LEVELS = 6;

  private static final int ENDS = MOST_LEVELS / 2;

  /** What is known of one effect, a sentence each; what keeps people safe comes first. */
  public List<String> of(SettingReport setting, Effect effect) {
    List<String> said = new ArrayList<>(cautions(setting));
    said.add(known(setting, effect));
    EffectInFull full = effect.inFull();
    if (!full.togetherWith().isEmpty()) {
      String others =
          full.togetherWith().stream().map(sentences::setting).collect(Collectors.joining(", "));
      said.add(words().say("reason.together", Words.capital(others)));
    }
    Estimate share = full.share();
    if (full.known() == Known.PROVEN && share != null) {
      said.add(
          share.low() == null
              ? words().say("effect.share.plain", percent(share.value()))
              : words().say("effect.share", percent(share.value()), interval(share)));
    }
    Window window = full.window();
    if (window != null) {
      said.add(window(setting, effect, window));
    }
    said.addAll(line(full.line()));
    Trial trial = full.trial();
    if (trial != null) {
      said.add(trial(setting, effect, trial));
    }
    return said;
  }

  /** What the record can tell at all. */
  public String known(SettingReport setting, Effect effect) {
    Figures figures = figures(setting, effect);
    String name = sentences.setting(setting.name());
    String characteristic = words().characteristic(effect.characteristic());
    String the = words().theCharacteristic(effect.characteristic());
    Levels levels = effect.inFull().levels();
    if (levels != null) {
      return levels(setting, effect, levels);
    }
    Double perUnit = effect.perUnit();
    Double low = effect.low();
    Double high = effect.high();
    if (perUnit == null || low == null || high == null) {
      boolean isOnce = effect.inFull().known() == Known.CAME_ONCE;
      return words().say(isOnce ? "effect.came_once" : "effect.never_moved", name);
    }
    double sd = setting.sd() == null ? 1 : setting.sd();
    int decimals = figures.decimalsOf(perUnit * sd);
    return switch (effect.inFull().known()) {
      case PROVEN ->
          words()
              .say(
                  "effect.proven",
                  Figures.move(sd, Sentences.unit(setting.unit())),
                  name,
                  figures.departure(perUnit * sd, decimals),
                  characteristic,
                  figures.signed(low * sd, decimals),
                  figures.signed(high * sd, decimals));
      case SMALL -> words().say("effect.small", name, the);
      case OPEN -> words().say("effect.open", name, the);
      case NEVER_MOVED, CAME_ONCE -> words().say("effect.never_moved", name);
    };
  }

  private String levels(SettingReport setting, Effect effect, Levels levels) {
    String name = sentences.setting(setting.name());
    String the = words().theCharacteristic(effect.characteristic());
    Known known = effect.inFull().known();
    if (known == Known.SMALL) {
      return words().say("effect.levels.small", name, the);
    }
    Figures figures = figures(setting, effect);
    List<Level> again = comparedHighestFirst(levels);
    List<String> items = new ArrayList<>();
    for (int i = 0; i < again.size(); i++) {
      boolean isShown = again.size() <= MOST_LEVELS || i < ENDS || i >= again.size() - ENDS;
      if (isShown) {
        items.add(level(figures, again.get(i)));
      } else if (i == ENDS) {
        items.add("…");
      }
    }
    return words()
        .say(
            known == Known.PROVEN ? "effect.levels.proven" : "effect.levels.open",
            the,
            name,
            Sentences.percent(levels.p(), words()),
            String.join("; ", items));
  }

  private String level(Figures figures, Level level) {
    int decimals = figures.decimalsOf(level.effect());
    return words()
        .say(
            "effect.level",
            sentences.label(level.name()),
            figures.departure(level.effect(), decimals),
            figures.signed(level.low(), decimals),
            figures.signed(level.high(), decimals),
            words().count(level.visits()));
  }

  private static List<Level> comparedHighestFirst(Levels levels) {
    return levels.each().stream()
        .filter(Level::compared)
        .sorted(Comparator.comparing(Level::effect).reversed())
        .toList();
  }

  /**
   * What is known to act on a characteristic, the largest part of its variance first; empty where
   * nothing is.
   *
   * @param settings of its wheel
   * @param most how many settings at most
   */
  public String acting(
      CharacteristicReport characteristic, List<SettingReport> settings, int most) {
    record Acts(SettingReport setting, Effect effect, double share) {}
    List<Acts> acting = new ArrayList<>();
    for (SettingReport setting : settings) {
      for (Effect effect : setting.effects()) {
        Estimate share = effect.inFull().share();
        boolean isOfThis =
            setting.wheel().equals(characteristic.wheel())
                && effect.characteristic().equals(characteristic.name());
        if (isOfThis && share != null && effect.inFull().known() == Known.PROVEN) {
          acting.add(new Acts(setting, effect, share.value()));
        }
      }
    }
    String name = words().characteristic(characteristic.name());
    List<Acts> told =
        acting.stream().sorted(Comparator.comparing(Acts::share).reversed()).limit(most).toList();
    if (told.isEmpty()) {
      return "";
    }
    List<String> items =
        told.stream().map(one -> brief(one.setting(), one.effect(), one.share())).toList();
    return Advice.before(
        told.stream().flatMap(one -> cautions(one.setting()).stream()).distinct().toList(),
        words()
            .say(
                "effect.acting",
                sentences.nameWheels()
                    ? sentences.label(characteristic.wheel()) + " " + name
                    : name,
                String.join("; ", items)));
  }

  private String brief(SettingReport setting, Effect effect, double share) {
    Figures figures = figures(setting, effect);
    String name = sentences.setting(setting.name());
    Levels levels = effect.inFull().levels();
    if (levels != null) {
      List<Level> again = comparedHighestFirst(levels);
      double high = again.get(0).effect();
      double low = again.get(again.size() - 1).effect();
      return words()
          .say(
              "effect.brief.levels",
              name,
              figures.signed(low, figures.decimalsOf(low)),
              figures.departure(high, figures.decimalsOf(high)),
              percent(share));
    }
    double sd = setting.sd() == null ? 1 : setting.sd();
    double does = effect.perUnit() == null ? 0 : effect.perUnit() * sd;
    return words()
        .say(
            "effect.brief",
            Figures.move(sd, Sentences.unit(setting.unit())),
            name,
            figures.departure(does, figures.decimalsOf(does)),
            percent(share));
  }

  /**
   * Where the setting keeps the characteristic within tolerance; a dash where that is not asked.
   */
  public String window(SettingReport setting, Effect effect) {
    Window window = effect.inFull().window();
    if (window == null) {
      return words().say("missing");
    }
    Double low = window.low();
    Double high = window.high();
    return low == null || high == null || !window.isBorneOut()
        ? words().say("window.none")
        : words().say("window", own(low), own(high));
  }

  private String window(SettingReport setting, Effect effect, Window window) {
    String name = sentences.setting(setting.name());
    String the = words().theCharacteristic(effect.characteristic());
    Double low = window.low();
    Double high = window.high();
    Held held = window.held();
    if (low == null || high == null || held == null) {
      return words().say("effect.window.none", name, the);
    }
    String unit = Sentences.unit(setting.unit()).symbol();
    return words()
        .say(
            held.beyond() == 0
                ? "effect.window.all"
                : held.isClear() ? "effect.window" : "effect.window.unclear",
            name,
            own(low),
            (own(high) + " " + unit).strip(),
            words().characteristic(effect.characteristic()),
            share(held.insideOut(), held.inside()),
            words().count(held.insideOut()),
            words().count(held.inside()),
            held.molds() == 1
                ? words().say("effect.molds.one")
                : words().say("effect.molds", words().count(held.molds())),
            share(held.beyondOut(), held.beyond()),
            words().count(held.beyondOut()),
            words().count(held.beyond()));
  }

  private String share(long some, long all) {
    return Sentences.percent(all == 0 ? null : (Double) ((double) some / all), words());
  }

  /** An end of a window, which has the setting's own digits already. */
  private static String own(double value) {
    int decimals = 0;
    while (decimals < 6 && !isWhole(value * Math.pow(10, decimals))) {
      decimals++;
    }
    return Digits.number(value, decimals);
  }

  private static boolean isWhole(double x) {
    return Math.abs(x - Math.rint(x)) <= 1e-6;
  }

  private List<String> line(@Nullable Line line) {
    List<String> said = new ArrayList<>();
    if (line != null && line.isBent()) {
      said.add(words().say("effect.bent"));
    }
    if (line != null && line.isWandering()) {
      said.add(words().say("effect.wanders", Digits.number(line.lagOne(), 2)));
    }
    return said;
  }

  private String trial(SettingReport setting, Effect effect, Trial trial) {
    Figures figures = figures(setting, effect);
    return words()
        .say(
            "effect.trial",
            sentences.setting(setting.name()),
            level(setting, trial.low()),
            withUnit(setting, trial.high()),
            trial.holdTurns() == 1
                ? words().say("effect.hold.one")
                : words().say("effect.hold", words().count(trial.holdTurns())),
            words().count(trial.turns()),
            figures.size(trial.difference(), figures.decimalsOf(trial.difference())),
            Digits.number(Math.floor(100 * trial.power()), 0));
  }

  private List<String> cautions(SettingReport setting) {
    return sentences.cautions().of(setting.name(), setting.group());
  }

  private Words words() {
    return sentences.words();
  }

  private Figures figures(SettingReport setting, Effect effect) {
    return sentences.figures(setting.wheel(), effect.characteristic());
  }

  private static String level(SettingReport setting, double value) {
    Double sd = setting.sd();
    int decimals = 0;
    while (decimals < 6 && sd != null && sd > 0 && sd * Math.pow(10, decimals) < 9.5) {
      decimals++;
    }
    return Digits.number(value, decimals);
  }

  private static String withUnit(SettingReport setting, double value) {
    String unit = Sentences.unit(setting.unit()).symbol();
    return unit.isEmpty() ? level(setting, value) : level(setting, value) + " " + unit;
  }

  private static String percent(double part) {
    return Digits.number(100 * part, part < 0.095 ? 1 : 0);
  }

  private String interval(Estimate share) {
    Double low = share.low();
    Double high = share.high();
    return words()
        .say("share.range", percent(low == null ? 0 : low), percent(high == null ? 1 : high));
  }
}
