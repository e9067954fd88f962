package org.evenpour.view.model;

import java.util.List;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.picture.Mark;
import org.evenpour.picture.MoldRing;
import org.jspecify.annotations.Nullable;

/**
 * Everything that stands on the board at one moment, in words and in the units that are shown.
 * Never changes, so that it may be painted on any thread, in any size.
 *
 * @param place wheel, charge, turn, mold, crew
 * @param age how long ago the last anode came
 * @param clock the time of day
 * @param figure the last anode's mass; null where nothing was read yet
 * @param lesser its other characteristics
 * @param alert what takes the figure's place: silence, a log that cannot be read; null where all is
 *     well
 * @param ring the wheel from above; null before the first anode
 * @param ringTitle what its bars show
 * @param runs the last turns
 * @param verdict whether the wheel is even
 * @param lately which of the last anodes lay outside tolerance or were rejected; empty where none
 * @param signals what matters, the chosen one first
 * @param chosen the signals that a note would be about; empty where there are none
 * @param more how many signals have no room, {@code {0}} of them
 * @param setPoints ladle sides whose set-point is worth a move; empty where all are to be left
 *     alone
 * @param moves settings that moved though no anode shows it yet; said after all else
 * @param notice rows that could not be used or were lost; empty where there are none
 * @param keys what can be pressed
 * @param spoken all of it, for those who cannot see it
 */
public record BoardModel(
    String place,
    String age,
    String clock,
    @Nullable Figure figure,
    List<Figure> lesser,
    @Nullable Alert alert,
    @Nullable MoldRing ring,
    String ringTitle,
    List<BoardRun> runs,
    Verdict verdict,
    String lately,
    List<Matter> signals,
    List<Signal> chosen,
    String more,
    List<String> setPoints,
    List<Matter> moves,
    String notice,
    List<Key> keys,
    String spoken) {

  /** Copies the lists. */
  public BoardModel {
    lesser = List.copyOf(lesser);
    runs = List.copyOf(runs);
    signals = List.copyOf(signals);
    chosen = List.copyOf(chosen);
    setPoints = List.copyOf(setPoints);
    moves = List.copyOf(moves);
    keys = List.copyOf(keys);
  }

  /**
   * One measured value of the last anode.
   *
   * @param name of the characteristic
   * @param number without its unit
   * @param unit its symbol
   * @param way which way it lies from the target; {@link Mark#NONE} where it is on it or none is
   *     known
   * @param distance from the target, with its sign and in words; empty where there is no target
   * @param tolerance whether it lies within, in words; empty where there is none
   * @param isOutside whether it lies outside the tolerance
   */
  public record Figure(
      String name,
      String number,
      String unit,
      Mark way,
      String distance,
      String tolerance,
      boolean isOutside) {}

  /**
   * What takes the figure's place.
   *
   * @param title what is the matter
   * @param large how long it has lasted; empty where that is not known
   * @param detail what is known beside it
   */
  public record Alert(String title, String large, String detail) {}

  /**
   * Whether the wheel is even.
   *
   * @param isEven there is no signal; false as well where nothing can be told yet
   * @param isKnown whether there are limits to judge by
   * @param parts each with its shape: {@code Mold 17 thin}
   */
  public record Verdict(boolean isEven, boolean isKnown, String text, List<Part> parts) {
    /** Copies the list. */
    public Verdict {
      parts = List.copyOf(parts);
    }
  }

  /** One part of what is wrong. */
  public record Part(Mark mark, String text) {}

  /**
   * One signal, or several that are said together.
   *
   * @param lead what happened
   * @param advice what goes with it, what to look at first, and what keeps people safe
   * @param seen who saw it and when; empty where nobody did
   * @param isChosen whether a note would be about it
   */
  public record Matter(Mark mark, String lead, String advice, String seen, boolean isChosen) {}

  /**
   * A key and what it does.
   *
   * @param act name of the act
   * @param key as it is written on the keyboard
   * @param does in a word or two
   */
  public record Key(String act, String key, String does) {}
}
