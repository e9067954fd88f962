package org.evenpour.report;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.SetPointReport;
import org.evenpour.findings.SetPointReport.Answer;
import org.evenpour.findings.SetPointReport.Replay;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * Says whether to adjust a ladle side or to leave it alone.
 *
 * @param sentences the language and the units
 * @param signals of the report, by id
 */
public record SetPointText(Sentences sentences, Map<String, Signal> signals) {

  /** Copies the map. */
  public SetPointText {
    signals = Map.copyOf(signals);
  }

  /** For the advice of one report. */
  public static SetPointText of(Sentences sentences, AuditReport report) {
    Map<String, Signal> byId = new TreeMap<>();
    report.signals().forEach(signal -> byId.put(signal.id(), signal));
    return new SetPointText(sentences, byId);
  }

  /** Those of which something is to be said; what is to be done comes first. */
  public static List<SetPointReport> told(AuditReport report) {
    return report.setPoints().stream()
        .filter(one -> one.answer() != Answer.TOO_SHORT)
        .sorted(Comparator.comparing(one -> one.moveBy() == null))
        .toList();
  }

  /** Which side of which wheel. */
  public String who(SetPointReport its) {
    String side = its.side();
    String key = side == null ? "setpoint.ladle" : "setpoint.side";
    return sentences.nameWheels()
        ? words().say(key + ".wheel", sentences.label(its.wheel()), sentences.label(side))
        : words().say(key, sentences.label(side));
  }

  /** What to do and why, in one line. */
  public String line(SetPointReport its) {
    Figures figures = figures(its);
    String move = departure(figures, its.moveBy());
    String forecast = departure(figures, its.forecast());
    String deadband = size(figures, its.deadband());
    return switch (its.answer()) {
      case LEAVE -> words().say("setpoint.leave", who(its), forecast, deadband);
      case NO_GAIN -> words().say("setpoint.gain", who(its), forecast);
      case MOVE -> words().say("setpoint.move", who(its), move, forecast, deadband);
      case LOOK_FIRST ->
          words().say(isOfSide(its) ? "setpoint.look.side" : "setpoint.look", who(its), cause(its));
      case WEIGH_FIRST -> words().say("setpoint.weigh", who(its), cause(its));
      case JUST_CHECKED -> words().say("setpoint.checked", who(its), forecast);
      case TOO_SHORT -> words().say("setpoint.short", who(its), its.turns());
      case NO_AIM -> words().say("setpoint.aim", who(its));
    };
  }

  /** Only what to do: {@code Move by −1.5 kg}. */
  public String answer(SetPointReport its) {
    Answer answer = its.answer();
    return words()
        .say(
            "setpoint.answer." + answer.name().toLowerCase(java.util.Locale.ROOT),
            departure(figures(its), its.moveBy()));
  }

  /** What each rule would have made of this record; empty where that is not known. */
  public String funnel(SetPointReport its) {
    Replay alone = its.leftAlone();
    Replay banded = its.withDeadband();
    Replay always = its.compensated();
    if (alone == null || banded == null || always == null) {
      return "";
    }
    SetPointReport.Ordinary ordinary = its.ordinary();
    String all = replays("setpoint.funnel", its, alone, banded, always);
    return ordinary == null
        ? all
        : all
            + " "
            + words()
                .say(
                    "setpoint.funnel.without",
                    words().list(ordinary.signals()),
                    replays(
                        "setpoint.funnel.rest",
                        its,
                        ordinary.leftAlone(),
                        ordinary.withDeadband(),
                        ordinary.compensated()));
  }

  private String replays(
      String key, SetPointReport its, Replay alone, Replay banded, Replay always) {
    Figures figures = figures(its);
    int decimals = figures.decimals() + 1;
    return words()
        .say(
            banded.moves() == 1 ? key + ".one" : key,
            figures.size(alone.rms(), decimals),
            figures.size(banded.rms(), decimals),
            words().count(banded.moves()),
            figures.size(always.rms(), decimals),
            words().count(always.moves()));
  }

  /** How the figures of a side are shown. */
  public Figures figures(SetPointReport its) {
    Figures shown = sentences.figures(its.wheel(), Quantity.MASS);
    return shown.unit().suffix().isEmpty() ? new Figures(Sentences.unit(its.displayUnit())) : shown;
  }

  private boolean isOfSide(SetPointReport its) {
    Signal signal = first(its);
    return signal != null && signal.scope() == Scope.SIDE;
  }

  private @Nullable Signal first(SetPointReport its) {
    String id = its.lookFirst();
    return id == null ? null : signals.get(id);
  }

  private String cause(SetPointReport its) {
    Signal signal = first(its);
    return signal == null
        ? words().say("missing")
        : sentences.state(signal) + " (" + signal.id() + ")";
  }

  private String departure(Figures figures, @Nullable Double value) {
    return value == null ? words().say("missing") : figures.departure(value, figures.decimals());
  }

  private String size(Figures figures, @Nullable Double value) {
    return value == null ? words().say("missing") : figures.size(value, figures.decimals());
  }

  private Words words() {
    return sentences.words();
  }
}
