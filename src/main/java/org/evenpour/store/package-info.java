/** What people decided and must not be lost: approved limits and dated specifications. */
@NullMarked
package org.evenpour.store;

import org.jspecify.annotations.NullMarked;
