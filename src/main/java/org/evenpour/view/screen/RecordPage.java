package org.evenpour.view.screen;

import java.awt.CardLayout;
import java.awt.FontMetrics;
import java.util.List;
import java.util.stream.Collectors;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.JTextArea;
import javax.swing.JToggleButton;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.TableColumn;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.report.table.Columns;
import org.evenpour.report.table.RecordTables;
import org.evenpour.table.Cell;
import org.evenpour.table.Column;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.RecordRows;
import org.evenpour.words.Remark;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * The rows that were read, those that were set aside with their reasons, and what to know before
 * using the figures.
 */
final class RecordPage implements Page {
  private final Desk desk;
  private final JPanel screen;
  private final Rows model;
  private final JTable table;
  private final JLabel none;
  private final JToggleButton used;
  private final JToggleButton aside;
  private final JToggleButton notes;
  private final JButton every;
  private final JTextArea noted;
  private final DataTable<@Nullable SetAsideRow> asideTable;
  private @Nullable CastingRecord shown;

  RecordPage(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    model = new Rows(RecordRows.of(desk));
    table = new JTable(model);
    table.setName("record.table");
    table.getAccessibleContext().setAccessibleName(look.say("page.record.tip"));
    DataTable.dress(table, look);
    table.setAutoResizeMode(JTable.AUTO_RESIZE_OFF);
    widths();
    used = Parts.toggle("record.used", look.say("record.rows", 0), "", look);
    aside = Parts.toggle("record.aside", look.say("record.aside", 0), "", look);
    notes = Parts.toggle("record.notes", look.say("record.notes", 0), "", look);
    noted = Parts.prose("record.noted", "", look.ink().font(1), look);
    noted.setBorder(BorderFactory.createEmptyBorder(0, look.px(8), look.px(8), look.px(8)));
    asideTable =
        new DataTable<>(
            "record.aside.table",
            look.language().report().say("head.reason"),
            look,
            row -> row == null ? "" : row.log() + "\n" + row.line());
    none = Parts.dim("record.aside.note", "", look);
    every =
        Parts.button("record.every", look.say("record.every"), look.say("record.every.tip"), look);
    every.addActionListener(event -> desk.selection().chooseMold(null));
    CardLayout cards = new CardLayout();
    JPanel deck = Parts.panel("record.deck", cards, look.ink().field());
    deck.add(DataTable.scroll(table, look), "used");
    deck.add(asideTable.component(), "aside");
    deck.add(scroll(noted, look), "notes");
    ButtonGroup group = new ButtonGroup();
    group.add(used);
    group.add(aside);
    group.add(notes);
    used.setSelected(true);
    used.addActionListener(event -> show(cards, deck, "used"));
    aside.addActionListener(event -> show(cards, deck, "aside"));
    notes.addActionListener(event -> show(cards, deck, "notes"));
    none.setVisible(false);
    screen =
        Parts.headed(
            "page.record",
            Parts.row("record.tools", look, used, aside, notes, every, none),
            deck,
            look);
  }

  /** The rows that were set aside, as many as are kept. */
  private void showAside(CastingRecord record) {
    var look = desk.look();
    var words = look.language().screen();
    long setAside = record.rowsSetAside();
    aside.setText(look.say("record.aside", words.count(setAside)));
    asideTable.show(
        String.join("\n", record.logs()),
        RecordTables.setAside(Columns.narrow(desk.sentences()), desk.sentences(), "").list(),
        record.setAside());
    int listed = record.setAside().size();
    none.setText(
        setAside == 0
            ? look.say("record.aside.none")
            : listed < setAside
                ? look.say("record.aside.more", words.count(listed), words.count(setAside))
                : "");
  }

  /** What to know before using the figures, a paragraph each. */
  private void showNotes(List<Remark> all) {
    var look = desk.look();
    notes.setText(look.say("record.notes", look.language().screen().count(all.size())));
    String text =
        all.isEmpty()
            ? look.say("record.notes.none")
            : all.stream()
                .map(note -> Words.capital(look.language().say(note)))
                .collect(Collectors.joining("\n\n"));
    if (!text.equals(noted.getText())) {
      noted.setText(text);
      noted.setCaretPosition(0);
      noted.getAccessibleContext().setAccessibleName(text);
    }
  }

