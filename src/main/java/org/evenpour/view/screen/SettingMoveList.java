package org.evenpour.view.screen;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.BoxLayout;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.SettingMovesView;

/**
 * Settings that moved though no anode shows it: sentences below the signals and apart from them.
 * Takes no room where there are none.
 */
final class SettingMoveList {
  /** Rows that are seen at a time; the rest is scrolled to. */
  private static final int SEEN = 3;

  private final Desk desk;
  private final JPanel screen;
  private final JPanel rows;
  private final JScrollPane scroll;
  private SettingMovesView shown = new SettingMovesView(List.of());

  SettingMoveList(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    var ground = look.ink().field();
    JLabel title = Parts.heading("signals.moves.title", look.say("signals.moves"), look);
    title.setBorder(
        BorderFactory.createEmptyBorder(look.px(8), look.px(10), look.px(4), look.px(10)));
    rows = Parts.panel("signals.moves", new BorderLayout(), ground);
    rows.setLayout(new BoxLayout(rows, BoxLayout.Y_AXIS));
    rows.getAccessibleContext().setAccessibleName(look.say("signals.moves"));
    scroll = Parts.scroll(rows);
    screen = Parts.panel("signals.moves.panel", new BorderLayout(), ground);
    screen.add(title, BorderLayout.NORTH);
    screen.add(scroll, BorderLayout.CENTER);
    screen.setVisible(false);
  }

  JComponent screen() {
    return screen;
  }

  /** Shows what is to be seen, as the signals above are filtered. */
  void refresh(String wanted, boolean onlyOpen) {
    SettingMovesView view = SettingMovesView.of(desk, wanted, onlyOpen);
    if (view.equals(shown)) {
      return;
    }
    shown = view;
    rows.removeAll();
    view.rows().forEach(row -> rows.add(row(row)));
    screen.setVisible(!view.rows().isEmpty());
    int seen = Math.min(SEEN, view.rows().size());
    scroll.setPreferredSize(new Dimension(0, desk.look().px(seen * 74)));
    screen.revalidate();
    screen.repaint();
  }

  private JPanel row(SettingMovesView.Row row) {
    var look = desk.look();
    var ink = look.ink();
    JPanel panel = Parts.panel("signals.move", new BorderLayout(look.px(8), 0), ink.field());
    panel.setBorder(
        BorderFactory.createEmptyBorder(look.px(4), look.px(12), look.px(6), look.px(10)));
    JLabel sign = new JLabel(Parts.icon(row.mark(), ink));
    sign.setVerticalAlignment(JLabel.TOP);
    String said = (row.sentence() + " " + row.advice()).strip();
    JTextArea text = Parts.prose("signals.move.text", said, ink.font(0.95), look);
    text.setForeground(row.isOpen() ? ink.text() : ink.dim());
    panel.add(sign, BorderLayout.WEST);
    panel.add(text, BorderLayout.CENTER);
    return panel;
  }
}
