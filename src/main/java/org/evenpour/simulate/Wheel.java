package org.evenpour.simulate;

import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.SplittableRandom;
import org.evenpour.simulate.Schedule.Charge;

/**
 * The wheel, one pour at a time. Faults draw no random number, so that a wheel with faults and the
 * same one without differ by the faults alone.
 *
 * <p>Owned by the thread that iterates.
 */
final class Wheel implements Iterator<Wheel.Slot> {

  /**
   * A mold that came under the ladle.
   *
   * @param pour what was cast
   * @param isRecorded false where the record of it is missing
   */
  record Slot(Pour pour, boolean isRecorded) {}

  private final Scenario scenario;
  private final Schedule schedule;
  private final List<PlantedFault> faults;
  private final EventBook events;
  private final Noise settingNoise;
  private final Noise castNoise;
  private final MoldState[] molds;
  private final TurnState turnState;
  private final double sideOffsetKg;
  private final Imperfections imperfections;
  private final Noise ladleNoise;
  private final Noise recordNoise;
  private final Noise furnaceNoise;
  private final double[] wearMmPerTurn;
  private int chargeIndex;
  private int pourIndex;
  private double seconds;
  private int startUpPours;
  private double chillC;

  private Wheel(Scenario scenario, Schedule schedule, List<PlantedFault> faults, Noise[] noises) {
    this.scenario = scenario;
    this.schedule = schedule;
    this.faults = faults;
    this.events = new EventBook(faults, schedule.turns());
    this.settingNoise = noises[1];
    this.castNoise = noises[2];
    this.turnState = new TurnState(scenario.turnCorrelation());
    this.molds = new MoldState[scenario.molds()];
    for (int i = 0; i < molds.length; i++) {
      molds[i] = new MoldState(noises[0]);
    }
    this.sideOffsetKg = noises[0].normalWithinTwo(0.3);
    this.imperfections = Imperfections.ofTordilla(scenario.condition());
    this.ladleNoise = noises[3];
    this.recordNoise = noises[4];
    this.furnaceNoise = noises[5];
    this.wearMmPerTurn = new double[scenario.molds()];
    for (int i = 0; i < wearMmPerTurn.length; i++) {
      wearMmPerTurn[i] = Plant.POUR_SIGMA_THICKNESS_MM * imperfections.wearPerTurn(ladleNoise);
    }
  }

  static Wheel of(Scenario scenario) {
    SplittableRandom root = new SplittableRandom(scenario.seed());
    Schedule schedule = Schedule.of(scenario, new Noise(root.split()));
    for (int i = 0; i < 3; i++) {
      root.split(); // the wheel's own
    }
    List<PlantedFault> faults = Placement.of(scenario, schedule, new Noise(root.split()));
    return new Wheel(scenario, schedule, faults, noises(scenario));
  }

  /** The same wheel, the same luck, other faults. */
  Wheel fresh(List<PlantedFault> planted) {
    return new Wheel(scenario, schedule, planted, noises(scenario));
  }

  /**
   * Of the molds, the settings, the pours, the ladle's imperfections, the records and the furnace,
   * in order.
   */
  private static Noise[] noises(Scenario scenario) {
    SplittableRandom root = new SplittableRandom(scenario.seed());
    root.split(); // the schedule's
    Noise[] noises = new Noise[6];
    for (int i = 0; i < noises.length; i++) {
      if (i == 3) {
        root.split(); // the placement's
      }
      noises[i] = new Noise(root.split());
    }
    return noises;
  }

  Schedule schedule() {
    return schedule;
  }

  List<PlantedFault> faults() {
    return faults;
  }

  EventBook events() {
    return events;
  }

  @Override
  public boolean hasNext() {
    return chargeIndex < schedule.charges().size();
  }

  @Override
  public Slot next() {
    if (!hasNext()) {
      throw new NoSuchElementException("the scenario's last charge is cast");
    }
    Charge charge = schedule.charges().get(chargeIndex);
    int mold = pourIndex % molds.length;
    int turn = charge.firstTurn() + pourIndex / molds.length;
    index(charge, mold);
    OffsetDateTime castAt =
        scenario.start().plusNanos(Math.round(seconds * 1e9)).truncatedTo(ChronoUnit.SECONDS);
    int side = scenario.sides() == 1 ? 0 : mold % 2;
    events.pourDue(castAt, charge.firstTurn() == turn, turn, mold, side);
    Slot slot = pour(charge, castAt, turn, mold, side);
    pourIndex++;
    if (pourIndex == charge.anodes()) {
      pourIndex = 0;
      chargeIndex++;
    }
    return slot;
  }

