package org.evenpour.report;

import org.evenpour.casting.Unit;
import org.evenpour.words.Digits;

/**
 * Figures of one characteristic as people read them: in its display unit, with the digits that a
 * plant's scales and gauges support.
 *
 * @param unit in which they are shown
 */
public record Figures(Unit unit) {

  /**
   * How many decimals a single value carries: to 0.1 kg or 0.1 mm, and about the same in other
   * units; an area to ten square centimeters. Common practice, no source.
   */
  public int decimals() {
    return switch (unit.suffix()) {
      case "g" -> 0;
      case "kg", "lb", "mm", "c", "f" -> 1;
      case "cm" -> 2;
      case "in", "m2" -> 3;
      case "t" -> 4;
      default -> 2;
    };
  }

  /** One anode's value, or a limit: {@code 388.1 kg}. */
  public String value(double computed) {
    return withUnit(Digits.number(unit.fromCanonical(computed), decimals()));
  }

  /** A mean of many, with one more decimal: {@code 388.12 kg}. */
  public String mean(double computed) {
    return withUnit(Digits.number(unit.fromCanonical(computed), decimals() + 1));
  }

  /** A standard deviation, without its unit: {@code 2.31}. */
  public String spread(double computed) {
    return Digits.number(unit.differenceFromCanonical(computed), decimals() + 1);
  }

  /**
   * A departure with its sign, {@code −1.1 mm}, with the decimals that {@link #decimalsOf} finds.
   */
  public String departure(double computed, int decimals) {
    return withUnit(signed(computed, decimals));
  }

  /** A departure with its sign and without its unit. */
  public String signed(double computed, int decimals) {
    return Digits.signed(unit.differenceFromCanonical(computed), decimals);
  }

  /** A size without its sign: {@code 0.8 kg}. */
  public String size(double computed, int decimals) {
    return withUnit(Digits.number(Math.abs(unit.differenceFromCanonical(computed)), decimals));
  }

  /** Decimals for a departure: those of a value, and more where they would leave one digit. */
  public int decimalsOf(double computed) {
    double shown = Math.abs(unit.differenceFromCanonical(computed));
    int least = decimals();
    int most = least + 2;
    int decimals = least;
    while (decimals < most && shown > 0 && shown * Math.pow(10, decimals) < 9.5) {
      decimals++;
    }
    return decimals;
  }

  private String withUnit(String number) {
    return unit.symbol().isEmpty() ? number : number + " " + unit.symbol();
  }

  /** A setting's move, without its sign: two digits, or the whole number where it is larger. */
  public static String move(double value, Unit unit) {
    double size = Math.abs(value);
    return new Figures(unit).withUnit(Digits.number(size, Digits.two(size)));
  }
}
