package org.evenpour.simulate;

import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.SplittableRandom;

/**
 * A made plant's wheel with its luck: whatever faults are put on it, everything random is the same.
 *
 * <pre>
 * mass      = target + mold offset + side + turn effect + effects of settings + pour
 * thickness = target + mold offset + side + turn effect + effects of settings + pour
 *             (+ mass's departure / kg per mm, where mass passes into thickness)
 * </pre>
 *
 * <p>A setting acts on the pour in the same mold so many turns later as its lag says.
 */
final class MadeWheel {

  /**
   * What was set and what came out, before anything is rounded.
   *
   * @param settings by setting, turn and mold
   * @param kg mass by turn and mold
   * @param mm mean thickness by turn and mold
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Values(double[][][] settings, double[][] kg, double[][] mm) {}

  /** The first turn after a stop scatters so many times as widely. */
  private static final double START_UP = 1.6;

  private static final int SHIFT_HOURS = 8;

  private final MadePlant plant;
  private final OffsetDateTime[][] castAt;
  private final int[] shifts;
  private final double[][][] wandering;
  private final double[][] kg;
  private final double[][] mm;

  private MadeWheel(MadePlant plant, Noise noise, Imperfections imperfections, Noise ladle) {
    this.plant = plant;
    castAt = times(plant, noise);
    shifts = shifts(castAt);
    wandering = new double[plant.settings().size()][][];
    for (int i = 0; i < wandering.length; i++) {
      wandering[i] = wandering(plant.settings().get(i), noise);
    }
    kg = luck(plant.mass(), noise, imperfections.pours(), ladle);
    mm = luck(plant.thickness(), noise, imperfections.pours(), ladle);
    wear(imperfections, ladle);
  }

  /**
   * The wheel of a plant, its luck drawn from a seed.
   *
   * @param ladle what imperfect pours and molds draw from
   */
  static MadeWheel of(
      MadePlant plant, SplittableRandom random, Imperfections imperfections, Noise ladle) {
    return new MadeWheel(plant, new Noise(random), imperfections, ladle);
  }

  MadePlant plant() {
    return plant;
  }

  OffsetDateTime castAt(int turn, int mold) {
    return castAt[turn][mold];
  }

  /** Number of the eight-hour shift in which a turn began; shifts begin at 6, 14 and 22 o'clock. */
  int shift(int turn) {
    return shifts[turn];
  }

  /** Whether a turn is the first of its shift. */
  boolean isShiftStart(int turn) {
    return turn == 0 || shifts[turn] != shifts[turn - 1];
  }

  /** Everything, with these faults on the wheel. */
  Values values(List<MadeFault> faults) {
    int count = plant.settings().size();
    double[][][] settings = new double[count][plant.turns()][plant.molds()];
    for (int i = 0; i < count; i++) {
      move(settings, i, faults);
    }
    double[][] mass = new double[plant.turns()][plant.molds()];
    double[][] thickness = new double[plant.turns()][plant.molds()];
    for (int t = 0; t < plant.turns(); t++) {
      for (int m = 0; m < plant.molds(); m++) {
        double byKg = kg[t][m];
        double byMm = mm[t][m];
        for (int i = 0; i < count; i++) {
          MadeSetting setting = plant.settings().get(i);
          // Before the log began, everything stood as in its first turn.
          double from = settings[i][Math.max(0, t - setting.lagTurns())][m] - setting.center();
          byKg += setting.kgPerUnit() * from;
          byMm += setting.mmPerUnit() * from;
        }
        for (MadeFault fault : faults) {
          if (fault.place().holds(m, plant.side(t, m))) {
            byKg += fault.kg() * fault.part(t);
            byMm += fault.mm() * fault.part(t);
          }
        }
        mass[t][m] = plant.massTargetKg() + byKg;
        thickness[t][m] =
            plant.thicknessTargetMm() + byMm + (plant.passesOn() ? byKg / plant.kgPerMm() : 0);
      }
    }
    return new Values(settings, mass, thickness);
  }

  private void move(double[][][] settings, int index, List<MadeFault> faults) {
    MadeSetting setting = plant.settings().get(index);
    for (int t = 0; t < plant.turns(); t++) {
      for (int m = 0; m < plant.molds(); m++) {
        double x = wandering[index][t][m];
        if (setting.isFollower()) {
          MadeSetting leader = plant.settings().get(setting.leader());
          double led = (settings[setting.leader()][t][m] - leader.center()) / leader.sd();
          double free = StrictMath.sqrt(1 - setting.following() * setting.following());
          x = free * x + setting.following() * led * setting.sd();
        }
        for (MadeFault fault : faults) {
          if (fault.setting() == index && fault.place().holds(m, plant.side(t, m))) {
            x += fault.by() * fault.part(t);
          }
        }
        settings[index][t][m] = setting.center() + x;
      }
    }
  }

