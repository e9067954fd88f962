package org.evenpour.report.table;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.RejectReport;
import org.evenpour.findings.RejectReport.OfCharge;
import org.evenpour.findings.RejectReport.OfClass;
import org.evenpour.findings.RejectReport.Share;
import org.evenpour.findings.RejectReport.Spell;
import org.evenpour.report.RejectText;
import org.evenpour.report.Sentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;

/** What was rejected: by defect, by mold, ladle side, crew and charge, and when it was more. */
public final class RejectTables {
  private static final Digits SHARE = Digits.share(1);

  /** A choice: so many letters to a line. */
  private static final int SENTENCE = 60;

  /** As many letters as "more often than the others" has. */
  private static final int STANDS = 26;

  private RejectTables() {}

  /** A defect of a wheel. */
  public record Row(RejectReport of, OfClass its) {}

  /** By defect. */
  public static Table<Row> classes(AuditReport report, Sentences sentences) {
    RejectText text = new RejectText(sentences);
    List<Row> rows = new ArrayList<>();
    report.rejects().forEach(of -> of.classes().forEach(one -> rows.add(new Row(of, one))));
    return new Table<>(
        "rejects",
        sentences.words().say("sheet.rejects"),
        Columns.<Row>of(sentences)
            .wheel(row -> row.of().wheel())
            .text("defect", row -> text.name(row.its()))
            .count("rejected", row -> row.its().rejected())
            .figure("reject_share", SHARE, row -> row.its().share())
            .figure("reject_together", SHARE, row -> row.its().together())
            .figure("reject_tonnes", Digits.plain(1), row -> row.its().tonnes())
            .label("most_in", row -> row.its().mostIn())
            .list(),
        rows);
  }

  /** A mold, a ladle side or a crew of a wheel, or all of it. */
  public record Place(
      String wheel, String by, String name, Share share, Double shrunk, String says, String most) {}

  /** By mold, ladle side and crew. */
  public static Table<Place> places(AuditReport report, Sentences sentences) {
    Words words = sentences.words();
    List<Place> rows = new ArrayList<>();
    for (RejectReport of : report.rejects()) {
      rows.add(place(of, words.say("by.all"), "", of.all()));
      of.groups()
          .forEach(
              one -> rows.add(place(of, words.say("by." + one.by()), one.name(), one.share())));
      of.molds()
          .forEach(
              one ->
                  rows.add(
                      new Place(
                          of.wheel(),
                          words.say("by.mold"),
                          one.mold(),
                          one.share(),
                          one.shrunk(),
                          one.standsOut() ? words.say("rejects.stands") : "",
                          RejectReport.plain(one.most()))));
    }
    return new Table<>(
        "rejects_by",
        words.say("sheet.rejects_by"),
        Columns.<Place>of(sentences)
            .wheel(Place::wheel)
            .text("by", Place::by)
            .label("which", Place::name)
            .count("anodes", row -> row.share().of())
            .count("rejected", row -> row.share().rejected())
            .figure("reject_rate", row -> rate(row.share().value()))
            .figure("low", SHARE, row -> row.share().low())
            .figure("high", SHARE, row -> row.share().high())
            .figure("shrunk", SHARE, row -> row.shrunk().isNaN() ? null : row.shrunk())
            .text("stands", Place::says)
            .wide(STANDS)
            .text("most_defect", Place::most)
            .list(),
        rows);
  }

  /** A time in which more was rejected. */
  public record SpellRow(RejectReport of, Spell its) {}

  /** Spells in which more than usual was rejected, in the order of their onsets. */
  public static Table<SpellRow> spells(AuditReport report, Sentences sentences) {
    RejectText text = new RejectText(sentences);
    List<SpellRow> rows = new ArrayList<>();
    report.rejects().forEach(of -> of.spells().forEach(one -> rows.add(new SpellRow(of, one))));
    return new Table<>(
        "rejects_when",
        sentences.words().say("sheet.rejects_when"),
        Columns.<SpellRow>of(sentences)
            .text("signal", row -> row.its().signal().id())
            .state(row -> row.its().signal().open())
            .prose("words", SENTENCE, row -> text.spell(row.its()))
            .wheel(row -> row.of().wheel())
            .said("where", row -> "scope." + row.its().signal().scope().id())
            .label("mold", row -> row.its().signal().mold())
            .text("defect", row -> defect(row.its(), sentences))
            .turn("since_turn", row -> row.its().signal().sinceTurn())
            .time("since", row -> row.its().signal().sinceAt())
            .turn("last_turn", row -> row.its().signal().lastTurn())
            .count("anodes", row -> row.its().of())
            .count("rejected", row -> row.its().rejected())
            .figure("reject_rate", row -> rate(row.its().value()))
            .figure("reject_usual", SHARE, row -> row.its().usual())
            .list(),
        rows);
  }

  private static String defect(Spell its, Sentences sentences) {
    String name = its.defect();
    return name == null ? sentences.words().say("rejects.any") : RejectReport.plain(name);
  }

  /** A charge of a wheel. */
  public record ChargeRow(RejectReport of, OfCharge its) {}

  /** Charges in the order of time, each with the limit that a share of so many anodes has. */
  public static Table<ChargeRow> charges(AuditReport report, Sentences sentences) {
    Words words = sentences.words();
    List<ChargeRow> rows = new ArrayList<>();
    report.rejects().forEach(of -> of.charges().forEach(one -> rows.add(new ChargeRow(of, one))));
    return new Table<>(
        "rejects_charges",
        words.say("sheet.rejects_charges"),
        Columns.<ChargeRow>of(sentences)
            .wheel(row -> row.of().wheel())
            .text("charge", row -> row.its().name())
            .time("since", row -> row.its().firstCastAt())
            .count("anodes", row -> row.its().of())
            .count("rejected", row -> row.its().rejected())
            .figure("reject_rate", row -> rate(row.its().value()))
            .figure("reject_upper", SHARE, row -> row.its().upper())
            .text("stands", row -> row.its().isAbove() ? words.say("rejects.above") : "")
            .list(),
        rows);
  }

  /** As a division, which a spreadsheet can compute anew. */
  private static Cell rate(double share) {
    return new Cell.Computed("{rejected}/{anodes}", new Cell.Figure(share, SHARE));
  }

  private static Place place(RejectReport of, String by, String name, Share share) {
    return new Place(of.wheel(), by, name, share, Double.NaN, "", "");
  }
}
