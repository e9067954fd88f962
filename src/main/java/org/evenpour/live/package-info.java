/**
 * From a feed to what the board shows: rows through intake and the engine, one anode at a time, to
 * immutable snapshots.
 */
@NullMarked
package org.evenpour.live;

import org.jspecify.annotations.NullMarked;
