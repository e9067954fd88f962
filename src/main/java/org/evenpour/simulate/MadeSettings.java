package org.evenpour.simulate;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.simulate.MadePlant.Sides;
import org.evenpour.simulate.MadePlant.Wander;
import org.evenpour.simulate.MadeSetting.Rhythm;

/**
 * Draws a made plant's settings: four to ten, some of which act and some of which don't, and in
 * every second plant an idle one that follows one that acts.
 *
 * <p>Owned by the thread that draws.
 */
final class MadeSettings {
  private static final List<String> NAMES =
      List.of(
          "alder", "aspen", "birch", "cedar", "elder", "hazel", "juniper", "larch", "linden",
          "maple", "oak", "pine", "poplar", "rowan", "spruce", "willow");

  private static final List<String> UNITS =
      List.of("c", "mm", "kg_s", "l_min", "m3_h", "ml", "s", "bar", "kpa", "pct", "rpm", "ppm");

  private static final List<String> GROUPS =
      List.of("pour", "wash", "cooling", "melt", "hall", "other");

  private final Noise noise;
  private final Sides sides;
  private final Wander mass;
  private final Wander thickness;
  private final List<String> names = new ArrayList<>(NAMES);
  private final List<MadeSetting> drawn = new ArrayList<>();

  MadeSettings(Noise noise, Sides sides, Wander mass, Wander thickness) {
    this.noise = noise;
    this.sides = sides;
    this.mass = mass;
    this.thickness = thickness;
  }

  List<MadeSetting> draw() {
    int count = noise.whole(4, 10);
    boolean hasTwin = noise.happens(0.5);
    int own = hasTwin ? count - 1 : count;
    for (int i = 0; i < own; i++) {
      // Two that act and one that doesn't are in every plant.
      drawn.add(setting(i < 2 || (i > 2 && noise.happens(0.5))));
    }
    if (hasTwin) {
      drawn.add(twin());
    }
    return List.copyOf(drawn);
  }

  private MadeSetting setting(boolean acts) {
    Rhythm rhythm = rhythm();
    double sd = StrictMath.pow(10, noise.between(-1, 1.6));
    double kg = 0;
    double mm = 0;
    if (acts) {
      boolean isShared = rhythm != Rhythm.POUR && rhythm != Rhythm.MOLD;
      int which = noise.whole(0, 3); // 0 and 1 thickness, 2 mass, 3 both
      double everyday = noise.sign() * noise.between(0.1, 0.6) / sd;
      kg = which >= 2 ? everyday * (isShared ? mass.turn() : mass.pour()) : 0;
      everyday = noise.sign() * noise.between(0.1, 0.6) / sd;
      mm = which != 2 ? everyday * (isShared ? thickness.turn() : thickness.pour()) : 0;
    }
    return new MadeSetting(
        name(),
        GROUPS.get(noise.whole(0, GROUPS.size() - 1)),
        noise.happens(0.45) ? 0 : noise.whole(1, 3),
        rhythm,
        rhythm == Rhythm.MOLD ? noise.between(0.5, 0.95) : noise.between(0, 0.95),
        sd * noise.between(45, 90),
        sd,
        decimals(sd),
        noise.happens(0.4) ? 0 : noise.between(0, 0.05),
        kg,
        mm,
        -1,
        0);
  }

  private Rhythm rhythm() {
    int die = noise.whole(1, 20);
    if (die <= 5) {
      return Rhythm.POUR;
    }
    if (die <= 9) {
      return Rhythm.MOLD;
    }
    if (die <= 13 || (die <= 17 && sides == Sides.ONE)) {
      return Rhythm.TURN;
    }
    return die <= 17 ? Rhythm.SIDE : Rhythm.SHIFT;
  }

  /** Follows one that acts, at 0.85 to 0.99, and does nothing itself. */
  private MadeSetting twin() {
    int leader = noise.whole(0, 1);
    MadeSetting one = drawn.get(leader);
    double sd = StrictMath.pow(10, noise.between(-1, 1.6));
    return new MadeSetting(
        name(),
        GROUPS.get(noise.whole(0, GROUPS.size() - 1)),
        one.lagTurns(),
        one.rhythm(),
        one.phi(),
        sd * noise.between(45, 90),
        sd,
        decimals(sd),
        noise.happens(0.4) ? 0 : noise.between(0, 0.05),
        0,
        0,
        leader,
        noise.between(0.85, 0.99));
  }

  private String name() {
    String name = names.remove(noise.whole(0, names.size() - 1));
    return name + "_" + UNITS.get(noise.whole(0, UNITS.size() - 1));
  }

  /** Rounding, a step over √12, is less than a tenth of the everyday spread. */
  private static int decimals(double sd) {
    int decimals = 0;
    for (double step = 1; step > sd / 5; step /= 10) {
      decimals++;
    }
    return decimals;
  }
}
