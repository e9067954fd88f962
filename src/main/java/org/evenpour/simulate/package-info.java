/**
 * Seeded wheels with planted faults: a casting log whose truth is known.
 *
 * <p>{@link Simulation} writes or streams a log; {@link Scenario} says which; {@link Fault} lists
 * what can be planted; {@link Effect} lists which setting drives what, and by how much.
 */
@NullMarked
package org.evenpour.simulate;

import org.jspecify.annotations.NullMarked;
