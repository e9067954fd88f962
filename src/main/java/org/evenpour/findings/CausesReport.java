package org.evenpour.findings;

import java.util.List;
import org.evenpour.casting.CauseMark;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * What people said of the causes of an audit's signals.
 *
 * @param read how many marks were there, whatever they are about
 * @param marks those that count, in the order of the signals; each signal has one a cause
 * @param causes how often each was right, the most frequent first
 * @param confirmed how many signals have a cause that was marked right
 * @param refuted how many have none that was right, and some that were wrong
 * @param unmarked how many have none
 * @param unmatched marks that are of this audit's wheels and time, and of none of its signals
 * @param elsewhere how many marks that count are of other wheels or times
 * @param note what the reader must know of them; null where nothing
 */
public record CausesReport(
    int read,
    List<Marked> marks,
    List<Counted> causes,
    int confirmed,
    int refuted,
    int unmarked,
    List<CauseMark> unmatched,
    int elsewhere,
    @Nullable Remark note) {

  /** Nobody said anything. */
  public static final CausesReport NONE =
      new CausesReport(0, List.of(), List.of(), 0, 0, 0, List.of(), 0, null);

  /** Copies the lists. */
  public CausesReport {
    marks = List.copyOf(marks);
    causes = List.copyOf(causes);
    unmatched = List.copyOf(unmatched);
  }

  /**
   * A mark that counts.
   *
   * @param signal its id in this audit
   */
  public record Marked(String signal, CauseMark mark) {}

  /**
   * A cause and how often it was marked.
   *
   * @param group the setting's group; empty where it has none
   * @param right how many signals it was right for
   * @param wrong how many it was wrong for
   * @param turns how many turns the signals that it was right for lasted, added up
   * @param share of all that were right
   * @param cumulative share of this and of those before it
   */
  public record Counted(
      CauseMark.Cause cause,
      String group,
      int right,
      int wrong,
      int turns,
      double share,
      double cumulative) {}

  /** Whether it has nothing to say of this audit. */
  public boolean isEmpty() {
    return marks.isEmpty() && unmatched.isEmpty();
  }

  /** The marks of a signal, in the order in which their causes were first marked. */
  public List<CauseMark> of(Signal signal) {
    return marks.stream()
        .filter(one -> one.signal().equals(signal.id()))
        .map(Marked::mark)
        .toList();
  }

  /** What was said of a link; null where nothing was. */
  public @Nullable CauseMark of(Signal signal, Link link) {
    return of(signal).stream()
        .filter(one -> link.cause().isSame(one.cause()))
        .findFirst()
        .orElse(null);
  }

  /** The marks of a signal whose causes are none of its links. */
  public List<CauseMark> besideLinks(Signal signal) {
    return of(signal).stream()
        .filter(one -> signal.links().stream().noneMatch(link -> link.cause().isSame(one.cause())))
        .toList();
  }
}
