package org.evenpour.report.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

/** Checked against java.time. */
class IsoTimesTest {
  @Property
  void writesAsInstantsDo(
      @ForAll @LongRange(min = -62_000_000_000L, max = 250_000_000_000L) long second,
      @ForAll @LongRange(min = 0, max = 2) long millis) {
    Instant at = Instant.ofEpochSecond(second).plusMillis(millis);
    IsoTimes times = new IsoTimes();

    assertThat(times.text(at)).isEqualTo(at.toString());
    assertThat(times.text(at.plusSeconds(1))).isEqualTo(at.plusSeconds(1).toString());
  }

  @Test
  void writesTheFarthestInstants() {
    IsoTimes times = new IsoTimes();

    assertThat(times.text(Instant.MAX)).isEqualTo(Instant.MAX.toString());
    assertThat(times.text(Instant.MIN)).isEqualTo(Instant.MIN.toString());
    assertThat(times.text(Instant.ofEpochSecond(253_402_300_800L)))
        .isEqualTo("+10000-01-01T00:00:00Z");
  }
}
