package org.evenpour.stats;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads the tables of shared/reference, whose sources stand in their first lines. */
final class Reference {
  private Reference() {}

  /** One row of a table by column name. */
  record Row(Map<String, String> cells) {
    String text(String column) {
      String cell = cells.get(column);
      if (cell == null) {
        throw new IllegalArgumentException("no column " + column);
      }
      return cell;
    }

    boolean has(String column) {
      return !text(column).isEmpty();
    }

    double number(String column) {
      return Double.parseDouble(text(column));
    }

    int whole(String column) {
      return Integer.parseInt(text(column));
    }
  }

  static List<Row> rows(String file) {
    List<Row> rows = new ArrayList<>();
    try (InputStream in =
        Reference.class.getResourceAsStream("/org/evenpour/shared/reference/" + file)) {
      if (in == null) {
        throw new IllegalArgumentException("no reference table " + file);
      }
      BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
      String[] names = {};
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (line.startsWith("#")) {
          continue;
        }
        String[] cells = line.split(",", -1);
        if (names.length == 0) {
          names = cells;
          continue;
        }
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < names.length; i++) {
          row.put(names[i], cells[i]);
        }
        rows.add(new Row(row));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows;
  }

  static List<Row> rows(String file, String column, String value) {
    return rows(file).stream().filter(r -> r.text(column).equals(value)).toList();
  }

  static double[] column(String file, String column) {
    return rows(file).stream().mapToDouble(r -> r.number(column)).toArray();
  }

  /** All cells of a table of numbers, row by row. */
  static double[][] matrix(String file) {
    return rows(file).stream()
        .map(r -> r.cells().values().stream().mapToDouble(Double::parseDouble).toArray())
        .toArray(double[][]::new);
  }

  /** Certified value of the NIST StRD. */
  static double certified(String dataset, String quantity) {
    return rows("strd-certified.csv", "dataset", dataset).stream()
        .filter(r -> r.text("quantity").equals(quantity))
        .findFirst()
        .orElseThrow()
        .number("certified");
  }

  /** Digits to which a value agrees with the true one (log relative error), at most 15. */
  static double digits(double value, double truth) {
    double error = truth == 0 ? Math.abs(value) : Math.abs((value - truth) / truth);
    return error == 0 ? 15 : Math.min(15, -Math.log10(error));
  }
}
