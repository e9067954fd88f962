package org.evenpour.view.screen;

import java.awt.Component;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.ListSelectionModel;
import javax.swing.RowFilter;
import javax.swing.SwingConstants;
import javax.swing.SwingUtilities;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.DefaultTableCellRenderer;
import javax.swing.table.JTableHeader;
import javax.swing.table.TableColumn;
import javax.swing.table.TableColumnModel;
import javax.swing.table.TableRowSorter;
import org.evenpour.picture.Ink;
import org.evenpour.picture.Mark;
import org.evenpour.picture.Picture;
import org.evenpour.table.Cell;
import org.evenpour.table.Column;
import org.evenpour.table.Csv;
import org.evenpour.view.model.FilterText;
import org.evenpour.view.model.Look;
import org.jspecify.annotations.Nullable;

/**
 * A table of rows and columns with small pictures in its cells. It keeps its order until a heading
 * is pressed.
 */
final class DataTable<R> {
  private final Look look;
  private final Function<R, String> key;
  private final Rows model = new Rows();
  private final Grid table;
  private final JScrollPane scroll;
  private TableRowSorter<Rows> sorter;
  private @Nullable RowFilter<Rows, Integer> filter;
  private Consumer<R> onChosen = row -> {};
  private boolean telling = true;
  private boolean onlyWhole;
  private List<TableColumn> all = List.of();

  /**
   * @param key by which a row is the same one when the table is shown anew
   */
  DataTable(String name, String says, Look look, Function<R, String> key) {
    this.look = look;
    this.key = key;
    table = new Grid();
    table.setName(name);
    table.getAccessibleContext().setAccessibleName(says);
    dress(table, look);
    table.setModel(model);
    sorter = new TableRowSorter<>(model);
    table.setRowSorter(sorter);
    table
        .getSelectionModel()
        .addListSelectionListener(
            event -> {
              int row = table.getSelectedRow();
              if (telling && !event.getValueIsAdjusting() && row >= 0) {
                onChosen.accept(model.rows.get(table.convertRowIndexToModel(row)));
              }
            });
    scroll =
        dress(
            new JScrollPane(table) {
              @Override
              public void doLayout() {
                super.doLayout();
                if (leaveOut()) {
                  super.doLayout();
                }
              }
            },
            table,
            look);
  }

  /** Row height, selection, heading: the same for all tables. */
  static void dress(JTable table, Look look) {
    table.setRowHeight(look.px(30));
    table.setFillsViewportHeight(true);
    table.setShowHorizontalLines(true);
    table.setGridColor(look.ink().ground());
    table.setSelectionMode(ListSelectionModel.MULTIPLE_INTERVAL_SELECTION);
    table.setTransferHandler(new CopiedRows());
    table.setSelectionBackground(look.ink().chosen());
    table.setSelectionForeground(look.ink().text());
    // Files are dropped on the window, not on what lies in it.
    table.setDropTarget(null);
    table.getTableHeader().setReorderingAllowed(false);
    table.getTableHeader().setFont(look.ink().bold(0.92));
  }

  /** A scroll pane that shows the heading even where there is no window. */
  static JScrollPane scroll(JTable table, Look look) {
    return dress(new JScrollPane(table), table, look);
  }

  private static JScrollPane dress(JScrollPane scroll, JTable table, Look look) {
    scroll.setName(table.getName() + ".scroll");
    scroll.setColumnHeaderView(table.getTableHeader());
    scroll.getViewport().setBackground(look.ink().field());
    scroll.setBorder(BorderFactory.createEmptyBorder());
    return scroll;
  }

  JComponent component() {
    return scroll;
  }

  /** Where its place is narrow the last columns are left out, rather than cut. */
  void showOnlyWholeColumns() {
    onlyWhole = true;
  }

