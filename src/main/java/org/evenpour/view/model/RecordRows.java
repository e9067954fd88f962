package org.evenpour.view.model;

import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.DoubleColumn;
import org.evenpour.casting.IntColumn;
import org.evenpour.casting.Labels;
import org.evenpour.casting.Setting;
import org.evenpour.casting.Specification;
import org.evenpour.casting.ThicknessPoint;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelRecord;
import org.evenpour.picture.Mark;
import org.evenpour.report.Figures;
import org.jspecify.annotations.Nullable;

/**
 * The rows of the chosen wheel, stretch and mold as a table. Nothing is copied: a cell is made when
 * it is looked at, so a million rows open at once.
 *
 * @param fields the columns
 * @param first the first row of the record that is shown; used where no mold is chosen
 * @param size how many rows
 * @param ofMold the rows that are shown; null = all from {@code first} on
 */
@SuppressWarnings("ArrayRecordComponent") // rows of a mold: handed on, never compared
public record RecordRows(List<Field> fields, int first, int size, int @Nullable [] ofMold) {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

  /**
   * A column.
   *
   * @param width in letters
   * @param isWords whether it holds words, which stand at the left
   * @param cell of a row of the record
   */
  public record Field(String heading, int width, boolean isWords, IntFunction<Cell> cell) {}

  /** What is shown of an opened log. */
  public static RecordRows of(Desk desk) {
    WheelRows wheel = desk.wheel();
    Stretch turns = desk.turns();
    String mold = desk.selection().mold();
    int from = wheel.rowAt(turns.from());
    int to = wheel.rowAt(turns.to());
    int[] rows = null;
    if (mold != null) {
      rows = java.util.Arrays.stream(wheel.rows(mold)).filter(r -> r >= from && r < to).toArray();
    }
    return new RecordRows(fields(desk), from, rows == null ? to - from : rows.length, rows);
  }

  /** The columns' headings. */
  public List<String> headings() {
    return fields.stream().map(Field::heading).toList();
  }

  /** The row of the record behind a row of the table. */
  public int row(int index) {
    return ofMold == null ? first + index : ofMold[index];
  }

  /** A cell. */
  public Cell cell(int index, int column) {
    return fields.get(column).cell().apply(row(index));
  }

  /** Writes all rows as comma-separated text. */
  public void writeCsv(Appendable out) throws IOException {
    CsvText.line(headings(), false, out);
    for (int i = 0; i < size; i++) {
      for (int column = 0; column < fields.size(); column++) {
        out.append(column == 0 ? "" : ",")
            .append(CsvText.cell(cell(i, column).text(), fields.get(column).isWords()));
      }
      out.append('\n');
    }
  }

  private static List<Field> fields(Desk desk) {
    Look look = desk.look();
    WheelRecord record = desk.wheel().record();
    ZoneId zone = desk.log().zone();
    List<Field> fields = new ArrayList<>();
    fields.add(
        new Field(
            look.say("column.time"),
            18,
            true,
            row ->
                new Cell.Text(
                    TIME.format(
                        Instant.ofEpochMilli(record.castAtMillis().get(row)).atZone(zone)))));
    fields.add(
        new Field(
            look.say("column.turn"),
            6,
            false,
            row -> new Cell.Figure(Integer.toString(record.turn().get(row)), null)));
    fields.add(words(look.say("column.mold"), 6, record.molds(), record.mold()));
    if (record.serials().size() > 0) {
      fields.add(words(look.say("column.serial"), 9, record.serials(), record.serial()));
    }
    if (record.sides().size() > 0) {
      fields.add(words(look.say("column.side"), 6, record.sides(), record.side()));
    }
    for (Characteristic one : record.characteristics()) {
      Unit unit = look.units().shown(one.unit().suffix());
      fields.add(
          number(titled(desk.name(one.name()), unit), one.values(), unit, one.specification()));
    }
    for (ThicknessPoint point : record.points()) {
      Unit unit = look.units().shown("mm");
      fields.add(
          number(
              titled(Desk.capital(look.language().named("point", point.point())), unit),
              point.values(),
              unit,
              Specification.NONE));
    }
    for (Setting setting : record.settings()) {
      fields.add(setting(desk, setting));
    }
    Setting disposition = record.disposition();
    if (disposition != null) {
      fields.add(setting(desk, disposition));
    }
    Setting defect = record.defect();
    if (defect != null) {
      fields.add(setting(desk, defect));
    }
    fields.add(
        new Field(
            look.say("column.line"),
            9,
            false,
            row ->
                new Cell.Figure(Long.toString(record.line().get(row) & ((1L << 40) - 1)), null)));
    return fields;
  }

  private static Field setting(Desk desk, Setting setting) {
    String title = Desk.capital(desk.sentences().setting(setting.name()));
    DoubleColumn numbers = setting.numbers();
    IntColumn categories = setting.categories();
    if (numbers != null) {
      return new Field(
          titled(title, setting.unit()),
          Math.max(8, title.length()),
          false,
          row -> {
            double value = numbers.get(row);
            return new Cell.Figure(Double.isNaN(value) ? "—" : shortest(value), null);
          });
    }
    return categories == null
        ? new Field(title, 8, true, row -> new Cell.Text("—"))
        : words(title, Math.max(9, title.length()), setting.labels(), categories);
  }

  /** A recorded number as it was written: no digits are added or lost. */
  private static String shortest(double value) {
    return new java.math.BigDecimal(Double.toString(value))
        .stripTrailingZeros()
        .toPlainString()
        .replace('-', '−');
  }

  private static Field words(String heading, int width, Labels labels, IntColumn column) {
    return new Field(
        heading,
        width,
        true,
        row -> {
          int index = column.get(row);
          return new Cell.Text(index < 0 ? "—" : labels.name(index));
        });
  }

  private static Field number(
      String heading, DoubleColumn column, Unit unit, Specification specification) {
    int decimals = new Figures(unit).decimals();
    return new Field(
        heading,
        Math.max(9, heading.length()),
        false,
        row -> {
          double value = column.get(row);
          if (Double.isNaN(value)) {
            return new Cell.Figure("—", null);
          }
          String text = Figures.number(unit.fromCanonical(value), decimals);
          if (!specification.excludes(value)) {
            return new Cell.Figure(text, null);
          }
          Double lower = specification.lower();
          return new Cell.Marked(lower != null && value < lower ? Mark.LOW : Mark.HIGH, text, null);
        });
  }

  private static String titled(String name, Unit unit) {
    return unit.symbol().isEmpty() ? name : name + ", " + unit.symbol();
  }
}
