/**
 * How well an audit does where the truth is known: {@link Scoring} audits folders with a truth file
 * and gives one {@link Score}.
 */
@NullMarked
package org.evenpour.score;

import org.jspecify.annotations.NullMarked;
