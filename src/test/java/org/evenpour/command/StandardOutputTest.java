package org.evenpour.command;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.simulate.Fault;
import org.evenpour.simulate.Scenario;
import org.evenpour.simulate.Simulation;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What cannot be written to standard output is never lost without a word. */
@Tag("slow")
class StandardOutputTest {
  @TempDir Path folder;
  private Path log = Path.of("");

  @BeforeEach
  void aLog() throws IOException {
    log = folder.resolve("june.csv");
    List<String> lines = new ArrayList<>(List.of(Simulation.header()));
    Simulation rows = Simulation.rows(Scenario.week(5).withDays(3).withFault(Fault.THIN_WASH));
    while (rows.hasNext() && lines.size() < 300) {
      lines.add(rows.next().line());
    }
    Files.write(log, lines);
  }

  /** Takes so many bytes, and then says what the system says. */
  private static OutputStream full(int bytes, String says) {
    return new OutputStream() {
      private int left = bytes;

      @Override
      public void write(int b) throws IOException {
        if (left-- <= 0) {
          throw new IOException(says);
        }
      }
    };
  }

  private CommandLineCall into(OutputStream out, Object... arguments) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    String[] typed = new String[arguments.length];
    for (int i = 0; i < typed.length; i++) {
      typed[i] = arguments[i].toString();
    }
    int status = Main.run(out, err, typed);
    return new CommandLineCall(status, "", err.toString(UTF_8));
  }

  @Test
  void aFullOneIsAnErrorAndNoCutJsonWithStatusZero() {
    for (int bytes : new int[] {0, 10, 5000, 20_000}) {
      CommandLineCall call =
          into(full(bytes, "No space left on device"), "audit", log, "--json", "-");
      assertThat(call.status()).isEqualTo(2);
      assertThat(call.err().lines()).hasSize(1);
      assertThat(call.err()).contains("standard output", "No space left on device", ";");
    }
  }

  @Test
  void soItIsForWhatPeopleRead() {
    for (Object[] arguments :
        new Object[][] {{"audit", log}, {"--help"}, {"--version"}, {"causes", "signals", log}}) {
      CommandLineCall call = into(full(3, "No space left on device"), arguments);
      assertThat(call.status()).isEqualTo(2);
      assertThat(call.err().lines()).hasSize(1);
      assertThat(call.err()).contains("standard output", "No space left on device");
    }
  }

  @Test
  void aReaderWhoHasSeenEnoughHearsNothing() {
    CommandLineCall call = into(full(10, "Broken pipe"), "audit", log, "--json", "-");
    assertThat(call.status()).isEqualTo(2);
    assertThat(call.err()).isEmpty();
    assertThat(into(full(10, "Broken pipe"), "--help").err()).isEmpty();
  }

  /** The same with the system's own full device, closed output and pipe. */
  @Test
  void soItIsInAShell() throws Exception {
    assumeThat(Files.exists(Path.of("/dev/full"))).isTrue();
    List<String> json = Running.words(List.of(), "audit", log, "--json", "-");
    CommandLineCall full = Running.shell(folder, "\"$@\" > /dev/full", json);
    assertThat(full.status()).isEqualTo(2);
    assertThat(full.err().lines()).hasSize(1);
    CommandLineCall shut = Running.shell(folder, "\"$@\" >&-", json);
    assertThat(shut.status()).isEqualTo(2);
    assertThat(shut.err().lines()).hasSize(1);
    CommandLineCall head =
        Running.shell(folder, "\"$@\" | head -c 20; echo ${PIPESTATUS[0]}", json);
    assertThat(head.out()).startsWith("{").endsWith("2\n");
    assertThat(head.err()).isEmpty();
  }
}
