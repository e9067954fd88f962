package org.evenpour.command;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.OwnOffset;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.SetAside;
import org.evenpour.plant.PlantFiles;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What is audited, and by what, as it is typed: the same words give the same signals. */
final class LogsToAudit {
  @Parameters(paramLabel = "LOG", arity = "1..*", description = "casting logs (CSV), in any order")
  private List<Path> logs = new ArrayList<>();

  @Mixin private PlantOptions options = new PlantOptions();

  @Option(names = "--from", paramLabel = "T", description = "only anodes cast at T or later")
  private @Nullable String from;

  @Option(names = "--to", paramLabel = "T", description = "only anodes cast before T")
  private @Nullable String to;

  /**
   * What was typed, read as far as it is not logs.
   *
   * @param kept beside the logs
   * @param start only anodes cast then or later; null = all
   * @param end only anodes cast before; null = all
   */
  record Plant(
      PlantFiles files,
      Profiles profiles,
      List<CastingEvent> happened,
      PlantFiles.Kept kept,
      @Nullable Instant start,
      @Nullable Instant end) {
    /** In which zone times are told. */
    ZoneId zone() {
      return profiles.zone();
    }

    /** The same in a workbook: without a zone in the profile, as the first log tells its times. */
    ZoneId zoneOfLog() throws IOException {
      ZoneOffset own =
          zone().normalized().equals(ZoneOffset.UTC) ? OwnOffset.of(files.logs().get(0)) : null;
      return own == null ? zone() : own;
    }

    /**
     * Reads the logs.
     *
     * @param setAside takes the rows that cannot be used
     */
    CastingRecord read(CommandSpec spec, SetAside setAside) throws IntakeException, IOException {
      try (ProgressLine progress = ProgressLine.onTerminal(spec.commandLine().getErr())) {
        return LogReader.read(files.logs(), profiles, happened, start, end, setAside, progress);
      }
    }
  }

  /** The files that were named, without gauges. */
  PlantFiles files() {
    return options.with(logs, List.of());
  }

  /** Reads what was typed, without gauges. */
  Plant plant(CommandSpec spec) throws IntakeException, IOException {
    return plant(spec, List.of());
  }

  /**
   * Reads what was typed; what a reader of a file should know is said on standard error.
   *
   * @param gauges studies and check measurements
   */
  Plant plant(CommandSpec spec, List<Path> gauges) throws IntakeException, IOException {
    PlantFiles files = options.with(logs, gauges);
    Profiles profiles = files.profiles();
    List<CastingEvent> happened = files.happened(profiles);
    Instant start = from == null ? null : Period.instant(spec, "--from", from, profiles.zone());
    Instant end = to == null ? null : Period.instant(spec, "--to", to, profiles.zone());
    files.namedAreThere();
    PlantFiles.Kept kept = files.kept(profiles);
    kept.warnings().forEach(warning -> warn(spec, warning));
    return new Plant(files, profiles, happened, kept, start, end);
  }

  /** Says on standard error what a reader of a file should know. */
  static void warn(CommandSpec spec, @Nullable Remark warning) {
    if (warning != null) {
      spec.commandLine().getErr().println("evenpour: " + warning);
    }
  }
}
