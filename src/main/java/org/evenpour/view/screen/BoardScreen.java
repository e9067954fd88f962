package org.evenpour.view.screen;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.ActionEvent;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import javax.accessibility.AccessibleContext;
import javax.swing.AbstractAction;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import org.evenpour.picture.Spot;
import org.evenpour.view.model.BoardDesk;
import org.evenpour.view.model.BoardModel;
import org.evenpour.view.model.Look;
import org.jspecify.annotations.Nullable;

/**
 * The crew's board: paints what is known as soon as it is, and the age of it as it grows.
 * Everything can be done with keys; what stands at the lower edge can be pressed by hand as well.
 * Owned by the event thread.
 */
final class BoardScreen extends JPanel {
  /** The age of the last anode and the clock are looked at so often. */
  private static final int TICK_MILLIS = 200;

  private static final int NOTE_LENGTH = 200;
  private static final int NAME_LENGTH = 40;

  private final transient BoardDesk desk;
  private final transient Look look;
  private final transient BoardActs acts;
  private final JTextField note = new JTextField();
  private final JTextField who = new JTextField();
  private final Timer timer = new Timer(TICK_MILLIS, event -> refresh());
  private final transient AtomicBoolean isDue = new AtomicBoolean();
  private transient Runnable unlisten = () -> {};
  private transient BoardModel model;
  private transient List<Spot> spots = List.of();
  private transient @Nullable String asked;

  /**
   * @param desk what is known and chosen
   * @param look colors, language and units
   * @param acts what the window does
   */
  BoardScreen(BoardDesk desk, Look look, BoardActs acts) {
    super(null);
    this.desk = desk;
    this.look = look;
    this.acts = acts;
    model = desk.model(look);
    setName("board");
    setOpaque(true);
    setFocusable(true);
    setBackground(look.ink().ground());
    getAccessibleContext().setAccessibleName(desk.say("board.name", look));
    getAccessibleContext().setAccessibleDescription(model.spoken());
    field(note, "note");
    field(who, "who");
    keys();
    addMouseListener(
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent event) {
            pressed(event);
          }
        });
  }

  private void field(JTextField field, String name) {
    field.setName("board." + name);
    field.setVisible(false);
    field.getAccessibleContext().setAccessibleName(desk.say(name + ".name", look));
    int focused = JComponent.WHEN_FOCUSED;
    field.getInputMap(focused).put(KeyStroke.getKeyStroke(KeyEvent.VK_ENTER, 0), "keep");
    field.getInputMap(focused).put(KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0), "leave");
    field.getActionMap().put("keep", act(this::keep));
    field.getActionMap().put("leave", act(this::leave));
    add(field);
  }

  private void keys() {
    // When the key is let go: what it types must not stand in the note.
    key(KeyStroke.getKeyStroke(KeyEvent.VK_S, 0, true), "seen");
    key(KeyStroke.getKeyStroke(KeyEvent.VK_DOWN, 0), "next");
    key(KeyStroke.getKeyStroke(KeyEvent.VK_UP, 0), "previous");
    key(KeyStroke.getKeyStroke(KeyEvent.VK_C, 0), "ring");
    key(KeyStroke.getKeyStroke(KeyEvent.VK_W, 0), "wheel");
    key(KeyStroke.getKeyStroke(KeyEvent.VK_P, 0), "pouring");
    key(KeyStroke.getKeyStroke(KeyEvent.VK_R, 0), "reverse");
  }

  private void key(KeyStroke stroke, String name) {
    getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW).put(stroke, name);
    getActionMap().put(name, act(() -> act(name)));
  }

  private static AbstractAction act(Runnable run) {
    return new AbstractAction() {
      @Override
      public void actionPerformed(ActionEvent event) {
        run.run();
      }
    };
  }

  /** Does what a key is for. */
  void act(String name) {
    if (asked != null) {
      return; // letters belong to the note
    }
    switch (name) {
      case "seen" -> ask();
      case "units" -> acts.units().run();
      case "dark" -> acts.dark().run();
      case "full" -> acts.full().run();
      case "desk" -> acts.desk().run();
      default -> desk.act(name);
    }
    refresh();
  }

  private void ask() {
    if (model.chosen().isEmpty()) {
      return;
    }
    desk.hold(model.chosen());
    asked = desk.say("note.label", look);
    note.setText("");
    who.setText(desk.who());
    note.setVisible(true);
    who.setVisible(true);
    revalidate();
    note.requestFocusInWindow();
  }

  private void keep() {
    String text = note.getText().strip();
    if (text.isEmpty()) {
      asked = desk.say("note.empty", look);
      note.requestFocusInWindow();
    } else {
      desk.acknowledge(atMost(NAME_LENGTH, who.getText().strip()), atMost(NOTE_LENGTH, text));
      close();
    }
    refresh();
  }

  private static String atMost(int length, String text) {
    return text.substring(0, Math.min(text.length(), length));
  }

  private void leave() {
    close();
    refresh();
  }

  private void close() {
    asked = null;
    note.setVisible(false);
    who.setVisible(false);
    requestFocusInWindow();
  }

  private void pressed(MouseEvent event) {
    requestFocusInWindow();
    for (Spot spot : spots) {
      if (spot.shape().contains(event.getPoint())) {
        act(spot.name());
        return;
      }
    }
  }

  /** On any thread: however much is new, it is looked at once. */
  private void news() {
    if (isDue.compareAndSet(false, true)) {
      SwingUtilities.invokeLater(
          () -> {
            isDue.set(false);
            refresh();
          });
    }
  }

  /** Takes what is known now, and paints it if anything has changed. */
  void refresh() {
    BoardModel next = desk.model(look);
    if (!next.equals(model) || asked != null) {
      String before = model.spoken();
      model = next;
      AccessibleContext context = getAccessibleContext();
      // The age changes with every second; a reader is told only when something happened.
      if (!before.equals(next.spoken())) {
        context.setAccessibleDescription(next.spoken());
      }
      repaint();
    }
  }

  /** What stands on the board. */
  BoardModel model() {
    return model;
  }

  @Override
  public void addNotify() {
    super.addNotify();
    unlisten = desk.onNews(this::news);
    timer.start();
    refresh();
    SwingUtilities.invokeLater(this::requestFocusInWindow);
  }

  @Override
  public void removeNotify() {
    timer.stop();
    unlisten.run();
    super.removeNotify();
  }

  @Override
  public void doLayout() {
    place(note, BoardPainter.note(getWidth(), getHeight()), look.ink().accent());
    place(who, BoardPainter.who(getWidth(), getHeight()), look.ink().dim());
  }

  private void place(JTextField field, Rectangle2D at, Color edge) {
    double unit = BoardPainter.unit(getWidth(), getHeight());
    field.setBounds(at.getBounds());
    field.setFont(look.ink().sized((float) unit).font(1.25));
    field.setBackground(look.ink().field());
    field.setForeground(look.ink().text());
    field.setCaretColor(look.ink().text());
    field.setBorder(
        BorderFactory.createCompoundBorder(
            BorderFactory.createLineBorder(edge, Math.max(1, (int) Math.round(unit * 0.12))),
            BorderFactory.createEmptyBorder(0, (int) unit / 2, 0, (int) unit / 2)));
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(1280, 720);
  }

  @Override
  protected void paintComponent(Graphics g) {
    Graphics2D on = (Graphics2D) g.create();
    String words = asked;
    spots =
        BoardPainter.paint(
            on,
            model,
            look.ink(),
            getWidth(),
            getHeight(),
            words == null ? "" : words,
            words == null ? "" : desk.say("who.label", look));
    on.dispose();
  }
}
