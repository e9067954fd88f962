/** Seeded wheels with planted faults. */
@NullMarked
package org.evenpour.simulate;

import org.jspecify.annotations.NullMarked;
