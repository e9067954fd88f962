/** Signals against settings and events. */
@NullMarked
package org.evenpour.link;

import org.jspecify.annotations.NullMarked;
