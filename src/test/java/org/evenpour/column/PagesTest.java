package org.evenpour.column;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PagesTest {
  private static final int MANY = 3 * Pages.LENGTH + 17;

  /** A log larger than memory's share: the same values come back from the file as from memory. */
  @Test
  void keepsInAFileWhatMemorysShareDoesNotHold() {
    Pages pages = new Pages(Pages.LENGTH * 8L);
    DoubleColumn numbers = new DoubleColumn(pages);
    IntColumn indices = new IntColumn(pages);
    LongColumn times = new LongColumn(pages);
    for (int i = 0; i < MANY; i++) {
      numbers.add(i % 11 == 0 ? Double.NaN : 1.0 / (i + 1));
      indices.add(-i);
      times.add(1_000_000_000_000L + i);
    }

    assertThat(pages.mappedBytes()).isPositive();
    double[] copied = new double[MANY];
    numbers.copy(0, MANY, copied);
    for (int i = 0; i < MANY; i++) {
      Double expected = i % 11 == 0 ? Double.NaN : 1.0 / (i + 1);
      assertThat(numbers.get(i)).isEqualTo(expected);
      assertThat(copied[i]).isEqualTo(expected);
      assertThat(indices.get(i)).isEqualTo(-i);
      assertThat(times.get(i)).isEqualTo(1_000_000_000_000L + i);
    }
  }
}
