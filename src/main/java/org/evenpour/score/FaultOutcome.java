package org.evenpour.score;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.evenpour.findings.AuditReport.Evidence;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;

/**
 * What an audit made of one planted fault. Where it was not found, nothing but its name, its cause
 * and its size mean anything.
 *
 * @param fault its name
 * @param hasCause whether some record shows where it came from
 * @param sizeSigma NaN where the truth does not say
 * @param found whether a signal is of it
 * @param onsetError how many turns the first signal's estimated onset is off, either way
 * @param delay from the fault's first turn to that signal's first violation; negative where the
 *     signal was there before
 * @param topRight whether that signal's first link with evidence names the cause, or what passed it
 *     on, or says that the cause moved together with it
 * @param topExact whether that link has the very name of the cause
 * @param anyTopRight whether any of its signals has such a first link
 * @param hasStrong whether any of its signals has a strong link
 * @param hasLink whether any of its signals has a link with evidence
 */
record FaultOutcome(
    String fault,
    boolean hasCause,
    double sizeSigma,
    boolean found,
    int onsetError,
    int delay,
    boolean topRight,
    boolean topExact,
    boolean anyTopRight,
    boolean hasStrong,
    boolean hasLink) {

  static FaultOutcome of(Planted planted, List<Signal> signals) {
    List<Signal> own =
        signals.stream()
            .filter(planted::isShownBy)
            .sorted(Comparator.comparingInt(Signal::firstTurn).thenComparingInt(Signal::sinceTurn))
            .toList();
    if (own.isEmpty()) {
      return new FaultOutcome(
          planted.fault(),
          planted.hasCause(),
          planted.sizeSigma(),
          false,
          0,
          0,
          false,
          false,
          false,
          false,
          false);
    }
    Signal first = own.get(0);
    return new FaultOutcome(
        planted.fault(),
        planted.hasCause(),
        planted.sizeSigma(),
        true,
        Math.abs(first.sinceTurn() - planted.firstTurn()),
        first.firstTurn() - planted.firstTurn(),
        top(first).filter(planted::isNamedBy).isPresent(),
        top(first).filter(planted::isNamedExactlyBy).isPresent(),
        own.stream().anyMatch(signal -> top(signal).filter(planted::isNamedBy).isPresent()),
        own.stream()
            .flatMap(signal -> signal.links().stream())
            .anyMatch(link -> link.evidence() == Evidence.STRONG),
        own.stream().anyMatch(signal -> top(signal).isPresent()));
  }

  /** The first link for which anything speaks; links stand best first. */
  private static Optional<Link> top(Signal signal) {
    return signal.links().stream().filter(link -> link.evidence() != Evidence.NONE).findFirst();
  }
}
