/** The command line: arguments, exit status, progress; nothing else. */
@NullMarked
package org.evenpour.command;

import org.jspecify.annotations.NullMarked;
