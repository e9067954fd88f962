package org.evenpour.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.Profiles;
import org.evenpour.plant.PlantFiles;
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
    return with(List.of(), null).profiles();
  }

  /** The plant's files beside these logs. */
  PlantFiles with(List<Path> logs, @Nullable Path events) {
    return new PlantFiles(logs, profile, events, List.of(), limits, null);
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
      PlantFiles.mustBeThere(limits);
    }
    return file(spec, log);
  }
}
