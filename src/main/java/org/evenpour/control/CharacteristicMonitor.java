package org.evenpour.control;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.casting.WheelProfile;
import org.evenpour.stats.RunTest;
import org.evenpour.stats.RunTests;

/**
 * Watches one characteristic of one wheel, one anode at a time: the engine.
 *
 * <p>Anodes of a turn are gathered; when the next turn begins, the turn is closed and every chart
 * gets its point. With {@code dev = x − center − offset(mold)}: the level of a ladle side is the
 * mean of its molds' deviations, leaving out molds that are themselves a signal and pours far from
 * the median; the turn effect is the mean of the sides' levels; what is left of a deviation when
 * its side's level is taken off belongs to the mold and the pour. A residual is standardized by
 * {@code σ·√(1 − 1/n)} where the anode is among the n that made the level and by {@code σ·√(1 +
 * 1/n)} where it is not.
 *
 * <p>The first pour of each mold after a stop is start-up and is left out. After a mold change the
 * new mold is judged against the one that it replaced for {@link #TRIAL} casts; then its own level
 * is learned from these and goes on being learned while it is no signal, and the standardization
 * allows for that (self-starting, after Hawkins 1987).
 *
 * <p>Memory does not grow with the log but for its episodes. Owned by one thread.
 */
public final class CharacteristicMonitor {
  /** Casts for which a new mold is judged against the one that it replaced. */
  public static final int TRIAL = 25;

  /** A level needs this many molds. */
  static final int LEAST_MOLDS = 3;

  private static final double FAR = 4;

  /**
   * A turn whose scatter stands this many sigma above the usual widens what is expected of its
   * pours.
   */
  static final double CLEARLY = 3;

  /** Weight of the newest turn in what scatter is like just now; a choice. */
  private static final double RECENT = 0.25;

  private static final String BEYOND = RunTest.BEYOND_LIMIT.id();

  private final LimitsInForce limits;
  private final StartUp startUp;
  private final double fromMiddle;
  private final TurnListener listener;

  private final RunTests wheelTests;
  private final ShiftChart wheelChart;
  private final ShiftChart spreadChart;
  private final List<ShiftChart> sideCharts = new ArrayList<>();
  private final List<MoldState> molds = new ArrayList<>();
  private final List<Episode> pours = new ArrayList<>();

  private double recentSpread = Double.NaN;
  private boolean hasBegun;
  private long turnsPassed;
  private int turn;
  private long turnAtMillis;
  private int inTurn;
  private int startUpInTurn;
  private int[] turnMold = new int[64];
  private int[] turnSide = new int[64];
  private long[] turnAt = new long[64];
  private double[] turnValue = new double[64];
  private boolean[] turnStartUp = new boolean[64];
  private double[] deviation = new double[64];
  private boolean[] included = new boolean[64];

  /** Of each side, in the last turn that had one. */
  private double[] lastLevel = new double[1];

  /** Hears of every closed turn. */
  public interface TurnListener {
    /**
     * A turn was closed.
     *
     * @param turn its number
     * @param atMillis when its first anode was cast
     * @param value the turn effect on the characteristic's own scale; NaN where too few molds make
     *     one
     * @param anodes how many anodes it had
     * @param startUp whether it was cast just after a stop
     */
    void turnClosed(int turn, long atMillis, double value, int anodes, boolean startUp);
  }

  /**
   * For turns that follow on the limits' base.
   *
   * @param limits in force
   * @param profile of the wheel: how long a gap is a stop, how many molds there are
   * @param listener hears of every closed turn
   */
  public CharacteristicMonitor(LimitsInForce limits, WheelProfile profile, TurnListener listener) {
    this(limits, new StartUp(profile, limits.offsets().length), 0.5 * limits.baseTurns(), listener);
  }

  /**
   * With a start-up that may have begun before.
   *
   * @param fromMiddle turns from the middle of the limits' base to the first one that is judged
   */
  CharacteristicMonitor(
      LimitsInForce limits, StartUp startUp, double fromMiddle, TurnListener listener) {
    this.limits = limits;
    this.fromMiddle = fromMiddle;
    this.listener = listener;
    this.startUp = startUp;
    LimitsInForce.SeriesLimits wheel = limits.wheel();
    wheelTests = new RunTests(wheel.center(), limits.movingRangeSigma());
    wheelChart = new ShiftChart(Episode.Chart.WHEEL, -1, wheel, true, wheel.sigma());
    spreadChart =
        new ShiftChart(Episode.Chart.SPREAD, -1, limits.spread(), false, limits.spread().sigma());
    for (int i = 0; i < limits.sides().size(); i++) {
      LimitsInForce.SeriesLimits side = limits.sides().get(i);
      sideCharts.add(new ShiftChart(Episode.Chart.SIDE, i, side, true, side.sigma()));
    }
  }

