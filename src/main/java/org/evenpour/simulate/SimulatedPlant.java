package org.evenpour.simulate;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The plants that there are to simulate. */
public enum SimulatedPlant {
  /** A week at Tordilla, with one of every fault. */
  TORDILLA,
  /** A plant that is made up from the seed. */
  MADE;

  /**
   * Writes a log with events, profile, truth and effects, all or none.
   *
   * @param directory made if it is missing
   * @param seed of everything
   * @param sizeSigmas of the faults; null = as usual
   * @param condition of pours, scale, gauge, records and molds
   */
  public Simulation.Summary write(
      Path directory, long seed, @Nullable Double sizeSigmas, Condition condition)
      throws IOException {
    if (this == MADE) {
      return MadeSimulation.write(directory, seed, sizeSigmas, condition);
    }
    Scenario scenario =
        Scenario.week(seed).withFaults(List.of(Fault.values())).withCondition(condition);
    return Simulation.write(
        directory, sizeSigmas == null ? scenario : scenario.withSizeSigmas(sizeSigmas));
  }
}
