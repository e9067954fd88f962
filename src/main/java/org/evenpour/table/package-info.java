/**
 * What a table is: declared once, printed by the desk, the workbook and as comma-separated text.
 */
@NullMarked
package org.evenpour.table;

import org.jspecify.annotations.NullMarked;
