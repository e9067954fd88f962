package org.evenpour.view.screen;

import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.ListCellRenderer;
import org.evenpour.picture.Ink;

/**
 * Draws a row of a list on its ground, a hairline below it; a chosen one has a bar at its left.
 *
 * @param <T> what a row is about
 */
abstract class ListRow<T> extends JLabel implements ListCellRenderer<T> {
  final transient Ink ink;
  private boolean chosen;
  private boolean focused;

  ListRow(Ink ink) {
    this.ink = ink;
    setOpaque(true);
  }

  /** Takes what is drawn next, and names it for a screen reader. */
  abstract void take(JList<? extends T> list, T value, int index);

  /** Draws it. */
  abstract void draw(Graphics2D g);

  /** Draws what stands above the row's own ground, and is chosen by nobody. */
  void drawAbove(Graphics2D g) {}

  /** Where the row's own ground begins. */
  int top() {
    return 0;
  }

  /** Where the hairline begins. */
  int indent() {
    return 0;
  }

  /** Whether a frame shows where the keys go. */
  boolean isFramed() {
    return true;
  }

  @Override
  public final Component getListCellRendererComponent(
      JList<? extends T> list, T value, int index, boolean selected, boolean focus) {
    chosen = selected;
    focused = focus;
    take(list, value, index);
    return this;
  }

  @Override
  protected final void paintComponent(Graphics g) {
    Graphics2D g2 = (Graphics2D) g.create();
    g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g2.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g2.setColor(ink.field());
    g2.fillRect(0, 0, getWidth(), getHeight());
    drawAbove(g2);
    int top = top();
    int height = getHeight() - top;
    if (chosen) {
      g2.setColor(ink.chosen());
      g2.fillRect(0, top, getWidth(), height);
      g2.setColor(ink.accent());
      g2.fillRect(0, top, (int) ink.length(3), height);
      if (focused && isFramed()) {
        g2.drawRect(1, top, getWidth() - 3, height - 2);
      }
    }
    g2.setColor(ink.ground());
    g2.fillRect(indent(), getHeight() - 1, getWidth(), 1);
    draw(g2);
    g2.dispose();
  }
}
