package org.evenpour.report;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.audit.AuditReport.Effect;
import org.evenpour.audit.AuditReport.Estimate;
import org.evenpour.audit.AuditReport.SettingReport;
import org.evenpour.audit.EffectInFull;
import org.evenpour.audit.EffectInFull.Known;
import org.evenpour.audit.EffectInFull.Line;
import org.evenpour.audit.EffectInFull.Trial;
import org.evenpour.audit.EffectInFull.Window;
import org.jspecify.annotations.Nullable;

/**
 * Says what a setting does to a characteristic, how much of the scatter that is, where it may
 * stand, and what the record cannot tell.
 */
public record EffectSentences(Sentences sentences) {

  /** What is known of one effect, a sentence each. */
  public List<String> of(SettingReport setting, Effect effect) {
    List<String> said = new ArrayList<>();
    said.add(known(setting, effect));
    EffectInFull full = effect.inFull();
    Estimate share = full.share();
    if (full.known() == Known.PROVEN && share != null) {
      said.add(words().say("effect.share", percent(share.value()), interval(share)));
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
    Double perUnit = effect.perUnit();
    Double low = effect.low();
    Double high = effect.high();
    if (perUnit == null || low == null || high == null) {
      return words().say("effect.never_moved", name);
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
      case SMALL -> words().say("effect.small", name, characteristic);
      case OPEN -> words().say("effect.open", name, characteristic);
      case NEVER_MOVED -> words().say("effect.never_moved", name);
    };
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
    return low == null || high == null
        ? words().say("window.none")
        : words().say("window", level(setting, low), level(setting, high));
  }

  /** The part of the variance with its interval; a dash where it is not known. */
  public String share(Effect effect) {
    Estimate share = effect.inFull().share();
    return share == null
        ? words().say("missing")
        : words().say("share.interval", percent(share.value()), interval(share));
  }

  private String window(SettingReport setting, Effect effect, Window window) {
    String name = sentences.setting(setting.name());
    String characteristic = words().characteristic(effect.characteristic());
    Double low = window.low();
    Double high = window.high();
    if (low == null || high == null) {
      return words().say("effect.window.none", name, characteristic);
    }
    boolean isAll = isAt(low, setting.minimum()) && isAt(high, setting.maximum());
    return words()
        .say(
            isAll ? "effect.window.all" : "effect.window",
            name,
            level(setting, low),
            withUnit(setting, high),
            characteristic);
  }

  private static boolean isAt(double end, @Nullable Double recorded) {
    return recorded != null && end == recorded;
  }

  private List<String> line(@Nullable Line line) {
    List<String> said = new ArrayList<>();
    if (line != null && line.isBent()) {
      said.add(words().say("effect.bent"));
    }
    if (line != null && line.isWandering()) {
      said.add(words().say("effect.wanders", Figures.number(line.lagOne(), 2)));
    }
    return said;
  }

  private String trial(SettingReport setting, Effect effect, Trial trial) {
    Figures figures = figures(setting, effect);
    String said =
        words()
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
                Figures.number(Math.floor(100 * trial.power()), 0));
    return Sentences.isWet(setting.name(), setting.group())
        ? said + " " + words().say("dry")
        : said;
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
    return Figures.number(value, decimals);
  }

  private static String withUnit(SettingReport setting, double value) {
    String unit = Sentences.unit(setting.unit()).symbol();
    return unit.isEmpty() ? level(setting, value) : level(setting, value) + " " + unit;
  }

  private static String percent(double part) {
    return Figures.number(100 * part, part < 0.095 ? 1 : 0);
  }

  private String interval(Estimate share) {
    Double low = share.low();
    Double high = share.high();
    return words()
        .say("share.range", percent(low == null ? 0 : low), percent(high == null ? 1 : high));
  }
}
