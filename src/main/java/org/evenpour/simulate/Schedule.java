package org.evenpour.simulate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * When the wheel runs: its charges and the stops within them. Faults never move it.
 *
 * @param charges in order
 * @param turns in all charges together
 */
record Schedule(List<Charge> charges, int turns) {

  /**
   * One furnace load.
   *
   * @param number as the log names it
   * @param startSeconds after the scenario's start
   * @param firstTurn its first turn, which begins at mold 1
   * @param anodes how many it gives
   * @param stopSeconds before which of its anodes the wheel stood, and how long
   */
  record Charge(
      int number,
      double startSeconds,
      int firstTurn,
      int anodes,
      Map<Integer, Double> stopSeconds) {

    int turns(int molds) {
      return (anodes + molds - 1) / molds;
    }
  }

  static Schedule of(Scenario scenario, Noise noise) {
    List<Charge> charges = new ArrayList<>();
    int turn = 1;
    double lastStartHours = scenario.days() * 24.0 - 7;
    for (int i = 0; i * scenario.hoursBetweenCharges() <= lastStartHours; i++) {
      double start = i * scenario.hoursBetweenCharges() * 3600 + noise.between(0, 2400);
      int anodes = (int) (Plant.CHARGE_KG * noise.between(0.97, 1.03) / Plant.TARGET_MASS_KG);
      Map<Integer, Double> stops = new TreeMap<>();
      for (int stop = noise.whole(1, 3); stop > 0; stop--) {
        double minutes = noise.happens(0.12) ? noise.between(35, 60) : noise.between(3, 18);
        stops.put(noise.whole(scenario.molds(), anodes - 1), minutes * 60);
      }
      Charge charge = new Charge(1041 + i, start, turn, anodes, stops);
      charges.add(charge);
      turn += charge.turns(scenario.molds());
    }
    return new Schedule(List.copyOf(charges), turn - 1);
  }

  /** The first turns of all charges but the first. */
  List<Integer> chargeStarts() {
    return charges.stream().skip(1).map(Charge::firstTurn).toList();
  }

  /** The charge that casts in this turn. */
  Charge chargeOf(int turn) {
    for (int i = charges.size() - 1; i > 0; i--) {
      if (charges.get(i).firstTurn() <= turn) {
        return charges.get(i);
      }
    }
    return charges.get(0);
  }
}
