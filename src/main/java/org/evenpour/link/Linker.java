package org.evenpour.link;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.EventKind;
import org.evenpour.casting.Setting;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.control.Episode;
import org.jspecify.annotations.Nullable;

/**
 * Asks of every setting and event what it has to do with an episode: did it move, would that move
 * explain it, does the timing fit? Evidence, never "the cause". Knows no setting's name: groups and
 * lags come from the profile.
 */
public final class Linker {
  /** Turns before the onset that an episode is compared with. */
  private static final int BEFORE = 120;

  /** Turns of an episode that are looked at. */
  private static final int DURING = 400;

  /** Turns on either side of the onset in which a step of the setting is looked for. */
  private static final int CLOSE = 60;

  /** A signal within so many turns of the end of one like it goes on with that; a choice. */
  private static final int GOES_ON = 10;

  /** So many times as clear, an earlier step is the setting's move, and the timing does not fit. */
  private static final double EARLIER = 1.4;

  private final TurnGrid grid;
  private final List<CastingEvent> events;
  private final Map<String, PlantHistory.Learned> histories = new ConcurrentHashMap<>();
  private final Map<String, SignalMask> masks = new ConcurrentHashMap<>();
  private final Map<String, Map<Kind, List<Turns>>> signals = new ConcurrentHashMap<>();
  private final Map<String, Series> seriesOf = new ConcurrentHashMap<>();
  private final Map<String, Optional<Wander>> wanders = new ConcurrentHashMap<>();
  private final Map<String, int[]> categoryChanges = new ConcurrentHashMap<>();
  private final Map<String, double[]> everyTurn = new ConcurrentHashMap<>();

  /**
   * @param grid of the wheel
   * @param events at this wheel
   */
  public Linker(TurnGrid grid, List<CastingEvent> events) {
    this.grid = grid;
    this.events = List.copyOf(events);
  }

  /** Tells which signals one characteristic has: history within them is left out of its effects. */
  public void signals(Characteristic characteristic, List<Episode> episodes) {
    masks.put(characteristic.name(), new SignalMask(grid, episodes));
    Map<Kind, List<Turns>> alike = new HashMap<>();
    for (Episode episode : episodes) {
      alike
          .computeIfAbsent(Kind.of(episode), kind -> new ArrayList<>())
          .add(Turns.of(grid, episode));
    }
    signals.put(characteristic.name(), alike);
  }

  /** Signals that may be one another's going on: of one chart, place and direction. */
  private record Kind(Episode.Chart chart, int index, int direction) {
    static Kind of(Episode episode) {
      return new Kind(episode.chart(), episode.index(), episode.direction());
    }
  }

  /** The turns in which a signal began and was last seen. */
  private record Turns(int since, int last) {
    static Turns of(TurnGrid grid, Episode episode) {
      return new Turns(grid.turnAt(episode.sinceAtMillis()), grid.turnAt(episode.lastAtMillis()));
    }
  }

  /** Learns what the settings do to one characteristic, which else is done when first asked for. */
  public void learn(Characteristic characteristic) {
    histories.computeIfAbsent(
        characteristic.name(), name -> PlantHistory.of(grid, characteristic, mask(characteristic)));
  }

  /** How many turns the wheel's record has. */
  public int turns() {
    return grid.turns();
  }

  /** The effect of one unit of a setting on a characteristic, by this plant's own history. */
  public EffectSize.Levels effect(Characteristic characteristic, Setting setting) {
    return history(characteristic)
        .effects()
        .getOrDefault(setting.name(), EffectSize.Levels.UNKNOWN);
  }

  /** Whether that effect is a straight line; null where the record cannot tell. */
  public @Nullable LineCheck line(Characteristic characteristic, Setting setting) {
    return history(characteristic).line(setting.name());
  }

