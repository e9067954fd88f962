package org.evenpour.view.screen;

import java.awt.Component;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.ListCellRenderer;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.picture.Ink;
import org.evenpour.picture.Mark;
import org.evenpour.view.model.Charts;
import org.evenpour.view.model.Desk;
import org.jspecify.annotations.Nullable;

/** Draws signals as sentences of up to two lines with their mark, and whether they still hold. */
final class SignalList extends JLabel implements ListCellRenderer<Signal> {
  private final transient Desk desk;
  private final transient Ink ink;
  private transient Mark mark = Mark.NONE;
  private transient boolean chosen;
  private transient boolean open;
  private transient String sentence = "";
  private transient String state = "";

  SignalList(Desk desk) {
    this.desk = desk;
    this.ink = desk.look().ink();
    setOpaque(true);
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
  public Component getListCellRendererComponent(
      JList<? extends Signal> list, Signal signal, int index, boolean selected, boolean focus) {
    var look = desk.look();
    mark = Charts.mark(signal);
    chosen = selected;
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
    return this;
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
  protected void paintComponent(Graphics g) {
    Graphics2D g2 = (Graphics2D) g.create();
    g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g2.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g2.setColor(chosen ? ink.chosen() : ink.field());
    g2.fillRect(0, 0, getWidth(), getHeight());
    if (chosen) {
      g2.setColor(ink.accent());
      g2.fillRect(0, 0, (int) ink.length(3), getHeight());
    }
    g2.setColor(ink.ground());
    g2.fillRect(0, getHeight() - 1, getWidth(), 1);
    double x = ink.length(36);
    g2.setColor(open ? ink.of(mark) : ink.dim());
    g2.fill(mark.at(ink.length(18), ink.length(17), ink.length(11)));
    g2.setFont(open ? ink.bold(1) : ink.font(1));
    g2.setColor(ink.text());
    FontMetrics metrics = g2.getFontMetrics();
    double y = ink.length(21);
    List<String> lines = wrap(sentence, metrics, getWidth() - x - ink.length(10));
    for (String line : lines) {
      g2.drawString(line, (float) x, (float) y);
      y += ink.length(17);
    }
    g2.setFont(ink.font(0.85));
    g2.setColor(open ? ink.textOf(mark) : ink.dim());
    g2.drawString(state, (float) x, (float) ink.length(57));
    g2.dispose();
  }

  /** At most two lines; the second ends in an ellipsis where more would follow. */
  static List<String> wrap(String text, FontMetrics metrics, double width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    @Nullable String rest = null;
    String[] words = Parts.words(text);
    for (int i = 0; i < words.length && rest == null; i++) {
      String longer = line.isEmpty() ? words[i] : line + " " + words[i];
      if (metrics.stringWidth(longer) > width && !line.isEmpty()) {
        lines.add(line.toString());
        line.setLength(0);
        if (lines.size() == 1) {
          line.append(words[i]);
        } else {
          rest = "";
        }
      } else {
        line.setLength(0);
        line.append(longer);
      }
    }
    if (rest == null) {
      lines.add(line.toString());
    } else {
      String last = lines.get(1);
      while (!last.isEmpty() && metrics.stringWidth(last + " …") > width) {
        last = last.substring(0, last.length() - 1);
      }
      lines.set(1, last.stripTrailing() + " …");
    }
    return lines;
  }
}
