package org.evenpour.intake;

import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Reads the mold of a row. Remembers the one it read last; owned by the thread that reads the log.
 */
final class MoldCell {
  private static final int MOLDS_LIMIT = 1000;

  private final LogColumn column;

  /** Index of the last row's mold; −1 if no row before it had that mold. */
  int index;

  private boolean isWrittenAnew;
  private String label = "";
  private long number;

  MoldCell(LogColumn column) {
    this.column = column;
  }

  /**
   * A mold's label: a number without leading zeros and without the {@code .0} that spreadsheets
   * add; any other text as it stands.
   */
  static String label(String text) {
    String label = text.strip();
    int end = label.length();
    int point = label.indexOf('.');
    if (point > 0 && label.substring(point + 1).chars().allMatch(c -> c == '0')) {
      end = point;
    }
    if (end == 0 || !label.substring(0, end).chars().allMatch(c -> c >= '0' && c <= '9')) {
      return label;
    }
    int begin = 0;
    while (begin < end - 1 && label.charAt(begin) == '0') {
      begin++;
    }
    return label.substring(begin, end);
  }

  /** A label's number; −1 where it is none. */
  static long number(String label) {
    return !label.isEmpty()
            && label.length() <= 9
            && label.chars().allMatch(c -> c >= '0' && c <= '9')
        ? Long.parseLong(label)
        : -1;
  }

  /** Finds a row's mold; says why its row is set aside if that cannot be. */
  @Nullable Remark find(WheelIntake wheel, Block block, int row) {
    int cell = row * block.columns + column.index();
    int from = block.from[cell];
    int to = block.to[cell];
    if (from == to) {
      return Reasons.missing(column);
    }
    index = wheel.moldIndex.find(block.bytes, from, to);
    isWrittenAnew = index < 0;
    if (!isWrittenAnew) {
      return null;
    }
    label = label(CellText.decode(block.bytes, from, to));
    number = number(label);
    Integer molds = wheel.profile.molds();
    if (molds != null && (number < 1 || number > molds)) {
      return Reasons.unknownMold(label, molds);
    }
    index = wheel.molds.find(label);
    if (index < 0 && wheel.molds.size() == MOLDS_LIMIT) {
      return Reasons.tooManyMolds(MOLDS_LIMIT);
    }
    return null;
  }

  /** Index of the mold that was found, which is added if it is new. */
  int added(WheelIntake wheel, Block block, int row) {
    if (isWrittenAnew) {
      int cell = row * block.columns + column.index();
      index = wheel.addMold(label, number);
      wheel.moldIndex.put(block.bytes, block.from[cell], block.to[cell], index);
    }
    return index;
  }
}
