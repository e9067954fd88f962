/** Files in: logs, profiles, events; rows set aside. */
@NullMarked
package org.evenpour.intake;

import org.jspecify.annotations.NullMarked;
