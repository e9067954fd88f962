package org.evenpour.link;

import java.util.List;
import java.util.stream.Stream;
import org.evenpour.control.Episode;
import org.evenpour.stats.Normal;
import org.evenpour.stats.StudentT;
import org.jspecify.annotations.Nullable;

/**
 * What one unit of a setting does to a characteristic, the other settings held.
 *
 * @param perUnit effect of one unit
 * @param error its standard error, widened so that 1.96 of it are a 95 % interval by Student's t;
 *     NaN where the record cannot tell
 * @param freedom its degrees of freedom
 * @param togetherWith settings that moved together with this one through the whole record: it
 *     cannot tell which of them acts, and the effect is that of all of them moving as they did
 * @param follows whether one of those goes better with the characteristic
 * @param held where there are such settings: the effect with them held, as uncertain as it is
 */
public record EffectSize(
    double perUnit,
    double error,
    double freedom,
    List<String> togetherWith,
    boolean follows,
    @Nullable EffectSize held) {

  /** An effect that can be told from those of all other settings. */
  EffectSize(double perUnit, double error, double freedom) {
    this(perUnit, error, freedom, List.of(), false, null);
  }

  /** The record cannot tell: the setting never moved. */
  static final EffectSize UNKNOWN = new EffectSize(Double.NaN, Double.NaN, 1);

  private static final double Z = Normal.quantile(0.975);

  /** Standard errors beyond which an effect counts as proven. */
  private static final double BEYOND_CHANCE = 3;

  /** Standard errors within which two estimates of one effect agree. */
  private static final double AGREE = 2;

  /** Whether the record can tell. */
  public boolean isKnown() {
    return error > 0;
  }

  /** Whether the effect is beyond chance. */
  boolean isBeyondChance() {
    // The error is already as wide as Student's t asks, so that one number serves all records.
    return ratio() > BEYOND_CHANCE;
  }

  /** The effect in standard errors, whichever way. */
  double ratio() {
    return Math.abs(perUnit) / error;
  }

  /** What an error is multiplied with, so that it counts as one of the normal distribution. */
  static double widened(double freedom) {
    return StudentT.quantile(0.975, freedom) / Z;
  }

  /**
   * Probability of an effect so large, either way, by chance: Student's t. NaN where the record
   * cannot tell.
   */
  public double p() {
    return isKnown() ? StudentT.twoSided(ratio() * widened(freedom), freedom) : Double.NaN;
  }

  /**
   * Degrees of freedom of the error of a weighted mean, {@code (Σw)²/Σ(w²/ν)} (Satterthwaite 1946).
   */
  private static double freedom(List<EffectSize> all) {
    double weights = 0;
    double sum = 0;
    for (EffectSize each : all) {
      weights += each.weight();
      sum += each.weight() * each.weight() / each.freedom();
    }
    return weights * weights / sum;
  }

  private double weight() {
    return 1 / (error * error);
  }

  private EffectSize alone() {
    return held == null ? this : held;
  }

  /** Both estimates as one, weighted by their precision, where they agree; else this one. */
  EffectSize joinedBy(EffectSize other) {
    if (!isKnown() || !other.isKnown()) {
      return isKnown() ? this : other;
    }
    // As of independent estimates: what is left within turns has no part in the turns' means.
    boolean agrees = Math.abs(perUnit - other.perUnit) <= AGREE * Math.hypot(error, other.error);
    // What a pair does together is not the effect of one, and no mean of the two.
    if (!agrees || !togetherWith.isEmpty() || !other.togetherWith.isEmpty()) {
      return this;
    }
    double a = weight();
    double b = other.weight();
    return new EffectSize(
        (a * perUnit + b * other.perUnit) / (a + b),
        1 / Math.sqrt(a + b),
        freedom(List.of(this, other)));
  }

  /**
   * One effect as three kinds of variation show it.
   *
   * @param molds molds against molds in the same turn and ladle side
   * @param sides ladle sides against each other in the same turn
   * @param wheel turns against turns
   * @param pair of this setting and the one that it moves with, both moving as they did, by the
   *     kind of variation that shows it best; unknown where it moves with none
   */
  public record Levels(EffectSize molds, EffectSize sides, EffectSize wheel, EffectSize pair) {
    static final Levels UNKNOWN =
        new Levels(EffectSize.UNKNOWN, EffectSize.UNKNOWN, EffectSize.UNKNOWN);

    Levels(EffectSize molds, EffectSize sides, EffectSize wheel) {
      this(molds, sides, wheel, EffectSize.UNKNOWN);
    }

    /**
     * What can be told of this setting alone, the others held: the mean of the three estimates,
     * weighted by their precision. Where they differ by more than their errors say, the error is
     * that of the mean times the Birge ratio {@code √(χ²/(k − 1))} (Birge 1932), for the kinds of
     * variation then do not show one and the same effect, or the errors are too small.
     */
    public EffectSize alone() {
      List<EffectSize> known =
          Stream.of(molds, sides, wheel)
              .map(EffectSize::alone)
              .filter(EffectSize::isKnown)
              .toList();
      double weights = 0;
      double sum = 0;
      for (EffectSize each : known) {
        weights += each.weight();
        sum += each.weight() * each.perUnit;
      }
      if (weights == 0) {
        return EffectSize.UNKNOWN;
      }
      double mean = sum / weights;
      double chiSquare = 0;
      for (EffectSize each : known) {
        chiSquare += each.weight() * (each.perUnit - mean) * (each.perUnit - mean);
      }
      // Over k − 1: the mean was fitted to the k estimates themselves.
      double birge = Math.sqrt(chiSquare / Math.max(1, known.size() - 1));
      // Never below 1: two or three estimates agree closely by luck as well.
      return new EffectSize(mean, Math.max(1, birge) / Math.sqrt(weights), freedom(known));
    }

    /** All that agree with the most precise one. */
    private EffectSize mostPrecise() {
      EffectSize best = molds;
      for (EffectSize each : List.of(sides, wheel)) {
        // The negation, so that a kind of variation with no estimate gives way.
        best = each.isKnown() && !(best.error <= each.error) ? each : best;
      }
      return joined(best);
    }

    /**
     * What rests on the same kind of variation as a signal, with whatever agrees with it. What a
     * sensor adds to every reading weakens the estimate of single pours most.
     */
    EffectSize matching(Episode.Chart chart) {
      EffectSize own =
          switch (chart) {
            case WHEEL, SPREAD -> wheel;
            case SIDE -> sides;
            case MOLD, POUR -> molds;
          };
      // Its own first: what a sensor adds to single pours mostly averages out over a turn.
      return own.isKnown() ? joined(own) : mostPrecise();
    }

    private EffectSize joined(EffectSize first) {
      EffectSize joined = first;
      for (EffectSize each : List.of(molds, sides, wheel)) {
        joined = each == first ? joined : joined.joinedBy(each);
      }
      return joined;
    }
  }
}
