package org.evenpour.report.workbook;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.poi.ss.usermodel.CellStyle;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.TurnPoint;
import org.evenpour.audit.AuditReport.WheelChart;
import org.evenpour.casting.Unit;
import org.jspecify.annotations.Nullable;

/** What the whole wheel did in every turn; the source of the pictures. */
final class TurnsSheet {

  /** A picture with more points than this is drawn from the thinned sheet. */
  static final int PICTURE_POINTS = 3_000;

  private TurnsSheet() {}

  /**
   * Where a picture finds its points.
   *
   * @param sheet the sheet's name
   * @param firstRow index of the first row
   * @param turnColumn index of the column with the turn; value, start-up and beyond follow each
   *     other from {@code valueColumn}
   * @param points what stands there
   */
  record Source(
      CharacteristicReport characteristic,
      WheelChart chart,
      String sheet,
      int firstRow,
      int turnColumn,
      int valueColumn,
      List<@Nullable TurnPoint> points) {}

  static List<Source> write(Paper paper) {
    Map<List<String>, Unit> columns = new LinkedHashMap<>();
    Map<String, List<CharacteristicReport>> wheels = new LinkedHashMap<>();
    for (CharacteristicReport characteristic : paper.report().characteristics()) {
      if (characteristic.wheelChart() != null && !characteristic.wheelChart().points().isEmpty()) {
        columns.put(column(characteristic), paper.unit(characteristic));
        wheels
            .computeIfAbsent(characteristic.wheel(), wheel -> new ArrayList<>())
            .add(characteristic);
      }
    }
    if (columns.isEmpty()) {
      return List.of();
    }
    List<Column> headings =
        new ArrayList<>(
            List.of(
                Column.words(paper.say("head.wheel")),
                Column.figures(paper.say("head.turn")),
                Column.figures(paper.zoned("head.turn_at"))));
    columns.forEach(
        (column, unit) -> {
          String name = paper.words().characteristic(column.get(0));
          headings.add(Column.figures(paper.say("head.value", name, unit.symbol())));
          headings.add(Column.figures(paper.say("head.start_up", name, unit.symbol())));
          headings.add(Column.figures(paper.say("head.beyond", name, unit.symbol())));
          headings.add(Column.figures(paper.say("head.anodes_of", name)));
        });
    Table table = new Table(paper, paper.say("sheet.turns"), headings);
    List<Source> sources = new ArrayList<>();
    wheels.forEach(
        (wheel, characteristics) ->
            sources.addAll(
                wheel(paper, table, characteristics, new ArrayList<>(columns.keySet()))));
    table.finish();
    return thinned(paper, sources);
  }

  private static List<String> column(CharacteristicReport characteristic) {
    return List.of(characteristic.name(), characteristic.displayUnit());
  }

  private static List<Source> wheel(
      Paper paper,
      Table table,
      List<CharacteristicReport> characteristics,
      List<List<String>> columns) {
    Map<Integer, Map<List<String>, TurnPoint>> turns = new TreeMap<>();
    Map<List<String>, CharacteristicReport> byColumn = new LinkedHashMap<>();
    for (CharacteristicReport characteristic : characteristics) {
      byColumn.put(column(characteristic), characteristic);
      for (TurnPoint point : chart(characteristic).points()) {
        turns
            .computeIfAbsent(point.turn(), turn -> new LinkedHashMap<>())
            .put(column(characteristic), point);
      }
    }
    int firstRow = table.rowIndex() + 1;
    turns.forEach(
        (turn, points) -> {
          Instant at = points.values().iterator().next().at();
          table.next().text(characteristics.get(0).wheel()).turn(turn).date(at);
          for (List<String> column : columns) {
            CharacteristicReport characteristic = byColumn.get(column);
            TurnPoint point = points.get(column);
            if (characteristic == null || point == null) {
              table.blank().blank().blank().blank();
            } else {
              values(paper, table, characteristic, point);
              table.count(point.anodes());
            }
          }
        });
    List<Source> sources = new ArrayList<>();
    byColumn.forEach(
        (column, characteristic) -> {
          List<@Nullable TurnPoint> points = new ArrayList<>();
          turns.values().forEach(ofTurn -> points.add(ofTurn.get(column)));
          sources.add(
              new Source(
                  characteristic,
                  chart(characteristic),
                  table.sheetName(),
                  firstRow,
                  1,
                  3 + 4 * columns.indexOf(column),
                  points));
        });
    return sources;
  }

