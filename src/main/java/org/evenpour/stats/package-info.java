/**
 * Statistics as pure functions and small accumulators over doubles; knows nothing of copper.
 * Hipparchus lives only here.
 */
@NullMarked
package org.evenpour.stats;

import org.jspecify.annotations.NullMarked;
