package org.evenpour.feed;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.evenpour.intake.LogHeader;
import org.evenpour.intake.Profiles;
import org.evenpour.words.Remark;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GrowingLogTest {
  private static final String HEADINGS = "cast_at,mold,mass_kg\n";
  private static final Instant NOW = Instant.parse("2026-03-02T10:00:00Z");

  @TempDir Path folder;
  private Path file;
  private Instant now = NOW;
  private GrowingLog log;
  private final Heard heard = new Heard();

  @BeforeEach
  void open() {
    file = folder.resolve("log.csv");
    log = new GrowingLog(file, Profiles.NONE, () -> now, Duration.ofMillis(10));
  }

  @Test
  void waitsForTheRestOfALine() throws IOException {
    write(HEADINGS + "t1,1,390\nt2,2,3");
    log.look(heard);
    assertThat(heard.rows).containsExactly("2:t1,1,390");

    append("91.5");
    log.look(heard);
    assertThat(heard.rows).hasSize(1);

    append("\nt3,3,389\n");
    log.look(heard);
    assertThat(heard.rows).containsExactly("2:t1,1,390", "3:t2,2,391.5", "4:t3,3,389");
  }

  @Test
  void waitsForTheRestOfTheHeadings() throws IOException {
    write("\uFEFFcast_at,mo");
    log.look(heard);
    append("ld,mass_kg\r\nt1,1,390\r\n");
    log.look(heard);
    assertThat(heard.headers).hasSize(1);
    assertThat(heard.rows).containsExactly("2:t1,1,390");
    assertThat(heard.troubles).isEmpty();
  }

  @Test
  void keepsALineBreakWithinQuotesInItsRow() throws IOException {
    write("cast_at,mold,mass_kg,note\nt1,1,390,\"stuck\n");
    log.look(heard);
    assertThat(heard.rows).isEmpty();
    append("at lift\"\nt2,2,391,\n");
    log.look(heard);
    assertThat(heard.rows).containsExactly("2:t1,1,390,\"stuck\nat lift\"", "4:t2,2,391,");
  }

  @Test
  void handsOnTheBeginningOfAnEndlessLineAndPassesOverTheRest() throws IOException {
    write(HEADINGS + "x".repeat(900_000));
    log.look(heard);
    assertThat(heard.rows).isEmpty();
    append("y".repeat(900_000) + "\nt2,2,391\n");
    log.look(heard);
    assertThat(heard.rows).hasSize(2);
    // More than a row may have, so that it is set aside for its length.
    assertThat(heard.rows.get(0)).startsWith("2:xxx").hasSizeGreaterThan(1 << 20);
    assertThat(heard.rows.get(1)).isEqualTo("3:t2,2,391");
  }

  /** Row of 1 MiB, as the guide promises, in whatever pieces it comes. */
  @Test
  void handsOnAVeryLongRowWhole() throws IOException {
    String row = "t1," + "1".repeat((1 << 20) - 7) + ",390";
    write(HEADINGS + row.substring(0, 20_000));
    log.look(heard);
    append(row.substring(20_000, 700_000));
    log.look(heard);
    append(row.substring(700_000) + "\n");
    log.look(heard);
    assertThat(heard.rows).hasSize(1);
    assertThat(heard.rows.get(0)).hasSize(2 + (1 << 20));
  }

  @Test
  void aStrayQuoteCostsOneRowAndHoldsNoneBack() throws IOException {
    write(HEADINGS + "t1,1,390\nt2,\"2,391\n");
    log.look(heard);
    append("t3,3,391\nt4,4,391\n");
    log.look(heard);
    assertThat(heard.rows).hasSize(1);
    append("t5,5,391\n");
    log.look(heard);
    assertThat(heard.rows)
        .containsExactly("2:t1,1,390", "3:t2,\"2,391", "4:t3,3,391", "5:t4,4,391", "6:t5,5,391");
  }

  /** As an export that is written anew each time does, or a copy that is then cut off. */
  @Test
  void doesNotHandOnAgainWhatWasReadBefore() throws IOException {
    write(HEADINGS + "t1,1,390\nt2,2,391\nbad\n");
    log.look(heard);
    for (int round = 0; round < 5; round++) {
      write(HEADINGS);
      log.look(heard);
      write(HEADINGS + "t1,1,390\nt2,2,391\nbad\n");
      log.look(heard);
    }
    assertThat(heard.rows).containsExactly("2:t1,1,390", "3:t2,2,391", "4:bad");
    // A row that was corrected is new, and so is what is added.
    write(HEADINGS + "t1,1,390\nt2,2,392\nt3,3,393\n");
    log.look(heard);
    append("t1,1,390\n");
    log.look(heard);
    assertThat(heard.rows.subList(3, heard.rows.size()))
        .containsExactly("3:t2,2,392", "4:t3,3,393", "5:t1,1,390");
  }

  @Test
  void aSpellOfWrongColumnsRepeatsNothing() throws IOException {
    write(HEADINGS + "t1,1,390\nt2,2,391\n");
    log.look(heard);
    write("when,which,how much\nt1,1,390\nt2,2,391\n");
    log.look(heard);
    assertThat(heard.troubles).hasSize(1);
    write(HEADINGS + "t1,1,390\nt2,2,391\nt3,3,392\n");
    log.look(heard);
    assertThat(heard.rows).containsExactly("2:t1,1,390", "3:t2,2,391", "4:t3,3,392");
    assertThat(heard.recoveries).isEqualTo(1);
  }

  @Test
  void waitsForAFileThatIsNotThereYet() throws IOException {
    log.look(heard);
    log.look(heard);
    assertThat(heard.troubles).hasSize(1);
    assertThat(heard.troubles.get(0)).contains("log.csv").contains("no such file");
    write(HEADINGS + "t1,1,390\n");
    log.look(heard);
    assertThat(heard.recoveries).isEqualTo(1);
    assertThat(heard.rows).hasSize(1);
  }

  @Test
  void readsARotatedLogToItsEndAndThenTheNewOne() throws IOException {
    write(HEADINGS + "t1,1,390\n");
    log.look(heard);
    append("t2,2,391\nt3,3,392");
    Files.move(file, folder.resolve("log.csv.1"));
    log.look(heard);
    write("cast_at,mold,crew,mass_kg\nt4,4,C2,393\n");
    log.look(heard);
    assertThat(heard.rows)
        .containsExactly("2:t1,1,390", "3:t2,2,391", "4:t3,3,392", "2:t4,4,C2,393");
    assertThat(heard.headers).hasSize(2);
    assertThat(heard.headers.get(1).columns()).hasSize(4);
  }

  @Test
  void readsALogThatWasCutOffFromItsBeginning() throws IOException {
    write(HEADINGS + "t1,1,390\nt2,2,391\n");
    log.look(heard);
    write(HEADINGS);
    log.look(heard);
    append("t3,3,392\n");
    log.look(heard);
    assertThat(heard.rows).containsExactly("2:t1,1,390", "3:t2,2,391", "2:t3,3,392");
  }

  @Test
  void noticesALogThatWasCutOffAndGrewAgainBetweenTwoLooks() throws IOException {
    write(HEADINGS + "t1,1,390\n");
    log.look(heard);
    write(HEADINGS + "t5,5,395\nt6,6,396\n");
    log.look(heard);
    assertThat(heard.rows).containsExactly("2:t1,1,390", "2:t5,5,395", "3:t6,6,396");
  }

  @Test
  void goesOnInALogThatWasWrittenAnewWithMoreRows() throws IOException {
    write(HEADINGS + "t1,1,390\n");
    log.look(heard);
    Path anew = folder.resolve("anew");
    Files.writeString(anew, HEADINGS + "t1,1,390\nt2,2,391\n");
    Files.move(anew, file, StandardCopyOption.REPLACE_EXISTING);
    log.look(heard);
    assertThat(heard.rows).containsExactly("2:t1,1,390", "3:t2,2,391");
    assertThat(heard.headers).hasSize(1);
  }

  @Test
  void tellsHeadingsThatCannotBeUsedUntilTheyAreMended() throws IOException {
    write("when,what\nt1,1\n");
    log.look(heard);
    assertThat(heard.troubles).hasSize(1);
    assertThat(heard.troubles.get(0)).contains("log.csv:1").contains("cast_at");
    log.look(heard);
    assertThat(heard.troubles).hasSize(1);
    assertThat(heard.caughtUp).isEmpty();
    write(HEADINGS + "t1,1,390\n");
    log.look(heard);
    assertThat(heard.recoveries).isEqualTo(1);
    assertThat(heard.rows).containsExactly("2:t1,1,390");
  }

  @Test
  void tellsAReadErrorAndTriesAgain() throws IOException {
    Files.createDirectory(file);
    log.look(heard);
    assertThat(heard.troubles).hasSize(1);
    assertThat(heard.troubles.get(0)).contains("folder").contains("trying again");
    Files.delete(file);
    write(HEADINGS + "t1,1,390\n");
    log.look(heard);
    assertThat(heard.recoveries).isEqualTo(1);
    assertThat(heard.rows).hasSize(1);
  }

  @Test
  void datesWhatWasThereByTheFileAndWhatComesByTheClock() throws IOException {
    write(HEADINGS + "t1,1,390\n");
    Instant written = Instant.parse("2026-03-01T08:00:00Z");
    Files.setLastModifiedTime(file, FileTime.from(written));
    log.look(heard);
    append("t2,2,391\n");
    now = NOW.plusSeconds(30);
    log.look(heard);
    assertThat(heard.arrivals).containsExactly(written, now);
    assertThat(heard.caughtUp).containsExactly(NOW, now);
  }

  @Test
  void neverDatesArrivalAheadOfItsClock() throws IOException {
    write(HEADINGS + "t1,1,390\n");
    Files.setLastModifiedTime(file, FileTime.from(NOW.plusSeconds(3600)));
    log.look(heard);
    assertThat(heard.arrivals).containsExactly(NOW);
  }

  @Test
  void followsOnItsOwnThreadAndStops() throws Exception {
    BlockingQueue<String> came = new LinkedBlockingQueue<>();
    Heard queued =
        new Heard() {
          @Override
          public void row(long line, byte[] text, Instant arrivedAt) {
            came.add(Thread.currentThread().getName() + " " + line);
          }
        };
    log.start(queued);
    write(HEADINGS + "t1,1,390\n");
    assertThat(came.poll(10, TimeUnit.SECONDS)).isEqualTo("evenpour-feed 2");
    append("t2,2,391\n");
    assertThat(came.poll(10, TimeUnit.SECONDS)).isEqualTo("evenpour-feed 3");
    log.close();
    append("t3,3,392\n");
    assertThat(came.poll(100, TimeUnit.MILLISECONDS)).isNull();
  }

  private void write(String text) throws IOException {
    Files.writeString(file, text);
  }

  private void append(String text) throws IOException {
    Files.writeString(file, text, StandardOpenOption.APPEND);
  }

  /** Remembers all that was told. */
  private static class Heard implements Feed.Listener {
    final List<LogHeader> headers = new ArrayList<>();
    final List<String> rows = new ArrayList<>();
    final List<Instant> arrivals = new ArrayList<>();
    final List<Instant> caughtUp = new ArrayList<>();
    final List<String> troubles = new ArrayList<>();
    int recoveries;

    @Override
    public void header(LogHeader header) {
      headers.add(header);
    }

    @Override
    public void row(long line, byte[] text, Instant arrivedAt) {
      rows.add(line + ":" + new String(text, StandardCharsets.UTF_8).stripTrailing());
      arrivals.add(arrivedAt);
    }

    @Override
    public void caughtUp(Instant at) {
      caughtUp.add(at);
    }

    @Override
    public void trouble(Remark what) {
      troubles.add(what.toString());
    }

    @Override
    public void recovered() {
      recoveries++;
    }
  }
}