  /** Turns the wheel on by one mold: time passes, and what a turn or a charge shares moves. */
  private void index(Charge charge, int mold) {
    double interval = Plant.CAST_INTERVAL_SECONDS + settingNoise.normalWithinTwo(1.2);
    if (pourIndex == 0) {
      seconds = charge.startSeconds();
      turnState.beginCharge(settingNoise, furnaceNoise);
      startUp();
      events.chargeDue(at(seconds - 1500), washBatch());
    } else {
      double stop = charge.stopSeconds().getOrDefault(pourIndex, 0.0);
      if (stop >= 600) {
        events.stopped(at(seconds + interval), stop);
      }
      seconds += interval + stop;
      if (stop > Plant.START_UP_AFTER_MINUTES * 60) {
        startUp();
      }
    }
    if (mold == 0) {
      turnState.beginTurn(settingNoise, furnaceNoise);
    }
  }

  private void startUp() {
    startUpPours = molds.length;
    chillC = 6;
  }

  private OffsetDateTime at(double afterSeconds) {
    return scenario
        .start()
        .plusNanos(Math.round(afterSeconds * 1e9))
        .truncatedTo(ChronoUnit.SECONDS);
  }

  private String washBatch() {
    return "B" + (71 + chargeIndex);
  }

  private Slot pour(Charge charge, OffsetDateTime castAt, int turn, int mold, int side) {
    double spread = startUpPours > 0 ? 1.8 : 1;
    startUpPours--;
    chillC *= 0.95;
    Settings settings = settings(charge, castAt, turn, mold, side);
    double massKg = massKg(settings, turn, mold, side, spread);
    Thickness thickness = thickness(settings, massKg, turn, mold, side, spread);
    molds[mold].leave(settings);
    boolean isMissing = castNoise.happens(0.002);
    boolean isBadPour = isActive(Fault.SINGLE_BAD_POUR, turn, mold, side);
    Pour.Reading reading = reading(massKg, thickness, isBadPour);
    Pour pour =
        new Pour(
            castAt,
            charge.number(),
            turn,
            mold + 1,
            serial(turn, mold),
            side == 0 ? "A" : "B",
            crew(castAt),
            massKg,
            thickness,
            reading,
            settings,
            Defect.of(reading, settings, castNoise),
            Defect.chance(settings));
    return new Slot(pour, isBadPour || !isMissing);
  }

  private Settings settings(Charge charge, OffsetDateTime castAt, int turn, int mold, int side) {
    double hour = castAt.getHour() + castAt.getMinute() / 60.0;
    double pourRate = turnState.pourRateKgS(settingNoise);
    double washVolume = molds[mold].nextWashVolumeMl(settingNoise);
    double spray = turnState.sprayFlowLMin(settingNoise);
    double melt = turnState.meltTemperatureC(charge, pourIndex);
    double oxygen = turnState.oxygenPpm(charge, pourIndex);
    double launder = turnState.launderLevelMm(settingNoise);
    double target = Plant.TARGET_MASS_KG;
    for (PlantedFault fault : faults) {
      if (fault.acts(turn, mold, side)) {
        switch (fault.fault()) {
          case POUR_RATE_DRIFT ->
              pourRate +=
                  Math.min(1, 3 * fault.progress(turn))
                      * fault.massKg()
                      / Effect.POUR_RATE_ON_MASS.size();
          case THIN_WASH -> washVolume -= 20 * fault.sizeSigmas();
          case STARVED_SPRAY -> spray -= 11.2 * fault.sizeSigmas();
          case WET_WASH -> spray += 18.8 * fault.sizeSigmas();
          case MELT_TEMPERATURE -> melt += 10 * fault.sign() * fault.sizeSigmas();
          case OVER_REDUCED_MELT ->
              oxygen =
                  Math.max(
                      Plant.LEAST_OXYGEN_PPM,
                      oxygen - 320 * fault.sizeSigmas() * fault.fading(turn));
          case SET_POINT_MOVE ->
              target +=
                  (fault.progress(turn) <= 0.5 ? 0.2 : -0.2) * fault.sign() * fault.sizeSigmas();
          case IDLE_SETTING_STEP -> launder += 12 * fault.sign();
          default -> {}
        }
      }
    }
    double moldTemperature =
        Plant.MOLD_TEMPERATURE_C
            + molds[mold].temperatureOffsetC
            + molds[mold].heatLeftC()
            - chillC
            + settingNoise.normal(1.5);
    return new Settings(
        target,
        pourRate,
        washVolume,
        turnState.washDensityKgL(),
        spray,
        moldTemperature,
        melt,
        oxygen,
        turnState.coolingWaterC(hour),
        washBatch(),
        turnState.ambientC(hour),
        launder);
  }

