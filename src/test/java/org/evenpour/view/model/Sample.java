package org.evenpour.view.model;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.evenpour.intake.IntakeException;
import org.evenpour.live.LogsAtRest;
import org.evenpour.plant.PlantFiles;

/** The sample week, read and audited once. */
public final class Sample {
  private static final Path FOLDER = Path.of("samples", "tordilla-week");

  /** Its files. */
  public static final PlantFiles SOURCES =
      new PlantFiles(
          List.of(FOLDER.resolve("casting-log.csv")),
          FOLDER.resolve("profile.yaml"),
          FOLDER.resolve("events.csv"));

  private static final OpenedLog OPENED = open();

  private Sample() {}

  private static OpenedLog open() {
    try {
      return read(SOURCES);
    } catch (IntakeException | IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Reads and audits logs. */
  public static OpenedLog read(PlantFiles files) throws IntakeException, IOException {
    try (LogsAtRest logs = new LogsAtRest(files)) {
      return OpenedLog.of(logs.read());
    }
  }

  /** The opened log. */
  public static OpenedLog opened() {
    return OPENED;
  }

  /** A desk in English, metric and light, with thickness chosen. */
  public static Desk desk() {
    return desk(Look.of(false, Language.of("en"), DisplayUnits.METRIC, 720));
  }

  /** A desk with thickness chosen. */
  public static Desk desk(Look look) {
    Selection selection = new Selection();
    opened().fit(selection);
    selection.chooseCharacteristic("thickness");
    return new Desk(opened(), selection, look);
  }
}