  /** Whether it changes anything. */
  private boolean leaveOut() {
    if (!onlyWhole || scroll == null || scroll.getWidth() == 0) {
      return false; // there is no room yet
    }
    int room = scroll.getWidth() - scroll.getVerticalScrollBar().getPreferredSize().width;
    int fit = 0;
    int width = 0;
    while (fit < all.size() && width + all.get(fit).getPreferredWidth() <= room) {
      width += all.get(fit++).getPreferredWidth();
    }
    TableColumnModel shown = table.getColumnModel();
    int wanted = Math.max(2, fit);
    boolean isOther = shown.getColumnCount() != Math.min(wanted, all.size());
    while (shown.getColumnCount() > wanted) {
      shown.removeColumn(shown.getColumn(shown.getColumnCount() - 1));
    }
    while (shown.getColumnCount() < Math.min(wanted, all.size())) {
      shown.addColumn(all.get(shown.getColumnCount()));
    }
    return isOther;
  }

  JTable table() {
    return table;
  }

  /** Is told which row was chosen by the user. */
  void onChosen(Consumer<R> chosen) {
    onChosen = chosen;
  }

  /**
   * Shows rows. If they are about the same as before, each stays where it is, and new ones stand
   * last; else the order that the user asked for stays if the columns do.
   */
  void show(String about, List<Column<R>> columns, List<R> rows) {
    List<String> headings = columns.stream().map(Column::heading).toList();
    boolean isSame = headings.equals(model.headings);
    boolean isAgain = isSame && about.equals(model.about) && !model.rows.isEmpty();
    int before = model.rows.size();
    List<R> ordered = isAgain ? inPlace(rows) : rows;
    boolean isKept =
        isAgain
            && keys(ordered).subList(0, Math.min(before, ordered.size())).equals(keys(model.rows));
    telling = false;
    model.about = about;
    model.columns = columns;
    model.rows = ordered;
    if (isKept) {
      model.fireTableRowsUpdated(0, before - 1);
      if (ordered.size() > before) {
        model.fireTableRowsInserted(before, ordered.size() - 1);
      }
    } else if (isSame) {
      model.fireTableDataChanged();
    } else {
      model.headings = headings;
      model.fireTableStructureChanged();
      sorter = new TableRowSorter<>(model);
      for (int i = 0; i < columns.size(); i++) {
        sorter.setComparator(i, ORDER);
      }
      sorter.setRowFilter(filter);
      table.setRowSorter(sorter);
      widths();
    }
    telling = true;
  }

  private List<String> keys(List<R> rows) {
    return rows.stream().map(key).toList();
  }

  /** The rows that were there in their order, then the others. */
  private List<R> inPlace(List<R> rows) {
    List<String> order = keys(model.rows);
    Map<String, Integer> places = new HashMap<>();
    for (int i = 0; i < order.size(); i++) {
      places.putIfAbsent(order.get(i), i);
    }
    List<R> ordered = new ArrayList<>(rows);
    ordered.sort(
        Comparator.comparingInt(row -> places.getOrDefault(key.apply(row), Integer.MAX_VALUE)));
    return ordered;
  }

  private void widths() {
    FontMetrics metrics = table.getFontMetrics(look.ink().font(1));
    FontMetrics bold = table.getFontMetrics(look.ink().bold(0.92));
    int letter = metrics.charWidth('0');
    for (int i = 0; i < model.columns.size(); i++) {
      TableColumn column = table.getColumnModel().getColumn(i);
      int heading = bold.stringWidth(model.headings.get(i)) + look.px(18);
      int width = Math.max(heading, model.columns.get(i).width() * letter + look.px(16));
      column.setPreferredWidth(width);
      column.setMinWidth(Math.min(width, look.px(48)));
      dress(column, model.columns.get(i), look);
    }
    all = Collections.list(table.getColumnModel().getColumns());
    leaveOut();
  }

