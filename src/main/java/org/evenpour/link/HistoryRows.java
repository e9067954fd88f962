package org.evenpour.link;

/**
 * What the regressions of one kind of variation are made of: n pours, or n turns.
 *
 * @param y the characteristic, n values
 * @param settings for each lag that is asked about, shortest first, one column of n values for each
 *     numeric setting, in the record's order; empty where it does not vary
 * @param carried as {@code settings}: what is carried over from a mold's earlier pours, less what
 *     is set; empty where nothing is known to be
 * @param levels columns of the levels that are taken out
 * @param time turn of each row
 * @param stretch a number that changes where the errors start anew
 * @param wanders whether errors are those of a series that wanders; else they are taken as
 *     independent
 * @param takenOut how many means are out of all columns already, and so are no degrees of freedom
 */
@SuppressWarnings("ArrayRecordComponent") // lives within one estimate
record HistoryRows(
    double[] y,
    double[][][] settings,
    double[][][] carried,
    double[][] levels,
    int[] time,
    int[] stretch,
    boolean wanders,
    int takenOut) {}
