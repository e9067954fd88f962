package org.evenpour.casting;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Something that people did or that happened at the wheel.
 *
 * @param at when
 * @param wheel at which wheel; empty where the file does not say, and then at every wheel of the
 *     log
 * @param mold at which mold; null = the whole wheel
 * @param kind {@code mold_changed}, {@code nozzle_cleaned}, …, or a plant's own name
 * @param note as written
 * @param source where it stands, such as {@code events.csv:3}; empty where that is not known
 */
public record CastingEvent(
    Instant at, String wheel, @Nullable String mold, String kind, String note, String source) {}