  /** Cells and heading stand where the column's kind wants them. */
  static void dress(TableColumn shown, Column<?> column, Look look) {
    int side = column.kind() == Column.Kind.FIGURES ? SwingConstants.RIGHT : SwingConstants.LEFT;
    shown.setHeaderRenderer(new HeadingRenderer(look, side));
    shown.setCellRenderer(new CellRenderer(look.ink(), side));
  }

  /** Chooses the first row that fits, without telling; none where none fits. */
  void choose(Predicate<R> fits) {
    telling = false;
    int index = -1;
    for (int i = 0; i < model.rows.size() && index < 0; i++) {
      index = fits.test(model.rows.get(i)) ? i : -1;
    }
    int shown = index < 0 ? -1 : table.convertRowIndexToView(index);
    if (shown < 0) {
      table.clearSelection();
    } else if (table.getSelectedRow() != shown) {
      table.setRowSelectionInterval(shown, shown);
      Runnable scroll = () -> table.scrollRectToVisible(table.getCellRect(shown, 0, true));
      // Before there is room for any row, every row but the first would be scrolled to the top.
      if (table.getVisibleRect().isEmpty()) {
        SwingUtilities.invokeLater(scroll);
      } else {
        scroll.run();
      }
    }
    telling = true;
  }

  /** Shows only rows in which a cell holds the text, and which pass. */
  void filter(String text, Predicate<R> passes) {
    FilterText wanted = FilterText.of(text);
    telling = false;
    filter =
        new RowFilter<Rows, Integer>() {
          @Override
          public boolean include(Entry<? extends Rows, ? extends Integer> entry) {
            R row = model.rows.get(entry.getIdentifier());
            return passes.test(row)
                && wanted.passes(
                    field -> cells(row, field),
                    letters ->
                        model.columns.stream()
                            .map(column -> column.cell().apply(row).text())
                            .anyMatch(cell -> cell.toLowerCase(Locale.ROOT).contains(letters)));
          }
        };
    sorter.setRowFilter(filter);
    telling = true;
  }

  /** What stands in the columns that are called so, by their key or by the heading that is seen. */
  private List<String> cells(R row, String field) {
    return model.columns.stream()
        .filter(
            column ->
                column.key().equals(field)
                    || column.heading().toLowerCase(Locale.ROOT).startsWith(field))
        .map(column -> column.cell().apply(row).text())
        .toList();
  }

