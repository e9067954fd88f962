package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people type to see whether approvals were tampered with. */
class ChainCommandTest {
  @TempDir Path folder;

  private CommandLineCall specify(int lower, Object... more) {
    List<Object> all = new ArrayList<>(List.of("limits", "specify", "--limits", limits()));
    all.addAll(
        List.of("--characteristic", "mass", "--lower", lower, "--from", "2026-01-01T00:00Z"));
    all.addAll(List.of("--who", "R. Soto", "--why", "order " + lower));
    all.addAll(List.of(more));
    return CommandLineCall.of(all.toArray());
  }

  private Path limits() {
    return folder.resolve("n2.limits.jsonl");
  }

  private CommandLineCall list(Object... more) {
    List<Object> all = new ArrayList<>(List.of("limits", "list", "--limits", limits()));
    all.addAll(List.of(more));
    return CommandLineCall.of(all.toArray());
  }

  private static void isRefused(CommandLineCall call, String part) {
    assertThat(call.status()).isEqualTo(2);
    assertThat(call.err().lines()).hasSize(1);
    assertThat(call.err()).contains(part);
  }

  @Test
  void theHeadIsPrintedAndKnownAgain() throws IOException {
    specify(380);
    specify(381);
    String said = list().out();
    assertThat(said).contains("n2.limits.jsonl: 2 lines as written");
    String head = said.lines().reduce("", (before, line) -> line);
    assertThat(head).matches("[0-9a-f]{64}");
    specify(382);
    assertThat(list("--head", head).status()).isZero();
    List<String> lines = Files.readAllLines(limits());
    Files.write(limits(), lines.subList(0, 1));
    assertThat(list().status()).isZero();
    isRefused(list("--head", head), "no line has the hash " + head);
    Files.write(limits(), lines.subList(1, 3));
    isRefused(list(), "n2.limits.jsonl:1: lines are missing before this one");
    isRefused(specify(383), "n2.limits.jsonl:1: lines are missing before this one");
  }

  @Test
  void linesAreSignedAndCheckedByAKey() throws IOException {
    Path key = folder.resolve("soto");
    assertThat(CommandLineCall.of("limits", "key", key).out()).contains("soto.pub");
    isRefused(CommandLineCall.of("limits", "key", key), "no key is written over");
    assertThat(specify(380, "--key", key).status()).isZero();
    assertThat(list("--signers", key + ".pub").status()).isZero();
    specify(381);
    isRefused(list("--signers", key + ".pub"), "n2.limits.jsonl:2: this line is not signed");
    isRefused(specify(382, "--key", key + ".pub"), "there is no key in it");
    isRefused(specify(382, "--key", folder.resolve("no")), "no such file");
  }

  @Test
  void nothingIsLeftWhereNothingWasWritten() {
    Path none = folder.resolve("none.jsonl");
    CommandLineCall call =
        CommandLineCall.of(
            "limits", "retire", 1, "--limits", none, "--who", "R. Soto", "--why", "gone");
    assertThat(call.status()).isEqualTo(2);
    assertThat(none).doesNotExist();
  }
}