  /**
   * What each level of a category goes with in a characteristic, by this plant's own history. What
   * differs strongly between levels is a signal whenever the level comes, so signals are part of
   * it.
   */
  public LevelEffects levels(Characteristic characteristic, Setting setting, IntColumn categories) {
    return levels(characteristic, setting, categories, 0, 0);
  }

  /** The same without the visits that some turns are part of. */
  private LevelEffects levels(
      Characteristic characteristic, Setting setting, IntColumn categories, int from, int to) {
    double[] turns =
        everyTurn.computeIfAbsent(
            characteristic.name(), name -> PlantHistory.everyTurn(grid, characteristic));
    int first = grid.turns() - turns.length;
    int[] labels = new int[turns.length];
    int lag = setting.profile().lagTurns();
    Arrays.setAll(labels, t -> categoryIn(categories, first + t - lag, -1));
    return LevelEffects.without(turns, labels, from - first, to - first);
  }

  /** How a characteristic differs between turns of the wheel that lie so far apart. */
  public TurnNoise noise(Characteristic characteristic, int apart) {
    return TurnNoise.of(history(characteristic).turns(), apart);
  }

  private PlantHistory.Learned history(Characteristic characteristic) {
    learn(characteristic);
    return Objects.requireNonNull(histories.get(characteristic.name()));
  }

  private SignalMask mask(Characteristic characteristic) {
    return masks.computeIfAbsent(characteristic.name(), name -> new SignalMask(grid, List.of()));
  }

  /**
   * In how many turns the whole wheel's mean of a setting ever moved so far while it cast, at the
   * quickest; 0 where it never did within so many turns.
   */
  public int quickest(Setting setting, DoubleColumn numbers, double by, int mostTurns) {
    int from = Math.max(0, grid.turns() - PlantHistory.LONGEST_TURNS);
    double[] series = series(setting, numbers).wheel(from, grid.turns());
    int quickest = 0;
    int started = 0;
    for (int t = 0; t < series.length; t++) {
      // Across a stop a setting may stand anywhere: that was no move while casting.
      started = grid.isStartUp(from + t) ? t : started;
      // Only what is quicker still is asked from here on.
      int most = quickest == 0 ? mostTurns : quickest - 1;
      for (int apart = 1; apart <= most && t - apart >= started; apart++) {
        if (Math.abs(series[t] - series[t - apart]) >= by) {
          quickest = apart;
          break;
        }
      }
    }
    return quickest;
  }

  /** A setting's values of the newest turns, ascending: its recorded range. */
  public double[] recent(DoubleColumn numbers) {
    int from = Math.max(0, grid.turns() - PlantHistory.LONGEST_TURNS);
    double[] values = new double[(grid.turns() - from) * grid.molds()];
    int n = 0;
    for (int t = from; t < grid.turns(); t++) {
      for (int m = 0; m < grid.molds(); m++) {
        double v = grid.value(numbers, t, m);
        if (!Double.isNaN(v)) {
          values[n++] = v;
        }
      }
    }
    double[] known = Arrays.copyOf(values, n);
    Arrays.sort(known);
    return known;
  }

  /** What is found of every setting and event beside one episode, in no order. */
  public List<Finding> examine(Characteristic characteristic, Episode episode) {
    Window window = Window.of(grid, episode);
    List<Finding> findings = new ArrayList<>();
    for (Setting setting : grid.record().settings()) {
      DoubleColumn numbers = setting.numbers();
      IntColumn categories = setting.categories();
      if (numbers != null) {
        findings.add(number(characteristic, setting, numbers, episode, window));
      } else if (categories != null) {
        Finding finding = category(characteristic, setting, categories, episode, window);
        if (finding != null) {
          findings.add(finding);
        }
      }
    }
    findings.addAll(eventsNear(episode, window));
    return findings;
  }

