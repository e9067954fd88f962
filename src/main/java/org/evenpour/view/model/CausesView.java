package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.evenpour.audit.CausesReport;
import org.evenpour.audit.CausesReport.Counted;
import org.evenpour.picture.CauseBars;
import org.evenpour.report.Figures;

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
      String name = name(desk, one);
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

  private static String name(Desk desk, Counted one) {
    return new LinkRow(one.cause(), null, null).name(desk);
  }

  private static String percent(double share) {
    return Figures.number(share * 100, 0);
  }

  /** What is shown of a cause. */
  public static List<Column<Counted>> columns(Desk desk) {
    List<Column<Counted>> columns = new ArrayList<>();
    columns.add(new Column<>("cause", "", 26, one -> new Cell.Text(name(desk, one))));
    columns.add(
        new Column<>(
            "kind",
            "",
            10,
            one ->
                new Cell.Text(
                    desk.look()
                        .say("cause.kind." + one.cause().kind().name().toLowerCase(Locale.ROOT)))));
    columns.add(
        new Column<>(
            "group",
            "",
            12,
            one ->
                new Cell.Text(
                    one.group().isEmpty()
                        ? "—"
                        : desk.look().language().named("group", one.group()))));
    columns.add(new Column<>("right", "", 9, one -> count(one.right())));
    columns.add(new Column<>("wrong", "", 9, one -> count(one.wrong())));
    columns.add(new Column<>("lasted", "", 9, one -> count(one.turns())));
    columns.add(new Column<>("of_right", "%", 10, one -> share(one.share())));
    columns.add(new Column<>("together", "%", 10, one -> share(one.cumulative())));
    return columns;
  }

  private static Cell count(int count) {
    return new Cell.Figure(Integer.toString(count), (double) count);
  }

  private static Cell share(double share) {
    return new Cell.Figure(percent(share), share);
  }
}