  private double massKg(Settings settings, int turn, int mold, int side, double spread) {
    double lateKg = castNoise.exponential(1);
    double mass =
        settings.targetMassKg()
            + molds[mold].massOffsetKg
            + (side == 0 ? sideOffsetKg : -sideOffsetKg)
            + turnState.massKg()
            + Effect.POUR_RATE_ON_MASS.of(settings.pourRateKgS() - Plant.POUR_RATE_KG_S)
            + Effect.MELT_TEMPERATURE_ON_MASS.of(
                settings.meltTemperatureC() - Plant.MELT_TEMPERATURE_C)
            + spread * imperfections.pours().draw(castNoise, ladleNoise);
    for (PlantedFault fault : faults) {
      if (fault.acts(turn, mold, side)) {
        switch (fault.fault()) {
          case LADLE_SCALE_BIAS -> mass += 1.6 * fault.massKg() * fault.progress(turn);
          case LATE_CUT_OFF -> mass += 0.8 * fault.massKg() * lateKg;
          case SINGLE_BAD_POUR -> mass -= 7 * fault.massKg();
          default -> {}
        }
      }
    }
    return mass;
  }

  private Thickness thickness(
      Settings settings, double massKg, int turn, int mold, int side, double spread) {
    MoldState state = molds[mold];
    double warmerC = settings.moldTemperatureC() - Plant.MOLD_TEMPERATURE_C;
    double level =
        massKg / Plant.MASS_PER_MM_KG
            + state.levelMm
            - wearMmPerTurn[mold] * (turn - 1)
            + turnState.thicknessMm()
            + Effect.WASH_ON_THICKNESS.of(settings.washVolumeMl() - Plant.WASH_VOLUME_ML)
            + state.coatMm()
            + Effect.OXYGEN_ON_THICKNESS.of(settings.oxygenPpm() - Plant.OXYGEN_PPM)
            + Effect.MOLD_TEMPERATURE_ON_GAS.of(warmerC)
            + Effect.MOLD_TEMPERATURE_ON_PLAN.of(warmerC)
            + spread * castNoise.normal(0.1);
    double across = state.tiltAcrossMm;
    double dish = state.dishMm();
    for (PlantedFault fault : faults) {
      if (fault.acts(turn, mold, side)) {
        switch (fault.fault()) {
          case UNEXPLAINED -> level += fault.sign() * fault.thicknessMm();
          case MOLD_WEAR -> {
            level -= 1.3 * fault.thicknessMm() * fault.progress(turn);
            dish += 2 * fault.thicknessMm() * fault.progress(turn);
          }
          case MOLD_CHANGE -> {
            level += 1.2 * fault.sign() * fault.thicknessMm();
            across += Math.copySign(0.7 * fault.thicknessMm(), across);
          }
          default -> {}
        }
      }
    }
    double along = state.tiltAlongMm;
    double corner = level - Plant.DISH_AT_CORNERS * dish;
    double wet = Math.max(0, Plant.WET_BELOW_C - settings.moldTemperatureC()) / 10;
    double scatter = spread * (1 + wet);
    return new Thickness(
        point(corner - across + along, scatter),
        point(corner + across + along, scatter),
        point(corner - across - along, scatter),
        point(corner + across - along, scatter),
        point(level + Plant.DISH_AT_CENTER * dish, scatter));
  }

  private double point(double expectedMm, double spread) {
    return expectedMm + spread * castNoise.normal(0.15);
  }

  private boolean isActive(Fault kind, int turn, int mold, int side) {
    return faults.stream().anyMatch(f -> f.fault() == kind && f.acts(turn, mold, side));
  }

  private String serial(int turn, int mold) {
    return "K" + ((isActive(Fault.MOLD_CHANGE, turn, mold, 0) ? 401 : 301) + mold);
  }

  /** Four crews in turn, changing at 06:00, 14:00 and 22:00. */
  private static String crew(OffsetDateTime castAt) {
    long shift = Math.floorDiv(castAt.toLocalDate().toEpochDay() * 24 + castAt.getHour() + 2, 8L);
    return "C" + (1 + Math.floorMod(shift, 4));
  }

  /**
   * An anode that is far off is weighed and measured whatever else is forgotten, and one that is
   * not weighed is measured: of one that is neither there is no row.
   */
  private Pour.Reading reading(double massKg, Thickness thickness, boolean isSurelyRead) {
    boolean isNotWeighed = recordNoise.happens(imperfections.massMissing());
    boolean isNotMeasured = recordNoise.happens(imperfections.thicknessMissing());
    boolean isWithoutPoint = recordNoise.happens(imperfections.pointMissing());
    int point = recordNoise.whole(0, Thickness.POINTS - 1);
    double kg = imperfections.massShown(massKg);
    Thickness mm = thickness.rounded();
    if (isSurelyRead) {
      return new Pour.Reading(kg, mm);
    }
    if (isNotWeighed) {
      return new Pour.Reading(Double.NaN, mm);
    }
    return new Pour.Reading(
        kg, isNotMeasured ? Thickness.NONE : isWithoutPoint ? mm.without(point) : mm);
  }
}
