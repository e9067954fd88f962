package org.evenpour.command;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.evenpour.plant.PlantFiles;
import org.evenpour.store.SigningKey;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Who decides something, and why; both must be said. */
final class Signed {
  @Option(names = "--who", required = true, paramLabel = "NAME", description = "who says so")
  private String who = "";

  @Option(names = "--why", required = true, paramLabel = "TEXT", description = "and why")
  private String why = "";

  @Option(
      names = "--key",
      paramLabel = "F",
      description = "sign what is written with this key; evenpour limits key makes one")
  private @Nullable Path key;

  /** What to sign with; null where nothing is to be signed. */
  @Nullable SigningKey key() throws IOException {
    return key == null ? null : SigningKey.read(PlantFiles.mustBeThere(key));
  }

  String who(CommandSpec spec) {
    return said(spec, "--who", who);
  }

  String why(CommandSpec spec) {
    return said(spec, "--why", why);
  }

  /** A text in one line. */
  static String said(CommandSpec spec, String option, String text) {
    String plain = text.replaceAll("\\p{Cntrl}", " ").strip();
    if (plain.isEmpty()) {
      throw new ParameterException(spec.commandLine(), option + " is empty; say it in words");
    }
    return plain;
  }

  /** When it is decided. */
  static Instant now() {
    return Clock.systemUTC().instant().truncatedTo(ChronoUnit.MILLIS);
  }
}
