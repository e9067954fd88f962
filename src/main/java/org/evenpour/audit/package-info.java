/**
 * A whole record to one immutable {@link org.evenpour.findings.AuditReport}; replays the engine.
 */
@NullMarked
package org.evenpour.audit;

import org.jspecify.annotations.NullMarked;
