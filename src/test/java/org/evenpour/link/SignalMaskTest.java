package org.evenpour.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.evenpour.control.Episode;
import org.junit.jupiter.api.Test;

class SignalMaskTest {
  private static final int TURNS = 100;
  private static final Cells CELLS = new Cells(TURNS, (turn, mold) -> 390);

  private static int[] pieces(Episode.Chart chart, int index, Episode... episodes) {
    return new SignalMask(CELLS.grid(), List.of(episodes)).pieces(chart, index);
  }

  /** The first side's contrast moves where the second side does. */
  @Test
  void whicheverSideMovedCutsTheSidesSeries() {
    Episode second = Cells.episode(Episode.Chart.SIDE, 1, 40, 70, 2);
    int[] pieces = pieces(Episode.Chart.SIDE, 0, second);
    assertThat(pieces).isEqualTo(pieces(Episode.Chart.SIDE, 1, second));
    assertThat(pieces[20]).isZero();
    assertThat(pieces[55]).isEqualTo(1);
    assertThat(pieces[90]).isEqualTo(2);
  }

  @Test
  void aMoldsSignalCutsThatMoldsSeriesAlone() {
    Episode third = Cells.episode(Episode.Chart.MOLD, 3, 40, 70, 2);
    assertThat(pieces(Episode.Chart.MOLD, 3, third)[55]).isEqualTo(1);
    assertThat(pieces(Episode.Chart.MOLD, 4, third)).containsOnly(0);
    assertThat(pieces(Episode.Chart.WHEEL, -1, third)).containsOnly(0);
  }
}
