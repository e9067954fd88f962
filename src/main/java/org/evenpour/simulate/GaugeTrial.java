package org.evenpour.simulate;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A gauge study of the plant: ten anodes, three operators, three repeats, in the order in which
 * they were measured. Its random numbers are its own, so that the log is the same without it.
 *
 * <p>The truth: one operator on one anode scatters by {@value #REPEAT_KG} kg and {@value
 * #REPEAT_MM} mm; the operators read {@link #OPERATORS_KG} and {@link #OPERATORS_MM} off; operators
 * and anodes don't interact.
 */
final class GaugeTrial {
  static final List<String> COLUMNS = List.of("part", "operator", "mass_kg", "thickness_mm");

  static final double REPEAT_KG = 0.25;
  static final double REPEAT_MM = 0.1;
  static final List<Double> OPERATORS_KG = List.of(0.1, 0.0, -0.1);
  static final List<Double> OPERATORS_MM = List.of(0.06, 0.0, -0.06);

  private static final List<String> OPERATORS = List.of("R", "S", "T");
  private static final int PARTS = 10;
  private static final int REPEATS = 3;
  private static final double PARTS_KG = 1.5;
  private static final double PARTS_MM = 0.5;
  private static final long OWN = 0x6A09E667F3BCC909L; // set apart from the log's seed

  private GaugeTrial() {}

  static List<List<String>> rows(long seed) {
    Noise noise = new Noise(new SplittableRandom(seed ^ OWN));
    double[] kg = new double[PARTS];
    double[] mm = new double[PARTS];
    for (int part = 0; part < PARTS; part++) {
      kg[part] = Plant.TARGET_MASS_KG + noise.normal(PARTS_KG);
      mm[part] = Plant.THICKNESS_TARGET_MM + noise.normal(PARTS_MM);
    }
    List<List<String>> rows = new ArrayList<>();
    for (int repeat = 0; repeat < REPEATS; repeat++) {
      for (int operator = 0; operator < OPERATORS.size(); operator++) {
        for (int part = 0; part < PARTS; part++) {
          rows.add(
              List.of(
                  Integer.toString(part + 1),
                  OPERATORS.get(operator),
                  Decimal.text(kg[part] + OPERATORS_KG.get(operator) + noise.normal(REPEAT_KG), 1),
                  Decimal.text(
                      mm[part] + OPERATORS_MM.get(operator) + noise.normal(REPEAT_MM), 2)));
        }
      }
    }
    return rows;
  }
}
