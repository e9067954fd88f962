/** What is told in tables: each declared once, with its columns and rows, whoever prints it. */
@NullMarked
package org.evenpour.report.table;

import org.jspecify.annotations.NullMarked;
