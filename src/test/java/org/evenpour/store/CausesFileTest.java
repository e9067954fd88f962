package org.evenpour.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Place;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CausesFileTest {
  private static final Instant AT = Instant.parse("2026-04-01T00:00:00.125Z");

  @TempDir Path folder;

  private CausesFile file() {
    return CausesFile.beside(folder.resolve("wheel.yaml"), Path.of("any.csv"));
  }

  private static CauseMark mark(Verdict verdict, Kind kind, String name, String why) {
    return new CauseMark(
        new Place("N2", "thickness", Scope.MOLD, "14", null, Direction.LOW),
        AT.minusSeconds(7200),
        AT.minusSeconds(3600),
        new Cause(kind, name),
        verdict,
        "Ana",
        why,
        AT);
  }

  private static CauseMark mark(String why) {
    return mark(Verdict.RIGHT, Kind.SETTING, "wash_volume_ml", why);
  }

  @Test
  void keepsWhatWasSaidToTheLetter() throws IOException {
    assertThat(file().read().marks()).isEmpty();
    List<CauseMark> all =
        List.of(
            mark("\"check\":\"00000000\"}, 23 °C \u2028 \ud83d\udd25 =1+1"),
            mark(Verdict.WRONG, Kind.EVENT, "nozzle_cleaned", "a\\tb"),
            mark(Verdict.OPEN, Kind.OTHER, "balanza corrida, según Íñigo", ""),
            new CauseMark(
                new Place("", "mass", Scope.SIDE, null, "A", Direction.HIGH),
                AT,
                AT,
                new Cause(Kind.OTHER, "x"),
                Verdict.RIGHT,
                "",
                "why",
                AT));
    for (int i = 0; i < all.size(); i++) {
      assertThat(file().add(all.get(i))).isEqualTo(all.subList(0, i + 1));
    }
    assertThat(file().read()).isEqualTo(new CausesFile.Contents(all, null));
    assertThat(Files.readAllLines(file().path())).hasSize(4);
    assertThat(file().path()).isEqualTo(folder.resolve("wheel.yaml.causes.jsonl"));
    assertThat(CausesFile.beside(null, folder.resolve("june.csv")).path())
        .isEqualTo(folder.resolve("june.csv.causes.jsonl"));
  }

  @Test
  void losesNothingWhereverAWriterIsKilled() throws IOException {
    file().add(mark("first"));
    int before = Files.readAllBytes(file().path()).length;
    file().add(mark("second"));
    byte[] after = Files.readAllBytes(file().path());
    for (int length = before; length <= after.length; length++) {
      Files.write(file().path(), Arrays.copyOf(after, length));
      CausesFile.Contents cut = file().read();
      int whole = length >= after.length - 1 ? 2 : 1;
      assertThat(cut.marks()).as("%d bytes", length).hasSize(whole);
      boolean isCut = length > before && whole == 1;
      assertThat(cut.warning() != null).as("%d bytes", length).isEqualTo(isCut);
      if (isCut) {
        assertThat(String.valueOf(cut.warning()))
            .contains("causes.jsonl:2: ", "must be marked again");
      }

      assertThat(file().add(mark("third"))).hasSize(whole + 1);
      assertThat(file().read().warning()).isNull();
      assertThat(file().read().marks()).hasSize(whole + 1);
    }
  }

  @Test
  void saysWhereALineIsDamagedAndAddsNothingToIt() throws IOException {
    file().add(mark("first"));
    file().add(mark("second"));
    String damaged = Files.readString(file().path()).replace("first", "thirst");
    Files.writeString(file().path(), damaged);

    assertThatThrownBy(() -> file().read())
        .isInstanceOf(IOException.class)
        .hasMessageContaining("causes.jsonl:1: this line is damaged")
        .hasMessageContaining("; put back a copy of the file from before, or begin a new file");
    assertThatThrownBy(() -> file().add(mark("third"))).hasMessageContaining("causes.jsonl:1");
    assertThat(Files.readString(file().path())).isEqualTo(damaged);
  }

  @Test
  void refusesWhatItDoesNotKnowAndPassesOverWhatALaterProgramAdds() throws IOException {
    file().add(mark("first"));
    String line = Files.readString(file().path()).strip();
    String json = line.substring(0, line.indexOf(",\"check\"")) + "}";
    LineFile lines = new LineFile(file().path(), null);
    lines.append(before -> List.of(json.replace("\"who\"", "\"photo\":[1,null],\"who\"")));
    assertThat(file().read().marks()).hasSize(2);
    lines.append(before -> List.of(json.replace("\"right\"", "\"perhaps\"")));
    assertThatThrownBy(() -> file().read())
        .hasMessageContaining("causes.jsonl:3: the verdict perhaps is not known here; use");
  }

  @Test
  void writersInSeveralProcessesWaitForOneAnother() throws Exception {
    int each = 20;
    ProcessBuilder other =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            Marker.class.getName(),
            file().path().toString(),
            Integer.toString(each));
    other.redirectErrorStream(true);
    Process process = other.start();
    Marker.main(new String[] {file().path().toString(), Integer.toString(each)});
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).as(said).isZero();
    assertThat(file().read().marks()).hasSize(2 * each);
  }

  /** Marks so many times. */
  static final class Marker {
    private Marker() {}

    /** File and count. */
    public static void main(String[] arguments) throws IOException {
      for (int i = 0; i < Integer.parseInt(arguments[1]); i++) {
        new CausesFile(Path.of(arguments[0])).add(mark("mark " + i));
      }
    }
  }
}
