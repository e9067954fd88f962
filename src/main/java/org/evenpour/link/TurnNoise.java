package org.evenpour.link;

/**
 * How turn means that lie some turns apart differ by themselves, outside signals.
 *
 * @param sd of the differences about zero; NaN without any
 * @param pairs how many there are
 */
public record TurnNoise(double sd, int pairs) {

  /**
   * @param turns one value for each turn; NaN = none
   * @param apart in turns, at least 1
   */
  static TurnNoise of(double[] turns, int apart) {
    double squares = 0;
    int pairs = 0;
    for (int t = apart; t < turns.length; t++) {
      double d = turns[t] - turns[t - apart];
      if (!Double.isNaN(d)) {
        // About zero and not about their mean: a drift is noise to a trial as well.
        squares += d * d;
        pairs++;
      }
    }
    return new TurnNoise(pairs == 0 ? Double.NaN : Math.sqrt(squares / pairs), pairs);
  }
}
