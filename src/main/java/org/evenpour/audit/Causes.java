package org.evenpour.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Place;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.CausesReport;
import org.evenpour.findings.CausesReport.Counted;
import org.evenpour.findings.CausesReport.Marked;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Joins what people said of causes to the signals that it is about.
 *
 * <p>A mark is about every signal of the same place, direction included, whose time meets its own.
 * Of the marks that name the same cause of a signal, the last one counts.
 */
public final class Causes {
  /** A note names so many marks. */
  private static final int NAMED = 3;

  private Causes() {}

  /** Where a signal acts. */
  public static Place place(Signal signal) {
    return new Place(
        signal.wheel(),
        signal.characteristic(),
        signal.scope(),
        signal.mold(),
        signal.side(),
        signal.direction());
  }

  /** What a person says of a cause of a signal. */
  public static CauseMark mark(
      Signal signal, Cause cause, Verdict verdict, String who, String why, Instant at) {
    return new CauseMark(
        place(signal), from(signal), signal.lastCastAt(), cause, verdict, who, why, at);
  }

  private static Instant from(Signal signal) {
    return signal.sinceAt().isBefore(signal.firstCastAt())
        ? signal.sinceAt()
        : signal.firstCastAt();
  }

  private static boolean isAbout(CauseMark mark, Signal signal) {
    return mark.isAbout(place(signal), from(signal), signal.lastCastAt());
  }

  /**
   * The report with these marks in the place of those that it had.
   *
   * @param all in the order in which they were made
   */
  public static AuditReport joined(AuditReport report, List<CauseMark> all) {
    if (all.isEmpty()) {
      return report.withCauses(CausesReport.NONE);
    }
    List<Marked> marks = new ArrayList<>();
    Set<CauseMark> matched = new HashSet<>();
    Set<String> right = new HashSet<>();
    Set<String> marked = new HashSet<>();
    for (Signal signal : report.signals()) {
      Map<String, CauseMark> newest = new LinkedHashMap<>();
      for (CauseMark mark : all) {
        if (isAbout(mark, signal)) {
          matched.add(mark);
          // Also where it was taken back: that, too, is the last word on this cause.
          newest.put(mark.cause().key(), mark);
        }
      }
      for (CauseMark mark : newest.values()) {
        if (mark.verdict() != Verdict.OPEN) {
          marks.add(new Marked(signal.id(), mark));
          marked.add(signal.id());
          if (mark.verdict() == Verdict.RIGHT) {
            right.add(signal.id());
          }
        }
      }
    }
    List<CauseMark> others = standing(all).stream().filter(one -> !matched.contains(one)).toList();
    List<CauseMark> unmatched = others.stream().filter(one -> isOf(one, report.log())).toList();
    return report.withCauses(
        new CausesReport(
            all.size(),
            marks,
            counted(report, marks),
            right.size(),
            marked.size() - right.size(),
            report.signals().size() - marked.size(),
            unmatched,
            others.size() - unmatched.size(),
            note(unmatched)));
  }

  /** Marks that no later one replaced, those that were taken back left out. */
  private static List<CauseMark> standing(List<CauseMark> all) {
    List<CauseMark> standing = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      CauseMark one = all.get(i);
      boolean isReplaced =
          all.subList(i + 1, all.size()).stream().anyMatch(later -> later.replaces(one));
      if (!isReplaced && one.verdict() != Verdict.OPEN) {
        standing.add(one);
      }
    }
    return standing;
  }

  private static boolean isOf(CauseMark mark, AuditReport.Log log) {
    return log.wheels().contains(mark.place().wheel())
        && !mark.from().isAfter(log.lastCastAt())
        && !mark.to().isBefore(log.firstCastAt());
  }

  /** Most often right first; then those that lasted longest, then by name. */
  private static List<Counted> counted(AuditReport report, List<Marked> marks) {
    Map<String, Signal> signals =
        report.signals().stream().collect(Collectors.toMap(Signal::id, one -> one));
    Map<String, Tally> tallies = new LinkedHashMap<>();
    int total = 0;
    for (Marked one : marks) {
      Signal signal = signals.get(one.signal());
      if (signal == null) {
        continue;
      }
      CauseMark mark = one.mark();
      Tally tally =
          tallies.computeIfAbsent(
              mark.cause().key(),
              key -> new Tally(mark.cause(), group(report, signal, mark.cause())));
      if (mark.verdict() == Verdict.RIGHT) {
        tally.right++;
        tally.turns += Math.max(1, signal.lastTurn() - signal.sinceTurn() + 1);
        total++;
      } else {
        tally.wrong++;
      }
    }
    List<Tally> ordered = new ArrayList<>(tallies.values());
    ordered.sort(
        Comparator.comparingInt((Tally one) -> -one.right)
            .thenComparingInt(one -> -one.turns)
            .thenComparing(one -> one.cause.name())
            .thenComparing(one -> one.cause.kind()));
    List<Counted> counted = new ArrayList<>();
    int before = 0;
    for (Tally one : ordered) {
      before += one.right;
      counted.add(
          new Counted(
              one.cause,
              one.group,
              one.right,
              one.wrong,
              one.turns,
              total == 0 ? 0 : (double) one.right / total,
              total == 0 ? 0 : (double) before / total));
    }
    return counted;
  }

  /** Owned by the one call that counts. */
  private static final class Tally {
    private final Cause cause;
    private final String group;
    private int right;
    private int wrong;
    private int turns;

    Tally(Cause cause, String group) {
      this.cause = cause;
      this.group = group;
    }
  }

  private static String group(AuditReport report, Signal signal, Cause cause) {
    if (cause.kind() != Kind.SETTING) {
      return "";
    }
    return report.settings().stream()
        .filter(one -> one.wheel().equals(signal.wheel()) && one.name().equals(cause.name()))
        .findFirst()
        .map(AuditReport.SettingReport::group)
        .orElse("");
  }

  private static @Nullable Remark note(List<CauseMark> unmatched) {
    if (unmatched.isEmpty()) {
      return null;
    }
    Remark named = named(unmatched.get(0));
    for (CauseMark one : unmatched.subList(1, Math.min(NAMED, unmatched.size()))) {
      named = Remark.of("note.causes.and", named, named(one));
    }
    int more = unmatched.size() - NAMED;
    if (more > 0) {
      named = Remark.of("note.causes.more", named, more);
    }
    return unmatched.size() == 1
        ? Remark.of("note.causes.one", named)
        : Remark.of("note.causes", unmatched.size(), named);
  }

  private static Remark named(CauseMark one) {
    Place place = one.place();
    Remark where =
        Remark.of(
            "note.causes.at", place.characteristic().replace('_', ' '), place.direction().id());
    if (place.side() != null) {
      where = Remark.of("note.causes.side", place.side(), where);
    }
    if (place.mold() != null) {
      where = Remark.of("note.causes.mold", place.mold(), where);
    }
    if (!place.wheel().isEmpty()) {
      where = Remark.of("note.causes.wheel", place.wheel(), where);
    }
    return Remark.of(
        one.verdict() == CauseMark.Verdict.RIGHT ? "note.causes.right" : "note.causes.wrong",
        one.cause().name(),
        one.who(),
        where);
  }
}
