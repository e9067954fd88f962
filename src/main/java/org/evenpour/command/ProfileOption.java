package org.evenpour.command;

import java.nio.file.Path;
import java.util.List;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.Profiles;
import org.evenpour.plant.PlantFiles;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** {@code --profile}; beside it, or beside the log, stands what is not named. */
final class ProfileOption {
  @Option(
      names = "--profile",
      paramLabel = "F",
      description = "the wheels' profile (YAML): specification, settings, headings, zone")
  private @Nullable Path profile;

  /** As it was typed; null where it was not. */
  @Nullable Path file() {
    return profile;
  }

  /** What it says of the wheels. */
  Profiles profiles() throws IntakeException {
    return new PlantFiles(List.of(), profile, null).profiles();
  }

  /**
   * A log in a list, where that, the profile or the file itself says where a file stands.
   *
   * @param what stands there
   * @param option names the file itself
   * @param named by that option; null where it was not
   * @param log beside which it may stand; null where none was given
   */
  List<Path> placed(
      CommandSpec spec, String what, String option, @Nullable Path named, @Nullable Path log) {
    if (named == null && profile == null && log == null) {
      throw new ParameterException(
          spec.commandLine(),
          "say where the " + what + " stand: " + option + " F, --profile F or --log F");
    }
    return log == null ? List.of() : List.of(log);
  }
}
