package org.evenpour.simulate;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** A scenario's files, written and read back as anyone would read them. */
record SimulatedFiles(
    Simulation.Summary summary, List<Anode> anodes, List<CSVRecord> events, List<CSVRecord> truth) {

  /** A row of the log, its judged values as recorded; NaN where one or a point is missing. */
  record Anode(
      int turn, int mold, String side, double mass, double thickness, double wedge, CSVRecord row) {
    double number(String column) {
      return Double.parseDouble(row.get(column));
    }
  }

  static ToDoubleFunction<Anode> judged(String characteristic) {
    return switch (characteristic) {
      case "mass" -> Anode::mass;
      case "thickness" -> Anode::thickness;
      case "wedge" -> Anode::wedge;
      default -> throw new IllegalArgumentException(characteristic);
    };
  }

  static SimulatedFiles of(Path directory, Scenario scenario) throws IOException {
    Simulation.Summary summary = Simulation.write(directory, scenario);
    return new SimulatedFiles(
        summary,
        table(directory.resolve("casting-log.csv")).stream().map(SimulatedFiles::anode).toList(),
        table(directory.resolve("events.csv")),
        table(directory.resolve("truth.csv")));
  }

  static List<CSVRecord> table(Path file) throws IOException {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(file, StandardCharsets.UTF_8, format)) {
      return parser.getRecords();
    }
  }

  private static Anode anode(CSVRecord row) {
    double[] points =
        Stream.of("top_left", "top_right", "bottom_left", "bottom_right", "center")
            .mapToDouble(point -> number(row, "thickness_" + point + "_mm"))
            .toArray();
    double smallest = Double.POSITIVE_INFINITY;
    double largest = Double.NEGATIVE_INFINITY;
    double sum = 0;
    for (double point : points) {
      smallest = Math.min(smallest, point);
      largest = Math.max(largest, point);
      sum += point;
    }
    return new Anode(
        Integer.parseInt(row.get("turn")),
        Integer.parseInt(row.get("mold")),
        row.get("ladle"),
        number(row, "mass_kg"),
        sum / 5,
        largest - smallest,
        row);
  }

  private static double number(CSVRecord row, String column) {
    String cell = row.get(column);
    return cell.isEmpty() ? Double.NaN : Double.parseDouble(cell);
  }

  static byte[] bytes(Path file) throws IOException {
    return Files.readAllBytes(file);
  }
}
