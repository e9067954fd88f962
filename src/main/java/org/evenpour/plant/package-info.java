/** The plant's own files: which there are, what lies beside what, and what they say. */
@NullMarked
package org.evenpour.plant;

import org.jspecify.annotations.NullMarked;
