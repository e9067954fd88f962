package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.evenpour.casting.Anode;
import org.evenpour.casting.Specification;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelRecord;
import org.evenpour.live.WheelNow;
import org.evenpour.picture.Points;
import org.jspecify.annotations.Nullable;

/**
 * What a wheel cast since its rows were read. Pictures show it at once, beside the limits of the
 * last audit; figures and tables follow when the log was read again.
 *
 * @param anodes in the order of casting
 * @param turns the means of the turns that closed meanwhile
 */
public record Since(List<Came> anodes, List<TurnMean> turns) {

  /** Nothing came. */
  public static final Since NOTHING = new Since(List.of(), List.of());

  /** Copies the lists. */
  public Since {
    anodes = List.copyOf(anodes);
    turns = List.copyOf(turns);
  }

  /**
   * One anode.
   *
   * @param at where it lies along the turns
   * @param ofTurn how many anodes of its turn were cast before it
   * @param side null where none is recorded
   * @param values by characteristic, in the unit that figures are computed in; NaN = not measured
   */
  public record Came(
      long castAtMillis,
      int turn,
      double at,
      int ofTurn,
      String mold,
      @Nullable String side,
      Map<String, Double> values) {}

  /**
   * A turn that closed.
   *
   * @param number where it lies along the turns
   * @param means by characteristic, corrected for which molds were there
   */
  public record TurnMean(double number, Map<String, Double> means) {}

  /**
   * This and what an engine has heard since of the same wheel; the very same where it is nothing.
   */
  Since with(WheelNow now, WheelRows rows) {
    WheelRecord record = rows.record();
    long known =
        anodes.isEmpty() ? record.castAtMillis().get(record.rows() - 1) : last().castAtMillis();
    List<Came> came = new ArrayList<>(anodes);
    for (WheelNow.Turn turn : now.turns()) {
      for (Anode anode : turn.anodes()) {
        if (anode.castAtMillis() > known) {
          came.add(came(anode, now, rows, came.isEmpty() ? null : came.get(came.size() - 1)));
        }
      }
    }
    List<TurnMean> closed = new ArrayList<>(turns);
    if (rows.numbered()) {
      Set<Double> had = new HashSet<>();
      turns.forEach(turn -> had.add(turn.number()));
      double from = rows.lastTurnRead();
      for (WheelNow.Turn turn : now.turns()) {
        Map<String, Double> means = new HashMap<>();
        for (int i = 0; i < turn.means().size(); i++) {
          double mean = turn.means().get(i);
          if (!Double.isNaN(mean)) {
            means.put(now.characteristics().get(i).name(), mean);
          }
        }
        if (turn.turn() >= from && !means.isEmpty() && had.add((double) turn.turn())) {
          closed.add(new TurnMean(turn.turn(), means));
        }
      }
    }
    return came.size() == anodes.size() && closed.size() == turns.size()
        ? this
        : new Since(came, closed);
  }

  private static Came came(Anode anode, WheelNow now, WheelRows rows, @Nullable Came before) {
    WheelRecord record = rows.record();
    int turnBefore = before == null ? record.turn().get(record.rows() - 1) : before.turn();
    double number = Math.floor(before == null ? rows.at()[rows.at().length - 1] : before.at());
    int ofTurn = before == null ? rows.ofLastTurn() : before.ofTurn() + 1;
    if (anode.turn() != turnBefore) {
      number = rows.numbered() && anode.turn() > number ? anode.turn() : number + 1;
      ofTurn = 0;
    }
    // Beyond as many anodes as there are molds, which no whole turn has, they share the last place.
    double part = Math.min(ofTurn, now.molds().size() - 0.5) / now.molds().size();
    Map<String, Double> values = new HashMap<>();
    for (int i = 0; i < now.characteristics().size(); i++) {
      values.put(now.characteristics().get(i).name(), anode.values()[i]);
    }
    boolean hasSide = anode.side() >= 0 && anode.side() < record.sides().size();
    return new Came(
        anode.castAtMillis(),
        anode.turn(),
        number + part,
        ofTurn,
        now.molds().get(anode.mold()),
        hasSide ? record.sides().name(anode.side()) : null,
        values);
  }

  /** The newest anode. */
  Came last() {
    return anodes.get(anodes.size() - 1);
  }

  /** Points, and behind them those of the anodes that pass. */
  Points after(
      Points before,
      String characteristic,
      Unit unit,
      Specification specification,
      Predicate<Came> passes) {
    List<Came> wanted = anodes.stream().filter(passes).toList();
    if (wanted.isEmpty()) {
      return before;
    }
    int size = before.size();
    double[] x = java.util.Arrays.copyOf(before.x(), size + wanted.size());
    double[] y = java.util.Arrays.copyOf(before.y(), size + wanted.size());
    List<Integer> flagged = new ArrayList<>();
    for (int i = 0; i < wanted.size(); i++) {
      double value = wanted.get(i).values().getOrDefault(characteristic, Double.NaN);
      x[size + i] = wanted.get(i).at();
      y[size + i] = unit.fromCanonical(value);
      if (specification.excludes(value)) {
        flagged.add(size + i);
      }
    }
    int known = before.flagged().length;
    int[] flags = java.util.Arrays.copyOf(before.flagged(), known + flagged.size());
    for (int i = 0; i < flagged.size(); i++) {
      flags[known + i] = flagged.get(i);
    }
    return new Points(x, y, flags);
  }
}
