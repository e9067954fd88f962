/**
 * The trade's nouns: anode, mold, turn, side, characteristic, setting, specification, profile,
 * event, unit, record.
 */
@NullMarked
package org.evenpour.casting;

import org.jspecify.annotations.NullMarked;
