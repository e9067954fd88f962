/** An audit report as text, JSON and workbook. */
@NullMarked
package org.evenpour.report;

import org.jspecify.annotations.NullMarked;
