package org.evenpour.report.table;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.TurnPoint;
import org.evenpour.findings.AuditReport.WheelChart;
import org.evenpour.report.Figures;
import org.evenpour.report.Sentences;
import org.evenpour.table.Cell;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** What the whole wheel did in every turn; the source of the pictures. */
public final class TurnTables {

  /** A picture with more points than this is drawn from the thinned table. */
  public static final int PICTURE_POINTS = 3_000;

  private TurnTables() {}

  /** A turn of a wheel, with what each characteristic did in it. */
  public record Turn(
      String wheel,
      int turn,
      Instant at,
      Map<Shown, TurnPoint> points,
      Map<Shown, CharacteristicReport> of) {}

  /** A characteristic in a unit, which two wheels may share. */
  public record Shown(String characteristic, String unit) {
    static Shown of(CharacteristicReport characteristic) {
      return new Shown(characteristic.name(), characteristic.displayUnit());
    }
  }

  /**
   * Where a picture finds its points.
   *
   * @param table its key
   * @param from the first of its rows in the table
   * @param turn key of the column of turns
   * @param value key of the column of values
   * @param points what stands there
   */
  public record Source(
      CharacteristicReport characteristic,
      WheelChart chart,
      String table,
      int from,
      String turn,
      String value,
      List<@Nullable TurnPoint> points) {}

  private static List<CharacteristicReport> charted(AuditReport report) {
    return report.characteristics().stream()
        .filter(one -> one.wheelChart() != null && !one.wheelChart().points().isEmpty())
        .toList();
  }

  /** Every turn. */
  public static Table<Turn> turns(AuditReport report, Sentences sentences) {
    Map<Shown, Unit> shown = new LinkedHashMap<>();
    Map<String, Map<Shown, CharacteristicReport>> wheels = new LinkedHashMap<>();
    for (CharacteristicReport one : charted(report)) {
      shown.put(Shown.of(one), sentences.figures(one.wheel(), one.name()).unit());
      wheels.computeIfAbsent(one.wheel(), wheel -> new LinkedHashMap<>()).put(Shown.of(one), one);
    }
    List<Turn> rows = new ArrayList<>();
    wheels.forEach(
        (wheel, of) -> {
          Map<Integer, Map<Shown, TurnPoint>> turns = new TreeMap<>();
          of.forEach(
              (column, one) ->
                  chart(one)
                      .points()
                      .forEach(
                          point ->
                              turns
                                  .computeIfAbsent(point.turn(), turn -> new LinkedHashMap<>())
                                  .put(column, point)));
          turns.forEach(
              (turn, points) ->
                  rows.add(
                      new Turn(wheel, turn, points.values().iterator().next().at(), points, of)));
        });
    Words words = sentences.words();
    Columns<Turn> columns =
        Columns.<Turn>of(sentences)
            .wheel(Turn::wheel)
            .turn("turn", Turn::turn)
            .time("turn_at", Turn::at);
    shown.forEach(
        (column, unit) -> {
          String name = words.characteristic(column.characteristic());
          String key = key(column);
          columns
              .figure(key, row -> value(sentences, row, column, isCharted()))
              .named(name)
              .in(unit.symbol())
              .figure(
                  key + "_start_up",
                  row -> value(sentences, row, column, (one, point) -> point.startUp()))
              .named(words.say("head.start_up", name, unit.symbol()))
              .figure(
                  key + "_beyond",
                  row -> value(sentences, row, column, (one, point) -> isBeyond(chart(one), point)))
              .named(words.say("head.beyond", name, unit.symbol()))
              .count(
                  key + "_anodes",
                  row -> {
                    TurnPoint point = row.points().get(column);
                    return point == null ? null : point.anodes();
                  })
              .named(words.say("head.anodes_of", name));
        });
    return new Table<>("turns", words.say("sheet.turns"), columns.list(), rows);
  }

  private static String key(Shown column) {
    return column.characteristic() + " " + column.unit();
  }

  /** Whether a turn's value stands in a column. */
  private interface Belongs {
    boolean test(CharacteristicReport of, TurnPoint point);
  }

  private static Belongs isCharted() {
    return (of, point) -> !point.startUp();
  }

  private static Cell value(Sentences sentences, Turn row, Shown column, Belongs belongs) {
    CharacteristicReport of = row.of().get(column);
    TurnPoint point = row.points().get(column);
    return of == null || point == null ? Cell.BLANK : value(sentences, of, point, belongs);
  }

  private static Cell value(
      Sentences sentences, CharacteristicReport of, TurnPoint point, Belongs belongs) {
    Figures figures = sentences.figures(of.wheel(), of.name());
    return new Cell.Figure(
        belongs.test(of, point) ? (Double) figures.unit().fromCanonical(point.value()) : null,
        Digits.plain(figures.decimals() + 1));
  }

