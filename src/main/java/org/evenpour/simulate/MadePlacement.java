package org.evenpour.simulate;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.evenpour.casting.EventKind;
import org.evenpour.simulate.MadeFault.Place;
import org.evenpour.simulate.MadePlant.Sides;
import org.evenpour.simulate.MadeSetting.Rhythm;
import org.jspecify.annotations.Nullable;

/**
 * Where and when the faults and decoys of a made wheel are: after the first third of the log, those
 * of the whole wheel or a ladle side one after the other, those of molds each in molds of their
 * own. No setting is moved twice at a time.
 *
 * <p>Owned by the thread that places.
 */
final class MadePlacement {
  private static final int SHORTEST = 15;
  private static final int LONGEST = 80;
  private static final int APART = 6;
  private static final int TRIES = 60;
  private static final int LONGEST_LAG = 3;

  /** A stretch of turns in which something is taken: a setting, or (−1) what molds share. */
  private record Taken(int what, int first, int last) {}

  /** The turns of one fault. */
  private record Stretch(int first, int last) {}

  private static final int SHARED = -1;

  private final MadeWheel wheel;
  private final MadePlant plant;
  private final Noise noise;
  private final @Nullable Double sizeSigmas;
  private final boolean[] moldTaken;
  private final List<Taken> taken = new ArrayList<>();
  private final List<MadeFault> placed = new ArrayList<>();

  private MadePlacement(MadeWheel wheel, Noise noise, @Nullable Double sizeSigmas) {
    this.wheel = wheel;
    this.plant = wheel.plant();
    this.noise = noise;
    this.sizeSigmas = sizeSigmas;
    this.moldTaken = new boolean[plant.molds()];
  }

  /**
   * Three to seven faults, and up to three decoys besides.
   *
   * @param sizeSigmas of every fault, in the sigma of its scope; null = each its own, 1.5 to 4
   */
  static List<MadeFault> of(MadeWheel wheel, Noise noise, @Nullable Double sizeSigmas) {
    return new MadePlacement(wheel, noise, sizeSigmas).place();
  }

  private List<MadeFault> place() {
    for (int faults = noise.whole(3, 7); faults > 0; faults--) {
      int die = noise.whole(1, 20);
      boolean isDone =
          die <= 10
              ? tried(this::settingMove)
              : die <= 17 ? tried(this::unrecorded) : tried(this::moldChange);
      if (!isDone) {
        tried(this::settingMove);
      }
    }
    for (int decoys = noise.whole(0, 3); decoys > 0; decoys--) {
      decoy();
    }
    return List.copyOf(placed);
  }

  /** Again and again until there is room for it. */
  private static boolean tried(BooleanSupplier fault) {
    for (int i = 0; i < TRIES; i++) {
      if (fault.getAsBoolean()) {
        return true;
      }
    }
    return false;
  }

  /** A recorded setting moves, and what it acts on follows. */
  private boolean settingMove() {
    int index = one(true);
    MadeSetting setting = plant.settings().get(index);
    Place place = place(setting.rhythm());
    Stretch stretch = stretch(setting, setting.lagTurns());
    if (place == null || stretch == null || !isFree(index, place, stretch)) {
      return false;
    }
    double kgPart = Math.abs(setting.kgPerUnit()) / plant.sigma(place, true);
    double mmPart = Math.abs(plant.mmPerUnit(setting)) / plant.sigma(place, false);
    double by = noise.sign() * size() / Math.max(kgPart, mmPart);
    boolean isRamp = noise.happens(0.3);
    int turns = stretch.last() - stretch.first() + 1;
    int ramp = isRamp ? (int) (turns * noise.between(0.3, 0.7)) : 0;
    take(index, place, stretch);
    placed.add(
        new MadeFault(
            (isRamp ? "setting-ramp-" : "setting-step-") + place.word(),
            setting.name(),
            place,
            stretch.first(),
            stretch.last(),
            ramp,
            index,
            by,
            0,
            0));
    return true;
  }

  /** Something shifts that no record tells of; often a decoy steps in the very same turn. */
  private boolean unrecorded() {
    int die = noise.whole(1, 20);
    Place place = die <= 9 ? molds(1) : die <= 14 ? side() : Place.WHEEL;
    Stretch stretch = stretch(null, 0);
    if (place == null || stretch == null || !isFree(SHARED, place, stretch)) {
      return false;
    }
    boolean isMass = noise.happens(place.isShared() ? 0.6 : 0.35);
    double shift = noise.sign() * size() * plant.sigma(place, isMass);
    take(SHARED, place, stretch);
    boolean hasDecoy = noise.happens(0.45) && decoyBeside(place, stretch);
    placed.add(
        new MadeFault(
            "unrecorded-" + place.scope().id() + (hasDecoy ? "-beside-decoy" : ""),
            "",
            place,
            stretch.first(),
            stretch.last(),
            0,
            -1,
            0,
            isMass ? shift : 0,
            isMass ? 0 : shift));
    return true;
  }

  /** Another mold stands in a position from a charge's first turn on. */
  private boolean moldChange() {
    List<Integer> turns =
        plant.chargeStarts().stream()
            .filter(turn -> turn > plant.turns() / 3 && turn <= plant.turns() - SHORTEST)
            .toList();
    Place place = molds(1);
    if (place == null || turns.isEmpty()) {
      return false;
    }
    Stretch stretch = new Stretch(turns.get(noise.whole(0, turns.size() - 1)), plant.turns() - 1);
    boolean isMass = noise.happens(0.3);
    double shift = noise.sign() * size() * plant.sigma(place, isMass);
    take(SHARED, place, stretch);
    placed.add(
        new MadeFault(
            "mold-change",
            EventKind.MOLD_CHANGED,
            place,
            stretch.first(),
            stretch.last(),
            0,
            -1,
            0,
            isMass ? shift : 0,
            isMass ? 0 : shift));
    return true;
  }

