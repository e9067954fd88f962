package org.evenpour.control;

/**
 * A position got a new mold, or its mold was dressed or leveled.
 *
 * @param atMillis when
 * @param mold index
 */
public record MoldChange(long atMillis, int mold) {}
