package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class TurnCounterTest {

  /** A wheel that is run for many turns, some molds skipped: the planted turns are the check. */
  @Property
  void findsThePlantedTurnsThoughMoldsAreSkipped(
      @ForAll @IntRange(min = 6, max = 40) int molds,
      @ForAll boolean descending,
      @ForAll @DoubleRange(min = 0, max = 0.2) double skipped,
      @ForAll long seed) {
    Random random = new Random(seed);
    TurnCounter counter = new TurnCounter(molds);
    List<Integer> found = new ArrayList<>();
    List<Integer> planted = new ArrayList<>();
    int skippedInARow = 0;
    for (int turn = 1; turn <= 20; turn++) {
      for (int position = 1; position <= molds; position++) {
        // The first turn is whole, so that the direction shows; and never is half the wheel skipped
        // at a stretch, of which nobody could say whether it was one turn or two.
        if (turn > 1 && skippedInARow + 2 < molds / 2.0 && random.nextDouble() < skipped) {
          skippedInARow++;
          continue;
        }
        skippedInARow = 0;
        int mold = descending ? molds + 1 - position : position;
        planted.add(turn);
        found.add(counter.next(mold - 1, mold));
      }
    }
    assertThat(found).isEqualTo(planted);
  }

  @Test
  void countsFromTheMoldAtWhichTheLogBegins() {
    assertThat(turns(null, 3, 4, 5, 1, 2, 3, 4, 5, 1)).containsExactly(1, 1, 1, 2, 2, 2, 2, 2, 3);
  }

  @Test
  void beginsATurnWhenTheNumberJumpsBackThoughThatMoldWasSkippedBefore() {
    // Mold 1 is skipped in the second turn, mold 2 in the first.
    assertThat(turns(null, 1, 3, 4, 5, 6, 2, 3, 4, 5, 6))
        .containsExactly(1, 1, 1, 1, 1, 2, 2, 2, 2, 2);
  }

  @Test
  void staysInTheTurnWhenTwoMoldsAreCastInExchangedOrder() {
    assertThat(turns(26, 1, 2, 4, 3, 5, 6)).containsOnly(1);
  }

  @Test
  void countsMoldsWithoutNumbersByTheirComingAgain() {
    TurnCounter counter = new TurnCounter(null);
    List<Integer> found = new ArrayList<>();
    for (int mold : new int[] {0, 1, 2, 0, 2, 0, 1}) {
      found.add(counter.next(mold, -1));
    }
    assertThat(found).containsExactly(1, 1, 1, 2, 2, 3, 3);
  }

  @Test
  void goesOnAfterALogThatGaveItsTurns() {
    TurnCounter counter = new TurnCounter(null);
    counter.follow(41);
    assertThat(List.of(counter.next(0, 1), counter.next(1, 2), counter.next(0, 1)))
        .containsExactly(42, 42, 43);
  }

  private static List<Integer> turns(@Nullable Integer molds, int... numbers) {
    TurnCounter counter = new TurnCounter(molds);
    List<Integer> seen = new ArrayList<>();
    List<Integer> turns = new ArrayList<>();
    for (int number : numbers) {
      if (!seen.contains(number)) {
        seen.add(number);
      }
      turns.add(counter.next(seen.indexOf(number), number));
    }
    return turns;
  }
}
