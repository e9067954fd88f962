package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.lifecycle.AfterTry;
import net.jqwik.api.lifecycle.BeforeTry;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.WheelRecord;

/** Whatever a file holds: no row is lost, and nothing fails but with a place and a mend. */
class IntakeFuzzTest {
  private static final String LOG = valid();

  private Path file = Path.of("");

  @BeforeTry
  void makeFile() throws IOException {
    file = Files.createTempFile("fuzz", ".csv");
  }

  @AfterTry
  void removeFile() throws IOException {
    Files.deleteIfExists(file);
  }

  @Property(tries = 500)
  void standsEveryFileOfBytes(@ForAll byte[] bytes) throws IOException {
    read(bytes);
  }

  @Property(tries = 500)
  void standsEveryBodyUnderGoodHeadings(@ForAll byte[] bytes) throws IOException {
    byte[] headings = LOG.substring(0, LOG.indexOf('\n') + 1).getBytes(StandardCharsets.UTF_8);
    byte[] all = java.util.Arrays.copyOf(headings, headings.length + bytes.length);
    System.arraycopy(bytes, 0, all, headings.length, bytes.length);
    read(all);
  }

  @Property(tries = 1000)
  void standsEveryMutatedLog(@ForAll("mutated") byte[] bytes) throws IOException {
    read(bytes);
  }

  /** Else the mutations would all be of a log that is refused as a whole. */
  @Example
  void mutatesALogThatIsMostlyKept() throws IOException, IntakeException {
    Files.writeString(file, LOG);
    CastingRecord record = LogText.read("", file);
    assertThat(record.rowsRead()).isEqualTo(40);
    assertThat(record.rowsKept()).isGreaterThan(30);
  }

  private void read(byte[] bytes) throws IOException {
    Files.write(file, bytes);
    Profiles profiles;
    try {
      profiles =
          ProfileReader.read(
              "wheel.yaml",
              "{wheel: N2, molds: 26, zone: Europe/Berlin, characteristics: {mass: {plausible: [200, 600]}}}");
    } catch (IntakeException e) {
      throw new AssertionError(e);
    }
    List<String> text = new ArrayList<>();
    try (SetAside setAside = SetAside.besideLogs()) {
      CastingRecord record =
          LogReader.read(List.of(file), profiles, List.of(), null, null, setAside, Progress.NONE);
      check(record);
      setAside.complete().forEach(written -> text.add(written.toString()));
      assertThat(text).hasSize(record.rowsSetAside() > 0 ? 1 : 0);
    } catch (IntakeException e) {
      assertThat(e.getMessage()).startsWith(file.toString()).contains("; ").doesNotContain("\n");
    }
    for (String written : text) {
      Files.delete(Path.of(written));
    }
    try {
      EventsReader.read(file, profiles);
    } catch (IntakeException e) {
      assertThat(e.getMessage()).startsWith(file.toString()).contains("; ").doesNotContain("\n");
    }
  }

  private static void check(CastingRecord record) {
    int kept = 0;
    for (WheelRecord wheel : record.wheels()) {
      int rows = wheel.rows();
      kept += rows;
      assertThat(rows).isPositive();
      assertThat(wheel.turn().size()).isEqualTo(rows);
      assertThat(wheel.mold().size()).isEqualTo(rows);
      assertThat(wheel.side().size()).isEqualTo(rows);
      assertThat(wheel.serial().size()).isEqualTo(rows);
      for (Characteristic one : wheel.characteristics()) {
        assertThat(one.values().size()).isEqualTo(rows);
        for (double value : one.values().toArray()) {
          assertThat(value).isNotEqualTo(Double.POSITIVE_INFINITY);
        }
      }
      wheel
          .settings()
          .forEach(
              setting ->
                  assertThat(
                          setting.numbers() != null
                              ? setting.numbers().size()
                              : setting.categories() != null ? setting.categories().size() : -1)
                      .isEqualTo(rows));
      for (int mold : wheel.mold().toArray()) {
        assertThat(mold).isBetween(0, wheel.molds().size() - 1);
      }
    }
    assertThat(record.rowsRead()).isEqualTo(kept + record.rowsSetAside());
    assertThat(record.rowsKept()).isEqualTo(kept);
    assertThat(record.setAside()).hasSize((int) record.rowsSetAside());
  }

  @Provide
  Arbitrary<byte[]> mutated() {
    byte[] log = LOG.getBytes(StandardCharsets.UTF_8);
    Arbitrary<byte[]> pieces =
        Arbitraries.of(
                "\"",
                "\"\"",
                ",",
                ";",
                "\t",
                "\n",
                "\r",
                "\0",
                "\u00ff",
                "NaN",
                "1e400",
                "-",
                "2026-02-30T00:00Z",
                ",,,",
                "\uFEFF",
                "é",
                "''",
                "9".repeat(400),
                "e",
                " ",
                "\n\n",
                "\"\n",
                ",\"")
            .map(piece -> piece.getBytes(StandardCharsets.UTF_8));
    Arbitrary<byte[]> bytes = Arbitraries.bytes().array(byte[].class).ofMaxSize(3);
    return Combinators.combine(
            Arbitraries.integers().between(0, log.length),
            Arbitraries.integers().between(0, 5),
            Arbitraries.oneOf(pieces, bytes))
        .as((at, dropped, piece) -> new Edit(at, dropped, piece))
        .list()
        .ofMinSize(1)
        .ofMaxSize(6)
        .map(edits -> applied(log, edits));
  }

  @SuppressWarnings("ArrayRecordComponent")
  private record Edit(int at, int dropped, byte[] piece) {}

  private static byte[] applied(byte[] log, List<Edit> edits) {
    byte[] now = log;
    for (Edit edit : edits) {
      int at = Math.min(edit.at(), now.length);
      int rest = Math.min(now.length, at + edit.dropped());
      byte[] next = new byte[at + edit.piece().length + now.length - rest];
      System.arraycopy(now, 0, next, 0, at);
      System.arraycopy(edit.piece(), 0, next, at, edit.piece().length);
      System.arraycopy(now, rest, next, at + edit.piece().length, now.length - rest);
      now = next;
    }
    return now;
  }

  private static String valid() {
    StringBuilder log =
        new StringBuilder(
            "cast_at,wheel,charge,turn,mold,ladle,mass_kg,target_mass_kg,thickness_a_mm,thickness_b_mm,flow,hue,note\n");
    for (int row = 0; row < 40; row++) {
      log.append("2026-03-04T05:").append(10 + row).append(row % 2 == 0 ? ":00Z" : ":00");
      log.append(row % 3 == 0 ? ",N2," : ",N3,").append("C1,").append(1 + row / 26).append(',');
      log.append(1 + row % 26).append(row % 2 == 0 ? ",A," : ",B,").append(388 + row % 3);
      log.append(".5,388,43.1,43.").append(row % 10).append(",5").append(row).append(",red,");
      log.append(row % 4 == 0 ? "\"slow, then \"\"fast\"\"\"\n" : "plain\n");
    }
    return log.toString();
  }
}
