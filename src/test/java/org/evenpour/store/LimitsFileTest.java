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
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.evenpour.casting.Specification;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsBook.Retirement;
import org.evenpour.control.LimitsBook.SpecificationRevision;
import org.evenpour.control.LimitsVersion;
import org.evenpour.control.Versions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LimitsFileTest {
  private static final Instant AT = Instant.parse("2026-04-01T00:00:00Z");

  @TempDir Path folder;

  private LimitsFile file() {
    return new LimitsFile(folder.resolve("wheel.yaml.limits.jsonl"));
  }

  private static LimitsVersion draft(String characteristic) {
    return Versions.ofFigures("N2", characteristic, 1.25, 0.1, 1.0 / 3, 390.1);
  }

  /** Java's own troublemakers (JDK-4511638) and any bits at all. */
  @Test
  void keepsEveryDoubleToTheLastBit() throws IOException {
    SplittableRandom random = new SplittableRandom(20260325);
    for (int round = 0; round < 60; round++) {
      double[] x = random.longs(60).mapToDouble(Double::longBitsToDouble).toArray();
      x = Arrays.stream(x).filter(Double::isFinite).toArray();
      System.arraycopy(
          new double[] {2.0E-3, 1.0E23, 5E-324, Double.MAX_VALUE, -0.0, 2.2E-322}, 0, x, 0, 6);
      LimitsVersion draft = Versions.ofFigures("N2", "c" + round, x);

      LimitsVersion approved = file().approve(List.of(draft)).get(0);
      LimitsVersion read = file().read().book().versions().get(round);

      assertThat(Versions.bits(read)).isEqualTo(Versions.bits(draft));
      assertThat(approved.version()).isEqualTo(1);
      assertThat(read.molds()).isEqualTo(draft.molds());
      assertThat(read.sides()).isEqualTo(draft.sides());
      assertThat(read.leftOut()).isEqualTo(draft.leftOut());
      assertThat(read.base()).isEqualTo(draft.base());
      assertThat(read.who() + read.why()).isEqualTo(draft.who() + draft.why());
      assertThat(read.validFrom()).isEqualTo(draft.validFrom());
      assertThat(read.approvedAt()).isEqualTo(draft.approvedAt());
    }
  }

  /** Three characteristics of the sample's first 90 turns, approved before pours had scores. */
  @Test
  void readsWhatAnEarlierVersionApproved() throws IOException {
    Path earlier = Path.of("src/test/resources/limits/approved-before-scores.limits.jsonl");

    List<LimitsVersion> versions = new LimitsFile(earlier).read().book().versions();

    assertThat(versions).hasSize(3);
    for (LimitsVersion version : versions) {
      assertThat(version.limits().takesPoursAsNormal()).isTrue();
      assertThat(version.limits().pourReach(1))
          .isEqualTo(version.limits().pourLimit() * version.limits().pour().sigma());
      assertThat(version.limits().wear().perTurn()).isEmpty();
    }
  }

  @Test
  void numbersTheVersionsOfEachWheelAndCharacteristic() throws IOException {
    file().approve(List.of(draft("mass"), draft("wedge")));
    List<LimitsVersion> second =
        file().approve(List.of(draft("mass"), Versions.ofFigures("N1", "mass", 1, 2)));

    assertThat(second).extracting(LimitsVersion::version).containsExactly(2, 1);
    assertThat(file().read().book().versions()).hasSize(4);
  }

  /** A process that is killed leaves any beginning of its line. */
  @Test
  void losesNothingWhereverAWriterIsKilled() throws IOException {
    file().approve(List.of(draft("mass")));
    byte[] before = Files.readAllBytes(file().path());
    file().approve(List.of(draft("mass")));
    byte[] after = Files.readAllBytes(file().path());
    LimitsVersion first = file().read().book().versions().get(0);
    for (int length = before.length; length <= after.length; length++) {
      Files.write(file().path(), Arrays.copyOf(after, length));

      LimitsFile.Contents cut = file().read();
      // Whole but for its line end, it is whole.
      int whole = length >= after.length - 1 ? 2 : 1;
      assertThat(cut.book().versions()).as("%d bytes", length).hasSize(whole);
      boolean isCut = length > before.length && whole == 1;
      assertThat(cut.warning() != null).as("%d bytes", length).isEqualTo(isCut);

      file().approve(List.of(draft("mass")));
      LimitsFile.Contents mended = file().read();
      assertThat(mended.warning()).isNull();
      assertThat(mended.book().versions()).as("%d bytes", length).hasSize(whole + 1);
      assertThat(Versions.bits(mended.book().versions().get(0))).isEqualTo(Versions.bits(first));
      assertThat(mended.book().versions().get(whole).version()).isEqualTo(whole + 1);
    }
  }

  /** Whoever closes a cut line may be killed as well. */
  @Test
  void closesALineThatWasCutOffTwice() throws IOException {
    file().approve(List.of(draft("mass")));
    String whole = Files.readString(file().path());
    for (String rest : new String[] {"{\"format\":\"even", "{\"for\tunfin", "{\"for\tunfinished"}) {
      Files.writeString(file().path(), whole + rest);
      file().approve(List.of(draft("mass")));
      assertThat(file().read().book().versions()).hasSize(2);
    }
  }

  @Test
  void saysWhereALineIsDamaged() throws IOException {
    file().approve(List.of(draft("mass"), draft("wedge"), draft("thickness")));
    List<String> lines = Files.readAllLines(file().path());
    String damaged = lines.get(1).replace("390.1", "390.2");
    Files.write(file().path(), List.of(lines.get(0), damaged, lines.get(2)));

    assertThatThrownBy(() -> file().read())
        .isInstanceOf(IOException.class)
        .hasMessageContaining("limits.jsonl:2: this line is damaged")
        .hasMessageContaining("; put back a copy");
    byte[] bytes = Files.readAllBytes(file().path());
    assertThatThrownBy(() -> file().approve(List.of(draft("mass"))))
        .hasMessageContaining("limits.jsonl:2");
    assertThat(Files.readAllBytes(file().path())).isEqualTo(bytes);
  }

  @Test
  void noticesALineThatWasTakenOut() throws IOException {
    file().approve(List.of(draft("mass"), draft("mass"), draft("mass")));
    List<String> lines = Files.readAllLines(file().path());
    Files.write(file().path(), List.of(lines.get(0), lines.get(2)));

    assertThatThrownBy(() -> file().read())
        .hasMessageContaining("limits.jsonl:2: lines are missing before this one (1 in all)");
  }

  @Test
  void passesOverWhatALaterProgramAddsAndRefusesWhatItCannotJudgeBy() throws IOException {
    file().approve(List.of(draft("mass")));
    String line = Files.readString(file().path()).strip();
    String json = line.substring(0, line.indexOf(",\"check\"")) + "}";
    new LineFile(file().path(), null)
        .append(
            before ->
                List.of(
                    json.replace("\"version\":1", "\"version\":2,\"reviewed\":{\"by\":[1,null]}")));
    assertThat(file().read().book().versions()).hasSize(2);

    new LineFile(file().path(), null)
        .append(before -> List.of(json.replace("limits_approved", "limits_doubled")));
    assertThatThrownBy(() -> file().read())
        .hasMessageContaining(":3: the record limits_doubled is not known here; use");
  }

  @Test
  void keepsRetirementsAndSpecifications() throws IOException {
    SpecificationRevision revision =
        new SpecificationRevision(
            null, "mass", new Specification(378.5, null, 398.0), "kg", AT, AT, "Ana", "contract");
    Retirement retirement = new Retirement("N2", "mass", 1, AT, AT, "Ana", "new wheel");
    file().approve(List.of(draft("mass")));
    file().specify(revision);
    file().retire(List.of(retirement));

    LimitsBook book = file().read().book();
    assertThat(book.revisions()).containsExactly(revision);
    assertThat(book.retirements()).containsExactly(retirement);
    assertThat(book.inForce("N2", "mass", AT.minusMillis(1))).isNotNull();
    assertThat(book.inForce("N2", "mass", AT)).isNull();
    assertThatThrownBy(() -> file().retire(List.of(retirement)))
        .hasMessageContaining("is retired already; ");
    assertThatThrownBy(
            () -> file().retire(List.of(new Retirement("N2", "mass", 7, AT, AT, "Ana", "x"))))
        .hasMessageContaining("version 7 of mass is not there; ");
  }

  @Test
  void writersInSeveralProcessesWaitForOneAnother() throws Exception {
    int each = 15;
    ProcessBuilder other =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            Approver.class.getName(),
            file().path().toString(),
            Integer.toString(each));
    other.redirectErrorStream(true);
    Process one = other.start();
    Process two = other.start();
    Approver.main(new String[] {file().path().toString(), Integer.toString(each)});
    for (Process process : List.of(one, two)) {
      String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
      assertThat(process.exitValue()).as(said).isZero();
    }

    assertThat(file().read().book().versions())
        .extracting(LimitsVersion::version)
        .hasSize(3 * each)
        .doesNotHaveDuplicates();
  }

  /** Approves so many times. */
  static final class Approver {
    private Approver() {}

    /** File and count. */
    public static void main(String[] arguments) throws IOException {
      for (int i = 0; i < Integer.parseInt(arguments[1]); i++) {
        new LimitsFile(Path.of(arguments[0])).approve(List.of(draft("mass")));
      }
    }
  }
}
