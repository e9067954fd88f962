package org.evenpour.plant;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import org.evenpour.audit.PlantRecords;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.GaugeFile;
import org.evenpour.casting.PlantAdvice;
import org.evenpour.control.LimitsBook;
import org.evenpour.intake.AdviceReader;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.GaugeReader;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.store.CausesFile;
import org.evenpour.store.LimitsFile;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Which of the plant's files an audit goes by, and what they say.
 *
 * @param logs casting logs; empty = nothing is open
 * @param profile what the plant says of its wheels; null = nothing
 * @param events what people wrote down; null = nothing
 * @param gauges studies of the gauges, and check weighings
 * @param limits what was approved; null = the usual file, which need not be there
 * @param causes what was marked; null = the usual file, which need not be there
 */
public record PlantFiles(
    List<Path> logs,
    @Nullable Path profile,
    @Nullable Path events,
    List<Path> gauges,
    @Nullable Path limits,
    @Nullable Path causes) {

  /** With the usual files of limits and causes. */
  public PlantFiles(
      List<Path> logs, @Nullable Path profile, @Nullable Path events, List<Path> gauges) {
    this(logs, profile, events, gauges, null, null);
  }

  private static final String ADVICE = ".advice.yaml";

  /** Nothing is open. */
  public static final PlantFiles NONE = new PlantFiles(List.of(), null, null);

  /** Copies the lists. */
  public PlantFiles {
    logs = List.copyOf(logs);
    gauges = List.copyOf(gauges);
  }

  /** Without gauges. */
  public PlantFiles(List<Path> logs, @Nullable Path profile, @Nullable Path events) {
    this(logs, profile, events, List.of());
  }

  /**
   * These files after others were opened: a profile or an events file joins what is there, logs
   * take the place of the logs.
   */
  public PlantFiles with(List<Path> opened) {
    List<Path> newLogs = new ArrayList<>();
    Path newProfile = profile;
    Path newEvents = events;
    List<Path> newGauges = new ArrayList<>(gauges);
    for (Path path : opened) {
      String name = String.valueOf(path.getFileName()).toLowerCase(Locale.ROOT);
      if (name.endsWith(ADVICE)) {
        continue; // it is read from beside the profile
      }
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
    return new PlantFiles(
        newLogs.isEmpty() ? logs : newLogs, newProfile, newEvents, newGauges, limits, causes);
  }

  /** The same beside other logs. */
  public PlantFiles withLogs(List<Path> others) {
    return new PlantFiles(others, profile, events, gauges, limits, causes);
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

  /** What the plant says of its wheels. */
  public Profiles profiles() throws IntakeException {
    return profile == null ? Profiles.NONE : ProfileReader.read(profile);
  }

  /**
   * What people wrote down at the wheel.
   *
   * @param profiles tell the zone of times without one
   */
  public List<CastingEvent> happened(Profiles profiles) throws IntakeException {
    return events == null ? List.of() : EventsReader.read(events, profiles);
  }

  /**
   * Everything else that is kept beside the logs.
   *
   * @param profiles tell how gauges' columns are called
   * @throws IOException if a file cannot be read or is damaged: names it
   */
  public Kept kept(Profiles profiles) throws IntakeException, IOException {
    List<GaugeFile> tried = new ArrayList<>();
    for (Path gauge : gauges) {
      tried.add(GaugeReader.read(gauge, profiles));
    }
    if (logs.isEmpty() && profile == null && limits == null && causes == null) {
      return new Kept(new PlantRecords(LimitsBook.NONE, tried, List.of()), List.of());
    }
    LimitsFile.Contents approved = limitsFile().read();
    CausesFile.Contents marked = causesFile().read();
    return new Kept(
        new PlantRecords(approved.book(), tried, marked.marks(), advice()),
        Stream.of(approved.warning(), marked.warning()).flatMap(Stream::ofNullable).toList());
  }

  /**
   * What is kept.
   *
   * @param warnings what a reader should know
   */
  public record Kept(PlantRecords records, List<Remark> warnings) {
    /** Copies the list. */
    public Kept {
      warnings = List.copyOf(warnings);
    }
  }

  /**
   * Limits and causes that were named must be there; the usual files need not be.
   *
   * @throws NoSuchFileException if one is not
   */
  public void namedAreThere() throws NoSuchFileException {
    if (limits != null) {
      mustBeThere(limits);
    }
    if (causes != null) {
      mustBeThere(causes);
    }
  }

  /** A file that was named to be read. */
  public static Path mustBeThere(Path named) throws NoSuchFileException {
    if (!Files.exists(named)) {
      throw new NoSuchFileException(named.toString(), null, "there is no such file");
    }
    return named;
  }

  /** Where causes are marked. */
  public CausesFile causesFile() {
    return causes == null ? CausesFile.beside(profile, log()) : new CausesFile(causes);
  }

  /** Where the plant says itself what to look at first: beside the profile, or the log. */
  public Path adviceFile() {
    Path it = profile == null ? log() : profile;
    return it.resolveSibling(it.getFileName() + ADVICE);
  }

  /** What stands there. */
  public PlantAdvice advice() throws IntakeException {
    boolean isAnywhere = profile != null || !logs.isEmpty();
    return isAnywhere && Files.exists(adviceFile())
        ? AdviceReader.read(adviceFile())
        : PlantAdvice.NONE;
  }

  /** The log beside which the plant's files lie where there is no profile. */
  private Path log() {
    return logs.isEmpty() ? Objects.requireNonNull(profile, "no log and no profile") : logs.get(0);
  }

  /** All these files, and what people wrote beside them: none of them may be written over. */
  public KeptFiles notToBeLost() {
    KeptFiles kept = new KeptFiles();
    for (Path log : logs) {
      kept.reads(log, "kept.log").reads(SeenFile.beside(log).path(), "kept.seen");
    }
    gauges.forEach(gauge -> kept.reads(gauge, "kept.gauge"));
    if (!logs.isEmpty()) {
      kept.reads(limitsFile().path(), "kept.limits")
          .reads(causesFile().path(), "kept.causes")
          .reads(adviceFile(), "kept.advice");
    }
    return kept.reads(profile, "kept.profile").reads(events, "kept.events");
  }

  /** Where approved limits stand. */
  public LimitsFile limitsFile() {
    return limits == null ? LimitsFile.beside(profile, log()) : new LimitsFile(limits);
  }
}
