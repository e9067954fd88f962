/** The screens in Swing. Everything here belongs to the event thread. */
@NullMarked
package org.evenpour.view.screen;

import org.jspecify.annotations.NullMarked;
