package org.evenpour.simulate;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Quantity;

/**
 * What was truly shifted on a made wheel: measured, as in {@link Truth}, as the wheel with one
 * fault alone minus the same wheel with the same luck and without any.
 *
 * @param fault which
 * @param mold index; −1 for a side or the wheel
 * @param isMass else thickness
 * @param firstTurn index of the first turn in which anything differs
 * @param lastTurn index of the last in which at least a quarter of the largest difference is left
 * @param size mean difference over these turns
 * @param sizeSigma the same in the sigma of its scope
 */
record MadeTruth(
    MadeFault fault,
    int mold,
    boolean isMass,
    int firstTurn,
    int lastTurn,
    double size,
    double sizeSigma) {

  /** The columns of {@link Truth}, and one more. */
  static final List<String> COLUMNS =
      Stream.concat(Truth.COLUMNS.stream(), Stream.of("size_sigma")).toList();

  /** Less is told of nobody, in sigma of its scope. */
  private static final double LEAST_SIGMA = 0.25;

  /** Everything that the faults truly shift, in their order. */
  static List<MadeTruth> of(MadeWheel wheel, List<MadeFault> faults) {
    MadeWheel.Values sound = wheel.values(List.of());
    List<MadeTruth> truths = new ArrayList<>();
    for (MadeFault fault : faults) {
      MadeWheel.Values faulty = wheel.values(List.of(fault));
      MadeFault.Place place = fault.place();
      for (int i = 0; i < Math.max(1, place.molds()); i++) {
        int mold = place.isShared() ? -1 : place.firstMold() + i;
        measure(wheel, fault, mold, true, faulty.kg(), sound.kg(), truths);
        measure(wheel, fault, mold, false, faulty.mm(), sound.mm(), truths);
      }
    }
    return List.copyOf(truths);
  }

  private static void measure(
      MadeWheel wheel,
      MadeFault fault,
      int mold,
      boolean isMass,
      double[][] faulty,
      double[][] sound,
      List<MadeTruth> truths) {
    MadePlant plant = wheel.plant();
    double[] sums = new double[plant.turns()];
    int[] counts = new int[plant.turns()];
    double largest = 0;
    int first = -1;
    for (int t = 0; t < plant.turns(); t++) {
      for (int m = 0; m < plant.molds(); m++) {
        if ((mold < 0 || m == mold) && fault.place().holds(m, plant.side(t, m))) {
          sums[t] += faulty[t][m] - sound[t][m];
          counts[t]++;
        }
      }
      double mean = counts[t] == 0 ? 0 : Math.abs(sums[t] / counts[t]);
      largest = Math.max(largest, mean);
      first = first < 0 && mean > 1e-9 ? t : first;
    }
    if (first < 0) {
      return;
    }
    int last = plant.turns() - 1;
    while (counts[last] == 0 || Math.abs(sums[last] / counts[last]) < largest / 4) {
      last--;
    }
    double sum = 0;
    int count = 0;
    for (int t = first; t <= last; t++) {
      sum += sums[t];
      count += counts[t];
    }
    double size = sum / count;
    double sigmas = Math.abs(size) / plant.sigma(fault.place(), isMass);
    if (sigmas >= LEAST_SIGMA) {
      truths.add(new MadeTruth(fault, mold, isMass, first, last, size, sigmas));
    }
  }

  /** As the truth file shows it, a cell for each of {@link #COLUMNS}. */
  List<String> cells(MadePlant plant) {
    int side = fault.place().side();
    return List.of(
        fault.name(),
        fault.place().scope().id(),
        plant.wheel(),
        mold < 0 ? "" : Integer.toString(mold + 1),
        side < 0 ? "" : side == 0 ? "A" : "B",
        isMass ? Quantity.MASS : Quantity.THICKNESS,
        Integer.toString(plant.firstTurn() + firstTurn),
        Integer.toString(plant.firstTurn() + lastTurn),
        (size > 0 ? Direction.HIGH : Direction.LOW).id(),
        Decimal.text(size, 3),
        isMass ? "kg" : "mm",
        fault.cause(),
        "",
        "",
        Decimal.text(sizeSigma, 2));
  }
}
