/** Columns of values that grow without end, in pages beside the heap. */
@NullMarked
package org.evenpour.column;

import org.jspecify.annotations.NullMarked;
