package org.evenpour.report.table;

import java.util.Locale;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.CausesReport.Counted;
import org.evenpour.report.Sentences;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;

/** Which causes people confirmed, the most frequent first. */
public final class CauseTable {
  private CauseTable() {}

  /** The table of a report. */
  public static Table<Counted> of(AuditReport report, Sentences sentences) {
    return new Table<>(
        "causes",
        sentences.words().say("sheet.causes"),
        columns(Columns.of(sentences), sentences).list(),
        report.causes().causes());
  }

  /** Its columns. */
  public static Columns<Counted> columns(Columns<Counted> columns, Sentences sentences) {
    return columns
        .text("cause", one -> name(sentences, one.cause()))
        .wide(26)
        .text("kind", one -> kind(sentences.words(), one.cause()))
        .text("group", one -> sentences.words().group(one.group()))
        .count("right", Counted::right)
        .count("wrong", Counted::wrong)
        .count("turns_lasted", Counted::turns)
        .figure("share_right", Digits.share(0), Counted::share)
        .figure("cumulative", Digits.share(0), Counted::cumulative);
  }

  /** What people call a cause, with a capital; words are whole. */
  public static String name(Sentences sentences, Cause cause) {
    return Words.capital(cause.kind() == Kind.OTHER ? cause.name() : sentences.cause(cause));
  }

  /** Setting, event or words. */
  static String kind(Words words, Cause cause) {
    return words.say("kind." + cause.kind().name().toLowerCase(Locale.ROOT));
  }
}
