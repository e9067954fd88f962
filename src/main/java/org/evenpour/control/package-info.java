/**
 * The engine: scopes, limits in force, run tests, detectors, episodes; one anode at a time,
 * constant memory.
 */
@NullMarked
package org.evenpour.control;

import org.jspecify.annotations.NullMarked;
