package org.evenpour.view.screen;

import java.awt.Component;
import java.awt.Cursor;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.List;
import java.util.Optional;
import javax.swing.DefaultListModel;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.ListSelectionModel;
import net.miginfocom.swing.MigLayout;
import org.evenpour.findings.AuditReport;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.Evidence;
import org.evenpour.view.model.InShort;
import org.evenpour.view.model.InShort.Row;
import org.evenpour.view.model.Stretch;
import org.jspecify.annotations.Nullable;

/**
 * The record in short: what to look at first, what to do with the molds, capability, rejects and
 * what was not used, as sentences that open their evidence.
 */
final class InShortPage implements Page {
  private final Desk desk;
  private final JPanel screen;
  private final JLabel title;
  private final JLabel counts;
  private final JButton aside;
  private final JButton notes;
  private final DefaultListModel<Row> model = new DefaultListModel<>();
  private final JList<Row> list;
  private final InShortList renderer;
  private PageActs acts =
      new PageActs() {
        @Override
        public void open(Evidence evidence) {}

        @Override
        public void save(Export export) {}
      };
  private @Nullable Shown shown;

  /** Of what the sentences are; made anew only where that is other. */
  private record Shown(
      AuditReport report, AuditReport figured, String wheel, @Nullable Stretch stretch) {
    @SuppressWarnings("ReferenceEquality") // the very same audits; to compare them would cost more
    boolean isOf(Desk desk) {
      return report == desk.report()
          && figured == desk.figured()
          && wheel.equals(desk.selection().wheel())
          && java.util.Objects.equals(stretch, desk.selection().stretch());
    }
  }

  InShortPage(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    renderer = new InShortList(look);
    list =
        new JList<>(model) {
          @Override
          public boolean getScrollableTracksViewportWidth() {
            return true;
          }

          @Override
          public void setBounds(int x, int y, int width, int height) {
            boolean isOther = width != getWidth();
            super.setBounds(x, y, width, height);
            if (isOther) {
              measure();
            }
          }
        };
    list.setName("short.list");
    list.getAccessibleContext().setAccessibleName(look.say("page.short.tip"));
    list.setDropTarget(null);
    list.setCellRenderer(renderer);
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.setBackground(look.ink().field());
    list.setCursor(Cursor.getPredefinedCursor(Cursor.HAND_CURSOR));
    list.addMouseListener(
        new MouseAdapter() {
          @Override
          public void mouseClicked(MouseEvent event) {
            int index = list.locationToIndex(event.getPoint());
            if (index >= 0 && list.getCellBounds(index, index).contains(event.getPoint())) {
              list.setSelectedIndex(index);
              open();
            }
          }
        });
    Keys.bindFocused(list, KeyEvent.VK_ENTER, "open", this::open);
    title = Parts.title("short.title", "", look);
    counts = Parts.label("short.counts", "", look.ink().font(1), look.ink().text());
    aside = link("short.aside", Evidence.part("record", "aside"));
    notes = link("short.notes", Evidence.part("record", "notes"));
    JButton sheet =
        Parts.button("short.sheet", look.say("short.sheet"), look.say("short.sheet.tip"), look);
    sheet.addActionListener(event -> acts.save(Export.moldSheet(desk)));
    JButton book =
        Parts.button("short.book", look.say("short.book"), look.say("short.book.tip"), look);
    book.addActionListener(event -> acts.save(Export.workbook(desk)));
    screen = Parts.headed("page.short", head(sheet, book), Parts.scroll(list), look);
  }

  private JButton link(String name, Evidence opens) {
    JButton button = Parts.button(name, "", desk.look().say(name + ".tip"), desk.look());
    button.addActionListener(event -> acts.open(opens));
    return button;
  }

  private JPanel head(JButton sheet, JButton book) {
    var look = desk.look();
    int pad = look.px(12);
    JPanel head =
        Parts.panel(
            "short.head",
            new MigLayout(
                "fillx, hidemode 3, insets "
                    + look.px(4)
                    + " "
                    + pad
                    + " "
                    + look.px(8)
                    + " "
                    + pad,
                "[grow,fill]" + pad + "[]" + look.px(8) + "[]",
                "[]" + look.px(4) + "[]"),
            look.ink().field());
    head.add(title, "wmin 50");
    head.add(sheet, "spany 2, aligny center");
    head.add(book, "spany 2, aligny center, wrap");
    JPanel facts =
        Parts.panel(
            "short.facts",
            new MigLayout("insets 0, hidemode 3, gap " + look.px(8)),
            look.ink().field());
    facts.add(counts);
    facts.add(aside);
    facts.add(notes);
    head.add(facts, "wmin 50");
    return head;
  }

  /** A list measures its rows once; at another width they are as high as they then must be. */
  private void measure() {
    if (list == null) {
      return; // it is being made
    }
    list.setFixedCellHeight(10);
    list.setFixedCellHeight(-1);
    list.revalidate();
  }

  private void open() {
    Row row = list.getSelectedValue();
    if (row != null) {
      acts.open(row.opens());
    }
  }

  @Override
  public void act(PageActs its) {
    acts = its;
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
  public Optional<Component> first() {
    return Optional.of(list);
  }

  @Override
  public void refresh() {
    Shown before = shown;
    if (before != null && before.isOf(desk)) {
      return;
    }
    shown =
        new Shown(
            desk.report(), desk.figured(), desk.selection().wheel(), desk.selection().stretch());
    InShort now = InShort.of(desk);
    var look = desk.look();
    title.setText(now.title());
    counts.setText(now.counts());
    var words = look.language().screen();
    aside.setText(look.say("record.aside", words.count(now.setAside())));
    aside.setFont(now.isMuch() ? look.ink().bold(1) : look.ink().font(1));
    aside.setForeground(now.isMuch() ? look.ink().heavyText() : look.ink().text());
    notes.setText(look.say("record.notes", words.count(now.notes())));
    for (JButton each : List.of(aside, notes)) {
      each.getAccessibleContext().setAccessibleName(each.getText());
    }
    int chosen = Math.max(0, list.getSelectedIndex());
    renderer.of(now.rows());
    model.clear();
    model.addAll(now.rows());
    if (!model.isEmpty()) {
      list.setSelectedIndex(Math.min(chosen, model.size() - 1));
    }
    screen.revalidate();
    screen.repaint();
  }

  @Override
  public List<Export> exports() {
    return List.of(Export.moldSheet(desk));
  }
}
