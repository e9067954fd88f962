package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.words.Remark;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EventsReaderTest {

  @TempDir Path folder;

  private List<CastingEvent> read(String text) throws IntakeException {
    return EventsReader.read(LogText.write(folder, "events.csv", text), Profiles.NONE);
  }

  private String at(int line) {
    return folder.resolve("events.csv") + ":" + line;
  }

  @Test
  void readsEventsInTheOrderOfTheirTimes() throws IntakeException {
    assertThat(
            read(
                """
                \uFEFFAt;Wheel;Mold;Event;Note\r
                2026-03-05T00:00:00Z;N2;07;mold_changed;"new; from store"\r
                \r
                2026-03-04 12:00+01:00;;;strange_noise;\r
                2026-03-05T00:00:00Z;N2;;wheel_stopped;lunch\r
                """))
        .containsExactly(
            new CastingEvent(
                Instant.parse("2026-03-04T11:00:00Z"), "", null, "strange_noise", "", at(4)),
            new CastingEvent(
                Instant.parse("2026-03-05T00:00:00Z"),
                "N2",
                "7",
                "mold_changed",
                "new; from store",
                at(2)),
            new CastingEvent(
                Instant.parse("2026-03-05T00:00:00Z"),
                "N2",
                null,
                "wheel_stopped",
                "lunch",
                at(5)));
  }

  @Test
  void needsOnlyTimeAndEvent() throws IntakeException {
    assertThat(read("event,who,at\nscale_checked,crew red,2026-03-04T12:00Z\n"))
        .containsExactly(
            new CastingEvent(
                Instant.parse("2026-03-04T12:00:00Z"), "", null, "scale_checked", "", at(2)));
    assertThat(read("at,event\n")).isEmpty();
  }

  @Test
  void readsTimesWithoutOffsetInTheZoneOfTheirWheel() throws IntakeException {
    Path file =
        LogText.write(folder, "events.csv", "at,wheel,event\n2026-01-15T12:00,N2,wheel_stopped\n");
    assertThat(
            EventsReader.read(
                    file, ProfileReader.read("wheel.yaml", "{wheel: N2, zone: America/Santiago}"))
                .get(0)
                .at())
        .isEqualTo("2026-01-15T15:00:00Z"); // IANA time zone data base
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "at,mold\\n|:1: there is no column event among \"[at, mold]\"; an events file has the headings at,wheel,mold,event,note",
        "event,mold\\n|:1: there is no column at among",
        "at,event,at\\n|:1: the columns 1 and 3 are both called at; leave one out",
        "at,event\\nnoon,wash_batch\\n|:2: at \"noon\" is no time; write it like 2026-03-04T05:06:07+01:00",
        "at,event\\n\\n,wash_batch\\n|:3: at is missing; write it like",
        "at,event\\n2026-03-04T05:06Z,\\n|:2: event is missing; say what happened, such as mold_changed",
        "at,event\\n2026-03-04T05:06Z\\n|:2: there are 1 cells where the headings are 2;",
        "''|: this file is empty;"
      })
  void saysWhatIsWrongWhereAndHowToMendIt(String text, String message) {
    Path file = folder.resolve("events.csv");
    assertThatThrownBy(() -> read(text.replace("\\n", "\n")))
        .isInstanceOf(IntakeException.class)
        .message()
        .startsWith(file + message);
  }

  @Test
  void warnsOfEventsAtWheelsAndMoldsThatNoRowNames() throws IntakeException {
    Path log =
        LogText.write(
            folder, "june.csv", "cast_at,wheel,mold,mass_kg\n2026-03-04T05:00:00Z,E,7,388\n");
    List<CastingEvent> events =
        read(
            """
            at,wheel,mold,event
            2026-03-04T05:00Z,E,7,mold_changed
            2026-03-04T05:00Z,,7,mold_changed
            2026-03-04T05:00Z,E,,wheel_stopped
            2026-03-04T05:00Z,E,8,mold_changed
            2026-03-04T05:00Z,E,8,mold_dressed
            2026-03-04T05:00Z,W,7,mold_changed
            """);
    CastingRecord record =
        LogReader.read(
            List.of(log), Profiles.NONE, events, null, null, SetAside.nowhere(), Progress.NONE);
    assertThat(record.events()).isEqualTo(events);
    assertThat(record.warnings())
        .extracting(Remark::toString)
        .containsExactly(
            at(5)
                + ": no row of the log names the mold \"8\"; correct the event, or audit that mold's"
                + " log",
            at(6)
                + ": no row of the log names the mold \"8\"; correct the event, or audit that mold's"
                + " log",
            at(7)
                + ": no row of the log names the wheel \"W\"; correct the event, or audit that"
                + " wheel's log");
  }
}
