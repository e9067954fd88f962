package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.evenpour.audit.ThickSides.Place;
import org.junit.jupiter.api.Test;

class ThickSidesTest {
  private static final List<Place> FIVE =
      Stream.of("top_left", "top_right", "bottom_left", "bottom_right", "center")
          .map(ThickSides::place)
          .map(Objects::requireNonNull)
          .toList();

  @Test
  void readsPlacesFromNames() {
    assertThat(ThickSides.place("Top_Left")).isEqualTo(new Place(-1, 1));
    assertThat(ThickSides.place("mid_right")).isEqualTo(new Place(1, 0));
    assertThat(ThickSides.place("center")).isEqualTo(new Place(0, 0));
    assertThat(ThickSides.place("p3")).isNull();
    assertThat(ThickSides.place("left_lug")).isNull();
    assertThat(ThickSides.place("top_top")).isNull();
  }

  /** Wedge = tilt × span: 1 mm/m over points 1 m apart is 1 mm. */
  @Test
  void findsTheTiltOfALevelAnodeTimesTheSpan() {
    double tiltMmPerM = 1;
    double halfSpanM = 0.5;
    double[][] weights = Objects.requireNonNull(ThickSides.weights(FIVE));
    double right = 0;
    double top = 0;
    for (int p = 0; p < FIVE.size(); p++) {
      double mm = 45 + tiltMmPerM * halfSpanM * FIVE.get(p).x();
      right += 2 * weights[0][p] * mm;
      top += 2 * weights[1][p] * mm;
    }
    assertThat(right).isCloseTo(tiltMmPerM * 2 * halfSpanM, within(1e-9));
    assertThat(top).isCloseTo(0, within(1e-9));
  }

  @Test
  void needsPlacesThatSpanAPlane() {
    assertThat(ThickSides.weights(FIVE.subList(0, 2))).isNull();
    assertThat(ThickSides.weights(List.of(new Place(-1, 0), new Place(0, 0), new Place(1, 0))))
        .isNull();
  }

  @Test
  void namesSidesAndCorners() {
    assertThat(ThickSides.name(1, 0.1)).isEqualTo("right");
    assertThat(ThickSides.name(-1, 0.1)).isEqualTo("left");
    assertThat(ThickSides.name(0.1, -1)).isEqualTo("bottom");
    assertThat(ThickSides.name(-1, 0.9)).isEqualTo("top_left");
    assertThat(ThickSides.name(1, -0.5)).isEqualTo("bottom_right");
  }
}
