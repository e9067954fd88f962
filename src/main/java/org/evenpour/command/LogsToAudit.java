package org.evenpour.command;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.Remark;
import org.evenpour.control.LimitsBook;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.SetAside;
import org.evenpour.live.SeenFile;
import org.evenpour.report.KeptFiles;
import org.evenpour.store.CausesFile;
import org.evenpour.store.LimitsFile;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What is audited, and by what, as it is typed: the same words give the same signals. */
final class LogsToAudit {
  @Parameters(paramLabel = "LOG", arity = "1..*", description = "casting logs (CSV), in any order")
  private List<Path> logs = new ArrayList<>();

  @Option(
      names = "--profile",
      paramLabel = "F",
      description = "the wheels' profile (YAML): specification, settings, headings, zone")
  private @Nullable Path profile;

  @Option(
      names = "--events",
      paramLabel = "F",
      description = "what was done at the wheel (CSV: at,wheel,mold,event,note)")
  private @Nullable Path events;

  @Option(
      names = "--limits",
      paramLabel = "F",
      description = "approved limits; default: <profile>.limits.jsonl, or <log>.limits.jsonl")
  private @Nullable Path limits;

  @Option(
      names = "--causes",
      paramLabel = "F",
      description =
          "marked causes; default: <profile>.causes.jsonl, or <log>.causes.jsonl; see evenpour"
              + " causes")
  private @Nullable Path causes;

  @Option(names = "--from", paramLabel = "T", description = "only anodes cast at T or later")
  private @Nullable String from;

  @Option(names = "--to", paramLabel = "T", description = "only anodes cast before T")
  private @Nullable String to;

  /**
   * What was typed, read as far as it is not logs.
   *
   * @param start only anodes cast then or later; null = all
   * @param end only anodes cast before; null = all
   */
  record Around(
      List<Path> logs,
      Profiles profiles,
      List<CastingEvent> happened,
      @Nullable Instant start,
      @Nullable Instant end) {
    /** In which zone times are told. */
    ZoneId zone() {
      return LimitsPlace.zone(profiles);
    }

    /**
     * Reads the logs.
     *
     * @param setAside takes the rows that cannot be used
     */
    CastingRecord read(CommandSpec spec, SetAside setAside) throws IntakeException, IOException {
      try (ProgressLine progress = ProgressLine.onTerminal(spec.commandLine().getErr())) {
        return LogReader.read(logs, profiles, happened, start, end, setAside, progress);
      }
    }
  }

  Around around(CommandSpec spec) throws IntakeException {
    Profiles profiles = profile == null ? Profiles.NONE : ProfileReader.read(profile);
    ZoneId zone = LimitsPlace.zone(profiles);
    return new Around(
        logs,
        profiles,
        events == null ? List.of() : EventsReader.read(events, profiles),
        from == null ? null : Period.instant(spec, "--from", from, zone),
        to == null ? null : Period.instant(spec, "--to", to, zone));
  }

  /** All that is read, and what people wrote beside it. */
  KeptFiles kept() {
    KeptFiles kept = new KeptFiles();
    for (Path log : logs) {
      kept.reads(log, "kept.log").reads(SeenFile.beside(log).path(), "kept.seen");
    }
    return kept.reads(profile, "kept.profile")
        .reads(events, "kept.events")
        .reads(
            limits == null ? LimitsFile.beside(profile, logs.get(0)).path() : limits, "kept.limits")
        .reads(causesFile().path(), "kept.causes");
  }

  /** The logs, as they are typed. */
  List<Path> logs() {
    return logs;
  }

  /** Approved limits; a line that was cut off is warned of. */
  LimitsBook book(CommandSpec spec) throws IOException {
    LimitsFile.Contents approved = LimitsPlace.existing(limits, profile, logs.get(0)).read();
    warn(spec, approved.warning());
    return approved.book();
  }

  /** Where causes are marked. */
  CausesFile causesFile() {
    return causes != null ? new CausesFile(causes) : CausesFile.beside(profile, logs.get(0));
  }

  /** What was marked; a file that was named must be there. */
  List<CauseMark> marks(CommandSpec spec) throws IOException {
    if (causes != null) {
      LimitsPlace.mustBeThere(causes);
    }
    CausesFile.Contents marked = causesFile().read();
    warn(spec, marked.warning());
    return marked.marks();
  }

  /** Says on standard error what a reader of a file should know. */
  static void warn(CommandSpec spec, @Nullable Remark warning) {
    if (warning != null) {
      spec.commandLine().getErr().println("evenpour: " + warning);
    }
  }
}
