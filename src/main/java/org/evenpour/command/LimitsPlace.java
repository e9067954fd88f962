package org.evenpour.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.Profiles;
import org.evenpour.plant.PlantFiles;
import org.evenpour.store.LimitsFile;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** Where limits stand: as {@code --limits} says, else beside the profile, else beside the log. */
final class LimitsPlace {
  @Mixin private ProfileOption profile = new ProfileOption();

  @Option(
      names = "--limits",
      paramLabel = "F",
      description = "approved limits; default: <profile>.limits.jsonl, or <log>.limits.jsonl")
  private @Nullable Path limits;

  Profiles profiles() throws IntakeException {
    return profile.profiles();
  }

  /** The plant's files beside these logs. */
  PlantFiles with(
      List<Path> logs, @Nullable Path events, List<Path> gauges, @Nullable Path causes) {
    return new PlantFiles(logs, profile.file(), events, gauges, limits, causes);
  }

  private PlantFiles beside(CommandSpec spec, @Nullable Path log) {
    return with(profile.placed(spec, "limits", "--limits", limits, log), null, List.of(), null);
  }

  /**
   * The file to write to, or to read from.
   *
   * @param log null where none was given
   */
  LimitsFile file(CommandSpec spec, @Nullable Path log) {
    return beside(spec, log).limitsFile();
  }

  /**
   * The file to read from; one that was named must be there.
   *
   * @param log null where none was given
   */
  LimitsFile existing(CommandSpec spec, @Nullable Path log) throws IOException {
    beside(spec, log).namedAreThere();
    return file(spec, log);
  }
}
