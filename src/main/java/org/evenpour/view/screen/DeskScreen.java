package org.evenpour.view.screen;

import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Color;
import java.awt.Component;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import javax.swing.ListSelectionModel;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.view.model.Charts;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.Evidence;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.Stretch;
import org.jspecify.annotations.Nullable;

/**
 * The desk for one opened log and one look: pages at the left, the page, and the whole period at
 * the bottom.
 */
final class DeskScreen {
  private final Desk desk;
  private final JPanel screen;
  private final Map<Integer, Page> pages = new HashMap<>();
  private final CardLayout cards = new CardLayout();
  private final JPanel deck;
  private final JList<String> list;
  private final JLabel title;
  private final SaveButton save;
  private final StripView strip;
  private final JLabel turns;
  private final JLabel figures;
  private final JButton whole;
  private final GoToButton goTo;
  private final JLabel until;
  private final JButton stop;
  private final Growth growth;
  private final JPanel characteristics;
  private final Consumer<String> onPage;
  private final Runnable watcher = this::refresh;
  private String filled = "";
  private int shown = -1;
  private @Nullable String cameFrom;
  private final PageActs acts =
      new PageActs() {
        @Override
        public void open(Evidence evidence) {
          DeskScreen.this.open(evidence);
        }

        @Override
        public void save(Export export) {
          save.save(export);
        }
      };

  /**
   * What changes under a desk that stands still.
   *
   * @param isFollowing whether more of the log is expected
   * @param trouble why the log could not be read again; gives null where it could
   * @param figures of the chosen stretch
   */
  record Growth(
      BooleanSupplier isFollowing, Supplier<@Nullable String> trouble, StretchFigures figures) {}

  DeskScreen(Desk desk, Growth growth, String firstPage, FileAsk ask, Consumer<String> onPage) {
    this.desk = desk;
    this.growth = growth;
    this.onPage = onPage;
    Look look = desk.look();
    Color field = look.ink().field();
    deck = Parts.panel("desk.deck", cards, field);
    list = list(look);
    title = Parts.title("desk.title", "", look);
    save = new SaveButton(desk, ask, this::page);
    characteristics =
        Parts.panel("desk.characteristics", new MigLayout("insets 0, gap " + look.px(4)), field);
    strip = new StripView(desk);
    turns = Parts.dim("strip.turns", "", look);
    until = Parts.dim("strip.until", "", look);
    figures = Parts.dim("strip.figures", "", look);
    stop = Parts.button("strip.stop", look.say("strip.stop"), look.say("strip.stop.tip"), look);
    stop.addActionListener(event -> growth.figures().stop());
    whole = Parts.button("strip.whole", look.say("strip.whole"), look.say("strip.whole.tip"), look);
    whole.addActionListener(event -> desk.selection().chooseStretch(null));
    goTo =
        new GoToButton(
            desk,
            Parts.button("strip.goto", look.say("strip.goto"), look.say("strip.goto.tip"), look));
    screen = Parts.panel("desk", new BorderLayout(look.px(8), look.px(8)), look.ink().ground());
    screen.add(list, BorderLayout.WEST);
    JPanel center = Parts.panel("desk.center", new BorderLayout(), field);
    center.add(head(look), BorderLayout.NORTH);
    center.add(deck, BorderLayout.CENTER);
    screen.add(center, BorderLayout.CENTER);
    screen.add(foot(look), BorderLayout.SOUTH);
    desk.selection().watch(watcher);
    list.setSelectedIndex(Math.max(0, Pages.KEYS.indexOf(firstPage)));
  }

  JPanel screen() {
    return screen;
  }

  /** Must be called when another screen takes its place. */
  void close() {
    desk.selection().unwatch(watcher);
    pages.values().forEach(Page::leave);
  }

