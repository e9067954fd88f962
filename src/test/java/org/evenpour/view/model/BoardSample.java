package org.evenpour.view.model;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.evenpour.casting.CastingEvent;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogHeader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.live.LiveRecord;
import org.evenpour.live.Snapshot;
import org.evenpour.plant.SeenFile;

/** The sample week as the board saw it in the midst of a turn. */
public record BoardSample(Snapshot snapshot, Instant castAt) {
  private static final Path FOLDER = Path.of("samples", "tordilla-week");
  private static final Map<Integer, BoardSample> MADE = new HashMap<>();

  /** Anodes of the last turn that were cast. */
  public static final int OF_TURN = 17;

  /** Before anything is wrong. */
  public static final int EVEN = 62;

  /** Molds 13 to 16 and 17 run thin, 23 thick. */
  public static final int UNEVEN = 205;

  /** The board at a turn, 17 anodes of which are cast. */
  public static synchronized BoardSample at(int turn) {
    return MADE.computeIfAbsent(turn, BoardSample::make);
  }

  private static BoardSample make(int turn) {
    try {
      Profiles profiles = ProfileReader.read(FOLDER.resolve("profile.yaml"));
      List<CastingEvent> events = EventsReader.read(FOLDER.resolve("events.csv"), profiles);
      List<String> lines = Files.readAllLines(FOLDER.resolve("casting-log.csv"));
      LiveRecord record =
          new LiveRecord(
              "casting-log.csv", profiles, events, new SeenFile(FOLDER.resolve("no-such-file")));
      record.header(LogHeader.read("casting-log.csv", 1, lines.get(0), profiles));
      Instant at = Instant.EPOCH;
      int ofTurn = 0;
      for (int i = 1; i < lines.size(); i++) {
        String[] cells = lines.get(i).split(",");
        int its = Integer.parseInt(cells[3]);
        if (its == turn) {
          ofTurn++;
        }
        if (its > turn || ofTurn > OF_TURN) {
          break;
        }
        at = OffsetDateTime.parse(cells[0]).toInstant();
        record.row(i + 1L, lines.get(i).getBytes(StandardCharsets.UTF_8), at);
      }
      record.caughtUp(at);
      return new BoardSample(record.snapshot(0), at);
    } catch (IOException | IntakeException e) {
      throw new IllegalStateException(e);
    }
  }

  /** What the board says so many seconds after the last anode. */
  public BoardModel model(long secondsLater, Look look) {
    Instant now = castAt.plusSeconds(secondsLater);
    return BoardReading.of(snapshot.lookedAt(now), now, look, BoardChoice.NONE);
  }

  /** A look. */
  public static Look look(String language, boolean dark) {
    return Look.of(dark, Language.of(language), DisplayUnits.METRIC, 720);
  }
}
