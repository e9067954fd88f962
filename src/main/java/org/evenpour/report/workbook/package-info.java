/** An audit report as a workbook for the plant meeting; the only room that knows Apache POI. */
@NullMarked
package org.evenpour.report.workbook;

import org.jspecify.annotations.NullMarked;
