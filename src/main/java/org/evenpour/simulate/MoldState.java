package org.evenpour.simulate;

/**
 * One mold position: how its mold is made, and what the last turn left in it.
 *
 * <p>Owned by the wheel that it belongs to.
 */
final class MoldState {
  final double massOffsetKg;
  final double levelMm;
  final double tiltAcrossMm;
  final double tiltAlongMm;
  private final double ownDishMm;
  final double temperatureOffsetC;
  private final double nozzleOffsetMl;
  private double nozzleDriftMl;
  private double coatMl;
  private double warpMm;
  private double lastSprayLMin = Plant.SPRAY_FLOW_L_MIN;
  private double lastCoolingWaterC = Plant.COOLING_WATER_C;

  MoldState(Noise noise) {
    massOffsetKg = noise.normalWithinTwo(0.3);
    levelMm = noise.normalWithinTwo(0.5);
    tiltAcrossMm = noise.normalWithinTwo(0.28);
    tiltAlongMm = noise.normalWithinTwo(0.28);
    ownDishMm = noise.normalWithinTwo(0.25);
    temperatureOffsetC = noise.normalWithinTwo(3);
    nozzleOffsetMl = noise.normalWithinTwo(8);
  }

  /** What the nozzle gives this time. */
  double nextWashVolumeMl(Noise noise) {
    nozzleDriftMl = noise.next(nozzleDriftMl, 0.9, 6);
    return Plant.WASH_VOLUME_ML + nozzleOffsetMl + nozzleDriftMl + noise.normal(5);
  }

  /** How far this pour's mold is from its usual temperature, from what the last turn gave it. */
  double heatLeftC() {
    return Effect.SPRAY_ON_MOLD_TEMPERATURE.of(lastSprayLMin - Plant.SPRAY_FLOW_L_MIN)
        + Effect.COOLING_WATER_ON_MOLD_TEMPERATURE.of(lastCoolingWaterC - Plant.COOLING_WATER_C);
  }

  /** What the coat that earlier turns left makes thicker. */
  double coatMm() {
    return Effect.WASH_COAT_ON_THICKNESS.of(coatMl);
  }

  /** How much deeper its center is than its corners, warp that built up over casts included. */
  double dishMm() {
    return ownDishMm + warpMm;
  }

  /** Keeps what the next turn will feel. */
  void leave(Settings settings) {
    double washVolumeMl = settings.washVolumeMl();
    warpMm += Plant.WARP_MM_PER_C * Math.max(0, settings.moldTemperatureC() - Plant.WARPS_ABOVE_C);
    coatMl =
        Plant.WASH_KEPT * coatMl + (1 - Plant.WASH_KEPT) * (washVolumeMl - Plant.WASH_VOLUME_ML);
    lastSprayLMin = settings.sprayFlowLMin();
    lastCoolingWaterC = settings.coolingWaterC();
  }
}
