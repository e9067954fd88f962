package org.evenpour.simulate;

import org.evenpour.simulate.Schedule.Charge;

/**
 * What all molds of a turn share: slow movements of the ladle, the melt, the water and the hall.
 *
 * <p>Owned by the wheel that it belongs to.
 */
final class TurnState {
  private final double correlation;
  private double massKg;
  private double thicknessMm;
  private double pourRateKgS;
  private double meltC;
  private double sprayLMin;
  private double waterC;
  private double ambientC;
  private double launderMm;
  private double densityKgL;
  private double batchKgL;
  private double chargeOxygenPpm;
  private double oxygenPpm;

  TurnState(double correlation) {
    this.correlation = correlation;
  }

  /** A new charge knows nothing of the last one, except for the water and the hall. */
  void beginCharge(Noise noise, Noise furnace) {
    massKg = noise.normal(0.7);
    thicknessMm = noise.normal(0.05);
    pourRateKgS = noise.normal(0.06);
    meltC = noise.normal(1.5);
    sprayLMin = noise.normal(2);
    launderMm = noise.normal(4);
    batchKgL = noise.normal(0.006);
    chargeOxygenPpm = furnace.normalWithinTwo(40);
    oxygenPpm = furnace.normal(25);
  }

  void beginTurn(Noise noise, Noise furnace) {
    massKg = noise.next(massKg, correlation, 0.7);
    thicknessMm = noise.next(thicknessMm, correlation, 0.05);
    meltC = noise.next(meltC, 0.7, 1.5);
    sprayLMin = noise.next(sprayLMin, 0.8, 2);
    waterC = noise.next(waterC, 0.9, 0.3);
    ambientC = noise.next(ambientC, 0.95, 1.5);
    launderMm = noise.next(launderMm, 0.8, 3);
    densityKgL = noise.next(densityKgL, 0.9, 0.004);
    oxygenPpm = furnace.next(oxygenPpm, 0.8, 25);
  }

  double massKg() {
    return massKg;
  }

  double thicknessMm() {
    return thicknessMm;
  }

  double pourRateKgS(Noise noise) {
    pourRateKgS = noise.next(pourRateKgS, 0.995, 0.06);
    return Plant.POUR_RATE_KG_S + pourRateKgS + noise.normal(0.1);
  }

  double washDensityKgL() {
    return Plant.WASH_DENSITY_KG_L + batchKgL + densityKgL;
  }

  double sprayFlowLMin(Noise noise) {
    return Plant.SPRAY_FLOW_L_MIN + sprayLMin + noise.normal(2);
  }

  /** Falls by 12 °C from the charge's first anode to its last. */
  double meltTemperatureC(Charge charge, int pour) {
    return Plant.MELT_TEMPERATURE_C + 6 - 12.0 * pour / charge.anodes() + meltC;
  }

  /** The melt takes up 100 ppm from the air from the charge's first anode to its last. */
  double oxygenPpm(Charge charge, int pour) {
    return Plant.OXYGEN_PPM + chargeOxygenPpm - 50 + 100.0 * pour / charge.anodes() + oxygenPpm;
  }

  double coolingWaterC(double hourOfDay) {
    return Plant.COOLING_WATER_C + 1.5 * dayCycle(hourOfDay) + waterC;
  }

  double ambientC(double hourOfDay) {
    return Plant.AMBIENT_C + 6 * dayCycle(hourOfDay) + ambientC;
  }

  double launderLevelMm(Noise noise) {
    return Plant.LAUNDER_LEVEL_MM + launderMm + noise.normal(0.8);
  }

  /** Highest at 15:00. */
  private static double dayCycle(double hourOfDay) {
    return StrictMath.sin(2 * StrictMath.PI * (hourOfDay - 9) / 24);
  }
}
