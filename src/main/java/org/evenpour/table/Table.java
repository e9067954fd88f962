package org.evenpour.table;

import java.util.List;
import java.util.NoSuchElementException;

/**
 * A table.
 *
 * @param key names it, for references from other tables
 * @param name as people call it
 * @param columns from left to right; no two with one key
 * @param rows from top to bottom; made when they are looked at, where there are very many
 * @param <R> what a row is about
 */
public record Table<R>(String key, String name, List<Column<R>> columns, List<R> rows) {

  /** Copies the columns and keeps the rows, of which there may be millions. */
  public Table {
    columns = List.copyOf(columns);
    if (columns.stream().map(Column::key).distinct().count() < columns.size()) {
      throw new IllegalArgumentException("two columns of table " + key + " have one key");
    }
  }

  /** The columns' keys. */
  public List<String> keys() {
    return columns.stream().map(Column::key).toList();
  }

  /**
   * A column.
   *
   * @throws NoSuchElementException if there is none of this key
   */
  public Column<R> column(String named) {
    return columns.stream()
        .filter(column -> column.key().equals(named))
        .findFirst()
        .orElseThrow(() -> new NoSuchElementException("table " + key + " has no " + named));
  }
}
