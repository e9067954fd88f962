package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What cannot be simulated is refused in a line, and nothing is written. */
class SimulateCommandTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "--rows, -1, must be 0 or more",
    "--days, 1, simulate more days",
    "--days, 0, days must be 1 to 3660",
    "--molds, 1000, molds must be 16 to 40",
    "--size, NaN, is no number",
    "--fault, landslide, there is no fault"
  })
  void saysWhatCannotBeSimulated(String option, String value, String why) {
    Path out = folder.resolve("out");
    CommandLineCall call = CommandLineCall.of("simulate", "--out", out, option, value);
    assertThat(call.status()).isEqualTo(2);
    assertThat(call.err().lines()).hasSize(1);
    assertThat(call.err()).contains(why).doesNotContain("internal error");
    assertThat(out).doesNotExist();
  }
}
