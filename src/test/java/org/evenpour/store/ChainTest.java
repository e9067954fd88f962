package org.evenpour.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.zip.CRC32;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Place;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A forger is given everything but the key: sums and hashes of the line at hand are made right. */
class ChainTest {
  @TempDir Path folder;

  private CausesFile file() {
    return new CausesFile(folder.resolve("log.csv.causes.jsonl"));
  }

  private static CauseMark mark(String why) {
    return new CauseMark(
        new Place("T1", "mass", Scope.MOLD, "7", null, Direction.LOW),
        Instant.parse("2026-03-05T21:10:00Z"),
        Instant.parse("2026-03-05T23:10:00Z"),
        new Cause(Kind.OTHER, "scale drifted"),
        Verdict.RIGHT,
        "R. Soto",
        why,
        Instant.parse("2026-03-06T21:10:00Z"));
  }

  private List<String> written(int lines) throws IOException {
    for (int i = 1; i <= lines; i++) {
      file().add(mark("reason " + i));
    }
    return new ArrayList<>(Files.readAllLines(file().path()));
  }

  private void put(List<String> lines) throws IOException {
    Files.writeString(file().path(), String.join("\n", lines) + "\n");
  }

  private void isRefused(String said) {
    isRefused(() -> file().read(), said);
    isRefused(() -> file().add(mark("one more")), said);
  }

  private static void isRefused(ThrowingCallable what, String said) {
    assertThatThrownBy(what).isInstanceOf(IOException.class).hasMessageContaining(said);
  }

  /** With a check sum that fits. */
  private static String summed(String line) {
    String before = line.substring(0, line.indexOf(",\"check\""));
    CRC32 sum = new CRC32();
    sum.update(before.getBytes(StandardCharsets.UTF_8));
    return before + String.format(Locale.ROOT, ",\"check\":\"%08x\"}", sum.getValue());
  }

  /** FIPS 180-4's example of one block, as NIST publishes it: SHA-256 of "abc". */
  @Test
  void theHashIsTheStandardOne() {
    assertThat(Chain.hash("abc"))
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }

  @Test
  void eachLineHasTheHashOfTheLineBefore() throws IOException {
    List<String> lines = written(3);
    assertThat(lines.get(0)).contains("\"number\":1,\"before\":\"" + "0".repeat(64));
    assertThat(lines.get(2)).contains("\"number\":3,\"before\":\"" + Chain.hash(lines.get(1)));
    assertThat(file().lines().head()).isEqualTo(new Chain.Head(3, 0, Chain.hash(lines.get(2))));
    assertThat(file().read().marks()).hasSize(3);
  }

  @Test
  void aLineThatWasChangedIsNamed() throws IOException {
    List<String> lines = written(3);
    lines.set(1, summed(lines.get(1).replace("R. Soto", "A. Vega")));
    put(lines);
    isRefused("causes.jsonl:2: this line was changed after it was written: line 3");
  }

  @Test
  void aLineThatWasTakenOutIsMissed() throws IOException {
    List<String> lines = written(4);
    lines.remove(1);
    put(lines);
    isRefused("causes.jsonl:2: lines are missing before this one (1 in all)");
    lines.remove(0);
    put(lines);
    isRefused("causes.jsonl:1: lines are missing before this one (2 in all)");
  }

  @Test
  void aLineThatWasMovedIsNamed() throws IOException {
    List<String> lines = written(4);
    Collections.swap(lines, 1, 2);
    put(lines);
    isRefused("causes.jsonl:2: this line was written as number 3 and stands as number 2");
  }

  @Test
  void aLineThatStandsTwiceIsNamed() throws IOException {
    List<String> lines = written(3);
    lines.add(2, lines.get(1));
    put(lines);
    isRefused("causes.jsonl:3: this line is line 2 once more");
    lines.remove(2);
    lines.add(lines.get(0));
    put(lines);
    isRefused("causes.jsonl:4: this line is line 1 once more");
  }

