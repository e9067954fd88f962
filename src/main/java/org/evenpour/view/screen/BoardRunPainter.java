package org.evenpour.view.screen;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.evenpour.picture.Ink;
import org.evenpour.picture.Mark;
import org.evenpour.view.model.BoardRun;
import org.evenpour.view.model.BoardRun.Kind;
import org.evenpour.view.model.BoardRun.Line;
import org.evenpour.view.model.BoardRun.Point;
import org.evenpour.view.model.BoardRun.Turn;

/** Draws the last turns of one characteristic. */
final class BoardRunPainter {
  private static final double LABELS = 5.9;
  private static final double LABEL = 0.82;

  private final BoardPen pen;
  private final BoardRun run;
  private final Rectangle2D plot;

  private BoardRunPainter(BoardPen pen, BoardRun run, Rectangle2D plot) {
    this.pen = pen;
    this.run = run;
    this.plot = plot;
  }

  /**
   * @param area whose lower end is the plot's; the turns' numbers stand below it
   * @param isLast whether the turns' numbers are written
   */
  static void paint(BoardPen pen, BoardRun run, Rectangle2D area, boolean isLast) {
    double u = pen.unit();
    pen.text(run.title(), area.getX(), area.getY() + u, pen.bold(1.05), pen.ink().text());
    Rectangle2D plot =
        new Rectangle2D.Double(
            area.getX(),
            area.getY() + 1.45 * u,
            area.getWidth() - LABELS * u,
            area.getHeight() - 1.7 * u);
    new BoardRunPainter(pen, run, plot).paint(isLast);
  }

  private void paint(boolean isLast) {
    band();
    for (Line line : run.lines()) {
      double y = y(line.value());
      if (line.kind() == Kind.LIMIT) {
        pen.dashed(plot.getX(), plot.getMaxX(), y, pen.ink().dim(), 0.06);
      } else if (line.kind() == Kind.TARGET) {
        pen.line(plot.getX(), y, plot.getMaxX(), y, pen.ink().hairline(), 0.06);
      }
    }
    turns(isLast);
    for (Point point : run.anodes()) {
      anode(point);
    }
    means();
    labels();
  }

  private double y(double value) {
    double part = (value - run.low()) / (run.high() - run.low());
    return plot.getMaxY() - Math.max(0, Math.min(1, part)) * plot.getHeight();
  }

  private double x(double slot) {
    return plot.getX() + slot / run.slots() * plot.getWidth();
  }

  private void band() {
    pen.fill(plot, pen.ink().field());
    double top = plot.getY();
    double bottom = plot.getMaxY();
    boolean any = false;
    for (Line line : run.lines()) {
      if (line.kind() == Kind.TOLERANCE) {
        any = true;
        double y = y(line.value());
        if (line.value() > (run.low() + run.high()) / 2) {
          top = y;
        } else {
          bottom = y;
        }
      }
    }
    if (any) {
      pen.fill(
          new Rectangle2D.Double(plot.getX(), top, plot.getWidth(), bottom - top),
          pen.ink().band());
    }
  }

  private void turns(boolean isLabeled) {
    double u = pen.unit();
    Font font = pen.font(0.85);
    double free = plot.getX();
    List<Turn> turns = run.turns();
    for (Turn turn : turns) {
      double from = x(turn.from());
      pen.line(from, plot.getMaxY(), from, plot.getMaxY() + 0.35 * u, pen.ink().dim(), 0.05);
      if (!isLabeled) {
        continue;
      }
      double width = pen.width(turn.label(), font);
      double middle = (from + x(turn.to())) / 2;
      double left = middle - width / 2;
      if (left >= free && left + width <= plot.getMaxX() + u) {
        pen.text(turn.label(), left, plot.getMaxY() + 1.2 * u, font, pen.ink().dim());
        free = left + width + 0.6 * u;
      }
    }
  }

  private void anode(Point point) {
    double u = pen.unit();
    double x = x(point.slot() + 0.5);
    double y = y(point.value());
    boolean newest = point.slot() == run.slots() - 1;
    Ink ink = pen.ink();
    if (point.mark() != Mark.NONE) {
      pen.fill(point.mark().at(x, y, u * (newest ? 1.1 : 0.75)), ink.of(point.mark()));
    } else {
      double r = u * (newest ? 0.42 : 0.13);
      pen.fill(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r), newest ? ink.text() : ink.data());
    }
  }

  private void means() {
    for (Turn turn : run.turns()) {
      Double mean = turn.mean();
      if (mean != null) {
        Color color = turn.mark() == Mark.NONE ? pen.ink().text() : pen.ink().of(turn.mark());
        double y = y(mean);
        double inset = (x(turn.to()) - x(turn.from())) * 0.06;
        pen.line(
            x(turn.from()) + inset,
            y,
            x(turn.to()) - inset,
            y,
            color,
            turn.mark() == Mark.NONE ? 0.16 : 0.3);
      }
    }
  }

  /** At the right ends, pushed apart where lines are close together. */
  private void labels() {
    double u = pen.unit();
    Font font = pen.font(LABEL);
    double height = 0.93 * u;
    List<Line> lines = new ArrayList<>(run.lines());
    lines.sort(Comparator.comparingDouble(Line::value).reversed());
    double[] at = new double[lines.size()];
    for (int i = 0; i < at.length; i++) {
      at[i] = y(lines.get(i).value());
    }
    // A few passes push neighbors apart evenly; there are five labels at most.
    for (int pass = 0; pass < 40; pass++) {
      for (int i = 1; i < at.length; i++) {
        double lack = height - (at[i] - at[i - 1]);
        if (lack > 0) {
          at[i - 1] -= lack / 2;
          at[i] += lack / 2;
        }
      }
    }
    for (int i = 0; i < at.length; i++) {
      Line line = lines.get(i);
      double y = y(line.value());
      double x = plot.getMaxX() + 0.9 * u;
      if (Math.abs(at[i] - y) > 0.3 * u) {
        pen.line(plot.getMaxX() + 0.45 * u, y, x - 0.2 * u, at[i], pen.ink().dim(), 0.05);
      }
      pen.text(
          line.label(),
          x,
          at[i] + 0.3 * u,
          line.kind() == Kind.TARGET ? pen.bold(LABEL) : font,
          line.kind() == Kind.TARGET ? pen.ink().text() : pen.ink().dim());
    }
  }
}
