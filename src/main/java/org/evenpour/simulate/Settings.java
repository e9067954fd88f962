package org.evenpour.simulate;

/** What was set or read with one pour. */
record Settings(
    double targetMassKg,
    double pourRateKgS,
    double washVolumeMl,
    double washDensityKgL,
    double sprayFlowLMin,
    double moldTemperatureC,
    double meltTemperatureC,
    double oxygenPpm,
    double coolingWaterC,
    String washBatch,
    double ambientC,
    double launderLevelMm) {}