  /** The turns that count: {@code [before, onset)} against {@code [onset, end)}. */
  private record Window(int before, int onset, int end, int tolerance) {
    static Window of(TurnGrid grid, Episode episode) {
      int onset = grid.turnAt(episode.sinceAtMillis());
      int end = Math.min(grid.turnAt(episode.lastAtMillis()) + 1, onset + DURING);
      // Held up, for the error goes as 1/size².
      double size = Math.max(0.5, Math.abs(episode.sizeSigma()));
      // An onset's error is of the order of a few times 1/δ² turns; a drift's is a good part of its
      // length.
      int tolerance =
          (int)
              Math.min(
                  40,
                  3 + Math.ceil(6 / (size * size)) + (episode.ramp() ? (end - onset) / 3.0 : 0));
      return new Window(Math.max(0, onset - BEFORE), onset, Math.max(onset + 1, end), tolerance);
    }
  }

  private Finding number(
      Characteristic characteristic,
      Setting setting,
      DoubleColumn numbers,
      Episode episode,
      Window window) {
    Series settingSeries = series(setting, numbers);
    double[] series = settingSeries.over(episode, window.before(), window.end());
    int cut = window.onset() - window.before();
    Move move =
        Move.between(
            Arrays.copyOfRange(series, 0, cut), Arrays.copyOfRange(series, cut, series.length));
    Optional<Wander> wander =
        wanders.computeIfAbsent(
            // By characteristic too: what is cut out are its signals, and each has others.
            setting.name() + "\n" + level(episode.chart()) + "\n" + characteristic.name(),
            key ->
                Optional.ofNullable(
                    settingSeries.wander(level(episode.chart()), mask(characteristic))));
    double p = move.p();
    int since = window.onset();
    boolean fits = true;
    if (wander.isPresent() && !Double.isNaN(move.error())) {
      int begin = Math.max(0, cut - CLOSE);
      double[] near = Arrays.copyOfRange(series, begin, Math.min(series.length, cut + CLOSE));
      int onset = cut - begin;
      Wander.Step then =
          wander
              .get()
              .clearest(
                  near, onset - window.tolerance(), onset + window.tolerance() + 1, episode.ramp());
      // What moved well before the onset did not begin the signal, however clear a step lies near.
      Wander.Step earlier =
          wander.get().clearest(near, onset - 3 * window.tolerance() - 10, onset, episode.ramp());
      // Two questions of one setting, and the better answer counts: Bonferroni.
      p = Math.min(1, 2 * Math.min(p, then.p()));
      boolean before =
          earlier.at() >= 0
              && earlier.at() < onset - window.tolerance()
              && Math.abs(earlier.ratio()) > EARLIER * Math.abs(then.ratio());
      since = window.before() + begin + (before ? earlier.at() : Math.max(0, then.at()));
      fits = !before && then.at() >= 0;
    }
    EffectSize effect = effect(characteristic, setting).matching(episode.chart());
    double expected = effect.isKnown() ? effect.perUnit() * move.by() : Double.NaN;
    double size = episode.size();
    // A spread has no direction that a mean effect could explain.
    double share =
        episode.chart() == Episode.Chart.SPREAD || size == 0 ? Double.NaN : expected / size;
    // How far the setting stood off is known; what one unit of it does and the signal's size are
    // estimates.
    double error =
        Math.abs(1 / size)
            * Math.sqrt(square(effect.error() * move.by()) + square(share * episode.sizeError()));
    return new Finding(
        setting,
        null,
        move.by(),
        p,
        expected,
        share,
        share - 1.96 * error,
        share + 1.96 * error,
        effect.isKnown() && effect.isBeyondChance() && !effect.follows(),
        fits,
        grid.turnNumber(Math.max(0, Math.min(grid.turns() - 1, since))),
        effect.togetherWith());
  }

  private Series series(Setting setting, DoubleColumn numbers) {
    return seriesOf.computeIfAbsent(
        setting.name(), name -> new Series(grid, numbers, setting.profile().lagTurns()));
  }

