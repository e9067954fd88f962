package org.evenpour.command;

import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The program as a process of its own. */
final class Running {
  private Running() {}

  /**
   * The words that start it.
   *
   * @param options of the runtime
   */
  static List<String> words(List<String> options, Object... arguments) {
    List<String> all = new ArrayList<>();
    all.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    // Starts sooner: what is asked here is over before the better compiler would pay.
    all.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xss640k"));
    all.addAll(options);
    all.addAll(List.of("-cp", System.getProperty("java.class.path"), Main.class.getName()));
    for (Object argument : arguments) {
      all.add(argument.toString());
    }
    return all;
  }

  /** Starts it; nobody reads what it says. */
  static Process start(Path out, Path err, Object... arguments) throws IOException {
    return new ProcessBuilder(words(List.of(), arguments))
        .redirectOutput(out.toFile())
        .redirectError(err.toFile())
        .start();
  }

  /** Runs a line of the shell in which {@code "$@"} stands for the program and its words. */
  static CommandLineCall shell(Path folder, String line, List<String> words) throws Exception {
    Path out = folder.resolve("shell.out");
    Path err = folder.resolve("shell.err");
    List<String> all = new ArrayList<>(List.of("bash", "-c", line, "bash"));
    all.addAll(words);
    Process process =
        new ProcessBuilder(all).redirectOutput(out.toFile()).redirectError(err.toFile()).start();
    if (!process.waitFor(120, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new IllegalStateException("it does not end: " + all);
    }
    return new CommandLineCall(process.exitValue(), text(out), text(err));
  }

  /** Runs it bound by the rights of files, as everybody but root is. */
  static CommandLineCall withoutRights(Path folder, List<String> words) throws Exception {
    List<String> all = new ArrayList<>();
    if (System.getProperty("user.name").equals("root")) {
      assumeThat(Path.of("/usr/bin/setpriv")).exists();
      all.addAll(List.of("setpriv", "--bounding-set=-all", "--inh-caps=-all"));
    }
    all.addAll(words);
    return shell(folder, "\"$@\"", all);
  }

  static String text(Path file) throws IOException {
    return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
  }
}
