package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OwnOffsetTest {
  @TempDir Path folder;

  private @Nullable ZoneOffset of(String log) throws Exception {
    return OwnOffset.of(Files.writeString(folder.resolve("log.csv"), log));
  }

  @Test
  void isThatOfTheTimesInTheLog() throws Exception {
    assertThat(OwnOffset.of(Path.of("samples", "tordilla-week", "casting-log.csv")))
        .isEqualTo(ZoneOffset.ofHours(-3));
    assertThat(of("at;kg\n2026-03-02 06:08+0530;1\n")).isEqualTo(ZoneOffset.ofHoursMinutes(5, 30));
    assertThat(of("at,kg\n2026-03-02T06:08:07.5Z,1\n")).isEqualTo(ZoneOffset.UTC);
  }

  @Test
  void isNotKnownWhereTimesHaveNoneOrDiffer() throws Exception {
    assertThat(of("at,kg\n2026-03-02T06:08:07,1\n")).isNull();
    assertThat(of("at\n2026-03-29T01:59:00+01:00\n2026-03-29T03:00:00+02:00\n")).isNull();
    assertThat(of("")).isNull();
  }
}
