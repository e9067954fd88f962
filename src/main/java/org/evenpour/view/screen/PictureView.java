package org.evenpour.view.screen;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import org.evenpour.picture.Field;
import org.evenpour.picture.Ink;
import org.evenpour.picture.Painted;
import org.evenpour.picture.Picture;
import org.evenpour.picture.Spot;
import org.jspecify.annotations.Nullable;

/**
 * Shows a picture. Its spots explain themselves under the pointer and are chosen by a click, or by
 * arrow keys and Enter; along its axis one moves by dragging and the wheel.
 */
final class PictureView extends JComponent {
  private final transient Ink ink;
  private final transient Drawing drawing;
  private transient Consumer<Spot> onSpot = spot -> {};
  private transient @Nullable Scroll onScroll;
  private int focused = -1;

  /** Moves along the horizontal axis. */
  interface Scroll {
    /** These values are to be visible. */
    void to(double from, double to);
  }

  PictureView(String name, String says, Ink ink, double margin) {
    this.ink = ink;
    drawing = new Drawing(this, ink, ink.field(), ink.length(margin), ink.length(margin));
    setName(name);
    drawing.attend(says, new Pointer(), this::key, () -> focused = -1);
  }

  /** Shows nothing. */
  void clear() {
    show(() -> null);
  }

  /**
   * Shows another picture, which is made on a worker thread.
   *
   * @param next reads nothing that the event thread may change
   */
  void show(Supplier<? extends @Nullable Picture> next) {
    drawing.show(next);
  }

  /** What is shown; null = nothing. May wait until it is made. */
  @Nullable Picture picture() {
    return drawing.shown().get();
  }

  /** What is shown now, made when it is asked for. */
  Supplier<? extends @Nullable Picture> shown() {
    return drawing.shown();
  }

  /** Is told which spot was chosen; only spots that stand for something can be. */
  void onSpot(Consumer<Spot> chosen) {
    onSpot = chosen;
  }

  /** Is told which values should be visible. */
  void onScroll(Scroll scroll) {
    onScroll = scroll;
    addMouseWheelListener(this::zoom);
  }

  /** Whether the newest picture is drawn. */
  boolean isCurrent() {
    return drawing.isCurrent();
  }

  /** What was drawn last. */
  Painted painted() {
    return drawing.painted();
  }

  @Override
  protected void paintComponent(Graphics g) {
    Graphics2D g2 = (Graphics2D) g.create();
    drawing.paint(g2);
    if (isFocusOwner()) {
      drawing.paintFocus(g2);
      List<Spot> spots = choosable();
      if (focused >= 0 && focused < spots.size()) {
        g2.draw(spots.get(focused).shape());
      }
    }
    g2.dispose();
  }

  @Override
  public @Nullable String getToolTipText(MouseEvent event) {
    String says = painted().says(event.getPoint());
    return says.isEmpty() ? null : Tips.wrapped(says);
  }

  private List<Spot> choosable() {
    return painted().spots().stream().filter(spot -> !spot.kind().isEmpty()).toList();
  }

  private void key(KeyEvent event) {
    List<Spot> spots = choosable();
    int step =
        switch (event.getKeyCode()) {
          case KeyEvent.VK_RIGHT, KeyEvent.VK_DOWN -> 1;
          case KeyEvent.VK_LEFT, KeyEvent.VK_UP -> -1;
          default -> 0;
        };
    if (step != 0 && !spots.isEmpty()) {
      focused = Math.floorMod((focused < 0 && step < 0 ? 0 : focused) + step, spots.size());
      getAccessibleContext().setAccessibleDescription(spots.get(focused).says());
      repaint();
      event.consume();
    }
    boolean isEnter =
        event.getKeyCode() == KeyEvent.VK_ENTER || event.getKeyCode() == KeyEvent.VK_SPACE;
    if (isEnter && focused >= 0 && focused < spots.size()) {
      onSpot.accept(spots.get(focused));
      event.consume();
    }
  }

  private void zoom(MouseWheelEvent event) {
    Field scale = painted().scale();
    Scroll scroll = onScroll;
    if (scale == null || scroll == null) {
      return;
    }
    double factor = Math.pow(1.25, event.getPreciseWheelRotation());
    double at = scale.value(event.getX());
    scroll.to(at - (at - scale.from()) * factor, at + (scale.to() - at) * factor);
  }

  @Override
  public Dimension getPreferredSize() {
    return isPreferredSizeSet()
        ? super.getPreferredSize()
        : new Dimension((int) ink.length(320), (int) ink.length(200));
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(10, 10);
  }

  @Override
  public AccessibleContext getAccessibleContext() {
    if (accessibleContext == null) {
      accessibleContext =
          new AccessibleJComponent() {
            @Override
            public AccessibleRole getAccessibleRole() {
              return AccessibleRole.CANVAS;
            }
          };
    }
    return accessibleContext;
  }

  /** Clicks and drags. */
  private final class Pointer extends MouseAdapter {
    private @Nullable MouseEvent pressed;
    private @Nullable Field start;

    @Override
    public void mousePressed(MouseEvent event) {
      requestFocusInWindow();
      pressed = event;
      start = painted().scale();
    }

    @Override
    public void mouseDragged(MouseEvent event) {
      MouseEvent from = pressed;
      Field scale = start;
      Scroll scroll = onScroll;
      if (from != null && scale != null && scroll != null) {
        double by = scale.value(from.getX()) - scale.value(event.getX());
        if (by != 0) {
          scroll.to(scale.from() + by, scale.to() + by);
        }
      }
    }

    @Override
    public void mouseReleased(MouseEvent event) {
      MouseEvent from = pressed;
      pressed = null;
      if (from == null || from.getPoint().distance(event.getPoint()) > 4) {
        return;
      }
      Spot spot = painted().spot(event.getPoint());
      if (spot != null && !spot.kind().isEmpty()) {
        onSpot.accept(spot);
      }
    }

    @Override
    public void mouseMoved(MouseEvent event) {
      Spot spot = painted().spot(event.getPoint());
      boolean isHand = spot != null && !spot.kind().isEmpty();
      setCursor(
          java.awt.Cursor.getPredefinedCursor(
              isHand ? java.awt.Cursor.HAND_CURSOR : java.awt.Cursor.DEFAULT_CURSOR));
    }
  }
}