  private static JScrollPane scroll(JTextArea text, Look look) {
    JScrollPane scroll = new JScrollPane(text);
    scroll.setName(text.getName() + ".scroll");
    scroll.getViewport().setBackground(look.ink().field());
    scroll.setBorder(BorderFactory.createEmptyBorder());
    return scroll;
  }

  private void show(CardLayout cards, JPanel deck, String card) {
    cards.show(deck, card);
    none.setVisible(card.equals("aside") && !none.getText().isEmpty());
    showEvery();
  }

  @Override
  public void turnTo(String part) {
    if (part.equals("aside")) {
      aside.doClick(0);
    } else if (part.equals("notes")) {
      notes.doClick(0);
    }
  }

  /** Where only one mold's rows are listed, a way back to all of them. */
  private void showEvery() {
    every.setVisible(used.isSelected() && desk.selection().mold() != null);
  }

  private void widths() {
    var look = desk.look();
    FontMetrics metrics = table.getFontMetrics(look.ink().font(1));
    FontMetrics bold = table.getFontMetrics(look.ink().bold(0.92));
    int letter = metrics.charWidth('0');
    for (int i = 0; i < model.rows.columns().size(); i++) {
      Column<Integer> column = model.rows.columns().get(i);
      TableColumn shown = table.getColumnModel().getColumn(i);
      int width = Math.max(column.width() * letter, bold.stringWidth(column.heading()));
      shown.setPreferredWidth(width + look.px(24));
      DataTable.dress(shown, column, look);
    }
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
    CastingRecord record = desk.log().record();
    RecordRows rows = RecordRows.of(desk);
    if (model.show(rows)) {
      widths();
    }
    if (shown != record) {
      shown = record;
      showAside(record);
    }
    showNotes(desk.log().report().notes());
    String count = desk.look().language().screen().count(rows.size());
    String mold = desk.selection().mold();
    used.setText(
        mold == null
            ? desk.look().say("record.rows", count)
            : desk.look().say("record.rows.mold", count, mold));
    showEvery();
  }

  @Override
  public boolean close() {
    boolean wasOpen = desk.selection().mold() != null;
    desk.selection().chooseMold(null);
    return wasOpen;
  }

  @Override
  public List<Export> exports() {
    return aside.isSelected()
        ? Export.table(
            desk.look(),
            aside.getText().replaceAll("[^\\p{L} ]", "").strip(),
            "set-aside",
            asideTable)
        : List.of(Export.rows(desk));
  }

  /** Cells are made when they are painted. */
  private static final class Rows extends AbstractTableModel {
    private transient RecordRows rows;

    Rows(RecordRows rows) {
      this.rows = rows;
    }

    /** Shows rows; whether the columns are others. A table that grows keeps all else as it is. */
    boolean show(RecordRows next) {
      RecordRows before = rows;
      rows = next;
      if (!next.headings().equals(before.headings())) {
        fireTableStructureChanged();
        return true;
      }
      boolean isMore =
          next.first() == before.first()
              && before.size() > 0
              && next.size() >= before.size()
              && next.ofMold() == null
              && before.ofMold() == null;
      if (!isMore) {
        fireTableDataChanged();
      } else if (next.size() > before.size()) {
        fireTableRowsInserted(before.size(), next.size() - 1);
      }
      return false;
    }

    @Override
    public int getRowCount() {
      return rows.size();
    }

    @Override
    public int getColumnCount() {
      return rows.columns().size();
    }

    @Override
    public String getColumnName(int column) {
      return rows.columns().get(column).heading();
    }

    @Override
    public Class<?> getColumnClass(int column) {
      return Cell.class;
    }

    @Override
    public Object getValueAt(int row, int column) {
      return rows.cell(row, column);
    }
  }
}
