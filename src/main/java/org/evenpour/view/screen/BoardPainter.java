package org.evenpour.view.screen;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.picture.Ink;
import org.evenpour.picture.Mark;
import org.evenpour.picture.MoldRing;
import org.evenpour.picture.Spot;
import org.evenpour.view.model.BoardModel;
import org.evenpour.view.model.BoardRun;

/**
 * Paints the board in any size. Lengths are in fortieths of the height, so that it is read from the
 * same distance on a small screen as from afar on a large one.
 */
final class BoardPainter {
  private static final double ROWS = 40;
  private static final double LEAST_COLUMNS = 66;

  /** What is only a warning is said a little smaller than what anodes show. */
  private static final double MOVE_SIZE = 0.9;

  private final BoardPen pen;
  private final BoardModel model;
  private final double u;
  private final double width;
  private final double height;
  private final List<Spot> spots = new ArrayList<>();

  private BoardPainter(BoardPen pen, BoardModel model, double width, double height) {
    this.pen = pen;
    this.model = model;
    this.width = width;
    this.height = height;
    u = pen.unit();
  }

  /**
   * The unit of a board of this size, in pixels; in half pixels, for each size of text is kept by
   * the runtime for as long as it likes.
   */
  static double unit(double width, double height) {
    return Math.max(1, Math.floor(2 * Math.min(height / ROWS, width / LEAST_COLUMNS)) / 2);
  }

  /** Where the field for a note has room. */
  static Rectangle2D note(double width, double height) {
    double u = unit(width, height);
    return new Rectangle2D.Double(1.2 * u, height - 2.7 * u, width - 16.4 * u, 2.2 * u);
  }

  /** Where the field for a name has room. */
  static Rectangle2D who(double width, double height) {
    double u = unit(width, height);
    return new Rectangle2D.Double(width - 14.2 * u, height - 2.7 * u, 13 * u, 2.2 * u);
  }

  /**
   * Paints.
   *
   * @param note what is said above the field for a note; empty while none is written
   * @param who what is said above the field for a name
   * @return where keys can be pressed by hand: kind {@code key}, named by their acts
   */
  static List<Spot> paint(
      Graphics2D g,
      BoardModel model,
      Ink ink,
      double width,
      double height,
      String note,
      String who) {
    BoardPen pen = BoardPen.on(g, ink, unit(width, height));
    BoardPainter painter = new BoardPainter(pen, model, width, height);
    painter.paint(note, who);
    return List.copyOf(painter.spots);
  }

  private void paint(String note, String who) {
    Ink ink = pen.ink();
    pen.fill(new Rectangle2D.Double(0, 0, width, height), ink.ground());
    head();
    double top = 3.2 * u;
    double middle = height - 12.9 * u;
    double side = Math.min(middle - top + 0.6 * u, width * 0.44);
    double split = width - side - 4.2 * u;
    left(new Rectangle2D.Double(1.2 * u, top, split - 2.2 * u, middle - top));
    ring(new Rectangle2D.Double(split, top - 0.2 * u, width - split - 0.6 * u, middle - top));
    pen.line(0, middle + 0.5 * u, width, middle + 0.5 * u, ink.hairline(), 0.05);
    double foot = note.isEmpty() ? height - 1.9 * u : height - 4.2 * u;
    matters(middle + 0.5 * u, foot);
    if (note.isEmpty()) {
      keys();
    } else {
      Font font = pen.bold(1.15);
      double base = height - 3.1 * u;
      pen.text(note, 1.2 * u, base, pen.fitting(note, font, width - 16.4 * u), ink.text());
      pen.text(who, width - 14.2 * u, base, pen.fitting(who, pen.font(1.15), 13 * u), ink.text());
    }
  }

  private void head() {
    Ink ink = pen.ink();
    double base = 1.95 * u;
    Font font = pen.font(1.3);
    Font bold = pen.bold(1.3);
    pen.textTo(model.clock(), width - 1.2 * u, base, bold, ink.text());
    double right = width - 1.2 * u - pen.width("00:00", bold) - 1.6 * u;
    pen.textTo(model.age(), right, base, bold, ink.text());
    right -= pen.width(model.age(), bold) + 1.5 * u;
    pen.text(
        model.place(),
        1.2 * u,
        base,
        pen.fitting(model.place(), font, right - 1.2 * u),
        ink.text());
    pen.line(0, 2.75 * u, width, 2.75 * u, ink.hairline(), 0.05);
  }

