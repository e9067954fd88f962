package org.evenpour.simulate;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.evenpour.casting.FileException;

/**
 * A table of what was planted, read line by line, whoever made it: with a comma, a semicolon or a
 * tab between the cells, with or without a byte-order mark.
 *
 * @param file as the user named it
 * @param columns heading to index
 * @param lines below the headings, blank ones left out
 */
record TruthTable(String file, Map<String, Integer> columns, List<Line> lines) {

  /** One line with its number in the file. */
  record Line(int number, List<String> cells) {}

  static TruthTable read(Path path, List<String> needed) throws IOException {
    String file = path.toString();
    List<String> text;
    try {
      text = Files.readAllLines(path, StandardCharsets.UTF_8);
    } catch (NoSuchFileException e) {
      throw new IOException(
          file + ": there is no such file; what was planted must stand there to be scored", e);
    } catch (CharacterCodingException e) {
      throw new IOException(file + ": this is not UTF-8; save it as a text file in UTF-8", e);
    } catch (IOException e) {
      throw new IOException(
          file
              + ": this file cannot be read ("
              + FileException.reason(e)
              + "); check that it is a file",
          e);
    }
    char separator = ',';
    int width = 0;
    Map<String, Integer> columns = new LinkedHashMap<>();
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < text.size(); i++) {
      String line =
          i == 0 && text.get(i).startsWith("\uFEFF") ? text.get(i).substring(1) : text.get(i);
      if (line.isBlank()) {
        continue;
      }
      if (columns.isEmpty()) {
        separator = separator(line);
        List<String> headings = cells(file, i + 1, line, separator);
        width = headings.size();
        for (int c = 0; c < headings.size(); c++) {
          columns.putIfAbsent(headings.get(c).toLowerCase(Locale.ROOT), c);
        }
        for (String one : needed) {
          if (!columns.containsKey(one)) {
            throw error(
                file,
                i + 1,
                "there is no column " + one,
                "the columns " + String.join(",", needed) + " are needed");
          }
        }
      } else {
        List<String> cells = cells(file, i + 1, line, separator);
        if (cells.size() != width) {
          throw error(
              file,
              i + 1,
              cells.size() + " cells stand under " + width + " headings",
              "correct this line");
        }
        lines.add(new Line(i + 1, cells));
      }
    }
    if (columns.isEmpty()) {
      throw new IOException(
          file + ": this file is empty; its first line must name " + String.join(",", needed));
    }
    return new TruthTable(file, columns, lines);
  }

  private static char separator(String headings) {
    return headings.indexOf(',') >= 0 ? ',' : headings.indexOf(';') >= 0 ? ';' : '\t';
  }

  private static List<String> cells(String file, int number, String line, char separator)
      throws IOException {
    CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(separator).get();
    try (CSVParser parser = CSVParser.parse(line, format)) {
      List<CSVRecord> records = parser.getRecords();
      return records.get(0).stream().map(String::strip).toList();
    } catch (IOException | RuntimeException e) {
      throw error(file, number, "this is no line of cells", "check the quotes in it");
    }
  }

  boolean has(String column) {
    return columns.containsKey(column);
  }

  /** A cell; empty where there is no such column. */
  String text(Line line, String column) {
    Integer index = columns.get(column);
    return index == null ? "" : line.cells().get(index);
  }

  /** A cell that must not be empty. */
  String needed(Line line, String column) throws IOException {
    String text = text(line, column);
    if (text.isEmpty()) {
      throw error(line, column + " is missing", "fill it in, or take out the line");
    }
    return text;
  }

  int whole(Line line, String column) throws IOException {
    String text = needed(line, column);
    try {
      return Integer.parseInt(text);
    } catch (NumberFormatException e) {
      throw error(line, column + " \"" + text + "\" is no whole number", "write it like 118");
    }
  }

  double number(Line line, String column) throws IOException {
    String text = needed(line, column);
    try {
      double value = Double.parseDouble(text);
      if (Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException e) {
      // said below, together with infinities
    }
    throw error(line, column + " \"" + text + "\" is no number", "write it like -0.025");
  }

  IOException error(Line line, String what, String mend) {
    return error(file, line.number(), what, mend);
  }

  private static IOException error(String file, int line, String what, String mend) {
    return new IOException(file + ":" + line + ": " + what + "; " + mend);
  }
}
