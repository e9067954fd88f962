package org.evenpour.column;

import java.nio.DoubleBuffer;
import java.util.Arrays;

/**
 * A growing column of {@code double} values; owned by one thread while it grows. What {@link
 * #frozen} gives may be read by any.
 */
public final class DoubleColumn {
  private final Pages source;
  private DoubleBuffer[] pages;
  private int size;

  /**
   * @param source where its pages come from
   */
  public DoubleColumn(Pages source) {
    this(source, new DoubleBuffer[1], 0);
  }

  private DoubleColumn(Pages source, DoubleBuffer[] pages, int size) {
    this.source = source;
    this.pages = pages;
    this.size = size;
  }

  /** The values that there are now; nothing may be added to it. Costs a step for each page. */
  public DoubleColumn frozen() {
    return new DoubleColumn(source, pages.clone(), size);
  }

  /** Appends a value. */
  public void add(double value) {
    page().put(size & (Pages.LENGTH - 1), value);
    size++;
  }

  /**
   * Appends some values.
   *
   * @param from index of the first
   * @param to index after the last
   */
  public void addAll(double[] values, int from, int to) {
    int next = from;
    while (next < to) {
      DoubleBuffer page = page();
      int at = size & (Pages.LENGTH - 1);
      int part = Math.min(to - next, page.capacity() - at);
      page.put(at, values, next, part);
      next += part;
      size += part;
    }
  }

  /** The page that the next value goes to. */
  private DoubleBuffer page() {
    int at = size & (Pages.LENGTH - 1);
    int index = size >>> 15;
    if (at == 0) {
      pages = index == pages.length ? Arrays.copyOf(pages, 2 * index) : pages;
      pages[index] = (size == 0 ? source.first(8) : source.next(8)).asDoubleBuffer();
    } else if (index == 0 && at == pages[0].capacity()) {
      pages[0] = source.larger(at, 8).asDoubleBuffer().put(0, pages[0], 0, at);
    }
    return pages[index];
  }

  /** The value at an index from 0. */
  public double get(int index) {
    return pages[index >>> 15].get(index & (Pages.LENGTH - 1));
  }

  /** How many values there are. */
  public int size() {
    return size;
  }

  /**
   * Copies values out, many at a time.
   *
   * @param from index of the first
   * @param length how many
   * @param into filled from its start
   */
  public void copy(int from, int length, double[] into) {
    int done = 0;
    while (done < length) {
      int at = (from + done) & (Pages.LENGTH - 1);
      int part = Math.min(length - done, Pages.LENGTH - at);
      pages[(from + done) >>> 15].get(at, into, done, part);
      done += part;
    }
  }

  /** All values in one array. */
  public double[] toArray() {
    double[] all = new double[size];
    copy(0, size, all);
    return all;
  }
}
