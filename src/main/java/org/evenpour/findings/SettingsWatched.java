package org.evenpour.findings;

import java.time.Instant;
import java.util.List;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Scope;
import org.jspecify.annotations.Nullable;

/**
 * What became of the recorded settings themselves: which of them are watched, and where they moved.
 *
 * @param settings one for each wheel and numeric setting
 * @param moves in the order of wheels and onsets
 * @param beyond the wheel with the settings' effects taken off
 */
public record SettingsWatched(List<Watched> settings, List<Move> moves, BeyondSettings beyond) {

  /** Where no setting is watched. */
  public static final SettingsWatched NONE =
      new SettingsWatched(List.of(), List.of(), BeyondSettings.NONE);

  /** Copies the lists. */
  public SettingsWatched {
    settings = List.copyOf(settings);
    moves = List.copyOf(moves);
  }

  /** Those of several wheels together. */
  public static SettingsWatched all(List<SettingsWatched> wheels) {
    return new SettingsWatched(
        wheels.stream().flatMap(one -> one.settings().stream()).toList(),
        wheels.stream().flatMap(one -> one.moves().stream()).toList(),
        new BeyondSettings(wheels.stream().flatMap(one -> one.beyond().views().stream()).toList()));
  }

  /** What is told of one setting; null where it is not there. */
  public @Nullable Watched of(String wheel, String setting) {
    for (Watched one : settings) {
      if (one.wheel().equals(wheel) && one.setting().equals(setting)) {
        return one;
      }
    }
    return null;
  }

  /** The moves that no signal tells of, in the order of wheels and onsets. */
  public List<Move> alone() {
    return moves.stream().filter(move -> move.signals().isEmpty()).toList();
  }

  /**
   * One setting of one wheel.
   *
   * @param scopes of what it has charts of: molds, ladle sides, the wheel
   * @param gaps where it has none, and why
   * @param fromTurn the first turn that was looked at
   */
  public record Watched(
      String wheel, String setting, List<Scope> scopes, List<Gap> gaps, int fromTurn) {

    /** Copies the lists. */
    public Watched {
      scopes = List.copyOf(scopes);
      gaps = List.copyOf(gaps);
    }
  }

  /**
   * What is not watched.
   *
   * @param scope null = nothing of this setting is
   */
  public record Gap(@Nullable Scope scope, Reason reason) {}

  /** Why something of a setting is not watched. */
  public enum Reason {
    /** The profile gives settings no share of the false alarms. */
    NO_SHARE,
    /** It is written down in fewer than half of the turns. */
    SELDOM_RECORDED,
    /** Most of its values are the same as the one before: it is set, or rounded, or constant. */
    HELD,
    /** There are too few turns or molds. */
    FEW,
    /** One value is so much like the one before that it has no usual level. */
    WANDERS,
    /** It moves again and again, as with each charge: that is how it is. */
    RESTLESS
  }

  /**
   * A setting's own lasting move, at one place.
   *
   * @param unit of the setting
   * @param group of the setting
   * @param scope {@code MOLD}, {@code SIDE} or {@code WHEEL}
   * @param molds neighboring molds in the order of the wheel; empty unless the scope is a mold
   * @param side null unless a ladle side moved
   * @param direction {@code HIGH} or {@code LOW}
   * @param firstTurn turn in which it was found
   * @param lastTurn last turn to which it holds
   * @param sinceTurn estimated onset
   * @param sinceAt when the onset turn began
   * @param lastCastAt when the last anode that it holds to was cast
   * @param open whether it still held when the log ended
   * @param movedBy mean over the molds, in the setting's unit
   * @param least of the molds, the one that moved least
   * @param most of the molds, the one that moved most
   * @param sizeSigma the clearest mold's mean departure in the chart's sigma
   * @param signals ids of the signals that tell of it; empty where the anodes do not show it
   * @param lookFirst what to look at first, in the trade's words; empty where nothing is advised
   */
  public record Move(
      String wheel,
      String setting,
      String unit,
      String group,
      Scope scope,
      List<String> molds,
      @Nullable String side,
      Direction direction,
      int firstTurn,
      int lastTurn,
      int sinceTurn,
      Instant sinceAt,
      Instant lastCastAt,
      boolean open,
      double movedBy,
      double least,
      double most,
      double sizeSigma,
      List<String> signals,
      String lookFirst) {

    /** Copies the lists. */
    public Move {
      molds = List.copyOf(molds);
      signals = List.copyOf(signals);
    }

    /** The same, told by these signals, with what to look at first. */
    public Move toldBy(List<String> ids, String advised) {
      return new Move(
          wheel,
          setting,
          unit,
          group,
          scope,
          molds,
          side,
          direction,
          firstTurn,
          lastTurn,
          sinceTurn,
          sinceAt,
          lastCastAt,
          open,
          movedBy,
          least,
          most,
          sizeSigma,
          ids,
          advised);
    }
  }
}
