package org.evenpour.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.Episode;
import org.evenpour.findings.Advice;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.link.Finding;
import org.evenpour.link.Linker;
import org.evenpour.link.TurnGrid;
import org.evenpour.stats.FalseDiscovery;

/**
 * Gathers the signals of all wheels with what was found beside them, then grades everything
 * together.
 */
final class SignalFindings {
  private static final int LEAST_MOLDS = 4;

  private final Advice advice;
  private final String prefix;
  private final List<Pending> pending = new ArrayList<>();

  /**
   * @param advice for what goes with a signal
   * @param prefix of the signals' ids
   */
  SignalFindings(Advice advice, String prefix) {
    this.advice = advice;
    this.prefix = prefix;
  }

  private record Pending(
      WheelRecord wheel, Characteristic characteristic, Episode episode, List<Finding> findings) {}

  /** Examines one wheel's signals: the episodes of each of its characteristics. */
  Linker link(
      WheelRecord wheel, TurnIndex turns, List<CastingEvent> events, List<List<Episode>> episodes) {
    TurnGrid grid = new TurnGrid(wheel, turns.ofRow(), turns.turns(), turns.startUp());
    Linker linker = new Linker(grid, events);
    for (int i = 0; i < episodes.size(); i++) {
      List<Episode> its = episodes.get(i).stream().map(e -> compared(wheel, e)).toList();
      linker.signals(wheel.characteristics().get(i), its);
    }
    // First, each by a thread of its own: all signals of a characteristic wait for what it shows.
    IntStream.range(0, episodes.size())
        .parallel()
        .filter(i -> !episodes.get(i).isEmpty())
        .forEach(i -> linker.learn(wheel.characteristics().get(i)));
    IntStream.range(0, episodes.size())
        .parallel()
        .mapToObj(i -> examined(wheel, linker, wheel.characteristics().get(i), episodes.get(i)))
        .toList()
        .forEach(pending::addAll);
    return linker;
  }

  private static List<Pending> examined(
      WheelRecord wheel, Linker linker, Characteristic characteristic, List<Episode> episodes) {
    return episodes.parallelStream()
        .map(
            e ->
                new Pending(
                    wheel, characteristic, e, linker.examine(characteristic, compared(wheel, e))))
        .toList();
  }

  /** A mold with hardly another beside it has nothing to be held against: it is the wheel. */
  private static Episode compared(WheelRecord wheel, Episode episode) {
    return wheel.molds().size() < LEAST_MOLDS ? episode.ofWheel() : episode;
  }

  /** All signals in the order of wheels and onsets, graded over the whole audit. */
  List<Signal> signals() {
    Map<Finding.Question, double[]> rates = new EnumMap<>(Finding.Question.class);
    for (Finding.Question question : Finding.Question.values()) {
      // Each question by itself: what was done to the very mold is asked of few molds, and
      // would drown among all settings.
      rates.put(
          question,
          FalseDiscovery.qValues(
              pending.stream()
                  .flatMap(each -> each.findings().stream())
                  .filter(finding -> finding.question() == question)
                  .mapToDouble(Finding::p)
                  .toArray()));
    }
    Map<Finding.Question, Integer> next = new EnumMap<>(Finding.Question.class);
    List<Signal> signals = new ArrayList<>();
    for (Pending each : pending) {
      List<Graded> graded = new ArrayList<>();
      for (Finding finding : each.findings()) {
        int at = next.merge(finding.question(), 1, Integer::sum) - 1;
        double rate = rates.getOrDefault(finding.question(), new double[0])[at];
        // Told only if near; asked were all of them, and so all count in the rates.
        if (finding.isNear()) {
          graded.add(new Graded(finding, finding.grade(rate), rate));
        }
      }
      graded.sort(BEST_FIRST);
      signals.add(signal(each, graded));
    }
    signals.sort(
        Comparator.comparing(Signal::wheel)
            .thenComparing(Signal::sinceAt)
            .thenComparing(Signal::scope)
            .thenComparing(Signal::characteristic));
    List<Signal> numbered = new ArrayList<>();
    for (Signal signal : signals) {
      numbered.add(withId(signal, prefix + (numbered.size() + 1)));
    }
    return numbered;
  }

  /** Fifths of a signal that a cause explains which may have moved others: a choice. */
  private static final int UPSTREAM = 3;

