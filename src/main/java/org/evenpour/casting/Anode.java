package org.evenpour.casting;

/**
 * One cast anode as the engine takes it in.
 *
 * @param castAtMillis when, in milliseconds since 1970-01-01T00:00Z
 * @param turn the wheel's revolution
 * @param mold index of the mold among {@link WheelRecord#molds()}
 * @param side index of the ladle side among {@link WheelRecord#sides()}; −1 where none is recorded
 * @param serial index of the mold's own serial number; −1 where none is recorded
 * @param values one per characteristic, in the unit that figures are computed in; NaN = not
 *     measured
 */
@SuppressWarnings(
    "ArrayRecordComponent") // handed on at once, never compared: a copy per anode would cost more
public record Anode(long castAtMillis, int turn, int mold, int side, int serial, double[] values) {}