  private static Episode.Chart level(Episode.Chart chart) {
    return switch (chart) {
      case WHEEL, SPREAD -> Episode.Chart.WHEEL;
      case SIDE -> Episode.Chart.SIDE;
      case MOLD, POUR -> Episode.Chart.MOLD;
    };
  }

  private static double square(double x) {
    return x * x;
  }

  /**
   * A category counts as an event where it changed: a new wash batch, another crew. For the whole
   * wheel its levels say what such a change goes with, by all visits but the signal's own. Crews
   * change so regularly that one always changed near an onset, and so a category is never strong.
   */
  private @Nullable Finding category(
      Characteristic characteristic,
      Setting setting,
      IntColumn categories,
      Episode episode,
      Window window) {
    int mold = episode.chart() == Episode.Chart.MOLD ? episode.index() : -1;
    int[] changes =
        categoryChanges.computeIfAbsent(
            setting.name() + "\n" + mold, key -> changes(categories, mold));
    if (changes.length == 0) {
      return null;
    }
    int onset = window.onset();
    int nearest = nearest(changes, onset);
    if (Math.abs(nearest - onset) > window.tolerance()) {
      onset =
          wentOnFrom(
              signals
                  .getOrDefault(characteristic.name(), Map.of())
                  .getOrDefault(Kind.of(episode), List.of()),
              onset);
      nearest = nearest(changes, onset);
    }
    // What stood when the record begins may have come just then: its first turn is a change too.
    boolean isFirst = onset <= window.tolerance() && onset <= Math.abs(nearest - onset);
    boolean isNear = !isFirst && Math.abs(nearest - onset) <= window.tolerance();
    // By the signal's own onset: to go back to an earlier one was a second look, and costs.
    double p = isNear ? chance(changes.length, nearest - window.onset()) : 1;
    nearest = isFirst ? 0 : nearest;
    LevelEffects.Difference difference = null;
    if ((isNear || isFirst) && episode.chart() == Episode.Chart.WHEEL) {
      int last = grid.turnAt(episode.lastAtMillis()) + 1;
      LevelEffects others =
          // Whatever is to be explained must not have taught what the levels do.
          levels(characteristic, setting, categories, Math.min(onset, nearest), last);
      int after = categoryFrom(categories, nearest);
      difference =
          isFirst
              ? others.besideOthers(after)
              : others.between(lastBefore(categories, nearest), after);
    }
    double size = episode.size();
    double expected = difference == null ? Double.NaN : difference.by();
    double share = size == 0 ? Double.NaN : expected / size;
    double half =
        difference == null
            ? Double.NaN
            : Math.hypot(difference.half(), 1.96 * share * episode.sizeError()) / Math.abs(size);
    return new Finding(
        setting,
        null,
        Double.NaN,
        p,
        expected,
        share,
        share - half,
        share + half,
        difference != null && difference.isProven(),
        isNear || isFirst,
        grid.turnNumber(nearest),
        List.of());
  }

  /**
   * The onset of the signals of one chart and direction that this one goes on with, each beginning
   * where the one before had just ended.
   */
  private static int wentOnFrom(List<Turns> alike, int onset) {
    int began = onset;
    for (Turns earlier : alike) {
      boolean goesOn = earlier.since() < began && earlier.last() >= began - GOES_ON;
      if (goesOn && earlier.last() < onset) {
        began = wentOnFrom(alike, earlier.since());
      }
    }
    return began;
  }

  private static int nearest(int[] changes, int onset) {
    int next = Arrays.binarySearch(changes, onset);
    next = next < 0 ? -next - 1 : next;
    int after = changes[Math.min(next, changes.length - 1)];
    int before = changes[Math.max(next - 1, 0)];
    return Math.abs(after - onset) < Math.abs(before - onset) ? after : before;
  }

