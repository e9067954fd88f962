package org.evenpour.view.screen;

import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.font.TextAttribute;
import java.util.List;
import java.util.Map;
import javax.swing.JList;
import org.evenpour.picture.Lines;
import org.evenpour.picture.Mark;
import org.evenpour.view.model.InShort.Row;
import org.evenpour.view.model.Look;

/**
 * Draws sentences whole, however long, under the headings of their sections; each with its mark and
 * the name of the page that it opens.
 */
final class InShortList extends ListRow<Row> {
  private final transient Look look;
  private transient List<Row> rows = List.of();
  private transient List<String> lines = List.of();
  private transient List<String> cautions = List.of();
  private transient String heading = "";
  private transient String opens = "";
  private transient Mark mark = Mark.NONE;
  private transient boolean quiet;
  private transient int width;

  InShortList(Look look) {
    super(look.ink());
    this.look = look;
  }

  /** The rows in their order: a section's first one has its heading. */
  void of(List<Row> all) {
    rows = all;
  }

  @Override
  void take(JList<? extends Row> list, Row row, int index) {
    boolean isFirst = index == 0 || !rows.get(index - 1).section().equals(row.section());
    heading = isFirst ? look.say(row.section()) : "";
    mark = row.mark();
    quiet = row.isQuiet();
    opens = look.say("page." + row.opens().page()) + " ›";
    width = Math.max(look.px(240), list.getWidth());
    FontMetrics metrics = list.getFontMetrics(font());
    double room = width - left() - right() - ink.length(12);
    lines = wrap(row.sentence(), metrics, room);
    cautions =
        isFirst && !row.caution().isEmpty()
            ? wrap(row.caution(), list.getFontMetrics(ink.bold(1)), width - left() - pad())
            : List.of();
    String said = isFirst ? heading + ". " + row.caution() + " " + row.sentence() : row.sentence();
    getAccessibleContext().setAccessibleName(said + " " + opens);
  }

  private static List<String> wrap(String text, FontMetrics metrics, double width) {
    return Lines.of(Parts.words(text), width, metrics::stringWidth);
  }

  private java.awt.Font font() {
    return quiet ? ink.font(1) : ink.font(1.05);
  }

  private double left() {
    return ink.length(36);
  }

  private double pad() {
    return ink.length(12);
  }

  /** Where the name of the page stands, in a column of its own. */
  private double right() {
    return ink.length(110);
  }

  private double lineHeight() {
    return ink.length(18);
  }

  private double above() {
    double head = heading.isEmpty() ? 0 : ink.length(36);
    return head + cautions.size() * lineHeight() + (cautions.isEmpty() ? 0 : ink.length(6));
  }

  @Override
  public Dimension getPreferredSize() {
    double height = above() + ink.length(14) + lines.size() * lineHeight();
    return new Dimension(width, (int) Math.ceil(height));
  }

  @Override
  int top() {
    return (int) Math.round(above());
  }

  @Override
  int indent() {
    return (int) left();
  }

  @Override
  void draw(Graphics2D g) {
    double y = top() + ink.length(20);
    if (mark != Mark.NONE) {
      g.setColor(quiet ? ink.dim() : ink.of(mark));
      g.fill(mark.at(ink.length(20), y - ink.length(4), ink.length(11)));
    }
    g.setFont(font());
    g.setColor(quiet ? ink.dim() : ink.text());
    double line = y;
    for (String each : lines) {
      g.drawString(each, (float) left(), (float) line);
      line += lineHeight();
    }
    g.setFont(ink.font(0.92));
    g.setColor(ink.dim());
    double at = getWidth() - pad() - g.getFontMetrics().stringWidth(opens);
    g.drawString(opens, (float) at, (float) y);
  }

  @Override
  void drawAbove(Graphics2D g) {
    if (heading.isEmpty()) {
      return;
    }
    g.setFont(ink.bold(1).deriveFont(Map.of(TextAttribute.TRACKING, 0.02)));
    g.setColor(ink.text());
    double y = ink.length(26);
    g.drawString(heading, (float) pad(), (float) y);
    g.setColor(ink.hairline());
    g.fillRect((int) pad(), (int) ink.length(33), getWidth() - 2 * (int) pad(), 1);
    g.setFont(ink.bold(1));
    g.setColor(ink.text());
    y = ink.length(36) + ink.length(14);
    for (String each : cautions) {
      g.drawString(each, (float) left(), (float) y);
      y += lineHeight();
    }
  }
}
