/** The window: a board for the crew and a desk for the engineer. */
@NullMarked
package org.evenpour.view;

import org.jspecify.annotations.NullMarked;