  /** Where pictures of characteristics find their points in a table of turns. */
  public static List<Source> sources(AuditReport report, Table<Turn> turns) {
    List<Source> sources = new ArrayList<>();
    for (CharacteristicReport one : charted(report)) {
      List<@Nullable TurnPoint> points = new ArrayList<>();
      int from = -1;
      for (int i = 0; i < turns.rows().size(); i++) {
        Turn turn = turns.rows().get(i);
        if (turn.wheel().equals(one.wheel())) {
          from = from < 0 ? i : from;
          points.add(turn.points().get(Shown.of(one)));
        }
      }
      sources.add(
          new Source(one, chart(one), turns.key(), from, "turn", key(Shown.of(one)), points));
    }
    return sources;
  }

  private static WheelChart chart(CharacteristicReport characteristic) {
    return Objects.requireNonNull(characteristic.wheelChart());
  }

  /** Whether a charted turn lies beyond a limit. */
  public static boolean isBeyond(WheelChart chart, TurnPoint point) {
    return !point.startUp()
        && (point.value() > chart.upperLimit() || point.value() < chart.lowerLimit());
  }

  /** A turn of one characteristic. */
  public record Point(CharacteristicReport of, TurnPoint point) {}

  /** Turns of long records, as many as a picture shows. */
  public static Table<Point> thinned(List<Source> sources, Sentences sentences) {
    List<Point> rows = new ArrayList<>();
    for (Source source : sources) {
      if (source.points().size() > PICTURE_POINTS) {
        for (TurnPoint point : thin(source.points())) {
          rows.add(new Point(source.characteristic(), point));
        }
      }
    }
    Function<Point, Figures> figures = row -> sentences.figures(row.of().wheel(), row.of().name());
    return new Table<>(
        "thinned",
        sentences.words().say("sheet.thinned"),
        Columns.<Point>of(sentences)
            .wheel(row -> row.of().wheel())
            .characteristic(row -> row.of().name())
            .unit(figures)
            .turn("turn", row -> row.point().turn())
            .figure("turn_value", row -> value(sentences, row.of(), row.point(), isCharted()))
            .figure(
                "turn_value_start_up",
                row -> value(sentences, row.of(), row.point(), (of, point) -> point.startUp()))
            .like("turn_start_up")
            .figure(
                "turn_value_beyond",
                row ->
                    value(
                        sentences,
                        row.of(),
                        row.point(),
                        (of, point) -> isBeyond(chart(of), point)))
            .like("turn_beyond")
            .list(),
        rows);
  }

  /** The same sources, those of long records in the thinned table. */
  public static List<Source> thinned(List<Source> sources, Table<Point> thinned) {
    List<Source> kept = new ArrayList<>();
    for (Source source : sources) {
      List<@Nullable TurnPoint> points = new ArrayList<>();
      int from = -1;
      for (int i = 0; i < thinned.rows().size(); i++) {
        if (thinned.rows().get(i).of() == source.characteristic()) {
          from = from < 0 ? i : from;
          points.add(thinned.rows().get(i).point());
        }
      }
      kept.add(
          points.isEmpty()
              ? source
              : new Source(
                  source.characteristic(),
                  source.chart(),
                  thinned.key(),
                  from,
                  "turn",
                  "turn_value",
                  points));
    }
    return kept;
  }

  /** The first, the last, and of each stretch between them the smallest and the largest. */
  static List<TurnPoint> thin(List<@Nullable TurnPoint> points) {
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
    List<TurnPoint> thinned = new ArrayList<>();
    for (int index : kept) {
      TurnPoint point = points.get(index);
      if (point != null) {
        thinned.add(point);
      }
    }
    return thinned;
  }

  /** An end of the lines that a picture draws for center and limits. */
  public record LineEnd(Source of, int turn) {}

  /** The ends of all pictures' lines, two for each source. */
  public static Table<LineEnd> lines(List<Source> sources, Sentences sentences) {
    List<LineEnd> rows = new ArrayList<>();
    for (Source source : sources) {
      int[] turns =
          source.points().stream().filter(Objects::nonNull).mapToInt(TurnPoint::turn).toArray();
      rows.add(new LineEnd(source, turns[0]));
      rows.add(new LineEnd(source, turns[turns.length - 1]));
    }
    Function<LineEnd, Figures> figures =
        row ->
            sentences.figures(row.of().characteristic().wheel(), row.of().characteristic().name());
    return new Table<>(
        "lines",
        sentences.words().say("sheet.wheel"),
        Columns.<LineEnd>of(sentences)
            .wheel(row -> row.of().characteristic().wheel())
            .characteristic(row -> row.of().characteristic().name())
            .unit(figures)
            .turn("turn", LineEnd::turn)
            .value("center", figures, row -> row.of().chart().center())
            .value("lower_limit", figures, row -> row.of().chart().lowerLimit())
            .value("upper_limit", figures, row -> row.of().chart().upperLimit())
            .list(),
        rows);
  }
}
