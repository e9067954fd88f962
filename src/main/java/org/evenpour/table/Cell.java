package org.evenpour.table;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.evenpour.picture.Mark;
import org.evenpour.picture.Picture;
import org.evenpour.words.Digits;
import org.jspecify.annotations.Nullable;

/** What stands in the cell of a table: always text, for people and files; often more. */
public sealed interface Cell {

  /** Stands where a figure is not known. */
  String MISSING = "—";

  /** A place where nothing is known and nothing was expected. */
  Cell BLANK = new Text("");

  /** As text. */
  String text();

  /** By what a column is sorted; null comes last. */
  @Nullable Comparable<?> order();

  /** Words; missing ones are none. */
  static Cell words(@Nullable String text) {
    return text == null ? BLANK : new Text(text);
  }

  /** Words. */
  record Text(String text) implements Cell {
    @Override
    public Comparable<?> order() {
      return text;
    }
  }

  /**
   * A label that counts: mold 9 comes before mold 10.
   *
   * @param text as it is written
   */
  record Label(String text) implements Cell {
    @Override
    public Comparable<?> order() {
      String digits = text.replaceAll("[^0-9]", "");
      return digits.isEmpty() || digits.length() > 15
          ? Double.POSITIVE_INFINITY
          : (Double) Double.parseDouble(digits);
    }
  }

  /**
   * A number.
   *
   * @param value null where it is missing
   * @param digits how it is written
   * @param mark whether it departs, and which way
   */
  record Figure(@Nullable Double value, Digits digits, Mark mark) implements Cell {

    /** A number that says nothing of itself. */
    public Figure(@Nullable Double value, Digits digits) {
      this(value, digits, Mark.NONE);
    }

    @Override
    public String text() {
      return value == null ? MISSING : digits.text(value);
    }

    @Override
    public @Nullable Double order() {
      return value;
    }
  }

  /**
   * A number that a spreadsheet can compute anew.
   *
   * @param formula names cells of the same row by their columns' keys, {@code {mean}-{lower}}, and
   *     rows of a table printed before by its key and from which to which, {@code
   *     {turns/deviation:0-229}}; made of our own words, never of a log's
   * @param figure what it gives
   */
  record Computed(String formula, Figure figure) implements Cell {
    @Override
    public String text() {
      return figure.text();
    }

    @Override
    public @Nullable Double order() {
      return figure.order();
    }
  }

  /**
   * A number that people may change in a spreadsheet, and by which formulas call it there.
   *
   * @param name made of our own words, never of a log's
   */
  record Named(String name, Figure figure) implements Cell {
    @Override
    public String text() {
      return figure.text();
    }

    @Override
    public @Nullable Double order() {
      return figure.order();
    }
  }

  /** What does not follow when somebody changes a limit in a spreadsheet, and says so there. */
  record AsAudited(Cell cell) implements Cell {
    @Override
    public String text() {
      return cell.text();
    }

    @Override
    public @Nullable Comparable<?> order() {
      return cell.order();
    }
  }

  /**
   * A time.
   *
   * @param zone in which it is told
   */
  record Time(Instant at, ZoneId zone) implements Cell {
    private static final DateTimeFormatter SECONDS =
        DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);

    @Override
    public String text() {
      return SECONDS.format(at.atZone(zone));
    }

    @Override
    public Instant order() {
      return at;
    }
  }

  /**
   * A number in words of its own, with a mark before it.
   *
   * @param mark which way
   */
  record Marked(Mark mark, String text, @Nullable Double order) implements Cell {

    /** A number in words of its own. */
    public Marked(String text, @Nullable Double order) {
      this(Mark.NONE, text, order);
    }
  }

  /**
   * A small picture.
   *
   * @param picture drawn into the cell
   * @param text what it shows, as figures
   */
  record Drawn(Picture picture, String text, @Nullable Double order) implements Cell {}
}