  private void left(Rectangle2D area) {
    double figureHeight = 11.5 * u;
    Rectangle2D figure =
        new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), figureHeight);
    BoardModel.Alert alert = model.alert();
    BoardModel.Figure value = model.figure();
    if (alert != null) {
      alert(alert, figure);
    } else if (value != null) {
      figure(value, figure);
    }
    List<BoardRun> runs = model.runs();
    double y = figure.getMaxY() + 0.3 * u;
    double turns = 1.5 * u;
    double each = (area.getMaxY() - turns - y) / Math.max(1, runs.size());
    for (int i = 0; i < runs.size(); i++) {
      BoardRunPainter.paint(
          pen,
          runs.get(i),
          new Rectangle2D.Double(area.getX(), y + i * each, area.getWidth(), each),
          i == runs.size() - 1);
    }
  }

  private void figure(BoardModel.Figure value, Rectangle2D area) {
    Ink ink = pen.ink();
    Mark mark = value.isOutside() ? value.way() : Mark.NONE;
    Color color = ink.textOf(mark);
    Font large = pen.bold(6.9);
    double x = area.getX() - 0.3 * u;
    double after = pen.text(value.number(), x, area.getY() + 5.5 * u, large, color);
    pen.text(value.unit(), after + 0.7 * u, area.getY() + 5.5 * u, pen.font(2.8), ink.text());
    double y = area.getY() + 7.9 * u;
    double left = area.getX();
    if (value.way() != Mark.NONE) {
      pen.fill(value.way().at(left + 0.8 * u, y - 0.75 * u, 1.5 * u), color);
      left += 2.1 * u;
    }
    pen.text(
        value.distance(),
        left,
        y,
        pen.fitting(value.distance(), pen.bold(2.1), area.getMaxX() - left),
        color);
    pen.text(
        value.tolerance(),
        area.getX(),
        y + 1.65 * u,
        pen.fitting(
            value.tolerance(), value.isOutside() ? pen.bold(1.3) : pen.font(1.3), area.getWidth()),
        color);
    lesser(area, y + 3.25 * u);
  }

  private void lesser(Rectangle2D area, double y) {
    double x = area.getX();
    for (BoardModel.Figure one : model.lesser()) {
      Mark mark = one.isOutside() ? one.way() : Mark.NONE;
      Color color = pen.ink().textOf(mark);
      String sign = one.way() == Mark.NONE ? "" : one.way().sign() + " ";
      String text =
          one.name()
              + " "
              + one.number()
              + " "
              + one.unit()
              + (one.distance().isEmpty() ? "" : "  " + sign + one.distance())
              + (one.isOutside() ? "  " + one.tolerance() : "");
      Font font = one.isOutside() ? pen.bold(1.15) : pen.font(1.15);
      double room = area.getMaxX() - x;
      if (room < 6 * u) {
        return;
      }
      x = pen.text(text, x, y, pen.fitting(text, font, room), color) + 2 * u;
    }
  }

  /** Inverted, so that it is seen from anywhere and without any color. */
  private void alert(BoardModel.Alert alert, Rectangle2D area) {
    Ink ink = pen.ink();
    pen.fill(area, ink.text());
    double x = area.getX() + 1 * u;
    double room = area.getWidth() - 2 * u;
    pen.text(
        alert.title(),
        x,
        area.getY() + 2.2 * u,
        pen.fitting(alert.title(), pen.bold(1.7), room),
        ink.ground());
    double y = area.getY() + 4.2 * u;
    if (!alert.large().isEmpty()) {
      y = area.getY() + 7.9 * u;
      pen.text(alert.large(), x, y, pen.fitting(alert.large(), pen.bold(5.8), room), ink.ground());
      y += 1.8 * u;
    }
    // One line under the large figure; where that would be too small, two.
    Font full = pen.font(1.25);
    Font one = pen.fitting(alert.detail(), full, room);
    Font font = one.getSize2D() > 0.85 * full.getSize2D() ? one : full;
    for (String line : pen.lines(alert.detail(), font, room)) {
      if (y < area.getMaxY() - 0.2 * u) {
        pen.text(line, x, y, font, ink.ground());
      }
      y += 1.55 * u;
    }
  }

  private void ring(Rectangle2D area) {
    MoldRing ring = model.ring();
    if (ring == null) {
      return;
    }
    double title = 1.3 * u;
    ring.paint(
        pen.g(),
        new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), area.getHeight() - title),
        pen.ink().sized((float) (1.15 * u)));
    BoardPen again = BoardPen.on(pen.g(), pen.ink(), u);
    Font font = again.fitting(model.ringTitle(), again.font(0.95), area.getWidth());
    again.text(
        model.ringTitle(),
        area.getCenterX() - again.width(model.ringTitle(), font) / 2,
        area.getMaxY(),
        font,
        pen.ink().dim());
  }

  private void matters(double top, double bottom) {
    Ink ink = pen.ink();
    BoardModel.Verdict verdict = model.verdict();
    double y = top + 1.9 * u;
    double x = 1.2 * u;
    double room = width - 2.4 * u;
    if (verdict.parts().isEmpty()) {
      if (verdict.isEven()) {
        pen.fill(Mark.NONE.at(x + 0.7 * u, y - 0.6 * u, 1.2 * u), ink.text());
        x += 2.2 * u;
      }
      Font font = verdict.isEven() ? pen.bold(1.7) : pen.font(1.5);
      pen.text(verdict.text(), x, y, pen.fitting(verdict.text(), font, room), ink.text());
    } else {
      parts(verdict, x, y, room);
    }
    if (!model.notice().isEmpty()) {
      Font font = pen.font(1.05);
      pen.text(
          model.notice(), 1.2 * u, bottom, pen.fitting(model.notice(), font, room), ink.text());
      bottom -= 1.5 * u;
    }
    for (String setPoint : model.setPoints()) {
      Font font = pen.font(1.2);
      pen.text(setPoint, 1.2 * u, bottom, pen.fitting(setPoint, font, room), ink.text());
      bottom -= 1.6 * u;
    }
    if (!model.lately().isEmpty()) {
      Font font = pen.bold(1.2);
      pen.text(
          model.lately(), 1.2 * u, bottom, pen.fitting(model.lately(), font, room), ink.text());
      bottom -= 1.6 * u;
    }
    list(y + 0.5 * u, bottom);
  }

  /** What is wrong at a glance: each part with its shape, as large as the line holds. */
  private void parts(BoardModel.Verdict verdict, double left, double y, double room) {
    double size = 1.9;
    while (size > 1 && partsWidth(verdict, size) > room) {
      size -= 0.1;
    }
    double x = pen.text(verdict.text(), left, y, pen.font(size), pen.ink().text()) + size * u;
    Font font = pen.bold(size);
    int more = verdict.parts().size();
    for (BoardModel.Part part : verdict.parts()) {
      // Of those that follow it at least how many they are must find room behind it.
      double behind = more > 1 ? size * u + pen.width("+" + (more - 1), font) : 0;
      if (x + (1.5 * size) * u + pen.width(part.text(), font) + behind > left + room + u) {
        pen.text("+" + more, x, y, font, pen.ink().text());
        return;
      }
      more--;
      pen.fill(
          part.mark().at(x + 0.45 * size * u, y - 0.36 * size * u, 0.8 * size * u),
          pen.ink().of(part.mark()));
      x =
          pen.text(part.text(), x + 1.15 * size * u, y, font, pen.ink().textOf(part.mark()))
              + size * u;
    }
  }

  private double partsWidth(BoardModel.Verdict verdict, double size) {
    double sum = pen.width(verdict.text(), pen.font(size));
    for (BoardModel.Part part : verdict.parts()) {
      sum += 2.15 * size * u + pen.width(part.text(), pen.bold(size));
    }
    return sum;
  }

  /** As many as have room, whole: advice is never cut off, least of all its last sentence. */
  private void list(double top, double bottom) {
    double y = top;
    int from = 0;
    for (int i = 0; i < model.signals().size(); i++) {
      if (model.signals().get(i).isChosen()) {
        from = i;
      }
    }
    int shown = 0;
    int count = model.signals().size();
    for (int i = 0; i < count; i++) {
      BoardModel.Matter matter = model.signals().get((from + i) % count);
      double size = 1;
      double needed = matterHeight(matter, size);
      double left = bottom - y;
      while (i == 0 && needed > left && size > 0.7) {
        size -= 0.05;
        needed = matterHeight(matter, size);
      }
      if (i > 0 && needed > left) {
        break;
      }
      matter(matter, y, size, count > 1);
      y += needed;
      shown++;
    }
    if (shown < count) {
      more(count - shown, bottom);
    } else {
      moves(y, bottom);
    }
  }

  /** After all that the anodes show: as many as have room, whole. */
  private void moves(double top, double bottom) {
    double y = top;
    for (BoardModel.Matter move : model.moves()) {
      double needed = matterHeight(move, MOVE_SIZE);
      if (needed > bottom - y) {
        return;
      }
      matter(move, y, MOVE_SIZE, false);
      y += needed;
    }
  }

  private void more(int left, double bottom) {
    String text = model.more().replace("{0}", Integer.toString(left));
    Font font = pen.bold(1.05);
    pen.textTo(text, width - 1.2 * u, bottom - 0.2 * u, font, pen.ink().dim());
  }

  private List<String> adviceLines(BoardModel.Matter matter, double size) {
    String said =
        matter.seen().isEmpty() ? matter.advice() : matter.seen() + ".  " + matter.advice();
    return pen.lines(said, pen.font(1.05 * size), width - 4.6 * u);
  }

  private double matterHeight(BoardModel.Matter matter, double size) {
    return (1.65 + 1.3 * adviceLines(matter, size).size() + 0.4) * size * u;
  }

  private void matter(BoardModel.Matter matter, double top, double size, boolean isOneOfMany) {
    Ink ink = pen.ink();
    double y = top + 1.4 * size * u;
    double x = 3.1 * u;
    boolean isSeen = !matter.seen().isEmpty();
    if (matter.isChosen() && isOneOfMany) {
      pen.fill(
          new Rectangle2D.Double(
              0.35 * u, top + 0.35 * u, 0.3 * u, matterHeight(matter, size) - 0.5 * u),
          ink.accent());
    }
    pen.fill(
        matter.mark().at(1.85 * u, y - 0.45 * size * u, 1.15 * size * u),
        isSeen ? ink.dim() : ink.of(matter.mark()));
    Font lead = isSeen ? pen.font(1.3 * size) : pen.bold(1.3 * size);
    pen.text(
        matter.lead(),
        x,
        y,
        pen.fitting(matter.lead(), lead, width - x - 1.2 * u),
        isSeen ? ink.dim() : ink.text());
    y += 1.45 * size * u;
    for (String line : adviceLines(matter, size)) {
      pen.text(line, x, y, pen.font(1.05 * size), isSeen ? ink.dim() : ink.text());
      y += 1.3 * size * u;
    }
  }

  private void keys() {
    Ink ink = pen.ink();
    double y = height - 0.55 * u;
    double size = 0.85;
    while (size > 0.5 && keysWidth(size) > width - 2.4 * u) {
      size -= 0.05;
    }
    double x = 1.2 * u;
    for (BoardModel.Key key : model.keys()) {
      double from = x;
      x = pen.text(key.key(), x, y, pen.bold(size), ink.dim()) + 0.4 * u;
      x = pen.text(key.does(), x, y, pen.font(size), ink.dim());
      spots.add(
          new Spot(
              new Rectangle2D.Double(from - 0.6 * u, height - 1.9 * u, x - from + 1.2 * u, 1.9 * u),
              "key",
              key.act(),
              key.does()));
      x += 1.5 * u;
    }
  }

  private double keysWidth(double size) {
    double sum = 0;
    for (BoardModel.Key key : model.keys()) {
      sum += pen.width(key.key(), pen.bold(size)) + pen.width(key.does(), pen.font(size)) + 1.9 * u;
    }
    return sum;
  }
}
