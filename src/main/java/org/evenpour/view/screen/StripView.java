package org.evenpour.view.screen;

import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.function.Supplier;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import org.evenpour.picture.Field;
import org.evenpour.picture.Ink;
import org.evenpour.picture.PeriodStrip;
import org.evenpour.picture.Spot;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.Stretch;
import org.evenpour.view.model.WheelRows;
import org.jspecify.annotations.Nullable;

/** The whole period; a stretch of it is chosen by dragging, or moved by the arrow keys. */
final class StripView extends JComponent {
  private final transient Desk desk;
  private final transient Ink ink;
  private final transient Drawing drawing;

  StripView(Desk desk) {
    this.desk = desk;
    this.ink = desk.look().ink();
    drawing = new Drawing(this, ink, ink.field(), ink.length(6), 2);
    setName("strip");
    drawing.attend(desk.look().say("strip.name"), new Dragging(), this::key, () -> {});
  }

  /** Shows another strip, which is made on a worker thread. */
  void show(Supplier<? extends @Nullable PeriodStrip> next) {
    drawing.show(next);
  }

  /** Whether the newest strip is drawn, so that a stretch can be drawn on it. */
  boolean isCurrent() {
    return drawing.isCurrent() && drawing.painted().scale() != null;
  }

  @Override
  protected void paintComponent(Graphics g) {
    Graphics2D g2 = (Graphics2D) g.create();
    drawing.paint(g2);
    if (isFocusOwner()) {
      drawing.paintFocus(g2);
    }
    g2.dispose();
  }

  @Override
  public @Nullable String getToolTipText(MouseEvent event) {
    String says = drawing.painted().says(event.getPoint());
    return says.isEmpty() ? null : Tips.wrapped(says);
  }

  private void key(KeyEvent event) {
    WheelRows wheel = desk.wheel();
    Stretch turns = desk.turns();
    double length = turns.to() - turns.from();
    double step = Math.max(1, Math.rint(length / 10));
    double sign =
        switch (event.getKeyCode()) {
          case KeyEvent.VK_LEFT -> -1;
          case KeyEvent.VK_RIGHT -> 1;
          default -> 0;
        };
    if (event.getKeyCode() == KeyEvent.VK_HOME || event.getKeyCode() == KeyEvent.VK_END) {
      boolean isHome = event.getKeyCode() == KeyEvent.VK_HOME;
      double from = isHome ? wheel.first() : wheel.last() - length;
      choose(from, from + length);
      event.consume();
    } else if (sign != 0 && event.isShiftDown()) {
      choose(turns.from(), Math.max(turns.from() + 1, turns.to() + sign * step));
      event.consume();
    } else if (sign != 0) {
      double from =
          Math.max(wheel.first(), Math.min(wheel.last() - length, turns.from() + sign * step));
      choose(from, from + length);
      event.consume();
    }
  }

  private void choose(double one, double other) {
    WheelRows wheel = desk.wheel();
    Stretch stretch = Stretch.between(one, other, wheel.first(), wheel.last());
    boolean isAll = stretch.from() <= wheel.first() && stretch.to() >= wheel.last();
    desk.selection().chooseStretch(isAll ? null : stretch);
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension((int) ink.length(300), (int) ink.length(48));
  }

  @Override
  public AccessibleContext getAccessibleContext() {
    if (accessibleContext == null) {
      accessibleContext =
          new AccessibleJComponent() {
            @Override
            public AccessibleRole getAccessibleRole() {
              return AccessibleRole.SLIDER;
            }
          };
    }
    return accessibleContext;
  }

  /**
   * A drag on an edge moves the edge, inside it moves the stretch, elsewhere it draws a new one.
   */
  private final class Dragging extends MouseAdapter {
    private double start;
    private @Nullable Stretch before;
    private int grip;

    @Override
    public void mousePressed(MouseEvent event) {
      requestFocusInWindow();
      Field scale = drawing.painted().scale();
      before = desk.selection().stretch();
      // Pressed before the strip is drawn: a drag begins where it first can.
      start = scale == null ? Double.NaN : scale.value(event.getX());
      grip = scale == null ? 0 : grip(scale, event.getX());
    }

    private int grip(Field scale, int x) {
      Stretch stretch = desk.selection().stretch();
      if (stretch == null) {
        return 0;
      }
      double near = ink.length(5);
      if (Math.abs(scale.x(stretch.from()) - x) < near) {
        return -1;
      }
      if (Math.abs(scale.x(stretch.to()) - x) < near) {
        return 1;
      }
      return stretch.holds(scale.value(x)) ? 2 : 0;
    }

    @Override
    public void mouseDragged(MouseEvent event) {
      Field scale = drawing.painted().scale();
      if (scale == null) {
        return;
      }
      double at = scale.value(event.getX());
      start = Double.isNaN(start) ? at : start;
      Stretch from = before;
      if (from == null || grip == 0) {
        choose(start, at);
      } else if (grip == 2) {
        double length = from.to() - from.from();
        double left =
            Math.rint(
                Math.max(
                    desk.wheel().first(),
                    Math.min(desk.wheel().last() - length, from.from() + at - start)));
        choose(left, left + length);
      } else {
        choose(grip < 0 ? from.to() : from.from(), at);
      }
    }

    @Override
    public void mouseClicked(MouseEvent event) {
      if (event.getClickCount() == 2) {
        desk.selection().chooseStretch(null);
        return;
      }
      Spot spot = drawing.painted().spot(event.getPoint());
      if (spot != null) {
        desk.selection().chooseSignal(desk.log().signal(spot.name()));
      }
    }

    @Override
    public void mouseMoved(MouseEvent event) {
      Field scale = drawing.painted().scale();
      int on = scale == null ? 0 : grip(scale, event.getX());
      setCursor(
          Cursor.getPredefinedCursor(
              on == 2
                  ? Cursor.MOVE_CURSOR
                  : on == 0 ? Cursor.CROSSHAIR_CURSOR : Cursor.E_RESIZE_CURSOR));
    }
  }
}
