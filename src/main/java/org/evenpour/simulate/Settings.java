package org.evenpour.simulate;

/** What was set or read with one pour. */
record Settings(
    double pourRateKgS,
    double washVolumeMl,
    double washDensityKgL,
    double sprayFlowLMin,
    double moldTemperatureC,
    double meltTemperatureC,
    double coolingWaterC,
    String washBatch,
    double ambientC,
    double launderLevelMm) {}
