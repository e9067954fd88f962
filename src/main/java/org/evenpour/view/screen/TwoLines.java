package org.evenpour.view.screen;

import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.function.Function;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.ListCellRenderer;
import org.evenpour.picture.Ink;
import org.evenpour.view.model.Look;

/** Draws the entries of a list in two lines: what it is, and under it, smaller, when. */
final class TwoLines<T> extends JLabel implements ListCellRenderer<T> {
  private final transient Ink ink;
  private final transient Function<T, String> upper;
  private final transient Function<T, String> lower;
  private transient String first = "";
  private transient String second = "";
  private transient boolean chosen;
  private transient boolean focused;

  TwoLines(Look look, Function<T, String> upper, Function<T, String> lower) {
    this.ink = look.ink();
    this.upper = upper;
    this.lower = lower;
    setOpaque(true);
  }

  @Override
  public Component getListCellRendererComponent(
      JList<? extends T> list, T value, int index, boolean selected, boolean focus) {
    first = upper.apply(value);
    second = lower.apply(value);
    chosen = selected;
    focused = focus;
    setToolTipText(Tips.wrapped(first + ". " + second));
    getAccessibleContext().setAccessibleName(first + ". " + second);
    return this;
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
      if (focused) {
        g2.drawRect(1, 0, getWidth() - 3, getHeight() - 2);
      }
    }
    g2.setColor(ink.ground());
    g2.fillRect(0, getHeight() - 1, getWidth(), 1);
    double room = getWidth() - ink.length(24);
    g2.setFont(ink.font(1));
    g2.setColor(ink.text());
    g2.drawString(cut(g2, first, room), (float) ink.length(12), (float) ink.length(18));
    g2.setFont(ink.font(0.85));
    g2.setColor(ink.dim());
    g2.drawString(cut(g2, second, room), (float) ink.length(12), (float) ink.length(36));
    g2.dispose();
  }

  private static String cut(Graphics2D g, String text, double room) {
    var metrics = g.getFontMetrics();
    if (metrics.stringWidth(text) <= room) {
      return text;
    }
    int end = text.length();
    while (end > 0 && metrics.stringWidth(text.substring(0, end) + "…") > room) {
      end--;
    }
    return text.substring(0, end).stripTrailing() + "…";
  }
}
