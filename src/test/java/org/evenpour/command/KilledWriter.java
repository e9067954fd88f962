package org.evenpour.command;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Place;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.evenpour.casting.Specification;
import org.evenpour.control.LimitsBook.SpecificationRevision;
import org.evenpour.plant.Seen;
import org.evenpour.plant.SeenFile;
import org.evenpour.store.CausesFile;
import org.evenpour.store.LimitsFile;

/** Writes line after line until it is killed, and says after each that it stands. */
final class KilledWriter {
  static final Instant AT = Instant.parse("2026-03-05T21:10:00Z");

  private KilledWriter() {}

  /**
   * Writes.
   *
   * @param arguments {@code limits}, {@code causes} or {@code seen}; the file
   */
  public static void main(String[] arguments) throws IOException {
    Path file = Path.of(arguments[1]);
    for (int n = 1; ; n++) {
      add(arguments[0], file, n);
      System.out.println(n);
      System.out.flush();
    }
  }

  static void add(String kind, Path file, int n) throws IOException {
    String who = "writer " + ProcessHandle.current().pid() + " no. " + n;
    switch (kind) {
      case "limits" ->
          new LimitsFile(file)
              .specify(
                  new SpecificationRevision(
                      "T1", "mass", new Specification(380.0, null, null), "kg", AT, AT, who, "x"));
      case "causes" ->
          new CausesFile(file)
              .add(
                  new CauseMark(
                      new Place("T1", "mass", Scope.MOLD, "7", null, Direction.LOW),
                      AT,
                      AT,
                      new Cause(Kind.OTHER, "scale"),
                      Verdict.RIGHT,
                      who,
                      "x",
                      AT));
      case "seen" -> new SeenFile(file).add(new Seen(AT, "mass, wheel, low", 1, 2, who, "x"));
      default -> throw new IllegalArgumentException(kind);
    }
  }

  /** How many lines stand in the file; each is checked. */
  static int lines(String kind, Path file) throws IOException {
    return switch (kind) {
      case "limits" -> new LimitsFile(file).read().book().revisions().size();
      case "causes" -> new CausesFile(file).read().marks().size();
      case "seen" -> new SeenFile(file).read().size();
      default -> throw new IllegalArgumentException(kind);
    };
  }
}
