package org.evenpour.view.screen;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.font.TextAttribute;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.ListCellRenderer;
import org.evenpour.picture.Ink;
import org.evenpour.picture.Mark;
import org.evenpour.view.model.InShort.Row;
import org.evenpour.view.model.Look;

/**
 * Draws sentences whole, however long, under the headings of their sections; each with its mark and
 * the name of the page that it opens.
 */
final class InShortList extends JLabel implements ListCellRenderer<Row> {
  private final transient Look look;
  private final transient Ink ink;
  private transient List<Row> rows = List.of();
  private transient List<String> lines = List.of();
  private transient List<String> cautions = List.of();
  private transient String heading = "";
  private transient String opens = "";
  private transient Mark mark = Mark.NONE;
  private transient boolean quiet;
  private transient boolean chosen;
  private transient boolean focused;
  private transient int width;

  InShortList(Look look) {
    this.look = look;
    this.ink = look.ink();
    setOpaque(true);
  }

  /** The rows in their order: a section's first one has its heading. */
  void of(List<Row> all) {
    rows = all;
  }

  @Override
  public Component getListCellRendererComponent(
      JList<? extends Row> list, Row row, int index, boolean selected, boolean focus) {
    boolean isFirst = index == 0 || !rows.get(index - 1).section().equals(row.section());
    heading = isFirst ? look.say(row.section()) : "";
    mark = row.mark();
    quiet = row.isQuiet();
    chosen = selected;
    focused = focus;
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
    return this;
  }

  /** All lines that a text takes at a width. */
  static List<String> wrap(String text, FontMetrics metrics, double width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : Parts.words(text)) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && metrics.stringWidth(longer) > width) {
        lines.add(line.toString());
        line.setLength(0);
        line.append(word);
      } else {
        line.setLength(0);
        line.append(longer);
      }
    }
    lines.add(line.toString());
    return lines;
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

  private double top() {
    double head = heading.isEmpty() ? 0 : ink.length(36);
    return head + cautions.size() * lineHeight() + (cautions.isEmpty() ? 0 : ink.length(6));
  }

  @Override
  public Dimension getPreferredSize() {
    double height = top() + ink.length(14) + lines.size() * lineHeight();
    return new Dimension(width, (int) Math.ceil(height));
  }

  @Override
  protected void paintComponent(Graphics g) {
    Graphics2D g2 = (Graphics2D) g.create();
    g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g2.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    int top = (int) Math.round(top());
    g2.setColor(ink.field());
    g2.fillRect(0, 0, getWidth(), getHeight());
    paintHead(g2);
    if (chosen) {
      g2.setColor(ink.chosen());
      g2.fillRect(0, top, getWidth(), getHeight() - top);
      g2.setColor(ink.accent());
      g2.fillRect(0, top, (int) ink.length(3), getHeight() - top);
      if (focused) {
        g2.drawRect(1, top, getWidth() - 3, getHeight() - top - 2);
      }
    }
    g2.setColor(ink.ground());
    g2.fillRect((int) left(), getHeight() - 1, getWidth(), 1);
    double y = top + ink.length(20);
    if (mark != Mark.NONE) {
      g2.setColor(quiet ? ink.dim() : ink.of(mark));
      g2.fill(mark.at(ink.length(20), y - ink.length(4), ink.length(11)));
    }
    g2.setFont(font());
    g2.setColor(quiet ? ink.dim() : ink.text());
    double line = y;
    for (String each : lines) {
      g2.drawString(each, (float) left(), (float) line);
      line += lineHeight();
    }
    g2.setFont(ink.font(0.92));
    g2.setColor(ink.dim());
    double at = getWidth() - pad() - g2.getFontMetrics().stringWidth(opens);
    g2.drawString(opens, (float) at, (float) y);
    g2.dispose();
  }

  private void paintHead(Graphics2D g) {
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
