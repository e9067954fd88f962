package org.evenpour.command;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.audit.ProposedLimits;
import org.evenpour.audit.ProposedLimits.LeaveOut;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.control.LimitsVersion;
import org.evenpour.findings.AuditReport;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.SetAside;
import org.evenpour.plant.PlantFiles;
import org.evenpour.report.LimitsText;
import org.evenpour.store.LimitsFile;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** The base period as it is typed, and the limits that it gives. */
final class LimitsBase {
  @Parameters(paramLabel = "LOG", arity = "1..*", description = "casting logs (CSV), in any order")
  private List<Path> logs = new ArrayList<>();

  @Mixin private LimitsPlace place = new LimitsPlace();

  @Option(
      names = "--events",
      paramLabel = "F",
      description = "what was done at the wheel (CSV: at,wheel,mold,event,note)")
  private @Nullable Path events;

  @Option(names = "--from", paramLabel = "T", description = "the base begins with anodes cast at T")
  private @Nullable String from;

  @Option(names = "--to", paramLabel = "T", description = "the base ends before anodes cast at T")
  private @Nullable String to;

  @Option(
      names = "--leave-out",
      paramLabel = "T/T=REASON",
      description =
          "leave out what was cast between two times, such as \"2026-03-04T07:00/…=ladle relined\"")
  private List<String> leaveOut = new ArrayList<>();

  @Option(names = "--wheel", paramLabel = "W", description = "only this wheel")
  private @Nullable String wheel;

  @Option(names = "--characteristic", paramLabel = "C", description = "only mass, thickness, …")
  private List<String> characteristics = new ArrayList<>();

  /**
   * What came of the base.
   *
   * @param judged the logs, judged by the limits
   */
  record Outcome(List<ProposedLimits> proposed, AuditReport judged, ZoneId zone) {
    List<LimitsVersion> drafts() {
      return ProposedLimits.drafts(proposed);
    }

    /** Says why the base gives no limits of anything, and what base would. */
    int nothing(CommandSpec spec, LimitsText text, String what) {
      for (ProposedLimits one : proposed) {
        spec.commandLine().getErr().print("evenpour: " + what + ": " + text.proposal(one, judged));
      }
      spec.commandLine().getErr().flush();
      return Main.NOT_DONE;
    }
  }

  Outcome outcome(CommandSpec spec) throws IntakeException, IOException {
    PlantFiles files = place.with(logs, events, List.of(), null);
    Profiles profiles = files.profiles();
    ZoneId zone = profiles.zone();
    List<CastingEvent> happened = files.happened(profiles);
    Instant start = from == null ? null : Period.instant(spec, "--from", from, zone);
    Instant end = to == null ? null : Period.instant(spec, "--to", to, zone);
    List<LeaveOut> out = new ArrayList<>();
    for (String one : leaveOut) {
      out.add(leaveOut(spec, one, zone));
    }
    CastingRecord record;
    try (SetAside nowhere = SetAside.nowhere();
        ProgressLine progress = ProgressLine.onTerminal(spec.commandLine().getErr())) {
      record = LogReader.read(logs, profiles, happened, null, null, nowhere, progress);
    }
    List<ProposedLimits> proposed =
        ProposedLimits.of(record, start, end, out).stream().filter(this::isWanted).toList();
    if (proposed.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), "no such wheel or characteristic is in these logs");
    }
    return new Outcome(proposed, ProposedLimits.judged(record, proposed), zone);
  }

  private boolean isWanted(ProposedLimits one) {
    return (wheel == null || wheel.equals(one.wheel()))
        && (characteristics.isEmpty() || characteristics.contains(one.characteristic()));
  }

  private static LeaveOut leaveOut(CommandSpec spec, String text, ZoneId zone) {
    int slash = text.indexOf('/');
    int equals = text.indexOf('=', slash + 1);
    if (slash < 0 || equals < 0 || text.substring(equals + 1).isBlank()) {
      throw new ParameterException(
          spec.commandLine(),
          "--leave-out: '"
              + text
              + "' is no stretch with a reason; write it as"
              + " 2026-03-04T07:00/2026-03-04T10:00=ladle relined");
    }
    Instant start = Period.instant(spec, "--leave-out", text.substring(0, slash), zone);
    Instant end = Period.instant(spec, "--leave-out", text.substring(slash + 1, equals), zone);
    if (!start.isBefore(end)) {
      throw new ParameterException(
          spec.commandLine(), "--leave-out: '" + text + "' ends before it begins; exchange them");
    }
    return new LeaveOut(start, end, text.substring(equals + 1).strip());
  }

  LimitsFile file(CommandSpec spec) {
    return place.file(spec, logs.get(0));
  }
}
