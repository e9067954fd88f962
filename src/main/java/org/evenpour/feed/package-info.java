/** Live in: what a plant's data comes through while it casts. */
@NullMarked
package org.evenpour.feed;

import org.jspecify.annotations.NullMarked;