  private void decoy() {
    int index = one(false);
    MadeSetting setting = plant.settings().get(index);
    Place place = place(setting.rhythm());
    Stretch stretch = stretch(setting, 0);
    if (place != null && stretch != null && isFreeOf(index, stretch)) {
      addDecoy(index, place, stretch);
    }
  }

  private boolean decoyBeside(Place place, Stretch stretch) {
    List<Integer> idle =
        IntStream.range(0, plant.settings().size())
            .filter(i -> !plant.settings().get(i).acts() && !plant.settings().get(i).isFollower())
            .filter(i -> canMove(plant.settings().get(i).rhythm(), place))
            .boxed()
            .toList();
    if (idle.isEmpty()) {
      return false;
    }
    int index = idle.get(noise.whole(0, idle.size() - 1));
    // Moved by the lag that the profile gives it, it steps when the shift begins.
    int lag = plant.settings().get(index).lagTurns();
    Stretch own = new Stretch(stretch.first() - lag, stretch.last());
    if (!isFreeOf(index, own)) {
      return false;
    }
    addDecoy(index, place, own);
    return true;
  }

  private void addDecoy(int index, Place place, Stretch stretch) {
    double by = noise.sign() * noise.between(3, 10) * plant.settings().get(index).sd();
    taken.add(new Taken(index, stretch.first(), stretch.last()));
    placed.add(
        new MadeFault(
            "decoy-move", "", place, stretch.first(), stretch.last(), 0, index, by, 0, 0));
  }

  /** A setting that goes its own way, and acts or doesn't; every plant has both. */
  private int one(boolean acts) {
    List<Integer> such =
        IntStream.range(0, plant.settings().size())
            .filter(i -> plant.settings().get(i).acts() == acts)
            .filter(i -> !plant.settings().get(i).isFollower())
            .boxed()
            .toList();
    return such.get(noise.whole(0, such.size() - 1));
  }

  private static boolean canMove(Rhythm rhythm, Place place) {
    return switch (rhythm) {
      case POUR -> true;
      case MOLD -> place.side() < 0;
      case TURN -> place.equals(Place.WHEEL);
      case SIDE -> place.isShared();
      case SHIFT -> false; // it is set at the shift's beginning only
    };
  }

  private @Nullable Place place(Rhythm rhythm) {
    int die = noise.whole(1, 20);
    return switch (rhythm) {
      case POUR ->
          die <= 5 ? molds(1) : die <= 9 ? molds(severalMolds()) : die <= 14 ? side() : Place.WHEEL;
      case MOLD -> die <= 10 ? molds(1) : die <= 16 ? molds(severalMolds()) : Place.WHEEL;
      case SIDE -> die <= 13 ? side() : Place.WHEEL;
      case TURN, SHIFT -> Place.WHEEL;
    };
  }

  private int severalMolds() {
    return noise.whole(2, 4);
  }

  private @Nullable Place side() {
    return plant.sides() == Sides.ONE ? null : new Place(-1, 0, noise.whole(0, 1));
  }

  private @Nullable Place molds(int count) {
    int first = noise.whole(0, plant.molds() - count);
    for (int m = first; m < first + count; m++) {
      if (moldTaken[m]) {
        return null;
      }
    }
    return new Place(first, count, -1);
  }

  /** Some turns after the first third; what is set once a shift moves with a shift. */
  private @Nullable Stretch stretch(@Nullable MadeSetting setting, int lagTurns) {
    int from = plant.turns() / 3 + LONGEST_LAG + 1;
    int first = noise.whole(from, plant.turns() - SHORTEST - lagTurns - 1);
    int last =
        noise.happens(0.2)
            ? plant.turns() - 1
            : Math.min(plant.turns() - 1, first + noise.whole(SHORTEST, LONGEST) - 1);
    if (setting != null && setting.rhythm() == Rhythm.SHIFT) {
      while (first > from && !wheel.isShiftStart(first)) {
        first--;
      }
      while (last < plant.turns() - 1 && !wheel.isShiftStart(last + 1)) {
        last++;
      }
      if (!wheel.isShiftStart(first)) {
        return null;
      }
    }
    return new Stretch(first, last);
  }

  private double size() {
    double drawn = noise.between(1.5, 4);
    return sizeSigmas == null ? drawn : sizeSigmas;
  }

  private boolean isFree(int setting, Place place, Stretch stretch) {
    // What acts later lasts longer.
    Stretch felt = new Stretch(stretch.first(), stretch.last() + LONGEST_LAG);
    return (setting < 0 || isFreeOf(setting, stretch))
        && (!place.isShared() || isFreeOf(SHARED, felt));
  }

  private boolean isFreeOf(int what, Stretch stretch) {
    return taken.stream()
        .noneMatch(
            t ->
                t.what() == what
                    && stretch.first() <= t.last() + APART
                    && stretch.last() >= t.first() - APART);
  }

  private void take(int setting, Place place, Stretch stretch) {
    if (setting >= 0) {
      taken.add(new Taken(setting, stretch.first(), stretch.last()));
    }
    if (place.isShared()) {
      taken.add(new Taken(SHARED, stretch.first(), stretch.last() + LONGEST_LAG));
    }
    for (int m = place.firstMold(); m >= 0 && m < place.firstMold() + place.molds(); m++) {
      moldTaken[m] = true;
    }
  }
}