  private double[][] wandering(MadeSetting setting, Noise noise) {
    int turns = plant.turns();
    int molds = plant.molds();
    double sd = setting.sd();
    double[][] x = new double[turns][molds];
    double[] last = new double[Math.max(molds, 2)];
    double[] offset = new double[molds];
    for (int i = 0; i < last.length; i++) {
      last[i] = noise.normal(sd);
    }
    if (setting.rhythm() == MadeSetting.Rhythm.MOLD) {
      for (int m = 0; m < molds; m++) {
        offset[m] = noise.normalWithinTwo(sd);
      }
    }
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < molds; m++) {
        int place =
            switch (setting.rhythm()) {
              case MOLD -> m;
              case SIDE -> plant.side(t, m);
              default -> 0;
            };
        boolean isNext =
            switch (setting.rhythm()) {
              case POUR, MOLD -> true;
              case TURN -> m == 0;
              case SHIFT -> m == 0 && isShiftStart(t);
              case SIDE -> m == 0;
            };
        if (isNext && setting.rhythm() == MadeSetting.Rhythm.SIDE) {
          for (int side = 0; side < plant.sideCount(); side++) {
            last[side] = noise.next(last[side], setting.phi(), sd);
          }
        } else if (isNext) {
          last[place] = noise.next(last[place], setting.phi(), sd);
        }
        x[t][m] = last[place] + offset[m];
      }
    }
    return x;
  }

  private void wear(Imperfections imperfections, Noise noise) {
    for (int m = 0; m < plant.molds(); m++) {
      double perTurn = plant.thickness().pour() * imperfections.wearPerTurn(noise);
      for (int t = 0; t < plant.turns(); t++) {
        mm[t][m] -= perTurn * t;
      }
    }
  }

  private double[][] luck(MadePlant.Wander wander, Noise noise, PourScatter scatter, Noise ladle) {
    double[] offset = new double[plant.molds()];
    for (int m = 0; m < offset.length; m++) {
      offset[m] = noise.normalWithinTwo(wander.mold());
    }
    double apart = noise.normalWithinTwo(wander.pour());
    double turn = noise.normal(wander.turn());
    double side = noise.normal(wander.side());
    double[][] x = new double[plant.turns()][plant.molds()];
    for (int t = 0; t < plant.turns(); t++) {
      turn = noise.next(turn, wander.phi(), wander.turn());
      side = noise.next(side, wander.phi(), wander.side());
      double spread = wander.pour() * (plant.isStart(t) ? START_UP : 1);
      for (int m = 0; m < plant.molds(); m++) {
        double sides = 0;
        if (plant.sideCount() == 2) {
          sides = (plant.side(t, m) == 0 ? 0.5 : -0.5) * (apart + side);
        }
        x[t][m] = offset[m] + turn + sides + spread * scatter.draw(noise, ladle);
      }
    }
    return x;
  }

  private static OffsetDateTime[][] times(MadePlant plant, Noise noise) {
    OffsetDateTime[][] at = new OffsetDateTime[plant.turns()][plant.molds()];
    double seconds = 0;
    for (int t = 0; t < plant.turns(); t++) {
      if (t > 0 && plant.isStart(t)) {
        seconds += noise.between(1.5, 6) * 3600;
      }
      for (int m = 0; m < plant.molds(); m++) {
        seconds += plant.intervalSeconds() + noise.normalWithinTwo(1.5);
        at[t][m] =
            plant.start().plusNanos(Math.round(seconds * 1e9)).truncatedTo(ChronoUnit.SECONDS);
      }
    }
    return at;
  }

  private static int[] shifts(OffsetDateTime[][] castAt) {
    int[] shifts = new int[castAt.length];
    for (int t = 0; t < shifts.length; t++) {
      OffsetDateTime at = castAt[t][0];
      long hours = at.toLocalDate().toEpochDay() * 24 + at.getHour() + 2;
      shifts[t] = (int) Math.floorDiv(hours, (long) SHIFT_HOURS);
    }
    return shifts;
  }
}
