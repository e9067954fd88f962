/**
 * Statistics as pure functions and small accumulators over doubles; knows nothing of copper.
 * Hipparchus lives only here.
 *
 * <p>Habits of the room: NaN in data stands for a missing value, which accumulators skip; an
 * infinite value is refused where it would spoil a sum; NaN as a result means undefined, and the
 * method says when.
 */
@NullMarked
package org.evenpour.stats;

import org.jspecify.annotations.NullMarked;
