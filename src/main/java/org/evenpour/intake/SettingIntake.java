package org.evenpour.intake;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.Setting;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelProfile;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.evenpour.column.Pages;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Takes in one column that is recorded but not judged, of all wheels, and finds out whether it
 * holds numbers or categories: numbers, if at least nine in ten of its first thousand written cells
 * are. Until then it keeps those cells as text. Owned by the thread that reads the log.
 */
final class SettingIntake {
  /** So many written cells decide what a column holds. */
  static final int DECIDING = 1000;

  private static final double NUMBERS_NEEDED = 0.9;

  /** Different values of a setting that is a category. */
  static final int CATEGORIES = 1000;

  /** Different charges, crews, wash batches, ladles, serials. */
  static final int NAMES = 100_000;

  private enum Kind {
    UNDECIDED,
    NUMBER,
    CATEGORY,
    DROPPED
  }

  /** A written cell of a column that is not decided yet. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Seen(int wheel, int row, double number, byte[] text, long line) {}

  private static final class Categories {
    final Labels labels = new Labels();
    final LabelIndex index = new LabelIndex();
    final IntColumn values;

    Categories(Pages pages) {
      values = new IntColumn(pages);
    }
  }

  private final String name;
  private final Unit unit;
  private final int labelLimit;
  private final Pages pages;
  private final List<@Nullable DoubleColumn> numbers = new ArrayList<>();
  private final List<@Nullable Categories> categories = new ArrayList<>();
  private List<Seen> seen = new ArrayList<>();
  private @Nullable SettingIntake decided;
  private Kind kind;
  private long unreadable;
  private String firstUnreadable = "";
  private long firstUnreadableLine;

  private SettingIntake(String name, Unit unit, Kind kind, int labelLimit, Pages pages) {
    this.name = name;
    this.unit = unit;
    this.kind = kind;
    this.labelLimit = labelLimit;
    this.pages = pages;
  }

  /** A column that may hold numbers or categories. */
  static SettingIntake open(String name, Unit unit, Pages pages) {
    return new SettingIntake(name, unit, Kind.UNDECIDED, CATEGORIES, pages);
  }

  /** A column of names, whatever they look like. */
  static SettingIntake ofNames(String name, Pages pages) {
    return new SettingIntake(name, Unit.NONE, Kind.CATEGORY, NAMES, pages);
  }

  /**
   * Takes in the cells of rows that are kept.
   *
   * @param column of the block
   */
  void add(KeptRows kept, Block block, int column) {
    for (int i = 0; i < kept.size; i++) {
      int cell = kept.blockRow[i] * block.columns + column;
      if (block.from[cell] < block.to[cell]) {
        add(kept.wheel[i], kept.recordRow[i], block, cell, kept.line[i]);
      }
    }
  }

  private void add(int wheel, int row, Block block, int cell, long line) {
    int from = block.from[cell];
    int to = block.to[cell];
    switch (kind) {
      case NUMBER -> addNumber(wheel, row, block.numbers[cell], block.bytes, from, to, line);
      case CATEGORY -> addCategory(wheel, row, block.bytes, from, to);
      case UNDECIDED -> {
        // Only now: rows in which it is blank change nothing, and a column is not made anew for
        // each.
        decided = null;
        byte[] text = new byte[to - from];
        System.arraycopy(block.bytes, from, text, 0, text.length);
        seen.add(new Seen(wheel, row, block.numbers[cell], text, line));
        if (seen.size() == DECIDING) {
          decide();
        }
      }
      case DROPPED -> {}
    }
  }

  /** The column of one wheel; null where it is empty, or holds too many different values. */
  @Nullable Setting setting(int wheel, int rows, WheelProfile profile) {
    if (kind == Kind.UNDECIDED) {
      return decided().setting(wheel, rows, profile);
    }
    DoubleColumn values = at(numbers, wheel);
    if (kind == Kind.NUMBER && values != null) {
      pad(values, rows);
      return new Setting(name, unit, profile.setting(name), values, null, new Labels());
    }
    Categories own = at(categories, wheel);
    if (kind == Kind.CATEGORY && own != null) {
      pad(own.values, rows);
      return new Setting(name, unit, profile.setting(name), null, own.values, own.labels);
    }
    return null;
  }

  /** Index of a row's label in a column of names; −1 where it has none. */
  int label(int wheel, int row) {
    Categories own = at(categories, wheel);
    return own != null && own.values.size() > row ? own.values.get(row) : -1;
  }

  /** What the reader should know of this column. */
  List<Remark> warnings() {
    if (kind == Kind.UNDECIDED) {
      return seen.isEmpty() ? List.of() : decided().warnings();
    }
    if (kind == Kind.DROPPED) {
      return List.of(Remark.of("note.setting.dropped", CellText.shown(name), labelLimit));
    }
    return unreadable == 0
        ? List.of()
        : List.of(IntakeNotes.cells(name, unreadable, firstUnreadable, firstUnreadableLine));
  }

  /** This column as it would be if no further row came. */
  private SettingIntake decided() {
    if (decided != null) {
      return decided; // once for all wheels
    }
    // These pages are soon forgotten, so they must not use up the record's share.
    SettingIntake now = new SettingIntake(name, unit, kind, labelLimit, new Pages(Long.MAX_VALUE));
    now.seen = new ArrayList<>(seen);
    now.decide();
    decided = now;
    return now;
  }

  private void decide() {
    long readable = seen.stream().filter(one -> Double.isFinite(one.number)).count();
    kind = readable >= NUMBERS_NEEDED * seen.size() ? Kind.NUMBER : Kind.CATEGORY;
    for (Seen one : seen) {
      if (kind == Kind.NUMBER) {
        addNumber(one.wheel, one.row, one.number, one.text, 0, one.text.length, one.line);
      } else {
        addCategory(one.wheel, one.row, one.text, 0, one.text.length);
      }
    }
    seen = List.of();
  }

  private void addNumber(
      int wheel, int row, double number, byte[] bytes, int from, int to, long line) {
    DoubleColumn values = at(numbers, wheel);
    if (values == null) {
      values = new DoubleColumn(pages);
      put(numbers, wheel, values);
    }
    if (number == DecimalReader.UNREADABLE) {
      if (unreadable++ == 0) {
        firstUnreadable = CellText.decode(bytes, from, to);
        firstUnreadableLine = line;
      }
      return;
    }
    pad(values, row);
    values.add(number);
  }

  private void addCategory(int wheel, int row, byte[] bytes, int from, int to) {
    Categories own = at(categories, wheel);
    if (own == null) {
      own = new Categories(pages);
      put(categories, wheel, own);
    }
    int label = own.index.find(bytes, from, to);
    if (label < 0) {
      label = own.labels.index(CellText.decode(bytes, from, to));
      if (own.labels.size() > labelLimit) {
        kind = Kind.DROPPED;
        categories.clear();
        return;
      }
      own.index.put(bytes, from, to, label);
    }
    pad(own.values, row);
    own.values.add(label);
  }

  /** Fills up with missing values. */
  static void pad(DoubleColumn values, int rows) {
    while (values.size() < rows) {
      values.add(Double.NaN);
    }
  }

  /** Fills up with missing labels. */
  static void pad(IntColumn values, int rows) {
    while (values.size() < rows) {
      values.add(-1);
    }
  }

  private static <T> @Nullable T at(List<@Nullable T> list, int index) {
    return index < list.size() ? list.get(index) : null;
  }

  private static <T> void put(List<@Nullable T> list, int index, T value) {
    while (list.size() <= index) {
      list.add(null);
    }
    list.set(index, value);
  }
}
