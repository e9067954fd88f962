package org.evenpour.audit;

import java.nio.file.Path;
import java.util.List;
import org.evenpour.casting.CastingRecord;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;

/** Reads a folder in the simulator's form, such as the committed sample. */
public final class Sample {
  /** The committed sample week. */
  public static final Path TORDILLA = Path.of("samples", "tordilla-week");

  private Sample() {}

  /** A folder's log with its profile and events. */
  public static CastingRecord read(Path folder) throws IntakeException {
    Profiles profiles = ProfileReader.read(folder.resolve("profile.yaml"));
    try (SetAside nowhere = SetAside.nowhere()) {
      return LogReader.read(
          List.of(folder.resolve("casting-log.csv")),
          profiles,
          EventsReader.read(folder.resolve("events.csv"), profiles),
          null,
          null,
          nowhere,
          Progress.NONE);
    }
  }
}
