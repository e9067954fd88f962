package org.evenpour.intake;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.evenpour.casting.GaugeFile;
import org.evenpour.casting.Quantity;
import org.evenpour.casting.Unit;
import org.evenpour.words.Remark;

/**
 * Reads a gauge study, {@code part,operator,mass_kg}, or check measurements, {@code
 * at,reference_kg,mass_kg}. Nothing is set aside: a study with a hole in it is none.
 */
public final class GaugeReader {
  private static final String REFERENCE = "reference_";

  private final String file;
  private final String name;
  private final Profiles profiles;
  private final Map<String, Integer> columns = new LinkedHashMap<>();
  private final Map<String, Unit> measures = new LinkedHashMap<>();
  private final Map<String, Unit> references = new LinkedHashMap<>();
  private long headingLine;

  private GaugeReader(Path path, Profiles profiles) {
    file = path.toString();
    name = String.valueOf(path.getFileName());
    this.profiles = profiles;
  }

  /**
   * Reads a file.
   *
   * @param path with headings in its first line
   * @param profiles for the zone of times without an offset
   */
  public static GaugeFile read(Path path, Profiles profiles) throws IntakeException {
    return new GaugeReader(path, profiles).read(path);
  }

  /** Whether these are the headings of a gauge file, in small letters. */
  public static boolean isGauge(List<String> headings) {
    return (headings.contains("part") && headings.contains("operator"))
        || headings.stream().anyMatch(one -> one.strip().startsWith(REFERENCE));
  }

  /** One row as text and numbers. */
  private record Row(
      long line, String part, String operator, long time, Map<String, Double> numbers) {}

  private GaugeFile read(Path path) throws IntakeException {
    List<Row> rows = new ArrayList<>();
    try (LogBlocks blocks = LogBlocks.open(path)) {
      LogBlocks.Heading heading = blocks.heading();
      char separator = LogHeader.separator(heading.text());
      blocks.separate((byte) separator);
      headingLine = heading.line();
      List<String> headings =
          LogHeader.cells(file, headingLine, heading.text(), separator).stream()
              .map(one -> one.strip().toLowerCase(Locale.ROOT))
              .toList();
      columns(headings);
      RowCutter cutter =
          new RowCutter(
              (byte) separator, headings.stream().map(this::cell).toList(), LogBlocks.RECORD_LIMIT);
      long line = blocks.firstLine();
      Block block = cutter.newBlock(LogBlocks.READ_BYTES);
      while (blocks.next(block)) {
        cutter.cut(block);
        for (int row = 0; row < block.rows; row++) {
          rows.add(row(block, row, line + block.line[row]));
        }
        line += block.lines;
      }
    }
    if (rows.isEmpty()) {
      throw IntakeException.ofFile(file, "gauge.rows");
    }
    return references.isEmpty() ? study(rows) : checks(rows);
  }

  private LogColumn.Cell cell(String heading) {
    if (heading.equals("at")) {
      return LogColumn.Cell.TIME;
    }
    return measures.containsKey(heading) || references.containsKey(heading)
        ? LogColumn.Cell.NUMBER
        : LogColumn.Cell.TEXT;
  }

  private void columns(List<String> headings) throws IntakeException {
    for (int i = 0; i < headings.size(); i++) {
      String heading = headings.get(i);
      Unit unit = Unit.ofColumn(heading);
      String canonical = unit.canonical();
      boolean isMeasure =
          (heading.equals("mass_" + unit.suffix()) && canonical.equals("kg"))
              || (heading.equals("thickness_" + unit.suffix()) && canonical.equals("mm"));
      boolean isReference =
          heading.equals(REFERENCE + unit.suffix())
              && (canonical.equals("kg") || canonical.equals("mm"));
      if (heading.startsWith(REFERENCE) && !isReference) {
        throw error(headingLine, "gauge.unit", CellText.shown(heading));
      }
      if (isMeasure) {
        measures.put(heading, unit);
      } else if (isReference) {
        references.put(heading, unit);
      } else if (!List.of("part", "operator", "at").contains(heading)) {
        continue;
      }
      Integer other = columns.put(heading, i);
      if (other != null) {
        throw error(headingLine, "events.twice", other + 1, i + 1, heading);
      }
    }
    String all = CellText.shown(headings.toString());
    Remark mend = Remark.of("gauge.headings");
    if (measures.isEmpty()) {
      throw error(headingLine, "gauge.measure", all, mend);
    }
    List<String> needed = references.isEmpty() ? List.of("part", "operator") : List.of("at");
    for (String one : needed) {
      if (!columns.containsKey(one)) {
        throw error(headingLine, "gauge.column", one, all, mend);
      }
    }
    if (!references.isEmpty() && (columns.containsKey("part") || columns.containsKey("operator"))) {
      throw error(headingLine, "gauge.kinds");
    }
    if (measures.size()
            > measures.keySet().stream().map(GaugeReader::characteristic).distinct().count()
        || references.size() > 1
        || (!references.isEmpty() && measures.size() > 1)) {
      throw error(headingLine, "gauge.several", all);
    }
    for (Unit reference : references.values()) {
      for (Unit measure : measures.values()) {
        if (!reference.canonical().equals(measure.canonical())) {
          throw error(headingLine, "gauge.other", mend);
        }
      }
    }
  }

  private static String characteristic(String heading) {
    return heading.startsWith("mass") ? Quantity.MASS : Quantity.THICKNESS;
  }

