package org.evenpour.report.table;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.casting.Setting;
import org.evenpour.casting.Specification;
import org.evenpour.casting.ThicknessPoint;
import org.evenpour.casting.Unit;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.column.Labels;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.picture.Mark;
import org.evenpour.report.Figures;
import org.evenpour.report.RunTests;
import org.evenpour.report.Sentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Column.Kind;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** What was recorded: anodes, events, the rows that were set aside, and run tests' finds. */
public final class RecordTables {
  private static final int SENTENCE = 60;

  /** The bits of a row's place that hold its line; the others tell which log. */
  private static final long LINE = (1L << 40) - 1;

  private RecordTables() {}

  /** Events. */
  public static Table<CastingEvent> events(AuditReport report, Sentences sentences) {
    return new Table<>(
        "events",
        sentences.words().say("sheet.events"),
        Columns.<CastingEvent>of(sentences)
            .time("at", CastingEvent::at)
            .text("wheel", CastingEvent::wheel)
            .label("mold", CastingEvent::mold)
            .text("event", event -> sentences.event(event.kind()))
            .prose("note", SENTENCE, CastingEvent::note)
            .list(),
        report.events());
  }

  /** A row that was set aside; null stands last where not all are kept. */
  public static Table<@Nullable SetAsideRow> setAside(AuditReport report, Sentences sentences) {
    Words words = sentences.words();
    List<@Nullable SetAsideRow> rows = new ArrayList<>(report.setAside());
    long all = report.log().rowsSetAside();
    int kept = rows.size();
    if (kept < all) {
      rows.add(null);
    }
    return new Table<>(
        "set_aside",
        words.say("sheet.set_aside"),
        setAside(
                Columns.of(sentences),
                sentences,
                words.say("set_aside.more", words.count(kept), words.count(all)))
            .list(),
        rows);
  }

  /**
   * The columns of set-aside rows.
   *
   * @param more stands in the row that is none
   */
  public static Columns<@Nullable SetAsideRow> setAside(
      Columns<@Nullable SetAsideRow> columns, Sentences sentences, String more) {
    return columns
        .text("log", row -> row == null ? null : row.log())
        .wide(16)
        .count("line", row -> row == null ? null : row.line())
        .prose("reason", SENTENCE, row -> row == null ? more : sentences.words().say(row.reason()))
        .prose("row", SENTENCE, row -> row == null ? null : row.text());
  }

  /** What run tests found at the wheel or at a mold. */
  public record Tested(
      CharacteristicReport of, @Nullable MoldReport mold, Map<String, Long> found) {}

  /** How often each run test found its pattern, for the whole wheel and for every mold alone. */
  public static Table<Tested> tests(AuditReport report, Sentences sentences) {
    List<Tested> rows = new ArrayList<>();
    for (CharacteristicReport of : report.characteristics()) {
      if (of.wheelChart() != null) {
        rows.add(new Tested(of, null, of.wheelChart().tests()));
      }
      of.molds().forEach(mold -> rows.add(new Tested(of, mold, mold.tests())));
    }
    Words words = sentences.words();
    Columns<Tested> columns =
        Columns.<Tested>of(sentences)
            .wheel(row -> row.of().wheel())
            .characteristic(row -> row.of().name())
            .cell(
                "mold",
                Kind.WORDS,
                row ->
                    row.mold() == null
                        ? Cell.words(words.say("mold.wheel"))
                        : new Cell.Label(row.mold().mold()));
    RunTests.IDS.forEach(
        id -> columns.count(id, row -> row.found().get(id)).named(words.say("test." + id)));
    columns.text("tests_source", row -> words.say("tests.source"));
    return new Table<>("tests", words.say("sheet.tests"), columns.list(), rows);
  }

