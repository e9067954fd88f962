package org.evenpour.simulate;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/**
 * A casting log of a plant that is made up from its seed: another wheel, other settings with other
 * effects, other faults each time. What holds on such logs was not tuned to one of them.
 *
 * <p>The files are those of {@link Simulation}, but for the study of the gauges.
 */
public final class MadeSimulation {
  private final MadeWheel wheel;
  private final List<MadeFault> faults;
  private final Noise rest;
  private final Noise clerk;
  private final Imperfections imperfections;

  private MadeSimulation(long seed, @Nullable Double sizeSigmas, Condition condition) {
    SplittableRandom root = new SplittableRandom(seed);
    MadePlant plant = MadePlant.draw(new Noise(root.split()));
    SplittableRandom luck = root.split();
    Noise placement = new Noise(root.split());
    rest = new Noise(root.split());
    // After all others, so that a plant is the same in either condition but for its imperfections.
    Noise ladle = new Noise(root.split());
    clerk = new Noise(root.split());
    imperfections = Imperfections.draw(condition, ladle, plant.mass().pour());
    wheel = MadeWheel.of(plant, luck, imperfections, ladle);
    faults = MadePlacement.of(wheel, placement, sizeSigmas);
  }

  /** A wheel and what is planted on it. */
  static MadeSimulation of(long seed, @Nullable Double sizeSigmas, Condition condition) {
    return new MadeSimulation(seed, sizeSigmas, condition);
  }

  /** What is imperfect about the plant. */
  Imperfections imperfections() {
    return imperfections;
  }

  MadeWheel wheel() {
    return wheel;
  }

  List<MadeFault> faults() {
    return faults;
  }

  /**
   * Writes {@value Simulation#LOG}, {@value Simulation#EVENTS}, {@value Simulation#PROFILE},
   * {@value Simulation#TRUTH} and {@value Simulation#EFFECTS}, all or none, over any files of an
   * earlier run.
   *
   * @param directory made if it is missing
   * @param seed of everything
   * @param sizeSigmas of every fault in the sigma of its scope, above 0 and up to 10; null = each
   *     its own, 1.5 to 4
   * @param condition of pours, scale, gauge, records and molds
   */
  public static Simulation.Summary write(
      Path directory, long seed, @Nullable Double sizeSigmas, Condition condition)
      throws IOException {
    if (sizeSigmas != null && !(sizeSigmas > 0 && sizeSigmas <= 10)) {
      throw new IllegalArgumentException(
          "the size must be above 0 and up to 10 sigmas, not " + sizeSigmas);
    }
    MadeSimulation made = of(seed, sizeSigmas, condition);
    MadePlant plant = made.wheel.plant();
    MadeLog log = new MadeLog(made.wheel, made.faults, made.rest, made.imperfections, made.clerk);
    List<MadeTruth> truths = MadeTruth.of(made.wheel, made.faults);
    try (OutputFolder folder = OutputFolder.at(directory)) {
      List<List<String>> rows = log.rows();
      folder.table(Simulation.LOG, log.columns(), rows);
      folder.table(Simulation.EVENTS, EventBook.COLUMNS, log.events());
      folder.text(Simulation.PROFILE, log.profile());
      folder.table(
          Simulation.TRUTH,
          MadeTruth.COLUMNS,
          truths.stream().map(truth -> truth.cells(plant)).toList());
      folder.table(
          Simulation.EFFECTS,
          LastingEffect.COLUMNS,
          plant.effects().stream().map(LastingEffect::cells).toList());
      folder.complete();
      return new Simulation.Summary(
          rows.size(), 0, plant.chargeStarts().size() + 1, plant.turns(), truths.size());
    }
  }
}
