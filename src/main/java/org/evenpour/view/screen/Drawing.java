package org.evenpour.view.screen;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.KeyAdapter;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;
import javax.swing.ToolTipManager;
import org.evenpour.picture.Ink;
import org.evenpour.picture.Painted;
import org.evenpour.picture.Picture;
import org.jspecify.annotations.Nullable;

/**
 * A picture in a component, made and drawn on a worker thread, so that the window never waits for
 * it however long the record is. Until it is there, the one before stays; a picture that equals it
 * is not drawn again. Where there is no window, and on paper, it is drawn at once. Owned by the
 * event thread.
 */
final class Drawing {
  /** A choice: the most pictures that change at once are four. */
  private static final int MOST_THREADS = 4;

  private static final ExecutorService DRAWERS =
      Executors.newFixedThreadPool(
          Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors()),
          work -> {
            Thread thread = new Thread(work, "evenpour-drawing");
            thread.setDaemon(true);
            return thread;
          });

  private final JComponent owner;
  private final Ink ink;
  private final Color ground;
  private final double acrossMargin;
  private final double upMargin;
  private Made made = new Made(() -> null);
  private Drawn drawn = Drawn.NOTHING;
  private boolean isUnderWay;

  /**
   * @param acrossMargin kept free at the left and at the right
   * @param upMargin kept free above and below
   */
  Drawing(JComponent owner, Ink ink, Color ground, double acrossMargin, double upMargin) {
    this.owner = owner;
    this.ink = ink;
    this.ground = ground;
    this.acrossMargin = acrossMargin;
    this.upMargin = upMargin;
  }

  /**
   * Makes the owner a stop of the Tab key that says what it shows, and tells pointer and keys.
   *
   * @param left told when the focus is gone
   */
  void attend(String says, MouseAdapter pointer, Consumer<KeyEvent> keys, Runnable left) {
    owner.setFocusable(true);
    owner.setOpaque(true);
    owner.getAccessibleContext().setAccessibleName(says);
    ToolTipManager.sharedInstance().registerComponent(owner);
    owner.addMouseListener(pointer);
    owner.addMouseMotionListener(pointer);
    owner.addKeyListener(
        new KeyAdapter() {
          @Override
          public void keyPressed(KeyEvent event) {
            keys.accept(event);
          }
        });
    owner.addFocusListener(
        new FocusAdapter() {
          @Override
          public void focusGained(FocusEvent event) {
            owner.repaint();
          }

          @Override
          public void focusLost(FocusEvent event) {
            left.run();
            owner.repaint();
          }
        });
  }

  /** The frame of an owner that has the focus; what is drawn next has its color and width. */
  void paintFocus(Graphics2D g2) {
    g2.setColor(ink.accent());
    g2.setStroke(new BasicStroke((float) ink.length(2)));
    g2.drawRect(1, 1, owner.getWidth() - 3, owner.getHeight() - 3);
  }

  /** Makes a picture when it is first asked for, on whatever thread asks. */
  private static final class Made {
    private @Nullable Supplier<? extends @Nullable Picture> maker;
    private @Nullable Picture picture;

    Made(Supplier<? extends @Nullable Picture> maker) {
      this.maker = maker;
    }

    synchronized @Nullable Picture picture() {
      Supplier<? extends @Nullable Picture> its = maker;
      if (its != null) {
        picture = its.get();
        maker = null; // and with it the log that it reads
      }
      return picture;
    }
  }

  /** What was drawn, of what, and how large. */
  private record Drawn(
      @Nullable Made of, @Nullable BufferedImage image, double scale, Painted painted) {
    static final Drawn NOTHING = new Drawn(null, null, 1, Painted.PLAIN);

    @SuppressWarnings("ReferenceEquality") // the very same picture
    boolean is(Made made, int width, int height) {
      return of == made && isOfSize(width, height);
    }

    boolean isOfSize(int width, int height) {
      return image != null && image.getWidth() == width && image.getHeight() == height;
    }

    /** Whether it would look no different if it were drawn again of another making. */
    boolean looksLike(@Nullable Picture picture, int width, int height, double itsScale) {
      return of != null
          && isOfSize(width, height)
          && scale == itsScale
          && Objects.equals(of.picture(), picture);
    }
  }

  /** Shows another picture; it reads nothing that the event thread may change. */
  void show(Supplier<? extends @Nullable Picture> maker) {
    made = new Made(maker);
    GraphicsConfiguration where = owner.getGraphicsConfiguration();
    if (where == null || !owner.isShowing() || isAtOnce()) {
      owner.repaint();
    } else {
      // What is seen is painted once, when the new picture is there, and not before as well.
      double scale = Math.max(1, where.getDefaultTransform().getScaleX());
      begin(pixels(owner.getWidth(), scale), pixels(owner.getHeight(), scale), scale);
    }
  }

  /** Where there is no window, and on paper, nobody waits. */
  private boolean isAtOnce() {
    return owner.isPaintingForPrint() || SwingUtilities.getWindowAncestor(owner) == null;
  }

  private static int pixels(int length, double scale) {
    return Math.max(1, (int) Math.ceil(length * scale));
  }

  /** What is shown now; null = nothing. To ask it may mean to wait until it is made. */
  Supplier<? extends @Nullable Picture> shown() {
    return made::picture;
  }

  /** Whether the newest picture is drawn. */
  @SuppressWarnings("ReferenceEquality") // the very same picture
  boolean isCurrent() {
    return drawn.of() == made;
  }

  /** What was drawn last. */
  Painted painted() {
    return drawn.painted();
  }

  void paint(Graphics2D g) {
    double scale = Math.max(1, g.getTransform().getScaleX());
    int width = pixels(owner.getWidth(), scale);
    int height = pixels(owner.getHeight(), scale);
    Drawn shown = drawn;
    if (!shown.is(made, width, height)) {
      if (isAtOnce()) {
        shown = draw(made, width, height, scale, shown);
        drawn = shown;
      } else {
        begin(width, height, scale);
      }
    }
    g.setColor(ground);
    g.fillRect(0, 0, owner.getWidth(), owner.getHeight());
    BufferedImage image = shown.image();
    if (image != null) {
      int itsWidth = (int) Math.round(image.getWidth() / shown.scale());
      int itsHeight = (int) Math.round(image.getHeight() / shown.scale());
      g.drawImage(image, 0, 0, itsWidth, itsHeight, null);
    }
  }

  // No SwingWorker, which hands over what it has made only thirty times a second.
  private void begin(int width, int height, double scale) {
    if (!isUnderWay) {
      isUnderWay = true;
      Made its = made;
      Drawn before = drawn;
      CompletableFuture.supplyAsync(() -> draw(its, width, height, scale, before), DRAWERS)
          .whenComplete((now, fault) -> SwingUtilities.invokeLater(() -> done(now, fault)));
    }
    // Else: what is under way asks for a repaint when it is no longer the newest, which draws that.
  }

  @SuppressWarnings("ReferenceEquality") // the very same image
  private void done(@Nullable Drawn now, @Nullable Throwable fault) {
    isUnderWay = false;
    if (now == null) {
      throw new IllegalStateException("a picture could not be drawn", fault);
    }
    boolean looksTheSame = now.image() == drawn.image();
    drawn = now;
    if (!looksTheSame || !isCurrent()) {
      owner.repaint();
    }
  }

  private Drawn draw(Made its, int width, int height, double scale, Drawn before) {
    Picture picture = its.picture();
    if (before.looksLike(picture, width, height, scale)) {
      return new Drawn(its, before.image(), scale, before.painted());
    }
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(ground);
    g.fillRect(0, 0, width, height);
    g.scale(scale, scale);
    Rectangle2D area =
        new Rectangle2D.Double(
            acrossMargin,
            upMargin,
            width / scale - 2 * acrossMargin,
            height / scale - 2 * upMargin);
    boolean isRoom = area.getWidth() > acrossMargin + 8 && area.getHeight() > upMargin + 8;
    Painted painted = picture == null || !isRoom ? Painted.PLAIN : picture.paint(g, area, ink);
    g.dispose();
    return new Drawn(its, image, scale, painted);
  }
}