  private record Graded(Finding finding, Finding.Grade grade, double q) {
    /**
     * How well the expected effect matches the signal, in fifths: 5 where it is the whole of it,
     * less on either side; 0 where it is unknown. Finer differences are chance, and the clearer
     * move goes first.
     */
    long fit() {
      double share = finding.share();
      return share > 0 ? Math.round(5 * Math.min(share, 1 / share)) : 0;
    }

    /**
     * How many turns before the pour it acts, where it explains more than half of the signal: of
     * settings that do, the one that was set first may have moved the others, and not the other way
     * round (spray, then mold temperature). 0 for all else.
     */
    int upstream() {
      Setting setting = finding.setting();
      boolean isCause = grade == Finding.Grade.STRONG && fit() >= UPSTREAM;
      return setting != null && isCause ? setting.profile().lagTurns() : 0;
    }

    String name() {
      Setting setting = finding.setting();
      CastingEvent event = finding.event();
      return setting != null ? setting.name() : event != null ? event.kind() : "";
    }
  }

  private static final Comparator<Graded> BEST_FIRST =
      Comparator.comparing(Graded::grade)
          .thenComparing(graded -> !graded.finding().isProvenToExplain())
          .thenComparing(Comparator.comparingInt(Graded::upstream).reversed())
          .thenComparing(Comparator.comparingLong(Graded::fit).reversed())
          .thenComparingDouble(graded -> graded.finding().p())
          .thenComparing(Graded::name);

  private Signal signal(Pending each, List<Graded> graded) {
    Episode e = each.episode();
    WheelRecord wheel = each.wheel();
    boolean hasMold = e.chart() == Episode.Chart.MOLD || e.chart() == Episode.Chart.POUR;
    boolean hasSide = e.chart() == Episode.Chart.SIDE && e.index() < wheel.sides().size();
    // Of scatter none is told: its error is that of a logarithm, its size is in the unit.
    double half = 1.96 * e.sizeError();
    boolean spread = e.chart() == Episode.Chart.SPREAD;
    return new Signal(
        "",
        wheel.wheel(),
        each.characteristic().name(),
        e.chart().scope(),
        hasMold ? wheel.molds().name(e.index()) : null,
        hasSide ? wheel.sides().name(e.index()) : null,
        e.firstTurn(),
        e.lastTurn(),
        Instant.ofEpochMilli(e.firstAtMillis()),
        Instant.ofEpochMilli(e.lastAtMillis()),
        e.sinceTurn(),
        Instant.ofEpochMilli(e.sinceAtMillis()),
        e.open(),
        e.tests(),
        spread ? Direction.SPREAD : e.direction() > 0 ? Direction.HIGH : Direction.LOW,
        e.size(),
        spread ? null : (Double) (e.size() - half),
        spread ? null : (Double) (e.size() + half),
        e.sizeSigma(),
        e.otherSide() > 0 ? (Double) e.otherSide() : null,
        graded.stream().map(this::link).toList());
  }

  private Link link(Graded graded) {
    Finding finding = graded.finding();
    Setting setting = finding.setting();
    String group = setting == null ? "" : setting.profile().group();
    return new Link(
        graded.name(),
        setting == null,
        group,
        setting == null ? "" : setting.unit().symbol(),
        switch (graded.grade()) {
          case STRONG -> Evidence.STRONG;
          case MOVED -> Evidence.MOVED;
          case NONE -> Evidence.NONE;
        },
        known(finding.movedBy()),
        known(finding.expected()),
        known(finding.share()),
        known(finding.shareLow()),
        known(finding.shareHigh()),
        graded.q(),
        finding.sinceTurn(),
        graded.grade() == Finding.Grade.NONE ? "" : advice.of(graded.name(), group),
        graded.grade() == Finding.Grade.NONE ? List.of() : finding.togetherWith());
  }

  private static Signal withId(Signal s, String id) {
    return new Signal(
        id,
        s.wheel(),
        s.characteristic(),
        s.scope(),
        s.mold(),
        s.side(),
        s.firstTurn(),
        s.lastTurn(),
        s.firstCastAt(),
        s.lastCastAt(),
        s.sinceTurn(),
        s.sinceAt(),
        s.open(),
        s.tests(),
        s.direction(),
        s.size(),
        s.sizeLow(),
        s.sizeHigh(),
        s.sizeSigma(),
        s.otherSide(),
        s.links());
  }

  private static @org.jspecify.annotations.Nullable Double known(double x) {
    return CharacteristicAudit.known(x);
  }
}
