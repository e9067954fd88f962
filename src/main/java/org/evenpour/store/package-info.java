/**
 * What people decided and must not be lost: approved limits, dated specifications, and which causes
 * of signals were right.
 */
@NullMarked
package org.evenpour.store;

import org.jspecify.annotations.NullMarked;
