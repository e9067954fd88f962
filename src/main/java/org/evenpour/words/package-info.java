/**
 * What the program says, in the reader's language: one loader of wordings, one way to write
 * numbers.
 */
@NullMarked
package org.evenpour.words;

import org.jspecify.annotations.NullMarked;
