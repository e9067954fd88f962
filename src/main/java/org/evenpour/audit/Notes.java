package org.evenpour.audit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.casting.WheelRecord;
import org.evenpour.control.LimitsInForce;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.LimitsUsed;
import org.evenpour.findings.AuditReport.Monitoring;
import org.evenpour.findings.AuditReport.SpecificationUsed;
import org.evenpour.findings.NotLookedFor;
import org.evenpour.stats.NormalScores;
import org.evenpour.words.Remark;

/** What a reader must know before using an audit's figures. */
final class Notes {
  /** Below this, autocorrelation hardly matters for an individuals chart: a choice. */
  private static final double NOTABLE_CORRELATION = 0.2;

  /** A larger share of the rows is not set aside without a word in the summary: a choice. */
  private static final double MUCH_SET_ASIDE = 0.03;

  private Notes() {}

  private static boolean hasApproved(Monitoring monitoring) {
    return monitoring.used().stream().anyMatch(one -> one.version() != null);
  }

  /** A characteristic, as people call it. */
  static Remark name(String characteristic) {
    return Remark.of("name." + characteristic);
  }

  /** A note on one wheel; a wheel without a name is the only one. */
  static Remark at(String wheel, Remark note) {
    return wheel.isEmpty() ? note : Remark.of("note.on", wheel, note);
  }

  /** Which turns were judged by what. */
  private static Remark used(CharacteristicReport report) {
    return report.monitoring().used().stream()
        .map(Notes::used)
        .reduce((one, next) -> Remark.of("note.then", one, next))
        .orElse(Remark.verbatim(""));
  }

  private static Remark used(LimitsUsed one) {
    return switch (one.source()) {
      case "approved" ->
          Remark.of(
              "note.approved",
              String.valueOf(one.version()),
              String.valueOf(one.who()),
              String.valueOf(one.approvedAt()),
              one.firstTurn(),
              one.lastTurn());
      case "proposed" -> Remark.of("note.proposed", one.firstTurn(), one.lastTurn());
      default -> {
        NotLookedFor why = one.notLookedFor();
        yield why == null
            ? Remark.of("note.none", one.firstTurn(), one.lastTurn())
            : Remark.of("note.none.for", one.firstTurn(), one.lastTurn(), why.why());
      }
    };
  }

  private static void specifications(
      String wheel, CharacteristicReport report, List<Remark> notes) {
    List<SpecificationUsed> all = report.specifications();
    if (!all.isEmpty()) {
      SpecificationUsed last = all.get(all.size() - 1);
      notes.add(
          at(
              wheel,
              Remark.of(
                  "note.specified",
                  name(report.name()),
                  String.valueOf(last.from()),
                  String.valueOf(last.who()),
                  last.anodes())));
    }
  }

  /** One digit of a large number, which is no better known. */
  private static String rounded(double x) {
    return String.format(
        Locale.ROOT, "%,d", new BigDecimal(x).round(new MathContext(1)).longValue());
  }

  /** What the bases cannot tell of their pours: one note for all characteristics alike. */
  private static void ofDistributions(
      String wheel, List<CharacteristicAudit.Result> results, List<Remark> notes) {
    Remark few = null;
    Remark rare = null;
    int pours = Integer.MAX_VALUE;
    double told = Double.MAX_VALUE;
    double asked = 0;
    for (CharacteristicAudit.Result result : results) {
      LimitsInForce limits = result.limits();
      Remark name = name(result.report().name());
      if (limits != null && limits.takesPoursAsNormal()) {
        few = few == null ? name : Remark.of("note.and", few, name);
      } else if (limits != null && limits.pourRarity() > limits.rarestTold()) {
        rare = rare == null ? name : Remark.of("note.and", rare, name);
        // The worst of each: one note must hold for all characteristics that it names.
        pours = Math.min(pours, limits.poursInDistribution());
        told = Math.min(told, limits.rarestTold());
        asked = Math.max(asked, limits.pourRarity());
      }
    }
    if (few != null) {
      notes.add(at(wheel, Remark.of("note.normal", few, NormalScores.LEAST)));
    }
    if (rare != null) {
      notes.add(at(wheel, Remark.of("note.rare", rare, pours, rounded(told), rounded(asked))));
    }
  }

  /** What is to be known of the record as a whole: how much of it was set aside comes first. */
  static List<Remark> ofRecord(CastingRecord record) {
    List<Remark> notes = new ArrayList<>();
    boolean isMuch = record.rowsSetAside() > MUCH_SET_ASIDE * record.rowsRead();
    if (isMuch && !record.setAside().isEmpty()) {
      Map<String, List<SetAsideRow>> byReason =
          record.setAside().stream()
              .collect(
                  Collectors.groupingBy(
                      row -> row.reason().key(), LinkedHashMap::new, Collectors.toList()));
      SetAsideRow most =
          byReason.values().stream()
              .max(Comparator.comparingInt(List::size))
              .map(rows -> rows.get(0))
              .orElseThrow();
      notes.add(
          Remark.of(
              AuditReport.MUCH_SET_ASIDE,
              record.rowsSetAside(),
              record.rowsRead(),
              Math.max(1, Math.round(100.0 * record.rowsSetAside() / record.rowsRead())),
              most.log(),
              most.line(),
              most.reason()));
    }
    notes.addAll(record.warnings());
    return notes;
  }

  static void ofWheel(
      WheelRecord wheel, List<CharacteristicAudit.Result> results, List<Remark> notes) {
    String of = wheel.wheel();
    boolean proposed = false;
    for (CharacteristicAudit.Result result : results) {
      LimitsInForce limits = result.limits();
      Remark name = name(result.report().name());
      NotLookedFor why = result.report().monitoring().notLookedFor();
      if (why != null) {
        notes.add(at(of, Remark.of(NotLookedFor.NOTE, name, why.why())));
      }
      if (limits == null) {
        continue;
      }
      proposed = true;
      if (limits.ownPast()) {
        notes.add(at(of, Remark.of("note.own", name)));
      }
      if (limits.wheel().correlation() > NOTABLE_CORRELATION) {
        notes.add(
            at(
                of,
                Remark.of(
                    "note.alike",
                    name,
                    String.format(Locale.ROOT, "%.2f", limits.wheel().correlation()))));
      }
    }
    List<Remark> used = results.stream().map(result -> used(result.report())).distinct().toList();
    boolean anyApproved =
        results.stream().anyMatch(result -> hasApproved(result.report().monitoring()));
    if (anyApproved) {
      for (CharacteristicAudit.Result result : results) {
        Remark by = used(result.report());
        notes.add(
            at(
                of,
                used.size() == 1
                    ? Remark.of("note.judged", by)
                    : Remark.of("note.judged.of", name(result.report().name()), by)));
        if (used.size() == 1) {
          break;
        }
      }
    } else if (proposed) {
      notes.add(at(of, Remark.of("note.not.approved")));
    }
    ofDistributions(of, results, notes);
    for (CharacteristicAudit.Result result : results) {
      specifications(of, result.report(), notes);
    }
    boolean specified =
        results.stream().anyMatch(result -> result.report().specification().hasLimits());
    if (!specified) {
      notes.add(at(of, Remark.of("note.unspecified")));
    }
  }
}
