package org.evenpour.view.screen;

import java.awt.Graphics2D;
import java.util.function.Function;
import javax.swing.JList;
import org.evenpour.picture.Lines;
import org.evenpour.view.model.Look;

/** Draws the entries of a list in two lines: what it is, and under it, smaller, when. */
final class TwoLines<T> extends ListRow<T> {
  private final transient Function<T, String> upper;
  private final transient Function<T, String> lower;
  private transient String first = "";
  private transient String second = "";

  TwoLines(Look look, Function<T, String> upper, Function<T, String> lower) {
    super(look.ink());
    this.upper = upper;
    this.lower = lower;
  }

  @Override
  void take(JList<? extends T> list, T value, int index) {
    first = upper.apply(value);
    second = lower.apply(value);
    setToolTipText(Tips.wrapped(first + ". " + second));
    getAccessibleContext().setAccessibleName(first + ". " + second);
  }

  @Override
  void draw(Graphics2D g) {
    g.setFont(ink.font(1));
    g.setColor(ink.text());
    line(g, first, 18);
    g.setFont(ink.font(0.85));
    g.setColor(ink.dim());
    line(g, second, 36);
  }

  private void line(Graphics2D g, String text, double y) {
    double room = getWidth() - ink.length(24);
    String said = Lines.fit(text, room, g.getFontMetrics()::stringWidth);
    g.drawString(said, (float) ink.length(12), (float) ink.length(y));
  }
}
