package org.evenpour.report.table;

import java.util.AbstractList;
import java.util.RandomAccess;

/** The rows of a record, as their indices; nothing is kept. */
final class AllRows extends AbstractList<Integer> implements RandomAccess {
  private final int rows;

  AllRows(int rows) {
    this.rows = rows;
  }

  @Override
  public Integer get(int index) {
    return index;
  }

  @Override
  public int size() {
    return rows;
  }
}
