package org.evenpour.view.model;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.evenpour.audit.Audit;
import org.evenpour.audit.AuditReport;
import org.evenpour.audit.Causes;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.GaugeFile;
import org.evenpour.control.LimitsBook;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.GaugeReader;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.evenpour.live.SeenFile;
import org.evenpour.report.KeptFiles;
import org.evenpour.store.CausesFile;
import org.evenpour.store.LimitsFile;
import org.jspecify.annotations.Nullable;

/**
 * The files that a desk shows.
 *
 * @param logs casting logs; empty = nothing is open
 * @param profile what the plant says of its wheels; null = nothing
 * @param events what people wrote down; null = nothing
 * @param gauges studies of the gauges, and check weighings
 * @param limits what was approved; null = the usual file, which need not be there
 * @param causes what was marked; null = the usual file, which need not be there
 */
public record Sources(
    List<Path> logs,
    @Nullable Path profile,
    @Nullable Path events,
    List<Path> gauges,
    @Nullable Path limits,
    @Nullable Path causes) {

  /** With the usual files of limits and causes. */
  public Sources(
      List<Path> logs, @Nullable Path profile, @Nullable Path events, List<Path> gauges) {
    this(logs, profile, events, gauges, null, null);
  }

  /** Nothing is open. */
  public static final Sources NONE = new Sources(List.of(), null, null);

  /** Copies the lists. */
  public Sources {
    logs = List.copyOf(logs);
    gauges = List.copyOf(gauges);
  }

  /** Without gauges. */
  public Sources(List<Path> logs, @Nullable Path profile, @Nullable Path events) {
    this(logs, profile, events, List.of());
  }

  /**
   * These files after others were opened: a profile or an events file joins what is there, logs
   * take the place of the logs.
   */
  public Sources with(List<Path> opened) {
    List<Path> newLogs = new ArrayList<>();
    Path newProfile = profile;
    Path newEvents = events;
    List<Path> newGauges = new ArrayList<>(gauges);
    for (Path path : opened) {
      String name = String.valueOf(path.getFileName()).toLowerCase(Locale.ROOT);
      if (name.endsWith(".yaml") || name.endsWith(".yml")) {
        newProfile = path;
      } else if (isEvents(path)) {
        newEvents = path;
      } else if (GaugeReader.isGauge(headings(path))) {
        newGauges.remove(path);
        newGauges.add(path);
      } else {
        newLogs.add(path);
      }
    }
    return new Sources(
        newLogs.isEmpty() ? logs : newLogs, newProfile, newEvents, newGauges, limits, causes);
  }

  /** An events file names its columns {@code at} and {@code event}; a log never does. */
  private static boolean isEvents(Path path) {
    List<String> names = headings(path);
    return names.contains("at") && names.contains("event");
  }

  private static List<String> headings(Path path) {
    try (BufferedReader reader = Files.newBufferedReader(path, StandardCharsets.UTF_8)) {
      String heading = reader.readLine();
      return heading == null
          ? List.of()
          : List.of(heading.replace("\uFEFF", "").toLowerCase(Locale.ROOT).split("[,;\t]", -1));
    } catch (IOException unreadable) {
      // Reading it as a log says what is wrong with it.
      return List.of();
    }
  }

  /**
   * Reads and audits the logs.
   *
   * @param progress is told how far reading has come
   * @param isCancelled asked while reading, and once more before the audit
   * @throws CancellationException if it was cancelled
   */
  public OpenedLog open(Progress progress, BooleanSupplier isCancelled) throws IntakeException {
    Profiles profiles = profile == null ? Profiles.NONE : ProfileReader.read(profile);
    List<CastingEvent> written = events == null ? List.of() : EventsReader.read(events, profiles);
    List<GaugeFile> tried = new ArrayList<>();
    for (Path gauge : gauges) {
      tried.add(GaugeReader.read(gauge, profiles));
    }
    CastingRecord record;
    try (SetAside nowhere = SetAside.nowhere()) {
      record =
          LogReader.read(
              logs,
              profiles,
              written,
              null,
              null,
              nowhere,
              (done, total) -> {
                stopIf(isCancelled);
                progress.at(done, total);
              });
    }
    stopIf(isCancelled);
    AuditReport report = Audit.run(record, book(), tried);
    stopIf(isCancelled);
    return OpenedLog.of(record, Causes.joined(report, marks()));
  }

  /** Where causes are marked. */
  public CausesFile causesFile() {
    return causes == null ? CausesFile.beside(profile, logs.get(0)) : new CausesFile(causes);
  }

  private List<CauseMark> marks() throws IntakeException {
    try {
      return causesFile().read().marks();
    } catch (IOException e) {
      throw IntakeException.of(e);
    }
  }

  /** All these files, and what people wrote beside them: none of them may be written over. */
  public KeptFiles kept() {
    KeptFiles kept = new KeptFiles();
    for (Path log : logs) {
      kept.reads(log, "kept.log").reads(SeenFile.beside(log).path(), "kept.seen");
    }
    gauges.forEach(gauge -> kept.reads(gauge, "kept.gauge"));
    if (!logs.isEmpty()) {
      kept.reads(limitsFile().path(), "kept.limits").reads(causesFile().path(), "kept.causes");
    }
    return kept.reads(profile, "kept.profile").reads(events, "kept.events");
  }

  /** Where approved limits stand. */
  public LimitsFile limitsFile() {
    return limits == null ? LimitsFile.beside(profile, logs.get(0)) : new LimitsFile(limits);
  }

  private LimitsBook book() throws IntakeException {
    try {
      return limitsFile().read().book();
    } catch (IOException e) {
      throw IntakeException.of(e);
    }
  }

  /**
   * How long the files are and when they were last written; another list when one of them has
   * changed. A file that cannot be looked at counts as empty.
   */
  public List<Long> stamp() {
    List<Long> stamp = new ArrayList<>();
    List<Path> files = new ArrayList<>(logs);
    if (profile != null) {
      files.add(profile);
    }
    if (events != null) {
      files.add(events);
    }
    files.addAll(gauges);
    if (!logs.isEmpty()) {
      files.add(limitsFile().path());
    }
    for (Path file : files) {
      try {
        stamp.add(Files.size(file));
        stamp.add(Files.getLastModifiedTime(file).toMillis());
      } catch (IOException unseen) {
        stamp.add(-1L);
      }
    }
    return stamp;
  }

  private static void stopIf(BooleanSupplier isCancelled) {
    if (isCancelled.getAsBoolean()) {
      throw new CancellationException();
    }
  }
}
