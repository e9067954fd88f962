package org.evenpour.control;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.evenpour.control.LimitsVersion.Base;
import org.evenpour.control.LimitsVersion.LeftOut;
import org.evenpour.control.LimitsVersion.MoldBase;
import org.evenpour.control.LimitsVersion.Reason;
import org.evenpour.stats.CusumPair;
import org.evenpour.stats.NormalScores;

/** Approved limits for tests. */
public final class Versions {
  private Versions() {}

  /** Limits of molds 1, 2, 3, … approved for always. */
  static LimitsVersion of(LimitsInForce limits, List<String> sides, Instant baseEnd) {
    List<MoldBase> molds = new ArrayList<>();
    for (int m = 0; m < limits.offsets().length; m++) {
      molds.add(new MoldBase(Integer.toString(m + 1), "", 100));
    }
    return version(limits, molds, sides, baseEnd);
  }

  static LimitsVersion version(
      LimitsInForce limits, List<MoldBase> molds, List<String> sides, Instant baseEnd) {
    return new LimitsVersion(
        "N2",
        "mass",
        "kg",
        1,
        Instant.EPOCH,
        Instant.EPOCH,
        "A. Rojas",
        "sound",
        new Base(List.of("log.csv"), Instant.EPOCH, baseEnd, 100, 2600),
        List.of(),
        molds,
        sides,
        limits);
  }

  /** Limits of which every figure is another one of these doubles. */
  public static LimitsVersion ofFigures(String wheel, String characteristic, double... x) {
    int[] next = {0};
    double[] offsets = {take(x, next), take(x, next), Double.NaN};
    List<MoldBase> molds =
        List.of(
            new MoldBase("7", "A-1", 40),
            new MoldBase("ü \"8\"", "", 41),
            new MoldBase("9", "", 0));
    LimitsInForce limits =
        new LimitsInForce(
            "proposed",
            100,
            take(x, next),
            offsets,
            series(x, next),
            take(x, next),
            series(x, next),
            take(x, next),
            take(x, next),
            List.of(series(x, next), series(x, next)),
            series(x, next),
            new LimitsInForce.Wear(
                List.of(take(x, next), take(x, next), take(x, next)), take(x, next)),
            x.length % 2 == 0);
    return new LimitsVersion(
        wheel,
        characteristic,
        "kg",
        0,
        Instant.parse("2026-03-05T03:00:00Z"),
        Instant.parse("2026-03-06T12:00:00.123Z"),
        "A. Rojas\t",
        "first\nsound \u2028 week",
        new Base(
            List.of("log.csv"),
            Instant.parse("2026-03-01T03:00:00Z"),
            Instant.parse("2026-03-05T02:59:00Z"),
            98,
            2448),
        List.of(
            new LeftOut(
                Reason.MOLD_SHIFTED,
                "+1.2 kg",
                "7",
                Instant.parse("2026-03-02T03:00:00Z"),
                Instant.parse("2026-03-02T04:00:00Z"),
                12),
            new LeftOut(Reason.BY_HAND, "ladle relined", null, Instant.EPOCH, Instant.EPOCH, 3)),
        molds,
        List.of("A", "B", "C"),
        limits);
  }

  private static LimitsInForce.SeriesLimits series(double[] x, int[] next) {
    return new LimitsInForce.SeriesLimits(
        take(x, next),
        take(x, next),
        take(x, next),
        take(x, next),
        take(x, next),
        new CusumPair(take(x, next), take(x, next), take(x, next), take(x, next)),
        scores(take(x, next), take(x, next), take(x, next)));
  }

  private static NormalScores scores(double a, double b, double c) {
    double[] knots = DoubleStream.of(a, b, c).distinct().sorted().toArray();
    List<Double> ascending = DoubleStream.of(knots).boxed().toList();
    boolean isOne = DoubleStream.of(knots).anyMatch(v -> !Double.isFinite(v)) || knots.length < 3;
    return isOne || !(knots[0] < knots[1] && knots[1] < knots[2])
        ? NormalScores.IDENTITY
        : new NormalScores(
            ascending,
            ascending,
            new NormalScores.Tail(b, c, 51),
            new NormalScores.Tail(c, a, 52),
            2080);
  }

  private static double take(double[] x, int[] next) {
    return x[next[0]++ % x.length];
  }

  /** Every double of some limits, in one order. */
  public static List<Long> bits(LimitsVersion version) {
    List<Long> bits = new ArrayList<>();
    LimitsInForce limits = version.limits();
    add(bits, limits.center(), limits.pourLimit(), limits.wheelPointLimit());
    add(bits, limits.movingRangeSigma());
    add(bits, limits.offsets());
    limits.wear().perTurn().forEach(each -> add(bits, each));
    add(bits, limits.wear().variance());
    bits.add(limits.ownPast() ? 1L : 0L);
    List<LimitsInForce.SeriesLimits> all = new ArrayList<>(limits.sides());
    all.addAll(List.of(limits.pour(), limits.wheel(), limits.spread()));
    for (LimitsInForce.SeriesLimits one : all) {
      CusumPair pair = one.decision();
      add(bits, one.center(), one.sigma(), one.correlation(), one.noise(), one.excess());
      add(bits, pair.k(), pair.h(), pair.k2(), pair.h2());
      NormalScores scores = one.scores();
      scores.values().forEach(value -> add(bits, value));
      scores.scores().forEach(score -> add(bits, score));
      add(bits, scores.low().scale(), scores.low().shape(), scores.low().count());
      add(bits, scores.high().scale(), scores.high().shape(), scores.high().count());
    }
    return bits;
  }

  private static void add(List<Long> bits, double... values) {
    for (double value : values) {
      bits.add(Double.doubleToLongBits(value));
    }
  }
}