  /**
   * Takes in the next anode.
   *
   * @param castAtMillis when it was cast
   * @param anodeTurn the wheel's revolution
   * @param mold index
   * @param side index; −1 = none
   * @param serial index of the mold's serial; −1 = none
   * @param value in the unit that figures are computed in; NaN = not measured
   */
  public void accept(
      long castAtMillis, int anodeTurn, int mold, int side, int serial, double value) {
    if (inTurn > 0 && anodeTurn != turn) {
      closeTurn();
    }
    if (inTurn == 0) {
      pass(anodeTurn);
      turn = anodeTurn;
      turnAtMillis = castAtMillis;
    }
    // Both before a missing value is passed over: start-up counts pours, and a mold that
    // was not measured is changed all the same.
    boolean afterStop = startUp.isStartUp(castAtMillis);
    if (moldState(mold).isReplacedBy(serial)) {
      moldChanged(mold);
    }
    if (Double.isNaN(value)) {
      return;
    }
    if (inTurn == turnMold.length) {
      grow();
    }
    turnMold[inTurn] = mold;
    turnSide[inTurn] = side;
    turnAt[inTurn] = castAtMillis;
    turnValue[inTurn] = value;
    turnStartUp[inTurn] = afterStop;
    inTurn++;
    if (afterStop) {
      startUpInTurn++;
    }
  }

  /** Molds drift on in turns that go by, also in those that were not seen. */
  private void pass(int toTurn) {
    // Numbers that jump or begin anew carry no line further than the base it was seen in.
    int turns = hasBegun ? Math.max(1, Math.min(limits.baseTurns(), toTurn - turn)) : 0;
    hasBegun = true;
    turnsPassed += turns;
    for (MoldState mold : molds) {
      mold.pass(turns);
    }
  }

  /** A position got a new mold, or its mold was dressed or leveled. */
  public void moldChanged(int mold) {
    moldState(mold).restart();
  }

  /** Closes the turn under way; to be called when the log ends. */
  public void finish() {
    if (inTurn > 0) {
      closeTurn();
    }
  }

  private void closeTurn() {
    int n = inTurn;
    for (int i = 0; i < n; i++) {
      MoldState state = molds.get(turnMold[i]);
      deviation[i] = turnValue[i] - limits.center() - state.offset();
      // A mold in a signal or on trial would put its shift into the level of all.
      included[i] = !turnStartUp[i] && state.isSettled();
    }
    if (limits.ownPast()) {
      closeWithoutLevel(n);
      return;
    }
    int sides = Math.max(1, limits.sides().isEmpty() ? 1 : sidesInTurn(n));
    double[] level = new double[sides];
    int[] count = new int[sides];
    double effect = 0;
    int levels = 0;
    for (int s = 0; s < sides; s++) {
      level[s] = level(n, s, sides);
      for (int i = 0; i < n; i++) {
        if (included[i] && side(i, sides) == s) {
          count[s]++;
        }
      }
      if (!Double.isNaN(level[s])) {
        effect += level[s];
        levels++;
      }
    }
    // Sides weigh the same: one that poured few molds this turn is a whole side.
    effect = levels == 0 ? Double.NaN : effect / levels;
    boolean startUpTurn = 2 * startUpInTurn > n;
    if (!Double.isNaN(effect) && !startUpTurn) {
      wheelPoint(effect);
      // Where a side poured nothing, there is nothing to hold the others against.
      if (levels == sides && sides > 1 && sides >= sideCharts.size()) {
        sidePoints(level, effect);
      }
      residuals(n, level, count, sides);
    }
    closed(n, Double.isNaN(effect) ? plainMean(n) : limits.center() + effect, startUpTurn);
  }

  /** Each mold against its own past: what the turn has in common is part of it. */
  private void closeWithoutLevel(int n) {
    for (int i = 0; i < n; i++) {
      MoldState state = molds.get(turnMold[i]);
      if (turnStartUp[i]) {
        continue;
      }
      if (Double.isNaN(deviation[i])) {
        // A mold that was not in the base has nothing to be held against yet.
        state.learn(turnValue[i] - limits.center());
      } else {
        moldPoint(state, i, deviation[i], 0, 1);
      }
    }
    closed(n, plainMean(n), 2 * startUpInTurn > n);
  }

  private void closed(int n, double value, boolean startUpTurn) {
    listener.turnClosed(turn, turnAtMillis, value, n, startUpTurn);
    inTurn = 0;
    startUpInTurn = 0;
  }

