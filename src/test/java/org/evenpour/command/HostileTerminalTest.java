package org.evenpour.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A terminal is never told to do something by what stands in a log. */
class HostileTerminalTest {
  @TempDir Path folder;

  private static void obeysNothing(String text) {
    assertThat(text.codePoints().filter(Character::isISOControl).filter(c -> c != '\n'))
        .as(text)
        .isEmpty();
    assertThat(text).doesNotContain("\u202e", "\u2066");
  }

  @Test
  void labelsFileNamesAndArgumentsDoNotReachItAsCommands() throws Exception {
    // To clear the screen, to name the window, C1's way to say the same, and to write backwards.
    String[] hostile = {"\u001b[2Jx", "\u001b]0;x\u0007", "\u009b31mx", "x\u202ex", "\u2066x"};
    StringBuilder rows = new StringBuilder("cast_at,mold,mass_kg,crew\n");
    for (int i = 0; i < 400; i++) {
      rows.append("2026-01-01T%02d:%02d:%02dZ,\"".formatted(i / 60, i % 60, i % 7));
      rows.append(i % 5).append(hostile[i % 5]).append("\",");
      rows.append(388 + (i * 7) % 5 + (i > 300 && i % 5 == 2 ? 9 : 0));
      rows.append(",\"").append(hostile[i / 100]).append("\"\n");
    }
    rows.append("never,\u001b[31m,388,\n");
    Path log = Files.writeString(folder.resolve("j\u001b[2Jx\u202e.csv"), rows);
    CommandLineCall call = CommandLineCall.of("audit", log);
    assertThat(call.status()).isZero();
    obeysNothing(call.out());
    obeysNothing(call.err());
    obeysNothing(CommandLineCall.of("causes", "signals", log).out());
    obeysNothing(CommandLineCall.of("limits", "propose", log).out());
    obeysNothing(CommandLineCall.of("audit", folder.resolve("no\u001b[2J")).err());
    obeysNothing(CommandLineCall.of("audit", log, "--\u001b[2J").err());
  }
}