  /**
   * The turns in which a category was another than before, at one mold or (mold −1) at the wheel.
   */
  private int[] changes(IntColumn categories, int mold) {
    int[] at = new int[16];
    int n = 0;
    int previous = -1;
    for (int t = 0; t < grid.turns(); t++) {
      int now = categoryIn(categories, t, mold);
      // A turn that isn't written down is no change, neither into it nor out of it.
      if (now >= 0 && previous >= 0 && now != previous) {
        at = n == at.length ? Arrays.copyOf(at, 2 * n) : at;
        at[n++] = t;
      }
      previous = now >= 0 ? now : previous;
    }
    return Arrays.copyOf(at, n);
  }

  /** The category of the wheel that was last written down before a turn; −1 where there is none. */
  private int lastBefore(IntColumn categories, int turn) {
    int label = -1;
    for (int t = turn - 1; t >= 0 && label < 0; t--) {
      label = categoryIn(categories, t, -1);
    }
    return label;
  }

  /** The category of the wheel that is first written down from a turn on; −1 for none. */
  private int categoryFrom(IntColumn categories, int turn) {
    int label = -1;
    for (int t = turn; t < grid.turns() && label < 0; t++) {
      label = categoryIn(categories, t, -1);
    }
    return label;
  }

  private int categoryIn(IntColumn categories, int turn, int mold) {
    if (mold >= 0) {
      int row = grid.row(turn, mold);
      return row < 0 ? -1 : categories.get(row);
    }
    for (int m = 0; m < grid.molds(); m++) {
      int row = grid.row(turn, m);
      if (row >= 0 && categories.get(row) >= 0) {
        return categories.get(row);
      }
    }
    return -1;
  }

  /**
   * The nearest event of each kind at the episode's place or at the whole wheel. Far ones are given
   * as well, with no timing that fits: they count among the questions asked.
   */
  private List<Finding> eventsNear(Episode episode, Window window) {
    List<Finding> findings = new ArrayList<>();
    if (episode.chart() == Episode.Chart.POUR) {
      return findings;
    }
    String mold =
        episode.chart() == Episode.Chart.MOLD ? grid.record().molds().name(episode.index()) : null;
    Map<String, List<CastingEvent>> kinds = new LinkedHashMap<>();
    for (CastingEvent event : events) {
      // A ladle and its scale pour all molds: what one of them does alone is none of theirs.
      boolean isOthers = mold != null && EventKind.OF_LADLE.contains(event.kind());
      if (!isOthers && (event.mold() == null || Objects.equals(event.mold(), mold))) {
        String place = event.mold() == null ? "" : "mold\n";
        kinds.computeIfAbsent(place + event.kind(), kind -> new ArrayList<>()).add(event);
      }
    }
    for (List<CastingEvent> alike : kinds.values()) {
      CastingEvent nearest = alike.get(0);
      int distance = Integer.MAX_VALUE;
      for (CastingEvent event : alike) {
        int away = Math.abs(grid.turnAt(event.at().toEpochMilli()) - window.onset());
        if (away < distance) {
          distance = away;
          nearest = event;
        }
      }
      // Far ones as well: to leave them out would make the family of questions too small.
      findings.add(
          new Finding(
              null,
              nearest,
              Double.NaN,
              chance(alike.size(), distance),
              Double.NaN,
              Double.NaN,
              Double.NaN,
              Double.NaN,
              // What was done to this very mold, or to the whole wheel when the whole wheel moved.
              (nearest.mold() == null) == (mold == null),
              distance <= window.tolerance(),
              grid.turnNumber(grid.turnAt(nearest.at().toEpochMilli())),
              List.of()));
    }
    return findings;
  }

  /** The chance that one of so many happenings falls at least as near to an onset as this. */
  private double chance(int happenings, int distance) {
    // A turn on either side for each of distance, and the onset's own.
    double part = Math.min(1, (2.0 * Math.abs(distance) + 1) / grid.turns());
    // The nearest of many lies near by chance more often than any one does.
    return 1 - Math.pow(1 - part, happenings);
  }
}
