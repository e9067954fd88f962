package org.evenpour.view.model;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class StretchTest {
  @Property
  void isWholeTurnsWithinTheBounds(
      @ForAll @DoubleRange(min = -50, max = 300) double one,
      @ForAll @DoubleRange(min = -50, max = 300) double other) {
    Stretch stretch = Stretch.between(one, other, 1, 241);
    assertThat(stretch.from()).isGreaterThanOrEqualTo(1).isEqualTo(Math.rint(stretch.from()));
    assertThat(stretch.to()).isLessThanOrEqualTo(241).isEqualTo(Math.rint(stretch.to()));
    assertThat(stretch.to() - stretch.from()).isGreaterThanOrEqualTo(1);
  }

  @Test
  void holdsBothPlacesWhicheverComesFirst() {
    assertThat(Stretch.between(20.7, 10.2, 1, 241)).isEqualTo(new Stretch(10, 21));
    assertThat(Stretch.between(10.2, 20.7, 1, 241)).isEqualTo(new Stretch(10, 21));
  }
}
