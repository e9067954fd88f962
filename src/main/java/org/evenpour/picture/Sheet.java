package org.evenpour.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.font.FontRenderContext;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * A list of work on paper: what is to be minded, boxed, before everything else on every page; then
 * what is to be done where and why, each with a box to tick and a line to sign on.
 *
 * @param title over everything
 * @param under the title
 * @param caution what is to be minded first; empty where nothing is
 * @param items in their order
 * @param done what stands before the line to sign on
 * @param footer at the bottom of every page
 */
public record Sheet(
    String title, String under, String caution, List<Item> items, String done, String footer) {

  /** A4, in points, upright (ISO 216: 210 × 297 mm). */
  public static final int WIDTH = 595;

  /** The same. */
  public static final int HEIGHT = 842;

  private static final int SIDE = 42;
  private static final int TOP = 40;
  private static final int BOTTOM = 36;
  private static final double LINE = 13;
  private static final double INDENT = 22;
  private static final Ink INK = Ink.light(10);
  private static final FontRenderContext CONTEXT = new FontRenderContext(null, true, true);

  /**
   * Something to do, or a heading.
   *
   * @param what in a few words
   * @param where in a few words; empty where that is said
   * @param why in sentences; empty for a heading
   * @param isWork whether it has a box to tick
   */
  public record Item(String what, String where, String why, boolean isWork) {
    /** What stands over the items that follow. */
    public static Item heading(String said) {
      return new Item(said, "", "", false);
    }

    private boolean isHeading() {
      return why.isEmpty() && where.isEmpty();
    }
  }

  /** Copies the list. */
  public Sheet {
    items = List.copyOf(items);
  }

  /** Its pages, for paper of {@link #WIDTH} by {@link #HEIGHT}; one at least. */
  public List<Picture> pages() {
    List<List<Item>> pages = new ArrayList<>();
    List<Item> page = new ArrayList<>();
    double room = HEIGHT - TOP - BOTTOM - head();
    double left = room;
    for (int i = 0; i < items.size(); i++) {
      Item item = items.get(i);
      // A heading does not stand at the bottom alone.
      double needed = height(item);
      if (item.isHeading() && i + 1 < items.size()) {
        needed += height(items.get(i + 1));
      }
      if (needed > left && !page.isEmpty()) {
        pages.add(page);
        page = new ArrayList<>();
        left = room;
      }
      page.add(item);
      left -= height(item);
    }
    pages.add(page);
    List<Picture> pictures = new ArrayList<>();
    for (int i = 0; i < pages.size(); i++) {
      pictures.add(new Page(this, List.copyOf(pages.get(i)), i + 1, pages.size()));
    }
    return pictures;
  }

  private record Page(Sheet sheet, List<Item> items, int number, int of) implements Picture {
    @Override
    public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
      Graphics2D g2 = (Graphics2D) g.create();
      double scale = Math.min(area.getWidth() / WIDTH, area.getHeight() / HEIGHT);
      g2.translate(area.getX(), area.getY());
      g2.scale(scale, scale);
      sheet.paint(Pen.on(g2, INK), this);
      g2.dispose();
      return Painted.PLAIN;
    }
  }

  private static double room() {
    return WIDTH - 2.0 * SIDE;
  }

  private double head() {
    double box =
        caution.isEmpty() ? 0 : lines(caution, INK.bold(1.1), room() - 20).size() * 15 + 24;
    return 28 + 18 + box + 6;
  }

  private double height(Item item) {
    if (item.isHeading()) {
      return 30;
    }
    double width = room() - INDENT;
    double where = item.where().isEmpty() ? 0 : lines(item.where(), INK.font(1), width).size();
    double why = lines(item.why(), INK.font(1), width).size();
    return 16 + (where + why) * LINE + (item.isWork() ? 26 : 10);
  }

  private void paint(Pen pen, Page page) {
    Graphics2D g = pen.g();
    double y = TOP + 14;
    text(g, title, SIDE, y, INK.bold(1.8), INK.text());
    y += 18;
    text(g, under, SIDE, y, INK.font(1), INK.dim());
    y += 14;
    if (!caution.isEmpty()) {
      List<String> said = lines(caution, INK.bold(1.1), room() - 20);
      double height = said.size() * 15 + 12;
      pen.draw(new Rectangle2D.Double(SIDE, y, room(), height), INK.text(), 1.4);
      double line = y + 17;
      for (String each : said) {
        text(g, each, SIDE + 10, line, INK.bold(1.1), INK.text());
        line += 15;
      }
      y += height + 12;
    }
    for (Item item : page.items()) {
      paint(pen, item, y);
      y += height(item);
    }
    double bottom = HEIGHT - BOTTOM + 8;
    pen.line(SIDE, bottom - 14, WIDTH - SIDE, bottom - 14, INK.hairline(), 0.6);
    text(g, footer, SIDE, bottom, INK.font(0.9), INK.dim());
    String number = page.number() + " / " + page.of();
    double width = width(number, INK.font(0.9));
    text(g, number, WIDTH - SIDE - width, bottom, INK.font(0.9), INK.dim());
  }

  private void paint(Pen pen, Item item, double top) {
    Graphics2D g = pen.g();
    if (item.isHeading()) {
      text(g, item.what(), SIDE, top + 18, INK.bold(1.2), INK.text());
      pen.line(SIDE, top + 23, WIDTH - SIDE, top + 23, INK.text(), 0.8);
      return;
    }
    double y = top + 12;
    double x = SIDE + INDENT;
    if (item.isWork()) {
      g.setStroke(new BasicStroke(1));
      g.setColor(INK.text());
      g.draw(new Rectangle2D.Double(SIDE + 1, y - 9, 11, 11));
    }
    text(g, item.what(), x, y, INK.bold(1.1), INK.text());
    y += LINE + 1;
    for (String each : item.where().isEmpty() ? List.<String>of() : wrapped(item.where())) {
      text(g, each, x, y, INK.font(1), INK.dim());
      y += LINE;
    }
    for (String each : wrapped(item.why())) {
      text(g, each, x, y, INK.font(1), INK.text());
      y += LINE;
    }
    if (item.isWork()) {
      text(g, done, x, y + 6, INK.font(0.9), INK.dim());
      double from = x + width(done, INK.font(0.9)) + 6;
      pen.line(from, y + 7, WIDTH - SIDE, y + 7, INK.hairline(), 0.8);
    }
  }

  private static List<String> wrapped(String text) {
    return lines(text, INK.font(1), room() - INDENT);
  }

  private static void text(Graphics2D g, String said, double x, double y, Font font, Color color) {
    g.setFont(font);
    g.setColor(color);
    g.drawString(said, (float) x, (float) y);
  }

  private static double width(String text, Font font) {
    return font.getStringBounds(text, CONTEXT).getWidth();
  }

  private static List<String> lines(String text, Font font, double width) {
    return Lines.of(text.split(" ", -1), width, each -> width(each, font));
  }
}
