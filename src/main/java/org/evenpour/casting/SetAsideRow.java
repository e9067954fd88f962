package org.evenpour.casting;

import org.evenpour.words.Remark;

/**
 * A row that could not be used.
 *
 * @param log the log's file name
 * @param line its number from 1
 * @param reason in one sentence, with what would mend it
 * @param text the row as it stands in the log, cut to a readable length
 */
public record SetAsideRow(String log, long line, Remark reason, String text) {}
