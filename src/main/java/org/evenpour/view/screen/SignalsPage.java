package org.evenpour.view.screen;

import java.awt.BorderLayout;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.swing.DefaultListModel;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import javax.swing.ListSelectionModel;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.FilterText;

/** What departed, as sentences; beside it what speaks for the chosen one. */
final class SignalsPage implements Page {
  private final Desk desk;
  private final JPanel screen;
  private final DefaultListModel<Signal> model = new DefaultListModel<>();
  private final JList<Signal> list;
  private final JLabel count;
  private final JTextField filter;
  private final JToggleButton holding;
  private final SignalDetail detail;
  private final SettingMoveList moves;
  private boolean telling = true;

  SignalsPage(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    SignalList renderer = new SignalList(desk);
    list = new JList<>(model);
    list.setName("signals.list");
    list.getAccessibleContext().setAccessibleName(look.say("page.signals.tip"));
    list.setDropTarget(null);
    list.setCellRenderer(renderer);
    list.setFixedCellHeight(renderer.height());
    // It is as wide as its place; else every sentence would be made to find the longest.
    list.setFixedCellWidth(look.px(160));
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.setBackground(look.ink().field());
    list.addListSelectionListener(
        event -> {
          Signal signal = list.getSelectedValue();
          if (telling && !event.getValueIsAdjusting() && signal != null) {
            desk.selection().chooseSignal(signal);
          }
        });
    filter = Filters.field("signals.filter", look, this::fillBoth);
    holding = Parts.toggle("signals.holding", look.say("filter.open"), "", look);
    holding.addActionListener(event -> fillBoth());
    count = Parts.dim("signals.count", "", look);
    detail = new SignalDetail(desk);
    moves = new SettingMoveList(desk);
    JScrollPane scroll = new JScrollPane(list);
    scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    JPanel left = Parts.panel("signals.left", new BorderLayout(), look.ink().field());
    left.add(Parts.row("signals.tools", look, filter, holding, count), BorderLayout.NORTH);
    left.add(scroll, BorderLayout.CENTER);
    left.add(moves.screen(), BorderLayout.SOUTH);
    screen = Parts.beside("page.signals", left, detail.screen(), 0.4, look);
  }

  private void fillBoth() {
    fill();
    moves.refresh(filter.getText(), holding.isSelected());
  }

  private void fill() {
    telling = false;
    FilterText wanted = FilterText.of(filter.getText());
    List<Signal> fitting = new ArrayList<>();
    for (Signal signal : desk.signals()) {
      boolean fits =
          wanted.passes(
              field -> field(signal, field),
              letters -> SignalList.text(desk, signal).toLowerCase(Locale.ROOT).contains(letters));
      if (fits && (signal.open() || !holding.isSelected())) {
        fitting.add(signal);
      }
    }
    boolean isSame = fitting.size() == model.size();
    for (int i = 0; i < fitting.size() && isSame; i++) {
      isSame = fitting.get(i).id().equals(model.get(i).id());
    }
    if (!isSame) {
      model.clear();
      model.addAll(fitting);
    }
    String chosen = desk.selection().signal();
    int index = -1;
    for (int i = 0; i < model.size() && index < 0; i++) {
      index = model.get(i).id().equals(chosen) ? i : -1;
    }
    if (index < 0) {
      list.clearSelection();
    } else if (list.getSelectedIndex() != index) {
      list.setSelectedIndex(index);
      list.ensureIndexIsVisible(index);
    }
    count.setText(
        model.size() == 1
            ? desk.look().say("signals.one")
            : desk.look().say("signals.count", model.size()));
    telling = true;
  }

  /** What a signal has under a name that a column of signals would have. */
  private List<String> field(Signal signal, String field) {
    var words = desk.sentences().words();
    List<String> found = new ArrayList<>();
    if (is(field, "mold")) {
      found.add(String.valueOf(signal.mold()));
    }
    if (is(field, "side")) {
      found.add(String.valueOf(signal.side()));
    }
    if (is(field, "characteristic")) {
      found.add(words.characteristic(signal.characteristic()));
    }
    if (is(field, "turn")) {
      found.add(String.valueOf(signal.sinceTurn()));
    }
    return found;
  }

  private boolean is(String field, String key) {
    String heading = desk.sentences().words().say("head." + key).toLowerCase(Locale.ROOT);
    return key.equals(field) || heading.startsWith(field);
  }

  @Override
  public void act(PageActs acts) {
    detail.act(acts);
  }

  @Override
  public boolean isOfOneCharacteristic() {
    return false;
  }

  @Override
  public JComponent screen() {
    return screen;
  }

  @Override
  public void refresh() {
    fillBoth();
    detail.refresh(desk.log().signal(desk.selection().signal()), model.isEmpty());
  }

  @Override
  public java.util.Optional<JComponent> filter() {
    return java.util.Optional.of(filter);
  }

  @Override
  public boolean close() {
    boolean wasOpen = desk.selection().signal() != null;
    desk.selection().chooseSignal(null);
    return wasOpen;
  }

  @Override
  public List<Export> exports() {
    return detail.exports();
  }
}
