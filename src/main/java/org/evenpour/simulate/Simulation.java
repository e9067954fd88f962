package org.evenpour.simulate;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;

/**
 * A casting log of a seeded wheel: written whole with its events, profile and truth, or given row
 * by row.
 *
 * <p>The model of one pour, with every part kept apart:
 *
 * <pre>
 * mass      = target + mold offset + ladle-side offset + turn effect + effects of settings + pour
 * thickness = mass / (density · plan area) + the mold's level, tilt and dish
 *             + turn effect + effects of settings + the coat that earlier turns left + pour
 * </pre>
 *
 * <p>Turn effects follow a first-order autoregression within a charge; settings each move in their
 * own way; {@link Effect} is the whole list of what drives what. The spreads are those of a
 * fictional plant and are no industry figures.
 *
 * <p>As an iterator it is owned by the thread that iterates; the static functions share nothing.
 */
public final class Simulation implements Iterator<Simulation.Row> {

  /** The file that holds the casting log. */
  public static final String LOG = "casting-log.csv";

  /** The file that holds the events. */
  public static final String EVENTS = "events.csv";

  /** The file that holds the wheel's profile. */
  public static final String PROFILE = "profile.yaml";

  /** The file that says what was planted. */
  public static final String TRUTH = "truth.csv";

  /** The file that holds a study of the gauges. */
  public static final String GAUGE = "gauge.csv";

  /** The file that says what each setting truly does. */
  public static final String EFFECTS = "effects.csv";

  /** All files of a simulated wheel. */
  public static final List<String> FILES = List.of(LOG, EVENTS, PROFILE, TRUTH, GAUGE, EFFECTS);

  /**
   * One row of the casting log.
   *
   * @param castAt when its anode was cast
   * @param line as it stands in the file, without its end of line
   */
  public record Row(Instant castAt, String line) {}

  /**
   * What was written.
   *
   * @param anodes rows of the casting log
   * @param rejected how many of them
   * @param charges cast
   * @param turns of the wheel
   * @param shifts rows of the truth
   */
  public record Summary(int anodes, int rejected, int charges, int turns, int shifts) {}

  private final Wheel wheel;
  private @Nullable Row ahead;

  private Simulation(Wheel wheel) {
    this.wheel = wheel;
    advance();
  }

  /**
   * The casting log row by row.
   *
   * @throws IllegalArgumentException if the scenario has no room for its faults
   */
  public static Simulation rows(Scenario scenario) {
    return new Simulation(Wheel.of(scenario));
  }

  /** The casting log's first line. */
  public static String header() {
    return OutputFolder.line(Pour.COLUMNS);
  }

  @Override
  public boolean hasNext() {
    return ahead != null;
  }

  @Override
  public Row next() {
    Row row = ahead;
    if (row == null) {
      throw new NoSuchElementException("the scenario's last anode is cast");
    }
    advance();
    return row;
  }

  private void advance() {
    ahead = null;
    while (ahead == null && wheel.hasNext()) {
      Wheel.Slot slot = wheel.next();
      if (slot.isRecorded()) {
        ahead = new Row(slot.pour().castAt().toInstant(), OutputFolder.line(slot.pour().cells()));
      }
    }
  }

  /**
   * Writes {@value #LOG}, {@value #EVENTS}, {@value #PROFILE}, {@value #TRUTH}, {@value #GAUGE} and
   * {@value #EFFECTS}. Each is written under a temporary name; only when all six are whole do they
   * take their places, over any files of an earlier run.
   *
   * @param directory made if it is missing
   * @throws IllegalArgumentException if the scenario has no room for its faults; nothing is written
   */
  public static Summary write(Path directory, Scenario scenario) throws IOException {
    Wheel wheel = Wheel.of(scenario);
    try (OutputFolder folder = OutputFolder.at(directory)) {
      int[] counts = writeLog(folder, wheel);
      folder.table(
          EVENTS,
          EventBook.COLUMNS,
          wheel.events().entries().stream().map(EventBook.Entry::cells).toList());
      folder.text(PROFILE, Profile.text(scenario));
      List<Truth> truths = Truth.of(wheel);
      folder.table(TRUTH, Truth.COLUMNS, truths.stream().map(Truth::cells).toList());
      folder.table(GAUGE, GaugeTrial.COLUMNS, GaugeTrial.rows(scenario.seed()));
      folder.table(
          EFFECTS,
          LastingEffect.COLUMNS,
          LastingEffect.ofTordilla().stream().map(LastingEffect::cells).toList());
      folder.complete();
      Schedule schedule = wheel.schedule();
      return new Summary(
          counts[0], counts[1], schedule.charges().size(), schedule.turns(), truths.size());
    }
  }

  /** How many anodes there are, and how many of them are rejected. */
  private static int[] writeLog(OutputFolder folder, Wheel wheel) throws IOException {
    int anodes = 0;
    int rejected = 0;
    try (CSVPrinter printer = folder.table(LOG, Pour.COLUMNS)) {
      while (wheel.hasNext()) {
        Wheel.Slot slot = wheel.next();
        if (slot.isRecorded()) {
          printer.printRecord(slot.pour().cells());
          anodes++;
          rejected += slot.pour().defect().isEmpty() ? 0 : 1;
        }
      }
    }
    return new int[] {anodes, rejected};
  }
}
