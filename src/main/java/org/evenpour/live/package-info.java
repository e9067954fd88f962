/**
 * From a feed to what the board shows: rows through intake and the engine, one anode at a time, to
 * immutable snapshots; and the file in which signals are acknowledged.
 */
@NullMarked
package org.evenpour.live;

import org.jspecify.annotations.NullMarked;