  private JList<String> list(Look look) {
    JList<String> names =
        new JList<>(
            Pages.KEYS.stream().map(page -> look.say("page." + page)).toArray(String[]::new));
    names.setName("desk.pages");
    names.setDropTarget(null);
    names.getAccessibleContext().setAccessibleName(look.say("menu.page"));
    names.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    names.setFixedCellHeight(look.px(36));
    names.setFixedCellWidth(look.px(128));
    names.setBackground(look.ink().ground());
    names.setCellRenderer(
        new DefaultListCellRenderer() {
          @Override
          public Component getListCellRendererComponent(
              JList<?> all, Object value, int index, boolean selected, boolean focus) {
            super.getListCellRendererComponent(all, value, index, selected, false);
            Color edge = selected ? look.ink().accent() : look.ink().ground();
            setBorder(
                BorderFactory.createCompoundBorder(
                    BorderFactory.createMatteBorder(0, look.px(3), 0, 0, edge),
                    BorderFactory.createEmptyBorder(0, look.px(12), 0, look.px(8))));
            setFont(selected ? look.ink().bold(1.05) : look.ink().font(1.05));
            setForeground(look.ink().text());
            setBackground(selected ? look.ink().field() : look.ink().ground());
            setToolTipText(look.say("page." + Pages.KEYS.get(index) + ".tip"));
            return this;
          }
        });
    names.addListSelectionListener(event -> showPage(names.getSelectedIndex()));
    return names;
  }

  private JPanel head(Look look) {
    int pad = look.px(10);
    JPanel head =
        Parts.panel(
            "desk.head",
            new MigLayout(
                "fill, hidemode 3, insets " + look.px(6) + " " + pad + " " + look.px(6) + " " + pad,
                "[]" + look.px(20) + "[]" + look.px(16) + "[]push[]" + look.px(10) + "[]"),
            look.ink().field());
    head.add(title);
    head.add(characteristics);
    JPanel what =
        Parts.panel(
            "desk.figures",
            new MigLayout("insets 0, hidemode 3, gap " + look.px(8)),
            look.ink().field());
    what.add(figures, "wmin 20");
    what.add(stop);
    head.add(what, "wmin 20");
    head.add(save.said());
    head.add(save.button());
    head.setBorder(BorderFactory.createMatteBorder(0, 0, 1, 0, look.ink().hairline()));
    return head;
  }

  private JPanel foot(Look look) {
    JPanel foot =
        Parts.panel(
            "desk.foot",
            new MigLayout(
                "fill, hidemode 3, insets 0 " + look.px(8) + " " + look.px(4) + " " + look.px(12),
                "[" + look.px(124) + "::]0[grow,fill]" + look.px(8) + "[]" + look.px(8) + "[]",
                "[]"),
            look.ink().field());
    JPanel which =
        Parts.panel(
            "desk.turns",
            new MigLayout("insets 0, hidemode 3, wrap 1, gap 0 " + look.px(2)),
            look.ink().field());
    which.add(turns);
    which.add(until);
    foot.add(which);
    foot.add(strip, "growx, h " + look.px(52) + "!");
    foot.add(whole);
    foot.add(goTo.button());
    return foot;
  }

  /** One button for each characteristic, and a list of wheels where there are several. */
  private void fillCharacteristics() {
    Look look = desk.look();
    characteristics.removeAll();
    if (desk.log().wheels().size() > 1) {
      JComboBox<String> wheels = new JComboBox<>();
      wheels.setName("desk.wheel");
      desk.log().wheels().forEach(one -> wheels.addItem(one.record().wheel()));
      wheels.setSelectedItem(desk.selection().wheel());
      wheels.addActionListener(
          event -> desk.selection().chooseWheel(String.valueOf(wheels.getSelectedItem())));
      characteristics.add(wheels);
    }
    ButtonGroup group = new ButtonGroup();
    for (CharacteristicReport report : desk.report().characteristics()) {
      if (!report.wheel().equals(desk.selection().wheel())) {
        continue;
      }
      JToggleButton button =
          Parts.toggle("characteristic." + report.name(), desk.name(report.name()), "", look);
      button.putClientProperty("characteristic", report.name());
      button.addActionListener(event -> desk.selection().chooseCharacteristic(report.name()));
      group.add(button);
      characteristics.add(button);
    }
    characteristics.revalidate();
  }

  private void showPage(int index) {
    if (index < 0 || index == shown) {
      return;
    }
    shown = index;
    cameFrom = null;
    pages.computeIfAbsent(index, this::build);
    title.setText(desk.look().say("page." + pageKey()));
    save.clear();
    cards.show(deck, pageKey());
    onPage.accept(pageKey());
    refresh();
  }

  /** A page is built when it is first turned to. */
  private Page build(int index) {
    Pages.Entry its = Pages.OF_DESK.get(index);
    Page page = its.page().apply(desk);
    page.act(acts);
    deck.add(page.screen(), its.key());
    return page;
  }