  @Test
  void aLineThatWasPutInIsNamed() throws IOException {
    List<String> lines = written(3);
    String forged = lines.get(1).replaceAll(",\"number\".*", "}");
    lines.add(2, summed(forged.replace("}", ",\"check\":\"\"}")));
    put(lines);
    isRefused("causes.jsonl:3: this line has no hash");
    lines.set(2, summed(lines.get(1).replace("reason 2", "forged")));
    put(lines);
    isRefused("causes.jsonl:3: this line was written as number 2");
  }

  /** What was kept elsewhere shows what no chain can: that the last lines were taken away. */
  @Test
  void aKeptHashShowsThatTheLastLineIsGone() throws IOException {
    List<String> lines = written(3);
    String kept = file().lines().head().hash();
    file().add(mark("later"));
    file().lines().holds(kept);
    lines.remove(2);
    put(lines);
    assertThat(file().read().marks()).hasSize(2);
    isRefused(() -> file().lines().holds(kept), "no line has the hash " + kept);
  }

  @Test
  void filesFromBeforeThereWereHashesAreReadAndHeldFromThenOn() throws IOException {
    List<String> lines = written(2);
    lines.replaceAll(
        line -> summed(line.replaceAll(",\"number\".*", "}").replace("}", ",\"check\":\"\"}")));
    put(lines);
    assertThat(file().read().marks()).hasSize(2);
    assertThat(file().lines().head().unhashed()).isEqualTo(2);
    file().add(mark("first with a hash"));
    lines = new ArrayList<>(Files.readAllLines(file().path()));
    assertThat(file().read().marks()).hasSize(3);
    lines.set(1, summed(lines.get(1).replace("R. Soto", "A. Vega")));
    put(lines);
    isRefused("causes.jsonl:2: this line was changed");
  }

  @Test
  void signedLinesAreRefusedWhereTheyAreNotTheSignersOwn() throws Exception {
    Path mine = folder.resolve("mine");
    Path stranger = folder.resolve("stranger");
    List<String> trusted = SigningKey.signers(SigningKey.make(mine));
    SigningKey.make(stranger);
    Path path = file().path();
    file().add(mark("unsigned, from before"));
    isRefused(() -> file().lines().isSignedBy(trusted), "not one line is signed");
    new CausesFile(path, SigningKey.read(mine)).add(mark("signed"));
    file().lines().isSignedBy(trusted);
    List<String> good = Files.readAllLines(path);

    List<String> changed = new ArrayList<>(good);
    changed.set(1, summed(changed.get(1).replace("R. Soto", "A. Vega")));
    put(changed);
    isRefused("causes.jsonl:2: this line's signature is not that of its words");

    put(good);
    file().add(mark("forged without a key"));
    isRefused(() -> file().lines().isSignedBy(trusted), "causes.jsonl:3: this line is not signed");

    put(good);
    new CausesFile(path, SigningKey.read(stranger)).add(mark("forged with another"));
    isRefused(
        () -> file().lines().isSignedBy(trusted), "causes.jsonl:3: this line is signed by none");
    assertThat(file().read().marks()).hasSize(3);
  }

  /** RFC 8032, section 7.1, test 1: the signature of nothing by its first key. */
  @Test
  void theSignatureIsTheStandardOne() throws Exception {
    byte[] own =
        java.util.HexFormat.of()
            .parseHex("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60");
    java.security.PrivateKey key =
        java.security.KeyFactory.getInstance("Ed25519")
            .generatePrivate(
                new java.security.spec.EdECPrivateKeySpec(
                    java.security.spec.NamedParameterSpec.ED25519, own));
    byte[] signature = java.util.Base64.getDecoder().decode(new SigningKey(key, "").signature(""));
    assertThat(java.util.HexFormat.of().formatHex(signature))
        .isEqualTo(
            "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46b"
                + "d25bf5f0595bbe24655141438e7a100b");
  }
}
