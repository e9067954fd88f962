package org.evenpour.view.screen;

import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.util.List;
import javax.swing.JList;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.picture.Lines;
import org.evenpour.picture.Mark;
import org.evenpour.view.model.Charts;
import org.evenpour.view.model.Desk;

/** Draws signals as sentences of up to two lines with their mark, and whether they still hold. */
final class SignalList extends ListRow<Signal> {
  private final transient Desk desk;
  private transient Mark mark = Mark.NONE;
  private transient boolean open;
  private transient String sentence = "";
  private transient String state = "";

  SignalList(Desk desk) {
    super(desk.look().ink());
    this.desk = desk;
  }

  /** The height of a row: two lines and what stands below them. */
  int height() {
    return desk.look().px(66);
  }

  /** What a signal is found by when a list is filtered. */
  static String text(Desk desk, Signal signal) {
    return desk.sentences().signal(signal);
  }

  @Override
  boolean isFramed() {
    return false;
  }

  @Override
  void take(JList<? extends Signal> list, Signal signal, int index) {
    var look = desk.look();
    mark = Charts.mark(signal);
    open = signal.open();
    sentence = desk.sentences().lead(new org.evenpour.report.Topic(List.of(signal)));
    state =
        desk.name(signal.characteristic())
            + "  ·  "
            + (signal.scope() == Scope.POUR
                ? look.say("signal.single")
                : signal.open()
                    ? look.say("signal.holds")
                    : look.say("signal.ended", signal.lastTurn()))
            + confirmed(signal);
    getAccessibleContext().setAccessibleName(sentence + " " + state);
  }

  /** The causes that people confirmed; empty where they did not. */
  private String confirmed(Signal signal) {
    StringBuilder said = new StringBuilder();
    for (CauseMark mark : desk.report().causes().of(signal)) {
      if (mark.verdict() == CauseMark.Verdict.RIGHT) {
        said.append("  ·  ")
            .append(desk.look().say("signal.cause", desk.sentences().cause(mark.cause())));
      }
    }
    return said.toString();
  }

  @Override
  void draw(Graphics2D g) {
    double x = ink.length(36);
    g.setColor(open ? ink.of(mark) : ink.dim());
    g.fill(mark.at(ink.length(18), ink.length(17), ink.length(11)));
    g.setFont(open ? ink.bold(1) : ink.font(1));
    g.setColor(ink.text());
    FontMetrics metrics = g.getFontMetrics();
    double y = ink.length(21);
    List<String> lines = wrap(sentence, metrics, getWidth() - x - ink.length(10));
    for (String line : lines) {
      g.drawString(line, (float) x, (float) y);
      y += ink.length(17);
    }
    g.setFont(ink.font(0.85));
    g.setColor(open ? ink.textOf(mark) : ink.dim());
    g.drawString(state, (float) x, (float) ink.length(57));
  }

  /** At most two lines; the second ends in an ellipsis where more would follow. */
  static List<String> wrap(String text, FontMetrics metrics, double width) {
    List<String> lines = Lines.of(Parts.words(text), width, metrics::stringWidth);
    if (lines.size() <= 2) {
      return lines;
    }
    String last = lines.get(1);
    while (!last.isEmpty() && metrics.stringWidth(last + " …") > width) {
      last = last.substring(0, last.length() - 1);
    }
    return List.of(lines.get(0), last.stripTrailing() + " …");
  }
}
