package org.evenpour.report.table;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.LimitsUsed;
import org.evenpour.findings.AuditReport.Monitoring;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** The limits by which signals were raised: which version, who approved them and when. */
public final class LimitsTable {
  private LimitsTable() {}

  /**
   * Limits of a characteristic, and the turns that were judged by them.
   *
   * @param used null where nothing was told of which turns were judged by what
   */
  public record Row(CharacteristicReport of, @Nullable LimitsUsed used) {
    private <T> @Nullable T part(Function<LimitsUsed, @Nullable T> part) {
      return used == null ? null : part.apply(used);
    }

    /** The figures that a report has of the last limits alone. */
    private <T> @Nullable T last(Function<Monitoring, @Nullable T> part) {
      List<LimitsUsed> all = of.monitoring().used();
      return used == null || used == all.get(all.size() - 1) ? part.apply(of.monitoring()) : null;
    }
  }

  /** The table of a report. */
  public static Table<Row> of(AuditReport report, Sentences sentences) {
    List<Row> rows = new ArrayList<>();
    for (CharacteristicReport of : report.characteristics()) {
      if (of.monitoring().used().isEmpty()) {
        rows.add(new Row(of, null));
      }
      of.monitoring().used().forEach(used -> rows.add(new Row(of, used)));
    }
    Words words = sentences.words();
    Function<Row, Figures> figures = row -> sentences.figures(row.of().wheel(), row.of().name());
    return new Table<>(
        "limits_used",
        words.say("sheet.limits_used"),
        Columns.<Row>of(sentences)
            .wheel(row -> row.of().wheel())
            .characteristic(row -> row.of().name())
            .unit(figures)
            .prose("whose", 40, row -> whose(row.of(), row.used(), sentences))
            .turn("first_turn", row -> row.part(LimitsUsed::firstTurn))
            .turn("last_turn", row -> row.part(LimitsUsed::lastTurn))
            .count("base_turns", row -> row.part(LimitsUsed::baseTurns))
            .value("center", figures, row -> row.part(LimitsUsed::center))
            .spread(
                "turn_sigma",
                figures,
                row ->
                    row.used() == null
                        ? row.last(Monitoring::turnSigma)
                        : row.part(LimitsUsed::turnSigma))
            .spread(
                "pour_sigma",
                figures,
                row ->
                    row.used() == null
                        ? row.last(Monitoring::pourSigma)
                        : row.part(LimitsUsed::pourSigma))
            .figure("shift_limit", Digits.plain(1), row -> row.last(Monitoring::shiftLimit))
            .figure("pour_limit", Digits.plain(1), row -> row.last(Monitoring::pourLimit))
            .figure(
                "false_alarms", Digits.plain(2), row -> row.last(Monitoring::falseAlarmsPerShift))
            .count("limits_version", row -> row.part(LimitsUsed::version))
            .text("approved_by", row -> row.part(LimitsUsed::who))
            .time("approved_at", row -> row.part(LimitsUsed::approvedAt))
            .prose("approved_why", 40, row -> row.part(LimitsUsed::why))
            .time("valid_from", row -> row.part(LimitsUsed::validFrom))
            .list(),
        rows);
  }

  /** Whose limits they are, in words; those of the newest turns where nothing else is told. */
  public static String whose(
      CharacteristicReport of, @Nullable LimitsUsed used, Sentences sentences) {
    Words words = sentences.words();
    if (used != null && used.version() != null) {
      return words.say(
          "limits.approved",
          String.valueOf(used.version()),
          used.who() == null ? words.say("missing") : used.who(),
          used.approvedAt() == null ? words.say("missing") : sentences.date(used.approvedAt()));
    }
    var why = used == null ? of.monitoring().notLookedFor() : used.notLookedFor();
    return why != null
        ? words.say("limits.none", words.say(why.why()))
        : words.say("limits.proposed");
  }

  /** The same of the newest turns. */
  public static String whose(CharacteristicReport of, Sentences sentences) {
    List<LimitsUsed> all = of.monitoring().used();
    return whose(of, all.isEmpty() ? null : all.get(all.size() - 1), sentences);
  }
}
