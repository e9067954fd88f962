package org.evenpour.column;

import java.nio.DoubleBuffer;
import java.util.ArrayList;
import java.util.List;

/**
 * A growing column of {@code double} values; owned by one thread while it grows. What {@link
 * #frozen} gives may be read by any.
 */
public final class DoubleColumn {
  private final Pages source;
  private final List<DoubleBuffer> pages;
  private int size;

  /**
   * @param source where its pages come from
   */
  public DoubleColumn(Pages source) {
    this(source, new ArrayList<>(), 0);
  }

  private DoubleColumn(Pages source, List<DoubleBuffer> pages, int size) {
    this.source = source;
    this.pages = pages;
    this.size = size;
  }

  /** The values that there are now; nothing may be added to it. Costs a step for each page. */
  public DoubleColumn frozen() {
    return new DoubleColumn(source, List.copyOf(pages), size);
  }

  /** Appends a value. */
  public void add(double value) {
    int at = size & (Pages.LENGTH - 1);
    if (at == 0) {
      pages.add((size == 0 ? source.first(8) : source.next(8)).asDoubleBuffer());
    } else if (size < Pages.LENGTH && at == pages.get(0).capacity()) {
      pages.set(0, source.larger(at, 8).asDoubleBuffer().put(0, pages.get(0), 0, at));
    }
    pages.get(size >>> 15).put(at, value);
    size++;
  }

  /** The value at an index from 0. */
  public double get(int index) {
    return pages.get(index >>> 15).get(index & (Pages.LENGTH - 1));
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
      pages.get((from + done) >>> 15).get(at, into, done, part);
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
