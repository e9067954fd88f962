package org.evenpour.report.workbook;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongConsumer;
import org.apache.poi.ss.usermodel.CellStyle;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.DoubleColumn;
import org.evenpour.casting.IntColumn;
import org.evenpour.casting.Labels;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Setting;
import org.evenpour.casting.ThicknessPoint;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelRecord;
import org.evenpour.report.Figures;
import org.jspecify.annotations.Nullable;

/** Every usable anode of the log, a table for each wheel. */
final class AnodesSheet {
  private AnodesSheet() {}

  static void write(Paper paper, CastingRecord record, LongConsumer written) {
    int number = 1;
    long before = 0;
    for (WheelRecord wheel : record.wheels()) {
      String name = paper.say("sheet.anodes");
      write(
          paper, record.wheels().size() == 1 ? name : name + " " + number, wheel, before, written);
      before += wheel.rows();
      number++;
    }
  }

  private static void write(
      Paper paper, String name, WheelRecord wheel, long before, LongConsumer written) {
    List<Setting> settings = new ArrayList<>(wheel.settings());
    List<Column> headings = new ArrayList<>();
    headings.add(Column.words(paper.say("head.wheel")));
    headings.add(Column.figures(paper.say("head.turn")));
    headings.add(Column.figures(paper.zoned("head.at")));
    headings.add(Column.words(paper.say("head.mold")));
    if (wheel.sides().size() > 0) {
      headings.add(Column.words(paper.say("head.side")));
    }
    if (wheel.serials().size() > 0) {
      headings.add(Column.words(paper.say("head.serial")));
    }
    for (Characteristic characteristic : wheel.characteristics()) {
      headings.add(
          Column.figures(
              paper.say(
                  "head.value",
                  paper.words().characteristic(characteristic.name()),
                  characteristic.displayUnit().symbol())));
    }
    Unit thickness = thickness(wheel);
    for (ThicknessPoint point : wheel.points()) {
      headings.add(
          Column.figures(
              paper.say("head.value", point.point().replace('_', ' '), thickness.symbol())));
    }
    for (Setting setting : settings) {
      String readable = paper.sentences().setting(setting.name());
      String heading =
          setting.unit().symbol().isEmpty()
              ? readable
              : paper.say("head.value", readable, setting.unit().symbol());
      headings.add(new Column(heading, setting.numbers() != null));
    }
    if (wheel.disposition() != null) {
      headings.add(Column.words(paper.say("head.disposition")));
      settings.add(wheel.disposition());
    }
    if (wheel.defect() != null) {
      headings.add(Column.words(paper.say("head.defect")));
      settings.add(wheel.defect());
    }
    Table table = new Table(paper, name, headings);
    for (int row = 0; row < wheel.rows(); row++) {
      anode(paper, table.next(), wheel, settings, thickness, row);
      written.accept(before + row + 1);
    }
    table.finish();
  }

  private static Unit thickness(WheelRecord wheel) {
    return wheel.characteristics().stream()
        .filter(characteristic -> characteristic.name().equals(Quantity.THICKNESS))
        .map(Characteristic::displayUnit)
        .findFirst()
        .orElse(Unit.MM);
  }

  private static void anode(
      Paper paper,
      Table table,
      WheelRecord wheel,
      List<Setting> settings,
      Unit thickness,
      int row) {
    table
        .text(wheel.wheel())
        .turn(wheel.turn().get(row))
        .date(Instant.ofEpochMilli(wheel.castAtMillis().get(row)))
        .label(wheel.molds().name(wheel.mold().get(row)));
    if (wheel.sides().size() > 0) {
      table.label(label(wheel.sides(), wheel.side(), row));
    }
    if (wheel.serials().size() > 0) {
      table.label(label(wheel.serials(), wheel.serial(), row));
    }
    for (Characteristic characteristic : wheel.characteristics()) {
      Unit unit = characteristic.displayUnit();
      value(paper, table, characteristic.values(), unit, row);
    }
    for (ThicknessPoint point : wheel.points()) {
      value(paper, table, point.values(), thickness, row);
    }
    for (Setting setting : settings) {
      if (setting.numbers() != null) {
        Double value = present(setting.numbers(), row);
        table.number(value, paper.styles().general());
      } else if (setting.categories() != null) {
        table.label(label(setting.labels(), setting.categories(), row));
      } else {
        table.blank();
      }
    }
  }

  private static void value(Paper paper, Table table, DoubleColumn values, Unit unit, int row) {
    CellStyle style = paper.styles().number(new Figures(unit).decimals() + 1);
    table.number(Paper.value(unit, present(values, row)), style);
  }

  private static @Nullable Double present(DoubleColumn values, int row) {
    double value = values.get(row);
    return Double.isFinite(value) ? (Double) value : null;
  }

  private static @Nullable String label(Labels labels, IntColumn column, int row) {
    int index = column.get(row);
    return index < 0 ? null : labels.name(index);
  }
}
