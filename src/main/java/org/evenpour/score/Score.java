package org.evenpour.score;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.evenpour.score.StrongLink.Truly;
import org.evenpour.stats.Percentiles;
import org.evenpour.stats.Proportion;
import org.jspecify.annotations.Nullable;

/**
 * How well audits did where the truth is known. Every share has its count and its 95 % interval.
 *
 * @param logs how many were audited
 * @param signals in all of them
 * @param signalsOfFaults how many signals are of a planted fault
 * @param all of all faults
 * @param byFault one for each name of a fault, by name
 * @param bySize one for each class of sizes; empty where the truth tells no sizes
 * @param links the strong ones
 * @param acting effects of settings that act
 * @param idle effects of settings that don't
 */
public record Score(
    int logs,
    int signals,
    Share signalsOfFaults,
    Faults all,
    List<Faults> byFault,
    List<Faults> bySize,
    Links links,
    Effects acting,
    Effects idle) {

  private static final double CONFIDENCE = 0.95;
  private static final List<Double> SIZES =
      List.of(0.0, 1.5, 2.0, 3.0, 4.0, Double.POSITIVE_INFINITY);

  /**
   * Faults of one kind. The shares after {@code found} are of those that were found: those that a
   * record shows have links that can be right, the others can be called unexplained.
   *
   * @param name what they have in common
   * @param onsetError in turns
   * @param delay in turns
   * @param topRight the first signal's first link with evidence names the cause
   * @param topExact the same, by the cause's own name
   * @param anyTopRight the same, of any signal of the fault
   * @param noStrong no record shows its cause, and none of its signals has a strong link
   * @param noLink no record shows its cause, and none of its signals has any link with evidence
   */
  public record Faults(
      String name,
      Share found,
      Quantiles onsetError,
      Quantiles delay,
      Share topRight,
      Share topExact,
      Share anyTopRight,
      Share noStrong,
      Share noLink) {}

  /**
   * A share with its 95 % interval; null where nothing was counted.
   *
   * @param count how many are so
   * @param of how many there are
   */
  public record Share(
      long count, long of, @Nullable Double value, @Nullable Double low, @Nullable Double high) {}

  /** The middle of some numbers, and what nine in ten of them do not pass; null without any. */
  public record Quantiles(int count, @Nullable Double median, @Nullable Double ninetieth) {
    static Quantiles of(double[] values) {
      double[] sorted = values.clone();
      Arrays.sort(sorted);
      return sorted.length == 0
          ? new Quantiles(0, null, null)
          : new Quantiles(sorted.length, Percentiles.at(0.5, sorted), Percentiles.at(0.9, sorted));
    }
  }

  /**
   * The strong links.
   *
   * @param right of all of them: they name the planted cause
   * @param real of all of them: right, or of a setting whose move truly made a good part of the
   *     signal though nobody planted it
   * @param besideFault false ones beside a signal of a planted fault of another cause, or of none
   * @param besideNothing false ones beside a signal of no planted fault
   */
  public record Links(Share right, Share real, FalseLinks besideFault, FalseLinks besideNothing) {}

  /**
   * False strong links.
   *
   * @param carrying those of a setting whose move truly made a good part of the signal
   * @param acting those of a setting that acts on the characteristic, but did not
   * @param idle those of a setting that doesn't
   * @param unknown those of events, and where no effects file tells
   */
  public record FalseLinks(int carrying, int acting, int idle, int unknown) {
    /** All of them. */
    public int count() {
      return carrying + acting + idle + unknown;
    }
  }

  /**
   * Intervals of effects.
   *
   * @param covered those that hold the true effect
   * @param without how many settings and characteristics have no interval
   * @param relativeWidth the intervals' median width over the true effect; null for idle settings
   */
  public record Effects(Share covered, int without, @Nullable Double relativeWidth) {}

  static Score of(List<LogOutcome> logs) {
    List<FaultOutcome> faults = logs.stream().flatMap(log -> log.faults().stream()).toList();
    List<StrongLink> strong = logs.stream().flatMap(log -> log.strong().stream()).toList();
    List<EffectOutcome> effects = logs.stream().flatMap(log -> log.effects().stream()).toList();
    int signals = logs.stream().mapToInt(LogOutcome::signals).sum();
    List<Faults> byFault = new ArrayList<>();
    for (String name : new TreeSet<>(faults.stream().map(FaultOutcome::fault).toList())) {
      byFault.add(faults(name, faults, fault -> fault.fault().equals(name)));
    }
    return new Score(
        logs.size(),
        signals,
        share(logs.stream().mapToInt(LogOutcome::matched).sum(), signals),
        faults("all", faults, fault -> true),
        List.copyOf(byFault),
        bySize(faults),
        new Links(
            share(strong, StrongLink::right),
            share(strong, link -> link.right() || link.truly() == Truly.CARRIES),
            falseOnes(strong, true),
            falseOnes(strong, false)),
        effects(effects, true),
        effects(effects, false));
  }

  private static List<Faults> bySize(List<FaultOutcome> faults) {
    List<Faults> all = new ArrayList<>();
    for (int i = 1; i < SIZES.size(); i++) {
      double from = SIZES.get(i - 1);
      double to = SIZES.get(i);
      Predicate<FaultOutcome> isOfSize = f -> f.sizeSigma() >= from && f.sizeSigma() < to;
      if (faults.stream().anyMatch(isOfSize)) {
        String name =
            from == 0
                ? "below 1.5 sigma"
                : Double.isInfinite(to) ? "4 sigma and more" : from + " to " + to + " sigma";
        all.add(faults(name.replace(".0", ""), faults, isOfSize));
      }
    }
    return List.copyOf(all);
  }

  private static Faults faults(
      String name, List<FaultOutcome> faults, Predicate<FaultOutcome> which) {
    List<FaultOutcome> own = faults.stream().filter(which).toList();
    List<FaultOutcome> found = own.stream().filter(FaultOutcome::found).toList();
    List<FaultOutcome> caused = found.stream().filter(FaultOutcome::hasCause).toList();
    List<FaultOutcome> unrecorded = found.stream().filter(f -> !f.hasCause()).toList();
    return new Faults(
        name,
        share(found.size(), own.size()),
        Quantiles.of(found.stream().mapToDouble(FaultOutcome::onsetError).toArray()),
        Quantiles.of(found.stream().mapToDouble(FaultOutcome::delay).toArray()),
        share(caused, FaultOutcome::topRight),
        share(caused, FaultOutcome::topExact),
        share(caused, FaultOutcome::anyTopRight),
        share(unrecorded, fault -> !fault.hasStrong()),
        share(unrecorded, fault -> !fault.hasLink()));
  }

  private static FalseLinks falseOnes(List<StrongLink> strong, boolean beside) {
    List<StrongLink> own =
        strong.stream().filter(link -> !link.right() && link.beside() == beside).toList();
    return new FalseLinks(
        count(own, Truly.CARRIES),
        count(own, Truly.ACTS),
        count(own, Truly.IDLE),
        count(own, Truly.UNKNOWN));
  }

  private static int count(List<StrongLink> links, Truly truly) {
    return (int) links.stream().filter(link -> link.truly() == truly).count();
  }

  private static Effects effects(List<EffectOutcome> effects, boolean acts) {
    List<EffectOutcome> own = effects.stream().filter(e -> e.acts() == acts).toList();
    List<EffectOutcome> told = own.stream().filter(EffectOutcome::hasInterval).toList();
    double[] widths = told.stream().mapToDouble(EffectOutcome::relativeWidth).toArray();
    return new Effects(
        share(told, EffectOutcome::covers),
        own.size() - told.size(),
        acts ? Quantiles.of(widths).median() : null);
  }

  private static <T> Share share(List<T> all, Predicate<T> which) {
    return share(all.stream().filter(which).count(), all.size());
  }

  private static Share share(long part, long whole) {
    if (whole == 0) {
      return new Share(0, 0, null, null, null);
    }
    Proportion share = Proportion.of(part, whole, CONFIDENCE);
    return new Share(part, whole, share.value(), share.low(), share.high());
  }
}
