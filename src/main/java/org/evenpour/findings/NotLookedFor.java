package org.evenpour.findings;

import java.util.Locale;
import org.evenpour.control.BaseRecord;
import org.evenpour.control.LimitProposal;
import org.evenpour.control.OwnPastProposal;
import org.evenpour.words.Remark;

/**
 * Why no signals were looked for where nobody approved limits and none could be proposed. That
 * nothing was found then says nothing.
 *
 * @param turns with values, start-up left out
 * @param anodes in them
 */
public record NotLookedFor(Reason reason, int turns, int anodes) {

  /** The wording of the note that says it, of a characteristic. */
  public static final String NOTE = "note.unlooked";

  /** What is missing. */
  public enum Reason {
    /** Fewer turns than limits can be made of. */
    FEW_TURNS,
    /** Fewer than four molds a turn. */
    FEW_MOLDS,
    /** Fewer than three molds a turn on each ladle side. */
    FEW_MOLDS_ON_SIDES,
    /** Every value is what its mold and its turn make it. */
    NO_SCATTER;

    /** In the JSON report; never changed. */
    public String id() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * Of a base period.
   *
   * @param base from which no limits could be proposed
   */
  public static NotLookedFor of(BaseRecord base) {
    Reason reason =
        switch (LimitProposal.obstacle(base)) {
          case FEW_TURNS -> Reason.FEW_TURNS;
          case FEW_MOLDS ->
              OwnPastProposal.isLongEnough(base) ? Reason.NO_SCATTER : Reason.FEW_MOLDS;
          case FEW_MOLDS_ON_SIDES -> Reason.FEW_MOLDS_ON_SIDES;
          case NO_SCATTER -> Reason.NO_SCATTER;
        };
    int turns = 0;
    for (int i = 0; i < base.size(); i++) {
      turns += i == 0 || base.turn()[i] != base.turn()[i - 1] ? 1 : 0;
    }
    return new NotLookedFor(reason, turns, base.size());
  }

  /** What a base period must have that limits can be made of it, to stand after the reason. */
  public String mend() {
    int more = LimitProposal.LEAST_TURNS - turns;
    return switch (reason) {
      case FEW_TURNS ->
          "take a base that is " + more + (more == 1 ? " turn" : " turns") + " longer";
      case FEW_MOLDS -> "take a longer base, or one of which more anodes are recorded";
      case FEW_MOLDS_ON_SIDES ->
          "leave the ladle out, or take a base in which more molds were cast";
      case NO_SCATTER -> "record another digit, or take a base twice as long";
    };
  }

  /** The reason, to stand after a colon. */
  public Remark why() {
    return switch (reason) {
      case FEW_TURNS ->
          switch (turns) {
            case 0 -> Remark.of("unlooked.no.turns", LimitProposal.LEAST_TURNS);
            case 1 -> Remark.of("unlooked.few.turns.one", LimitProposal.LEAST_TURNS);
            default -> Remark.of("unlooked.few.turns", turns, LimitProposal.LEAST_TURNS);
          };
      case FEW_MOLDS ->
          Remark.of(
              "unlooked.few.molds",
              String.format(Locale.ROOT, "%.1f", (double) anodes / turns).replaceAll("\\.0$", ""),
              OwnPastProposal.LEAST_VALUES);
      case FEW_MOLDS_ON_SIDES -> Remark.of("unlooked.few.sides");
      case NO_SCATTER -> Remark.of("unlooked.no.scatter");
    };
  }
}
