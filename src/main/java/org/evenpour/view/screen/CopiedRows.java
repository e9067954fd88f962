package org.evenpour.view.screen;

import java.awt.datatransfer.StringSelection;
import java.awt.datatransfer.Transferable;
import javax.swing.JComponent;
import javax.swing.JTable;
import javax.swing.TransferHandler;
import org.evenpour.table.Cell;
import org.evenpour.table.Csv;
import org.jspecify.annotations.Nullable;

/**
 * Copies the chosen rows of a table as a spreadsheet takes them: the headings, then a line a row,
 * tabs between what is seen in the cells.
 */
final class CopiedRows extends TransferHandler {

  @Override
  public int getSourceActions(JComponent part) {
    return COPY;
  }

  @Override
  protected @Nullable Transferable createTransferable(JComponent part) {
    return part instanceof JTable table && table.getSelectedRowCount() > 0
        ? new StringSelection(text(table))
        : null;
  }

  /** The chosen rows, in the order in which they are shown. */
  static String text(JTable table) {
    StringBuilder text = new StringBuilder();
    int columns = table.getColumnCount();
    for (int i = 0; i < columns; i++) {
      text.append(i == 0 ? "" : "\t").append(Csv.pasted(table.getColumnName(i), true));
    }
    text.append('\n');
    for (int row : table.getSelectedRows()) {
      for (int i = 0; i < columns; i++) {
        Object value = table.getValueAt(row, i);
        text.append(i == 0 ? "" : "\t")
            .append(
                value instanceof Cell cell
                    ? Csv.pasted(cell)
                    : Csv.pasted(value == null ? "" : value.toString(), true));
      }
      text.append('\n');
    }
    return text.toString();
  }
}
