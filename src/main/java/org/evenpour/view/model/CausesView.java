package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.findings.CausesReport;
import org.evenpour.findings.CausesReport.Counted;
import org.evenpour.picture.CauseBars;
import org.evenpour.report.table.CauseTable;
import org.evenpour.report.table.Columns;
import org.evenpour.table.Column;
import org.evenpour.words.Digits;

/** What people found to be the causes of a log's signals, the most frequent first. */
public final class CausesView {
  /** A choice: bars beyond this would be too thin; the table has all. */
  private static final int MOST_BARS = 12;

  private CausesView() {}

  /** How many signals have a cause, in one sentence. */
  public static String overview(Desk desk) {
    CausesReport causes = desk.report().causes();
    int all = desk.report().signals().size();
    return causes.marks().isEmpty()
        ? desk.look().say("causes.none")
        : desk.look()
            .say("causes.overview", causes.confirmed(), all, causes.refuted(), causes.unmarked());
  }

  /** One bar a cause. */
  public static CauseBars bars(Desk desk) {
    List<CauseBars.Bar> bars = new ArrayList<>();
    for (Counted one : desk.report().causes().causes()) {
      if (bars.size() == MOST_BARS) {
        break;
      }
      String name = CauseTable.name(desk.sentences(), one.cause());
      bars.add(
          new CauseBars.Bar(
              name,
              one.right(),
              one.wrong(),
              one.right() == 0
                  ? desk.look().say("causes.bar.wrong", one.wrong())
                  : desk.look()
                      .say(
                          bars.isEmpty() ? "causes.bar.first" : "causes.bar",
                          one.right(),
                          percent(one.share()),
                          percent(one.cumulative())),
              desk.look().say("causes.says", name, one.right(), one.wrong(), one.turns())));
    }
    return new CauseBars(bars);
  }

  private static String percent(double share) {
    return Digits.number(share * 100, 0);
  }

  /** What is shown of a cause. */
  public static List<Column<Counted>> columns(Desk desk) {
    return CauseTable.columns(Columns.narrow(desk.sentences()), desk.sentences()).list();
  }
}
