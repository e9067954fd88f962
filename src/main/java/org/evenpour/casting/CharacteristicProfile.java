package org.evenpour.casting;

import org.jspecify.annotations.Nullable;

/**
 * What a profile says of one characteristic.
 *
 * @param unit in which it is shown
 * @param specification limits and target, already in the unit that figures are computed in
 * @param plausibleLow a smaller value is a faulty reading; null where the profile gives no range
 * @param plausibleHigh a larger value is a faulty reading; null where the profile gives no range
 */
public record CharacteristicProfile(
    Unit unit,
    Specification specification,
    @Nullable Double plausibleLow,
    @Nullable Double plausibleHigh) {}
