/** Reports and scores as JSON, whose names others rely on. */
@NullMarked
package org.evenpour.report.json;

import org.jspecify.annotations.NullMarked;
