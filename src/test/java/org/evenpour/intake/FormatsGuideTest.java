package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.evenpour.casting.CastingRecord;
import org.evenpour.words.Remark;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The examples of {@code docs/formats.md} are read as it says. */
class FormatsGuideTest {
  private static final Pattern EXAMPLE = Pattern.compile("```(?:yaml)?\n(.*?)```", Pattern.DOTALL);

  @Test
  void readsItsLogEventsAndProfile(@TempDir Path folder) throws IOException, IntakeException {
    List<String> examples =
        EXAMPLE
            .matcher(Files.readString(Path.of("docs", "formats.md")))
            .results()
            .map((MatchResult one) -> one.group(1))
            .toList();
    String log = starting(examples, "cast_at,");
    Profiles profiles = ProfileReader.read("n2.yaml", starting(examples, "wheel: N2"));
    Path events = LogText.write(folder, "events.csv", starting(examples, "at,wheel"));
    CastingRecord record =
        LogReader.read(
            List.of(LogText.write(folder, "june.csv", log)),
            profiles,
            EventsReader.read(events, profiles),
            null,
            null,
            SetAside.nowhere(),
            Progress.NONE);
    assertThat(record.rowsKept()).isEqualTo(2);
    assertThat(record.events()).hasSize(2);
    assertThat(record.warnings())
        .extracting(Remark::toString)
        .containsExactly(
            "the profile speaks of the setting \"spray_flow_l_min\", which is no column of the log",
            events
                + ":2: no row of the log names the mold \"14\"; correct the event, or audit that"
                + " mold's log");
  }

  private static String starting(List<String> examples, String begin) {
    return examples.stream().filter(one -> one.startsWith(begin)).findFirst().orElseThrow();
  }
}