  private static WheelChart chart(CharacteristicReport characteristic) {
    return Objects.requireNonNull(characteristic.wheelChart());
  }

  /**
   * The turn's value, where it counts; its value, where it was start-up; and where it is beyond.
   */
  private static void values(
      Paper paper, Table table, CharacteristicReport characteristic, TurnPoint point) {
    Unit unit = paper.unit(characteristic);
    CellStyle style = paper.styles().number(paper.decimals(characteristic) + 1);
    double value = unit.fromCanonical(point.value());
    table
        .number(point.startUp() ? null : (Double) value, style)
        .number(point.startUp() ? (Double) value : null, style)
        .number(isBeyond(chart(characteristic), point) ? (Double) value : null, style);
  }

  /** Whether a charted turn lies beyond a limit. */
  static boolean isBeyond(WheelChart chart, TurnPoint point) {
    return !point.startUp()
        && (point.value() > chart.upperLimit() || point.value() < chart.lowerLimit());
  }

  private static List<Source> thinned(Paper paper, List<Source> sources) {
    if (sources.stream().allMatch(source -> source.points().size() <= PICTURE_POINTS)) {
      return sources;
    }
    Table table =
        new Table(
            paper,
            paper.say("sheet.thinned"),
            List.of(
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.characteristic")),
                Column.words(paper.say("head.unit")),
                Column.figures(paper.say("head.turn")),
                Column.figures(paper.say("head.turn_value")),
                Column.figures(paper.say("head.turn_start_up")),
                Column.figures(paper.say("head.turn_beyond"))));
    List<Source> thinned = new ArrayList<>();
    for (Source source : sources) {
      if (source.points().size() <= PICTURE_POINTS) {
        thinned.add(source);
        continue;
      }
      CharacteristicReport characteristic = source.characteristic();
      List<@Nullable TurnPoint> kept = thin(source.points());
      int firstRow = table.rowIndex() + 1;
      for (TurnPoint point : kept) {
        if (point != null) {
          table
              .next()
              .text(characteristic.wheel())
              .text(paper.words().characteristic(characteristic.name()))
              .text(paper.unit(characteristic).symbol())
              .turn(point.turn());
          values(paper, table, characteristic, point);
        }
      }
      thinned.add(
          new Source(characteristic, source.chart(), table.sheetName(), firstRow, 3, 4, kept));
    }
    table.finish();
    return thinned;
  }

  /** The first, the last, and of each stretch between them the smallest and the largest. */
  static List<@Nullable TurnPoint> thin(List<@Nullable TurnPoint> points) {
    int stretches = PICTURE_POINTS / 2 - 1;
    TreeSet<Integer> kept = new TreeSet<>();
    for (int stretch = 0; stretch < stretches; stretch++) {
      int from = (int) ((long) points.size() * stretch / stretches);
      int to = (int) ((long) points.size() * (stretch + 1) / stretches);
      int smallest = -1;
      int largest = -1;
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int i = from; i < to; i++) {
        TurnPoint point = points.get(i);
        if (point != null && point.value() < low) {
          low = point.value();
          smallest = i;
        }
        if (point != null && point.value() > high) {
          high = point.value();
          largest = i;
        }
      }
      if (smallest >= 0) {
        kept.add(smallest);
        kept.add(largest);
      }
    }
    kept.add(0);
    kept.add(points.size() - 1);
    List<@Nullable TurnPoint> thinned = new ArrayList<>();
    for (int index : kept) {
      if (points.get(index) != null) {
        thinned.add(points.get(index));
      }
    }
    return thinned;
  }
}
