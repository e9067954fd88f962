/**
 * What an audit found, as values: told, drawn, scored and shown by rooms that know nothing of how
 * it was found.
 */
@NullMarked
package org.evenpour.findings;

import org.jspecify.annotations.NullMarked;
