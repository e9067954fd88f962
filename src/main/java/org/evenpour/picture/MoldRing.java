package org.evenpour.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The wheel from above: molds where they stand, each with a bar outward where it casts heavy or
 * thick and inward where it casts light or thin, and a mark and a word where a signal is.
 *
 * @param molds in the order in which they are poured
 * @param bearing where the wheel stands in the hall
 * @param span the departure that the two dotted circles mark; bars are cut off at half as much
 *     again, and the cut shows
 * @param spanLabel the same with its unit, such as {@code ±2 kg}
 * @param pouring the word at the pouring spot
 * @param chosen label of the chosen mold; null = none
 */
public record MoldRing(
    List<Mold> molds,
    Bearing bearing,
    double span,
    String spanLabel,
    String pouring,
    @Nullable String chosen)
    implements Picture {

  /** A label so many times as wide as the usual one is cut, and does not make all others small. */
  private static final double LONGER = 3;

  /** Characters of a label that are drawn at most. */
  private static final int SHOWN = 40;

  /** Copies the list. */
  public MoldRing {
    molds = List.copyOf(molds);
  }

  /**
   * One mold.
   *
   * @param label its number
   * @param departure from the wheel's center, in the unit of {@code span}; null where unknown
   * @param marks which way each of its signals goes, what matters most first; empty without a
   *     signal
   * @param word for the first signal: {@code thin}; empty without one
   * @param says all of it in words
   * @param usual the departure that it usually has, from which its bar grows; null = bars grow from
   *     the circle
   */
  public record Mold(
      String label,
      @Nullable Double departure,
      List<Mark> marks,
      String word,
      String says,
      @Nullable Double usual) {

    /** Copies the list. */
    public Mold {
      marks = List.copyOf(marks);
    }

    /** Which way the signal goes that matters most; {@link Mark#NONE} without one. */
    public Mark mark() {
      return marks.isEmpty() ? Mark.NONE : marks.get(0);
    }

    /** {@code 17 ▼ thin}, and how many signals more. */
    String said() {
      String first = label + " " + mark().sign() + " " + word;
      return marks.size() > 1 ? first + " +" + (marks.size() - 1) : first;
    }
  }

  /**
   * Where the wheel stands.
   *
   * @param pouringDegrees where the crew sees the pouring spot: 0 = right, 90 = top
   * @param clockwise which way it turns, from above
   * @param underLadle index of the mold at the pouring spot
   */
  public record Bearing(double pouringDegrees, boolean clockwise, int underLadle) {}

  private static final double BASE = 0.315;
  private static final double REACH = 0.062;
  private static final double PADS = 0.435;

  /** The smallest letters, in body text. */
  private static final double LEAST = 0.9;

  @Override
  public Painted paint(Graphics2D g, Rectangle2D area, Ink ink) {
    Pen pen = Pen.on(g, ink);
    double size = size(pen, area);
    double cx = area.getCenterX() - beside(pen, size) / 2;
    double cy = area.getCenterY();
    List<Spot> spots = new ArrayList<>();
    double hair = Math.max(1, size / 700);
    pen.draw(circle(cx, cy, BASE * size), ink.hairline(), hair);
    dotted(pen, circle(cx, cy, (BASE + REACH) * size), hair);
    dotted(pen, circle(cx, cy, (BASE - REACH) * size), hair);
    if (molds.isEmpty()) {
      return new Painted(spots, List.of());
    }
    double step = 360.0 / molds.size();
    double pitch = 2 * Math.PI * PADS * size / molds.size();
    double padWide = Math.min(pitch * 0.86, size * 0.1);
    double padDeep = Math.min(size * 0.07, padWide * 1.1);
    Font number = numberFont(pen, ink, padWide * 0.82, padDeep * 0.72);
    List<Rectangle2D> words = new ArrayList<>();
    words.add(new Rectangle2D.Double(cx - size * 0.11, cy - size * 0.09, size * 0.22, size * 0.15));
    for (int i = 0; i < molds.size(); i++) {
      double degrees = degrees(i, step);
      mold(pen, molds.get(i), i, degrees, cx, cy, size, padWide, padDeep, number, spots);
    }
    List<Integer> worst = new ArrayList<>();
    for (int i = 0; i < molds.size(); i++) {
      if (molds.get(i).mark() != Mark.NONE) {
        worst.add(i);
      }
    }
    // Where there is no room for all words, the molds that stand farthest off have theirs.
    worst.sort(Comparator.comparingDouble(i -> -off(molds.get(i))));
    boolean isCrowded = worst.size() > 5;
    double letters =
        Math.max(isCrowded ? 0.026 : 0.032, (isCrowded ? 0.8 : LEAST) * ink.textPx() / size);
    for (int i : worst) {
      word(pen, molds.get(i), degrees(i, step), cx, cy, size, letters, words);
    }
    pouringSpot(pen, cx, cy, size, padDeep, ink);
    turning(pen, cx, cy, size, ink);
    if (!spanLabel.isEmpty()) {
      pen.text(spanLabel, cx, cy + size * 0.035, 0.5, ink.font(small(size, 0.024, ink)), ink.dim());
    }
    return new Painted(spots, List.of());
  }

  /** As large as fits with the word at the pouring spot. */
  private double size(Pen pen, Rectangle2D area) {
    double cos = Math.abs(Math.cos(Math.toRadians(bearing.pouringDegrees())));
    double above = cos > 0.95 ? 1.02 : 1.17;
    double high = area.getHeight() / above;
    double wide =
        cos > 0.3 ? (area.getWidth() - Math.abs(beside(pen, high))) / 1.1 : area.getWidth() / 1.02;
    return Math.min(wide, high);
  }

  /** How far the word at the pouring spot reaches to the right; to the left where negative. */
  private double beside(Pen pen, double size) {
    double cos = Math.cos(Math.toRadians(bearing.pouringDegrees()));
    double width = pen.width(pouring, pen.ink().font(small(size, 0.028, pen.ink())));
    return Math.abs(cos) > 0.3 ? cos * width : 0;
  }

  /** So many times body text: a share of the picture's size, and never much smaller than text. */
  private static double small(double size, double share, Ink ink) {
    return Math.max(LEAST, size * share / ink.textPx());
  }

  private double degrees(int index, double step) {
    int ahead = index - bearing.underLadle();
    return bearing.pouringDegrees() + (bearing.clockwise() ? 1 : -1) * ahead * step;
  }

  private void mold(
      Pen pen,
      Mold mold,
      int index,
      double degrees,
      double cx,
      double cy,
      double size,
      double padWide,
      double padDeep,
      Font number,
      List<Spot> spots) {
    Ink ink = pen.ink();
    boolean signal = mold.mark() != Mark.NONE;
    boolean isUnderLadle = index == bearing.underLadle();
    double turned = Math.toRadians(90 - degrees);
    AffineTransform place = AffineTransform.getTranslateInstance(cx, cy);
    place.rotate(turned);
    Shape pad =
        place.createTransformedShape(
            new RoundRectangle2D.Double(
                -padWide / 2,
                -PADS * size - padDeep / 2,
                padWide,
                padDeep,
                padDeep * 0.3,
                padDeep * 0.3));
    pen.fill(pad, signal ? ink.of(mold.mark()) : ink.field());
    boolean isChosen = mold.label().equals(chosen);
    pen.draw(
        pad,
        isChosen || isUnderLadle ? ink.text() : signal ? ink.of(mold.mark()) : ink.hairline(),
        size / (isChosen || isUnderLadle ? 220 : 600));
    Point2D center = point(cx, cy, PADS * size, degrees);
    pen.text(
        pen.fit(begins(mold.label()), number, padWide),
        center.getX(),
        center.getY(),
        0.5,
        number,
        signal ? (ink.dark() ? ink.ground() : Color.WHITE) : ink.text());
    // One mark for each signal, side by side.
    double apart = Math.toDegrees(0.024 / PADS);
    for (int i = 0; i < mold.marks().size(); i++) {
      Mark mark = mold.marks().get(i);
      double aside = (i - (mold.marks().size() - 1) / 2.0) * apart;
      Point2D out = point(cx, cy, PADS * size + padDeep / 2 + size * 0.014, degrees - aside);
      pen.fill(mark.at(out.getX(), out.getY(), size * 0.02), ink.of(mark));
    }
    Double departure = mold.departure();
    if (departure != null && !departure.isNaN()) {
      double part = Math.max(-1.5, Math.min(1.5, departure / span));
      double thick = Math.min(padWide * 0.5, size * 0.022);
      Double usual = mold.usual();
      double start = usual == null ? 0 : Math.max(-1.5, Math.min(1.5, usual / span));
      double from = (BASE + start * REACH) * size;
      double to = (BASE + part * REACH) * size;
      if (usual != null) {
        pen.fill(
            place.createTransformedShape(
                new Rectangle2D.Double(-thick, -from, thick * 2, hairOf(size))),
            ink.dim());
      }
      Shape bar =
          place.createTransformedShape(
              new Rectangle2D.Double(
                  -thick / 2,
                  -Math.max(from, to),
                  thick,
                  Math.max(hairOf(size), Math.abs(to - from))));
      pen.fill(bar, signal ? ink.of(mold.mark()) : ink.data());
      if (Math.abs(departure / span) > 1.5) {
        double gap = -(BASE + Math.signum(part) * REACH * 1.32) * size;
        pen.fill(
            place.createTransformedShape(
                new Rectangle2D.Double(-thick, gap, thick * 2, size * 0.005)),
            ink.field());
      }
    }
    double half = Math.PI * BASE * size / molds.size();
    spots.add(
        new Spot(
            place.createTransformedShape(
                new Rectangle2D.Double(
                    -half,
                    -PADS * size - padDeep / 2,
                    2 * half,
                    padDeep + (PADS - BASE + REACH) * size)),
            "mold",
            mold.label(),
            mold.says()));
  }

  private static double off(Mold mold) {
    Double departure = mold.departure();
    Double usual = mold.usual();
    return departure == null || departure.isNaN()
        ? 0
        : Math.abs(departure - (usual == null ? 0 : usual));
  }

  private void word(
      Pen pen,
      Mold mold,
      double degrees,
      double cx,
      double cy,
      double size,
      double letters,
      List<Rectangle2D> taken) {
    if (mold.mark() == Mark.NONE || mold.word().isEmpty()) {
      return;
    }
    Ink ink = pen.ink();
    Font font = ink.bold(size * letters / ink.textPx());
    String label = mold.said();
    double width = pen.width(label, font);
    double height = size * letters * 1.3;
    double inner = (BASE - REACH * 1.6) * size;
    // At three and nine o'clock there is room for it only a little higher or lower.
    for (double aside : new double[] {0, 10, -10, 20, -20, 30, -30}) {
      for (double radius = inner; radius > size * 0.06; radius -= size * 0.02) {
        Point2D edge = point(cx, cy, radius, degrees + aside);
        double cos = Math.cos(Math.toRadians(degrees + aside));
        double sin = Math.sin(Math.toRadians(degrees + aside));
        double x = edge.getX() - cos * width / 2;
        double y = edge.getY() + sin * height / 2;
        Rectangle2D box =
            new Rectangle2D.Double(
                x - width / 2 - size * 0.008, y - height / 2, width + size * 0.016, height);
        boolean isFree = taken.stream().noneMatch(box::intersects) && inside(box, cx, cy, inner);
        if (isFree) {
          pen.text(label, x, y, 0.5, font, ink.textOf(mold.mark()));
          taken.add(box);
          return;
        }
      }
    }
  }

  private static boolean inside(Rectangle2D box, double cx, double cy, double radius) {
    double dx = Math.max(Math.abs(box.getMinX() - cx), Math.abs(box.getMaxX() - cx));
    double dy = Math.max(Math.abs(box.getMinY() - cy), Math.abs(box.getMaxY() - cy));
    return Math.hypot(dx, dy) <= radius * 1.08;
  }

  private void pouringSpot(Pen pen, double cx, double cy, double size, double padDeep, Ink ink) {
    double degrees = bearing.pouringDegrees();
    double tip = PADS * size + padDeep / 2 + size * 0.028;
    AffineTransform place = AffineTransform.getTranslateInstance(cx, cy);
    place.rotate(Math.toRadians(90 - degrees));
    Path2D arrow = new Path2D.Double();
    arrow.moveTo(0, -tip);
    arrow.lineTo(size * 0.016, -tip - size * 0.022);
    arrow.lineTo(-size * 0.016, -tip - size * 0.022);
    arrow.closePath();
    pen.fill(place.createTransformedShape(arrow), ink.text());
    double cos = Math.cos(Math.toRadians(degrees));
    Point2D at = point(cx, cy, tip + size * (Math.abs(cos) > 0.3 ? 0.028 : 0.04), degrees);
    pen.text(
        pouring,
        at.getX() + cos * size * 0.006,
        at.getY(),
        cos > 0.3 ? 0 : cos < -0.3 ? 1 : 0.5,
        ink.font(small(size, 0.028, ink)),
        ink.text());
  }

  private void turning(Pen pen, double cx, double cy, double size, Ink ink) {
    double radius = size * 0.075;
    double from = bearing.clockwise() ? 140 : 40;
    double extent = bearing.clockwise() ? -100 : 100;
    pen.draw(
        new Arc2D.Double(
            cx - radius, cy - radius, 2 * radius, 2 * radius, from, extent, Arc2D.OPEN),
        ink.dim(),
        size / 300);
    double end = from + extent;
    Point2D at = point(cx, cy, radius, end);
    AffineTransform place = AffineTransform.getTranslateInstance(at.getX(), at.getY());
    place.rotate(Math.toRadians((bearing.clockwise() ? 90 : -90) - end));
    Path2D head = new Path2D.Double();
    head.moveTo(size * 0.016, 0);
    head.lineTo(-size * 0.006, size * 0.01);
    head.lineTo(-size * 0.006, -size * 0.01);
    head.closePath();
    pen.fill(place.createTransformedShape(head), ink.dim());
  }

  /** All labels in one size, in which most of them stand whole; much longer ones are cut. */
  private Font numberFont(Pen pen, Ink ink, double wide, double high) {
    Font font = ink.bold(high * 0.95 / ink.textPx());
    double[] widths =
        molds.stream()
            .mapToDouble(mold -> pen.width(begins(mold.label()), font))
            .sorted()
            .toArray();
    double usual = widths.length == 0 ? 0 : widths[widths.length / 2];
    double widest = Arrays.stream(widths).filter(each -> each <= LONGER * usual).max().orElse(0);
    return widest > wide ? font.deriveFont((float) (font.getSize2D() * wide / widest)) : font;
  }

  /** No pad has room for more, and some labels have thousands of characters. */
  private static String begins(String label) {
    return label.length() <= SHOWN
        ? label
        : label.substring(0, label.offsetByCodePoints(0, SHOWN)) + "…";
  }

  private static double hairOf(double size) {
    return Math.max(1, size / 500);
  }

  private static Shape circle(double cx, double cy, double radius) {
    return new Ellipse2D.Double(cx - radius, cy - radius, 2 * radius, 2 * radius);
  }

  private static Point2D point(double cx, double cy, double radius, double degrees) {
    double angle = Math.toRadians(degrees);
    return new Point2D.Double(cx + radius * Math.cos(angle), cy - radius * Math.sin(angle));
  }

  private static void dotted(Pen pen, Shape shape, double width) {
    float dot = (float) (width * 1.5);
    pen.g()
        .setStroke(
            new BasicStroke(
                (float) width,
                BasicStroke.CAP_BUTT,
                BasicStroke.JOIN_ROUND,
                1,
                new float[] {dot, dot * 3},
                0));
    pen.g().setColor(pen.ink().hairline());
    pen.g().draw(shape);
  }
}