  /** The rows as they are shown, as comma-separated text. */
  String text() {
    StringBuilder text = new StringBuilder();
    try {
      Csv.write(model.columns, shown(), text);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return text.toString();
  }

  /** The rows as they are shown: filtered and in their order. */
  private List<R> shown() {
    List<R> shown = new ArrayList<>();
    for (int i = 0; i < table.getRowCount(); i++) {
      shown.add(model.rows.get(table.convertRowIndexToModel(i)));
    }
    return shown;
  }

  @SuppressWarnings("unchecked") // a column's cells are all of one kind, numbers or words
  private static final Comparator<Cell> ORDER =
      Comparator.comparing(
          Cell::order,
          Comparator.nullsLast(
              (one, other) ->
                  one.getClass() == other.getClass()
                      ? ((Comparable<Object>) one).compareTo(other)
                      : 0));

  private final class Rows extends AbstractTableModel {
    private transient List<Column<R>> columns = List.of();
    private transient List<R> rows = List.of();
    private transient List<String> headings = List.of();
    private transient String about = "";

    @Override
    public int getRowCount() {
      return rows.size();
    }

    @Override
    public int getColumnCount() {
      return columns.size();
    }

    @Override
    public String getColumnName(int column) {
      return headings.get(column);
    }

    @Override
    public Class<?> getColumnClass(int column) {
      return Cell.class;
    }

    @Override
    public Object getValueAt(int row, int column) {
      return columns.get(column).cell().apply(rows.get(row));
    }
  }

  /** A table as wide as its columns, or as its place where that is wider. */
  private final class Grid extends JTable {
    @Override
    public boolean getScrollableTracksViewportWidth() {
      return getParent() == null || getPreferredSize().width <= getParent().getWidth();
    }

    @Override
    protected JTableHeader createDefaultTableHeader() {
      return new JTableHeader(columnModel) {
        @Override
        public @Nullable String getToolTipText(MouseEvent event) {
          int column = columnModel.getColumnIndexAtX(event.getX());
          String tip =
              column < 0 || column >= model.columns.size() ? "" : model.columns.get(column).tip();
          return tip.isEmpty() ? null : Tips.wrapped(tip);
        }
      };
    }

    @Override
    public @Nullable String getToolTipText(MouseEvent event) {
      int row = rowAtPoint(event.getPoint());
      int column = columnAtPoint(event.getPoint());
      if (row < 0 || column < 0) {
        return null;
      }
      Cell cell = (Cell) getValueAt(row, column);
      int room = getColumnModel().getColumn(column).getWidth() - look.px(16);
      boolean isCut = getFontMetrics(look.ink().font(1)).stringWidth(cell.text()) > room;
      return cell instanceof Cell.Drawn || isCut ? Tips.wrapped(cell.text()) : null;
    }
  }

  /** Headings stand over their figures. */
  record HeadingRenderer(Look its, int side) implements javax.swing.table.TableCellRenderer {

    @Override
    public Component getTableCellRendererComponent(
        JTable shown, Object value, boolean selected, boolean focus, int row, int column) {
      Component part =
          shown
              .getTableHeader()
              .getDefaultRenderer()
              .getTableCellRendererComponent(shown, value, selected, focus, row, column);
      if (part instanceof JLabel label) {
        label.setHorizontalAlignment(side);
        label.setForeground(its.ink().dim());
        label.setBorder(
            BorderFactory.createCompoundBorder(
                BorderFactory.createMatteBorder(0, 0, 1, 0, its.ink().hairline()),
                BorderFactory.createEmptyBorder(its.px(6), its.px(8), its.px(6), its.px(8))));
      }
      return part;
    }
  }

  /** Draws cells. */
  static final class CellRenderer extends DefaultTableCellRenderer {
    private final transient Ink ink;
    private transient @Nullable Picture picture;

    CellRenderer(Ink ink, int side) {
      this.ink = ink;
      setHorizontalAlignment(side);
    }

    @Override
    public Component getTableCellRendererComponent(
        JTable table, Object value, boolean selected, boolean focus, int row, int column) {
      Cell cell = (Cell) value;
      super.getTableCellRendererComponent(table, cell.text(), selected, focus, row, column);
      picture = null;
      setIcon(null);
      setFont(ink.font(1));
      setForeground(ink.text());
      int side = (int) Math.round(ink.length(8));
      setBorder(BorderFactory.createEmptyBorder(0, side, 0, side));
      if (cell instanceof Cell.Drawn drawn) {
        picture = drawn.picture();
        getAccessibleContext().setAccessibleName(drawn.text());
        setText("");
      } else if (cell instanceof Cell.Marked marked) {
        setForeground(ink.dim());
        mark(marked.mark());
      } else if (cell instanceof Cell.Figure figure) {
        mark(figure.mark());
      }
      return this;
    }

    private void mark(Mark mark) {
      if (mark != Mark.NONE) {
        setIcon(Parts.icon(mark, ink));
        setIconTextGap((int) Math.round(ink.length(4)));
        setForeground(ink.textOf(mark));
      }
    }

    @Override
    protected void paintComponent(Graphics g) {
      super.paintComponent(g);
      Picture now = picture;
      if (now != null) {
        Graphics2D g2 = (Graphics2D) g.create();
        double side = ink.length(8);
        now.paint(
            g2,
            new Rectangle2D.Double(
                side, ink.length(4), getWidth() - 2 * side, getHeight() - ink.length(8)),
            ink);
        g2.dispose();
      }
    }
  }
}
