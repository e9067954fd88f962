package org.evenpour.casting;

import java.time.Instant;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What a person said of one cause of one signal.
 *
 * <p>It names the signal by where and when it was, never by its number or its turns: those are
 * others when another stretch of the log is audited.
 *
 * @param place where the signal acts
 * @param from when the signal began, as it was estimated then
 * @param to when the signal's last anode was cast, as far as the log went then
 * @param cause a recorded setting or event, or words
 * @param verdict right, wrong, or neither any more
 * @param who says so
 * @param why in words
 * @param at when it was said
 */
public record CauseMark(
    Place place,
    Instant from,
    Instant to,
    Cause cause,
    Verdict verdict,
    String who,
    String why,
    Instant at) {

  /** Makes one line of each text. */
  public CauseMark {
    who = line(who);
    why = line(why);
  }

  private static String line(String text) {
    return text.replaceAll("[\\s\\p{Cntrl}]+", " ").strip();
  }

  /** What a person said. */
  public enum Verdict {
    /** It was this. */
    RIGHT,
    /** It was not this. */
    WRONG,
    /** What was said before is taken back. */
    OPEN
  }

  /** What a cause is. */
  public enum Kind {
    /** A column of the log. */
    SETTING,
    /** A kind of events. */
    EVENT,
    /** In words: something that no record shows. */
    OTHER
  }

  /**
   * Where a signal acts.
   *
   * @param mold null unless the scope is a mold or a pour
   * @param side null unless the scope is a ladle side
   */
  public record Place(
      String wheel,
      String characteristic,
      Scope scope,
      @Nullable String mold,
      @Nullable String side,
      Direction direction) {}

  /**
   * A cause.
   *
   * @param name the setting's column, the event's kind, or words; blanks in a row count as one
   */
  public record Cause(Kind kind, String name) {
    /** Makes one line of it. */
    public Cause {
      name = line(name);
      if (name.isEmpty()) {
        throw new IllegalArgumentException("a cause needs a name");
      }
    }

    /** Whether both are the same; words are, however large their letters are. */
    public boolean isSame(Cause other) {
      return kind == other.kind && key().equals(other.key());
    }

    /** Equal for causes that are the same. */
    public String key() {
      return kind + " " + (kind == Kind.OTHER ? name.toLowerCase(Locale.ROOT) : name);
    }
  }

  /** Whether it is about a signal of this place and time: the same place, and times that meet. */
  public boolean isAbout(Place itsPlace, Instant itsFrom, Instant itsTo) {
    return place.equals(itsPlace) && !from.isAfter(itsTo) && !to.isBefore(itsFrom);
  }

  /** Whether this one, said later, takes the place of an earlier one. */
  public boolean replaces(CauseMark earlier) {
    return isAbout(earlier.place, earlier.from, earlier.to) && cause.isSame(earlier.cause);
  }
}
