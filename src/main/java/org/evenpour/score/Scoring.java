package org.evenpour.score;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.evenpour.audit.Audit;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.CastingRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.evenpour.simulate.Condition;
import org.evenpour.simulate.PlantedShift;
import org.evenpour.simulate.SimulatedPlant;
import org.evenpour.simulate.Simulation;
import org.evenpour.simulate.TrueEffect;
import org.jspecify.annotations.Nullable;

/**
 * Audits logs whose truth is known, one after the other, for an audit uses all processors itself.
 * Nothing is written into the folders.
 */
public final class Scoring {
  private Scoring() {}

  /** Is told how many logs are done. */
  @FunctionalInterface
  public interface Done {
    /** So many of so many. */
    void at(int logs, int of);
  }

  /**
   * Scores the audits of folders as a simulated wheel's are: a log and its truth, and events,
   * profile and effects where there are such files.
   *
   * @throws IntakeException if a file cannot be used: where, why, and what mends it
   */
  public static Score ofFolders(List<Path> folders, Done done) throws IntakeException {
    List<LogOutcome> outcomes = new ArrayList<>();
    for (Path folder : folders) {
      outcomes.add(outcome(folder));
      done.at(outcomes.size(), folders.size());
    }
    return Score.of(outcomes);
  }

  /**
   * Scores the audits of simulated wheels, in a folder that is gone afterwards.
   *
   * @param plant whose
   * @param firstSeed of the first
   * @param count how many, each with the next seed
   * @param sizeSigmas of the faults; null = as usual
   * @param condition of the plant while nothing is wrong
   */
  public static Score ofSeeds(
      SimulatedPlant plant,
      long firstSeed,
      int count,
      @Nullable Double sizeSigmas,
      Condition condition,
      Done done)
      throws IntakeException, IOException {
    Path folder = Files.createTempDirectory("evenpour-score");
    folder.toFile().deleteOnExit(); // an interrupt from the keyboard should leave no litter either
    try {
      List<LogOutcome> outcomes = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        plant.write(folder, firstSeed + i, sizeSigmas, condition);
        if (i == 0) {
          deleteOnExit(folder);
        }
        outcomes.add(outcome(folder));
        done.at(i + 1, count);
      }
      return Score.of(outcomes);
    } finally {
      delete(folder);
    }
  }

  private static LogOutcome outcome(Path folder) throws IntakeException {
    List<PlantedShift> truth;
    TrueEffects effects = TrueEffects.UNKNOWN;
    try {
      truth = PlantedShift.read(folder.resolve(Simulation.TRUTH));
      Path file = folder.resolve(Simulation.EFFECTS);
      if (Files.exists(file)) {
        effects = new TrueEffects(true, TrueEffect.read(file));
      }
    } catch (IOException e) {
      throw IntakeException.of(e);
    }
    AuditReport report = Audit.run(record(folder));
    return LogOutcome.of(report, lookedFor(truth, report), effects);
  }

  /** A share of rejects can be found only by an audit that charts it. */
  private static List<PlantedShift> lookedFor(List<PlantedShift> truth, AuditReport report) {
    boolean isCharted =
        report.characteristics().stream().anyMatch(c -> c.name().equals(PlantedShift.REJECTS));
    return truth.stream()
        .filter(shift -> isCharted || !shift.characteristic().equals(PlantedShift.REJECTS))
        .toList();
  }

  private static CastingRecord record(Path folder) throws IntakeException {
    Path profile = folder.resolve(Simulation.PROFILE);
    Profiles profiles = Files.exists(profile) ? ProfileReader.read(profile) : Profiles.NONE;
    Path events = folder.resolve(Simulation.EVENTS);
    List<CastingEvent> happened =
        Files.exists(events) ? EventsReader.read(events, profiles) : List.of();
    List<Path> logs = List.of(folder.resolve(Simulation.LOG));
    try (SetAside nowhere = SetAside.nowhere()) {
      return LogReader.read(logs, profiles, happened, null, null, nowhere, Progress.NONE);
    }
  }

  private static void deleteOnExit(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      files.forEach(file -> file.toFile().deleteOnExit());
    }
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