  /** Turns to a page by its key; what stands first on it has the focus. */
  void turnTo(String key) {
    int index = Pages.KEYS.indexOf(key);
    if (index >= 0) {
      cameFrom = null;
      list.setSelectedIndex(index);
      focusFirst();
    }
  }

  /** The part that stands first on the page takes the focus, where one does. */
  void focusFirst() {
    page().first().ifPresent(Component::requestFocusInWindow);
  }

  /** Turns to what speaks for a sentence; from there {@link #back} comes back. */
  private void open(Evidence evidence) {
    String from = pageKey();
    evidence.choose(desk);
    turnTo(evidence.page());
    page().turnTo(evidence.part());
    cameFrom = from.equals(pageKey()) ? null : from;
  }

  /** Comes back to the page that opened this one, else closes what is open, else the stretch. */
  void back() {
    String from = cameFrom;
    if (from != null) {
      turnTo(from);
    } else if (!page().close()) {
      desk.selection().chooseStretch(null);
    }
  }

  /** Shows what is chosen, and known, now. */
  void refresh() {
    growth.figures().look();
    String what = desk.selection().wheel() + characteristicsOf();
    if (!what.equals(filled)) {
      filled = what;
      fillCharacteristics();
    }
    for (Component part : characteristics.getComponents()) {
      if (part instanceof JToggleButton button) {
        button.setSelected(
            desk.selection().characteristic().equals(button.getClientProperty("characteristic")));
        button.setVisible(page().isOfOneCharacteristic());
      }
    }
    Look look = desk.look();
    Stretch now = desk.turns();
    Stretch chosen = desk.selection().stretch();
    int first = (int) desk.wheel().first();
    int last = (int) desk.wheel().last() - 1;
    turns.setText(
        chosen == null
            ? look.say("strip.turns", first, last)
            : look.say("strip.turns", (int) now.from(), (int) now.to() - 1));
    whole.setVisible(chosen != null);
    sayFigures(look, now);
    sayUntil(look);
    CharacteristicReport report = desk.characteristic();
    Desk seen = desk.asNow();
    strip.show(() -> report == null ? null : Charts.strip(seen, report));
    page().refresh();
  }

  /**
   * Pages that are not seen must not keep a log that was read again: one after the other takes what
   * there is now, between other things to do.
   */
  void refreshUnseen() {
    for (Page page : List.copyOf(pages.values())) {
      SwingUtilities.invokeLater(
          () -> {
            if (page != page()) {
              page.refresh();
            }
          });
    }
  }

  /** Every wheel, and what is judged on the chosen one. */
  private String characteristicsOf() {
    return desk.log().wheels().stream().map(one -> one.record().wheel()).toList()
        + " "
        + desk.report().characteristics().stream()
            .filter(report -> report.wheel().equals(desk.selection().wheel()))
            .map(CharacteristicReport::name)
            .toList();
  }

  /** Of which turns figures and tables are. */
  private void sayFigures(Look look, Stretch now) {
    StretchFigures.State state = growth.figures().state();
    int from = (int) now.from();
    int to = (int) now.to() - 1;
    figures.setVisible(state != StretchFigures.State.WHOLE);
    stop.setVisible(state == StretchFigures.State.COMPUTING);
    figures.setText(
        switch (state) {
          case WHOLE -> "";
          case COMPUTING -> look.say("strip.figures.computing", from, to);
          case DONE -> look.say("strip.figures.stretch", from, to);
          case STOPPED -> look.say("strip.figures");
        });
    figures.setToolTipText(
        state == StretchFigures.State.DONE ? Tips.wrapped(look.say("strip.figures.tip")) : null);
  }

  /** To which turn the figures go, where more is expected. */
  private void sayUntil(Look look) {
    String trouble = growth.trouble().get();
    until.setVisible(trouble != null || growth.isFollowing().getAsBoolean());
    until.setText(
        trouble != null
            ? look.say("strip.stuck")
            : look.say("strip.until", desk.log().figuredTo(desk.selection().wheel())));
    until.setToolTipText(Tips.wrapped(trouble != null ? trouble : look.say("strip.until.tip")));
  }

  /** The page that is seen. */
  Page page() {
    return pages.computeIfAbsent(shown, this::build);
  }

  String pageKey() {
    return Pages.KEYS.get(shown);
  }

  GoToButton goTo() {
    return goTo;
  }

  SaveButton save() {
    return save;
  }
}