  /**
   * Every usable anode of a wheel, in the order of casting; a row is its index in the record.
   *
   * @param key of the table
   * @param name of the table
   * @param units the unit to show each characteristic in
   */
  public static Table<Integer> anodes(
      String key,
      String name,
      WheelRecord wheel,
      Sentences sentences,
      Function<Characteristic, Unit> units) {
    return new Table<>(
        key,
        name,
        anodes(
                Columns.<Integer>of(sentences).wheel(row -> wheel.wheel()),
                wheel,
                sentences,
                units,
                1,
                UnaryOperator.identity())
            .list(),
        new AllRows(wheel.rows()));
  }

  /**
   * The columns of anodes.
   *
   * @param more decimals beyond those that single anodes carry
   * @param named makes a column's name of what people call a thing
   */
  public static Columns<Integer> anodes(
      Columns<Integer> columns,
      WheelRecord wheel,
      Sentences sentences,
      Function<Characteristic, Unit> units,
      int more,
      UnaryOperator<String> named) {
    Words words = sentences.words();
    columns
        .turn("turn", row -> wheel.turn().get(row))
        .time("at", row -> Instant.ofEpochMilli(wheel.castAtMillis().get(row)))
        .label("mold", row -> wheel.molds().name(wheel.mold().get(row)));
    if (wheel.sides().size() > 0) {
      columns.label("side", row -> label(wheel.sides(), wheel.side(), row));
    }
    if (wheel.serials().size() > 0) {
      columns.label("serial", row -> label(wheel.serials(), wheel.serial(), row));
    }
    for (Characteristic one : wheel.characteristics()) {
      value(columns, one.name(), one.values(), units.apply(one), more, one.specification())
          .named(named.apply(words.characteristic(one.name())));
    }
    Unit thickness = thickness(wheel, units);
    for (ThicknessPoint point : wheel.points()) {
      value(columns, "at " + point.point(), point.values(), thickness, more, Specification.NONE)
          .named(named.apply(words.point(point.point())));
    }
    wheel
        .settings()
        .forEach(
            setting ->
                setting(columns, "set " + setting.name(), setting)
                    .named(named.apply(sentences.setting(setting.name()))));
    Setting disposition = wheel.disposition();
    if (disposition != null) {
      setting(columns, "disposition", disposition);
    }
    Setting defect = wheel.defect();
    if (defect != null) {
      setting(columns, "defect", defect);
    }
    return columns;
  }

  /** Where an anode stands in its log. */
  public static long line(WheelRecord wheel, int row) {
    return wheel.line().get(row) & LINE;
  }

  private static Unit thickness(WheelRecord wheel, Function<Characteristic, Unit> units) {
    return wheel.characteristics().stream()
        .filter(one -> one.name().equals(Quantity.THICKNESS))
        .map(units)
        .findFirst()
        .orElse(Unit.MM);
  }

  private static Columns<Integer> value(
      Columns<Integer> columns,
      String key,
      DoubleColumn values,
      Unit unit,
      int more,
      Specification specification) {
    Digits digits = Digits.plain(new Figures(unit).decimals() + more);
    return columns
        .figure(
            key,
            row -> {
              Double value = present(values, row);
              return new Cell.Figure(
                  Columns.value(unit, value), digits, mark(specification, value));
            })
        .in(unit.symbol());
  }

  private static Mark mark(Specification specification, @Nullable Double value) {
    if (value == null || !specification.excludes(value)) {
      return Mark.NONE;
    }
    Double lower = specification.lower();
    return lower != null && value < lower ? Mark.LOW : Mark.HIGH;
  }

  private static Columns<Integer> setting(Columns<Integer> columns, String key, Setting setting) {
    DoubleColumn numbers = setting.numbers();
    IntColumn categories = setting.categories();
    return (numbers != null
            ? columns.figure(key, Digits.WRITTEN, row -> present(numbers, row))
            : columns.label(
                key, row -> categories == null ? null : label(setting.labels(), categories, row)))
        .in(setting.unit().symbol());
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