  private Row row(Block block, int row, long line) throws IntakeException {
    if (block.hasFault(row)) {
      throw error(line, "file.row", Reasons.fault(block, row));
    }
    Map<String, Double> numbers = new LinkedHashMap<>();
    for (Map<String, Unit> some : List.of(measures, references)) {
      for (Map.Entry<String, Unit> one : some.entrySet()) {
        int column = columns.getOrDefault(one.getKey(), -1);
        double value = block.number(row, column);
        if (!(Math.abs(value) <= Double.MAX_VALUE)) {
          String text = block.cell(row, column).strip();
          throw text.isEmpty()
              ? error(line, "gauge.missing", one.getKey())
              : error(line, "gauge.number", one.getKey(), CellText.shown(text));
        }
        numbers.put(one.getKey(), one.getValue().toCanonical(value));
      }
    }
    if (!references.isEmpty()) {
      return new Row(line, "", "", time(block, row, line), numbers);
    }
    return new Row(
        line, named(block, row, "part", line), named(block, row, "operator", line), 0, numbers);
  }

  private String named(Block block, int row, String column, long line) throws IntakeException {
    String text = block.cell(row, columns.getOrDefault(column, -1)).strip();
    if (text.isEmpty()) {
      throw error(line, "gauge." + column);
    }
    return text;
  }

  private long time(Block block, int row, long line) throws IntakeException {
    long time = block.times[row];
    if (time == TimeReader.MISSING || time == TimeReader.UNREADABLE) {
      String text = block.cell(row, columns.getOrDefault("at", -1)).strip();
      throw text.isEmpty()
          ? error(line, "events.missing")
          : error(line, "events.time", CellText.shown(text));
    }
    long millis = TimeReader.millis(time);
    return TimeReader.isLocal(time)
        ? new WallClock(profiles.forWheel("").zone()).utc(millis, Long.MIN_VALUE)
        : millis;
  }

  private GaugeFile study(List<Row> rows) throws IntakeException {
    Set<String> parts = new LinkedHashSet<>();
    Set<String> operators = new LinkedHashSet<>();
    Map<List<String>, List<Row>> cells = new LinkedHashMap<>();
    for (Row row : rows) {
      parts.add(row.part());
      operators.add(row.operator());
      cells.computeIfAbsent(List.of(row.part(), row.operator()), any -> new ArrayList<>()).add(row);
    }
    if (parts.size() < 2 || operators.size() < 2) {
      throw IntakeException.ofFile(
          file,
          "gauge.few",
          count(parts.size(), "gauge.parts"),
          count(operators.size(), "gauge.operators"));
    }
    checkWhole(parts, operators, cells);
    List<GaugeFile.Study> studies = new ArrayList<>();
    for (Map.Entry<String, Unit> measure : measures.entrySet()) {
      double[][][] measured =
          parts.stream()
              .map(
                  part ->
                      operators.stream()
                          .map(
                              operator ->
                                  cells.getOrDefault(List.of(part, operator), List.of()).stream()
                                      .mapToDouble(row -> number(row, measure.getKey()))
                                      .toArray())
                          .toArray(double[][]::new))
              .toArray(double[][][]::new);
      studies.add(
          new GaugeFile.Study(
              characteristic(measure.getKey()),
              measure.getValue(),
              List.copyOf(parts),
              List.copyOf(operators),
              measured));
    }
    return new GaugeFile(name, studies, List.of());
  }

  private void checkWhole(
      Set<String> parts, Set<String> operators, Map<List<String>, List<Row>> cells)
      throws IntakeException {
    int repeats = cells.values().iterator().next().size();
    List<String> first = cells.keySet().iterator().next();
    if (repeats < 2) {
      throw error(
          cells.values().iterator().next().get(0).line(),
          "gauge.once",
          CellText.shown(first.get(0)),
          CellText.shown(first.get(1)));
    }
    for (String part : parts) {
      for (String operator : operators) {
        List<Row> its = cells.getOrDefault(List.of(part, operator), List.of());
        if (its.size() != repeats) {
          throw error(
              its.isEmpty() ? 0 : its.get(its.size() - 1).line(),
              "gauge.uneven",
              CellText.shown(part),
              count(its.size(), "gauge.times"),
              CellText.shown(operator),
              CellText.shown(first.get(0)),
              count(repeats, "gauge.times"),
              CellText.shown(first.get(1)));
        }
      }
    }
  }

  private GaugeFile checks(List<Row> rows) throws IntakeException {
    if (rows.size() < 2) {
      throw error(rows.get(0).line(), "gauge.reading");
    }
    String measure = measures.keySet().iterator().next();
    String reference = references.keySet().iterator().next();
    List<GaugeFile.Reading> readings =
        rows.stream()
            .map(
                row ->
                    new GaugeFile.Reading(
                        Instant.ofEpochMilli(row.time()),
                        number(row, reference),
                        number(row, measure)))
            .sorted(Comparator.comparing(GaugeFile.Reading::at))
            .toList();
    return new GaugeFile(
        name,
        List.of(),
        List.of(
            new GaugeFile.Checks(
                characteristic(measure), measures.getOrDefault(measure, Unit.NONE), readings)));
  }

  private static double number(Row row, String column) {
    return row.numbers().getOrDefault(column, Double.NaN);
  }

  private static Remark count(int n, String key) {
    return n == 1 ? Remark.of(key + ".one") : Remark.of(key, n);
  }

  private IntakeException error(long line, String key, Object... values) {
    return new IntakeException(file, line, 0, key, values);
  }
}
