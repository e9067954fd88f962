package org.evenpour.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.ZoneId;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.store.LimitsFile;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Where limits stand: as {@code --limits} says, else beside the profile, else beside the log. */
final class LimitsPlace {
  @Option(
      names = "--limits",
      paramLabel = "F",
      description = "the file of limits; default: <profile>.limits.jsonl, or <log>.limits.jsonl")
  private @Nullable Path limits;

  @Option(names = "--profile", paramLabel = "F", description = "the wheels' profile (YAML)")
  private @Nullable Path profile;

  Profiles profiles() throws IntakeException {
    return profile == null ? Profiles.NONE : ProfileReader.read(profile);
  }

  /**
   * The file to write to, or to read from.
   *
   * @param log null where none was given
   */
  LimitsFile file(CommandSpec spec, @Nullable Path log) {
    if (limits != null) {
      return new LimitsFile(limits);
    }
    Path beside = profile == null ? log : profile;
    if (beside == null) {
      throw new ParameterException(
          spec.commandLine(), "say where the limits stand: --limits F, --profile F or --log F");
    }
    return LimitsFile.beside(null, beside);
  }

  /**
   * The file to read from; one that was named must be there.
   *
   * @param log null where none was given
   */
  LimitsFile existing(CommandSpec spec, @Nullable Path log) throws IOException {
    if (limits != null) {
      mustBeThere(limits);
    }
    return file(spec, log);
  }

  /** A file of limits that is to be read: one that was named must be there. */
  static LimitsFile existing(@Nullable Path limits, @Nullable Path profile, Path log)
      throws IOException {
    if (limits == null) {
      return LimitsFile.beside(profile, log);
    }
    return new LimitsFile(mustBeThere(limits));
  }

  /** A file that was named to be read. */
  static Path mustBeThere(Path named) throws NoSuchFileException {
    if (!Files.exists(named)) {
      throw new NoSuchFileException(named.toString(), null, "there is no such file");
    }
    return named;
  }

  static ZoneId zone(Profiles profiles) {
    return profiles.wheels().isEmpty()
        ? profiles.forWheel("").zone()
        : profiles.wheels().get(0).zone();
  }
}