  private double plainMean(int n) {
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += turnValue[i];
    }
    return n == 0 ? Double.NaN : sum / n;
  }

  private int sidesInTurn(int n) {
    int most = -1;
    for (int i = 0; i < n; i++) {
      most = Math.max(most, turnSide[i]);
    }
    return most + 1;
  }

  private int side(int i, int sides) {
    return sides == 1 ? 0 : Math.max(0, turnSide[i]);
  }

  /**
   * Mean of a side's deviations without far ones, which are taken out of {@code included}; NaN with
   * too few.
   */
  private double level(int n, int s, int sides) {
    double[] some = new double[n];
    int m = 0;
    for (int i = 0; i < n; i++) {
      if (included[i] && side(i, sides) == s) {
        some[m++] = deviation[i];
      }
    }
    if (m < LEAST_MOLDS) {
      return Double.NaN;
    }
    Arrays.sort(some, 0, m);
    double middle = middle(some, m, s);
    double sum = 0;
    int near = 0;
    for (int i = 0; i < n; i++) {
      if (included[i] && side(i, sides) == s) {
        // One wild pour in the level would push every mold of the side the other way.
        if (Math.abs(deviation[i] - middle) > FAR * limits.pour().sigma()) {
          included[i] = false;
        } else {
          sum += deviation[i];
          near++;
        }
      }
    }
    if (near < LEAST_MOLDS) {
      return Double.NaN;
    }
    lastLevel[s] = sum / near;
    return lastLevel[s];
  }

  /**
   * The median of a side's deviations; where half of its molds stepped far away together and hardly
   * one stands near the median, the middle of that half which stands where the side stood before.
   */
  private double middle(double[] ascending, int m, int s) {
    double median = 0.5 * (ascending[(m - 1) / 2] + ascending[m / 2]);
    int near = 0;
    for (int i = 0; i < m; i++) {
      near += Math.abs(ascending[i] - median) <= FAR * limits.pour().sigma() ? 1 : 0;
    }
    if (s >= lastLevel.length) {
      lastLevel = Arrays.copyOf(lastLevel, s + 1);
    }
    if (2 * near >= m) {
      return median;
    }
    // The medians of the two halves: one half stayed, and the last turn tells which.
    double low = ascending[m / 4];
    double high = ascending[m - 1 - m / 4];
    return Math.abs(low - lastLevel[s]) <= Math.abs(high - lastLevel[s]) ? low : high;
  }

  private void wheelPoint(double effect) {
    LimitsInForce.SeriesLimits wheel = limits.wheel();
    wheelTests.accept(limits.center() + effect);
    double departure = limits.center() + effect - wheel.center();
    double z = departure / wheel.sigma();
    wheelChart.accept(turn, turnAtMillis, z, departure, 1);
    // After the sums have had it: what opened them already needs no episode of its own.
    if (wheel.scores().isBeyond(z, limits.wheelPointLimit())) {
      wheelChart.force(z > 0 ? 1 : -1, BEYOND);
    }
  }

  private void sidePoints(double[] level, double effect) {
    double wheelDeparture = limits.center() + effect - limits.wheel().center();
    for (int s = 0; s < sideCharts.size(); s++) {
      LimitsInForce.SeriesLimits side = limits.sides().get(s);
      double contrast = contrast(level, s, sideCharts.size()) - side.center();
      sideCharts.get(s).accept(turn, turnAtMillis, contrast / side.sigma(), wheelDeparture, 1);
    }
  }

  /**
   * A side's level against the mean of the others; for two sides one chart: the second against the
   * first.
   */
  static double contrast(double[] level, int chart, int charts) {
    int s = charts == 1 ? 1 : chart;
    double others = 0;
    for (int i = 0; i < level.length; i++) {
      others += i == s ? 0 : level[i];
    }
    return level[s] - others / (level.length - 1);
  }

  private void residuals(int n, double[] level, int[] count, int sides) {
    double[] sizes = new double[n];
    int sized = 0;
    for (int i = 0; i < n; i++) {
      double own = level[side(i, sides)];
      if (!turnStartUp[i] && molds.get(turnMold[i]).isSettled() && !Double.isNaN(own)) {
        // Far pours count here, for many of them are scatter; Scatter drops the largest itself.
        sizes[sized++] = Math.abs(deviation[i] - own);
      }
    }
    // First, for the pours of this turn are judged by it.
    double spread = spreadPoint(sizes, sized);
    for (int i = 0; i < n; i++) {
      int s = side(i, sides);
      if (turnStartUp[i] || Double.isNaN(level[s])) {
        continue;
      }
      MoldState state = molds.get(turnMold[i]);
      double residual = deviation[i] - level[s];
      if (!Double.isNaN(residual)) {
        moldPoint(state, i, residual, included[i] ? -1.0 / count[s] : 1.0 / count[s], spread);
      } else {
        state.learn(turnValue[i] - limits.center() - level[s]);
      }
    }
  }

  /**
   * Charts the scatter of a turn; returns by how much it widens what may be expected of each of its
   * pours: 1 unless the turn is clearly more scattered than usual, or scatter is a signal that
   * still holds. In that case it goes by the last turns together, for a single turn's scatter is
   * itself hardly known.
   */
  private double spreadPoint(double[] sizes, int sized) {
    LimitsInForce.SeriesLimits usual = limits.spread();
    double spread = Scatter.of(sizes, sized, limits.pour().sigma());
    if (Double.isNaN(spread)) {
      return 1;
    }
    double z = (spread - usual.center()) / usual.sigma();
    double ratio = Math.exp(spread - usual.center());
    spreadChart.accept(turn, turnAtMillis, z, limits.pour().sigma() * ratio, 1);
    recentSpread =
        Double.isNaN(recentSpread) ? spread : recentSpread + RECENT * (spread - recentSpread);
    // A mean of logarithms, as the chart has it: one wild turn weighs less.
    double held = spreadChart.isOpen() ? Math.exp(recentSpread - usual.center()) : 1;
    // Never below 1: in a turn that is even by chance sound pours would look far off.
    return Math.max(1, Math.max(held, z > CLEARLY ? ratio : 1));
  }

  private void moldPoint(
      MoldState state, int i, double residual, double levelVariance, double spread) {
    double sigma =
        spread * limits.pour().sigma() * Math.sqrt(1 + levelVariance + state.offsetVariance());
    double z = residual / sigma;
    if (limits.pour().scores().isBeyond(z, limits.pourLimit())) {
      pours.add(pour(i, z > 0 ? 1 : -1, residual, sigma));
    }
    state.chart().accept(turn, turnAt[i], z, residual, spread);
    // Learned from last: a point is not judged by a level that it made itself.
    state.follow(residual + state.offset());
    state.settle(residual);
  }

  private Episode pour(int i, int direction, double residual, double sigma) {
    return new Episode(
        Episode.Chart.POUR,
        turnMold[i],
        direction,
        turn,
        turn,
        turnAt[i],
        turnAt[i],
        turn,
        turnAt[i],
        false,
        false,
        List.of(BEYOND),
        1,
        residual,
        sigma,
        residual / sigma,
        residual,
        0);
  }

  /** All episodes so far, merged so that one disturbance is one episode. */
  public List<Episode> episodes() {
    List<Episode> all = new ArrayList<>(pours);
    for (MoldState mold : molds) {
      all.addAll(mold.chart().episodes());
    }
    all.addAll(wheelChart.episodes());
    for (Episode episode : spreadChart.episodes()) {
      // Scatter is told by how much sigma grew, in the unit; its points are logarithms.
      all.add(episode.withSize(episode.companion() - limits.pour().sigma()));
    }
    for (ShiftChart chart : sideCharts) {
      all.addAll(chart.episodes());
    }
    return Episodes.merged(all, limits.sides().size(), limits.wheel());
  }

  /**
   * How far a mold stands from the rest of the wheel just now: an exponentially weighted mean
   * (Roberts 1959) of how far its last anodes stood from the level of their turns, in the unit.
   *
   * @param mold index
   * @return NaN before its first charted anode, and after a mold change until the next one
   */
  public double departure(int mold) {
    return mold < molds.size() ? molds.get(mold).departure() : Double.NaN;
  }

  /**
   * How far a mold usually stands from the rest of the wheel: the level that its anodes are judged
   * against, in the unit.
   *
   * @param mold index
   * @return NaN where it is not known yet
   */
  public double usual(int mold) {
    return mold < molds.size() ? molds.get(mold).offset() : Double.NaN;
  }

  /** The classic chart of the wheel. */
  public RunTests wheelTests() {
    return wheelTests;
  }

  private MoldState moldState(int mold) {
    while (molds.size() <= mold) {
      molds.add(new MoldState(limits, molds.size(), fromMiddle + turnsPassed));
    }
    return molds.get(mold);
  }

  private void grow() {
    int length = 2 * turnMold.length;
    turnMold = Arrays.copyOf(turnMold, length);
    turnSide = Arrays.copyOf(turnSide, length);
    turnAt = Arrays.copyOf(turnAt, length);
    turnValue = Arrays.copyOf(turnValue, length);
    turnStartUp = Arrays.copyOf(turnStartUp, length);
    deviation = Arrays.copyOf(deviation, length);
    included = Arrays.copyOf(included, length);
  }
}
