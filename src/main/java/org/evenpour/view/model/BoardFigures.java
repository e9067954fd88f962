package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.evenpour.casting.Anode;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Unit;
import org.evenpour.live.WheelNow;
import org.evenpour.picture.Mark;
import org.evenpour.report.Figures;
import org.evenpour.words.Digits;

/**
 * Says what the last anode measures, how far it is from its target and whether it is within
 * tolerance.
 *
 * @param words in which language
 * @param units in which units
 */
record BoardFigures(BoardWords words, DisplayUnits units) {

  /** Mass first, then the others; a set-point of each pour is mass's own target. */
  List<BoardModel.Figure> of(WheelNow its) {
    List<BoardModel.Figure> figures = new ArrayList<>();
    double deviation = Double.NaN;
    for (int i = 0; i < its.characteristics().size(); i++) {
      if (its.characteristics().get(i).name().equals(Quantity.MASS_DEVIATION)) {
        deviation = its.last().values()[i];
      }
    }
    for (int i = 0; i < its.characteristics().size(); i++) {
      WheelNow.Judged judged = its.characteristics().get(i);
      if (!judged.name().equals(Quantity.MASS_DEVIATION)) {
        figures.add(
            figure(
                judged,
                its.last(),
                i,
                judged.name().equals(Quantity.MASS) ? deviation : Double.NaN));
      }
    }
    return figures;
  }

  private BoardModel.Figure figure(
      WheelNow.Judged judged, Anode last, int index, double fromSetPoint) {
    Unit unit = units.shown(judged.unit().suffix());
    Figures figures = new Figures(unit);
    String name = BoardWords.capital(words.report().characteristic(judged.name()));
    double value = last.values()[index];
    if (Double.isNaN(value)) {
      return new BoardModel.Figure(
          name,
          words.report().say("missing"),
          unit.symbol(),
          Mark.NONE,
          "",
          words.say("figure.missing"),
          false);
    }
    Double target = judged.specification().target();
    WheelNow.TurnLimits limits = judged.limits();
    boolean isTarget = !Double.isNaN(fromSetPoint) || target != null;
    // What has an upper limit alone, such as a wedge, has no middle to be told from.
    boolean hasMiddle = isTarget || (limits != null && !judged.name().equals(Quantity.WEDGE));
    double from =
        !Double.isNaN(fromSetPoint)
            ? fromSetPoint
            : target != null
                ? value - target
                : limits != null && hasMiddle ? value - limits.center() : Double.NaN;
    String distance = "";
    Mark way = Mark.NONE;
    if (!Double.isNaN(from)) {
      String signed = figures.departure(from, figures.decimals());
      boolean zero = !signed.startsWith("+") && !signed.startsWith("−");
      way = zero ? Mark.NONE : from > 0 ? Mark.HIGH : Mark.LOW;
      String where = zero ? "figure.on" : from > 0 ? "figure.over" : "figure.under";
      distance = words.say(isTarget ? where : where + ".mean", signed);
    }
    Mark outside = BoardRun.outside(judged, value);
    return new BoardModel.Figure(
        name,
        Digits.number(unit.fromCanonical(value), figures.decimals()),
        unit.symbol(),
        way == Mark.NONE ? outside : way,
        distance,
        tolerance(judged, outside, figures),
        outside != Mark.NONE);
  }

  private String tolerance(WheelNow.Judged judged, Mark outside, Figures figures) {
    Double lower = judged.specification().lower();
    Double upper = judged.specification().upper();
    if (lower == null && upper == null) {
      return "";
    }
    String which =
        lower != null && upper != null
            ? words.say("tolerance.both", plain(lower, figures), figures.value(upper))
            : lower != null
                ? words.say("tolerance.lower", figures.value(lower))
                : words.say("tolerance.upper", figures.value(Objects.requireNonNull(upper)));
    return words.say(outside == Mark.NONE ? "tolerance.within" : "tolerance.outside", which);
  }

  private static String plain(double value, Figures figures) {
    return Digits.number(figures.unit().fromCanonical(value), figures.decimals());
  }
}
