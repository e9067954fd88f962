/** Charts and the wheel as Java2D and JFreeChart, no Swing. */
@NullMarked
package org.evenpour.picture;

import org.jspecify.annotations.NullMarked;
