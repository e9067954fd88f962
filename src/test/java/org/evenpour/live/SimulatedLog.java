package org.evenpour.live;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.intake.ArrivingRecords;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogHeader;
import org.evenpour.intake.Profiles;
import org.evenpour.simulate.Scenario;
import org.evenpour.simulate.Simulation;

/** A simulated log's lines, and how they get into a live record. */
record SimulatedLog(List<String> lines) {
  static final Instant NOW = Instant.parse("2026-03-09T10:00:00Z");

  static SimulatedLog of(Scenario scenario) {
    List<String> lines = new ArrayList<>();
    Simulation rows = Simulation.rows(scenario);
    while (rows.hasNext()) {
      lines.add(rows.next().line());
    }
    return new SimulatedLog(lines);
  }

  /** The headings and the first rows, as a file holds them. */
  String text(int rows) {
    StringBuilder text = new StringBuilder(Simulation.header()).append('\n');
    lines.subList(0, rows).forEach(line -> text.append(line).append('\n'));
    return text.toString();
  }

  /** The turn of a row, as it stands in its cells. */
  int turn(int row) {
    return Integer.parseInt(lines.get(row).split(",")[3]);
  }

  /** Gives a record the headings. */
  static void open(LiveRecord record) throws IntakeException {
    record.header(LogHeader.read("log.csv", 1, Simulation.header(), Profiles.NONE));
  }

  /** Gives a record one row. */
  void row(LiveRecord record, int row) {
    record.row(row + 2L, lines.get(row).getBytes(StandardCharsets.UTF_8), NOW);
  }

  /** Hands text on to a record in pieces of so many bytes. */
  static void inPieces(ArrivingRecords from, String text, int bytes, LiveRecord record)
      throws IntakeException {
    ArrivingRecords.Reader reader =
        new ArrivingRecords.Reader() {
          @Override
          public void header(LogHeader header) {
            record.header(header);
          }

          @Override
          public void record(long line, byte[] row) {
            record.row(line, row, NOW);
          }
        };
    byte[] all = text.getBytes(StandardCharsets.UTF_8);
    for (int at = 0; at < all.length; at += bytes) {
      int count = Math.min(bytes, all.length - at);
      from.add(java.util.Arrays.copyOfRange(all, at, at + count), count, reader);
    }
  }
}
