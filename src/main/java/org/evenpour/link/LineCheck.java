package org.evenpour.link;

/**
 * Whether a straight line is what a setting does to a characteristic, on the kind of variation that
 * shows its effect best.
 *
 * @param curvature probability that the setting's square goes with the characteristic as it does by
 *     chance
 * @param lagOne autocorrelation of what the regression leaves over
 * @param rows how many pours or turns it rests on
 */
public record LineCheck(double curvature, double lagOne, int rows) {}
