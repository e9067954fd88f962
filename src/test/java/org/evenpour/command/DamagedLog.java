package org.evenpour.command;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * Makes of a good log a bad one, in one to four of the ways in which logs go bad: by the hand, the
 * export, the clock, the gauge, the disk.
 *
 * <p>Owned by one thread.
 */
final class DamagedLog {
  private static final int MOST_WAYS = 4;

  /** What a cell may hold by mistake. */
  private static final List<String> ODD =
      List.of(
          "",
          " ",
          "NaN",
          "Infinity",
          "-",
          "ERR",
          "#N/A",
          "0",
          "-0",
          "-1",
          "1",
          "1e160",
          "-1e160",
          "1e308",
          "-1e308",
          "1e400",
          "1e-308",
          "4.9e-324",
          "1e15",
          "9999999",
          "2147483647",
          "2147483648",
          "-2147483648",
          "99999999999999999999",
          "388,5",
          "1.171",
          "1,171.5",
          "0x1p3",
          "388.5.1",
          "true",
          "=1+1",
          "\"",
          "\"a",
          "a\"b",
          "\"a,b\"",
          "\"a\nb\"",
          "é",
          "\u0000",
          "<html>",
          "9".repeat(400),
          "x".repeat(40_000),
          "2026-02-30T00:00:00Z",
          "9999-12-31T23:59:59Z",
          "0000-01-01T00:00:00Z",
          "1970-01-01T00:00:00Z",
          "2036-03-04T05:06:07Z");

  /** By how much a whole column may be off. */
  private static final double[] SCALES = {
    0, -1, 1e-300, 1e-160, 1e-9, 1e-3, 10, 1e3, 1e9, 1e15, 1e100, 1e152, 1e160, 1e300
  };

  private final Random random;
  private List<String> headings = List.of();
  private List<String[]> rows = List.of();
  private char separator = ',';
  private boolean decimalCommas;

  DamagedLog(Random random) {
    this.random = random;
  }

  /** The text of a log after its damage. */
  String of(List<String> lines) {
    headings = new ArrayList<>(Arrays.asList(lines.get(0).split(",", -1)));
    rows = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      rows.add(line.split(",", -1));
    }
    separator = ',';
    decimalCommas = false;
    int ways = 1 + random.nextInt(MOST_WAYS);
    for (int i = 0; i < ways; i++) {
      damage();
    }
    String text = text();
    return random.nextInt(4) == 0 ? bytesDamaged(text) : text;
  }

  private void damage() {
    int column = random.nextInt(headings.size());
    switch (random.nextInt(26)) {
      case 0 -> oddCells(column, 1);
      case 1 -> oddCells(column, 1 + random.nextInt(Math.max(1, rows.size())));
      case 2 -> everywhere(column, ODD.get(random.nextInt(ODD.size())));
      case 3 -> scaled(judged(column), SCALES[random.nextInt(SCALES.length)], 0, rows.size());
      case 4 -> {
        int from = random.nextInt(rows.size() + 1);
        scaled(judged(column), SCALES[random.nextInt(SCALES.length)], from, rows.size());
      }
      case 5 -> coarse(judged(column), Math.pow(10, random.nextInt(5) - 2));
      case 6 -> everywhere(judged(column), random.nextBoolean() ? "388" : "0");
      case 7 -> alternating(judged(column), "388", "389");
      case 8 -> copied(judged(column), column);
      case 9 -> Collections.shuffle(rows, random);
      case 10 -> Collections.reverse(rows);
      case 11 -> dropRows(random.nextDouble());
      case 12 -> repeatRows();
      case 13 -> dropColumn(column);
      case 14 -> headings.set(column, headings.get(random.nextInt(headings.size())));
      case 15 -> headings.set(column, random.nextBoolean() ? "" : "x".repeat(random.nextInt(300)));
      case 16 -> keepEvery(named("mold"), 1 + random.nextInt(4));
      case 17 -> keepEvery(named("ladle"), 1);
      case 18 -> sidesByTurn();
      case 19 -> oddCells(named("cast_at"), 1 + random.nextInt(3));
      case 20 -> clockJump(named("cast_at"));
      case 21 -> everywhere(named("turn"), Integer.toString(random.nextInt(3) - 1));
      case 22 -> longLabels(column);
      case 23 -> separator = random.nextBoolean() ? ';' : '\t';
      case 24 -> decimalCommas = true;
      default -> swapped(column, random.nextInt(headings.size()));
    }
  }

  private int named(String heading) {
    return Math.max(0, headings.indexOf(heading));
  }

  /** Mostly a column that is judged, else the one given. */
  private int judged(int other) {
    List<Integer> all = new ArrayList<>();
    for (int i = 0; i < headings.size(); i++) {
      if (headings.get(i).contains("mass") || headings.get(i).startsWith("thickness")) {
        all.add(i);
      }
    }
    return all.isEmpty() || random.nextInt(4) == 0 ? other : all.get(random.nextInt(all.size()));
  }

  private void set(String[] row, int column, String text) {
    if (column < row.length) {
      row[column] = text;
    }
  }

  private void oddCells(int column, int count) {
    String text = ODD.get(random.nextInt(ODD.size()));
    boolean always = random.nextBoolean();
    for (int i = 0; i < count && !rows.isEmpty(); i++) {
      String cell = always || text.length() > 1000 ? text : ODD.get(random.nextInt(38));
      set(rows.get(random.nextInt(rows.size())), column, cell);
    }
  }

  private void everywhere(int column, String text) {
    rows.forEach(row -> set(row, column, text.length() > 1000 ? "x" : text));
  }

  private void alternating(int column, String one, String other) {
    for (int i = 0; i < rows.size(); i++) {
      set(rows.get(i), column, i % 2 == 0 ? one : other);
    }
  }

  private void scaled(int column, double by, int from, int to) {
    for (String[] row : rows.subList(from, to)) {
      try {
        set(row, column, Double.toString(by * Double.parseDouble(row[column])));
      } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
        // no number stood there
      }
    }
  }

  private void coarse(int column, double step) {
    for (String[] row : rows) {
      try {
        set(row, column, Double.toString(step * Math.rint(Double.parseDouble(row[column]) / step)));
      } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
        // no number stood there
      }
    }
  }

  private void copied(int from, int to) {
    rows.forEach(row -> set(row, to, from < row.length ? row[from] : ""));
  }

  private void swapped(int one, int other) {
    for (String[] row : rows) {
      if (one < row.length && other < row.length) {
        String its = row[one];
        row[one] = row[other];
        row[other] = its;
      }
    }
  }

  private void dropRows(double share) {
    rows.removeIf(row -> random.nextDouble() < share);
  }

  private void repeatRows() {
    List<String[]> all = new ArrayList<>();
    for (String[] row : rows) {
      all.add(row);
      if (random.nextInt(3) == 0) {
        all.add(row.clone());
      }
    }
    rows = all;
  }

  private void dropColumn(int column) {
    if (headings.size() < 2) {
      return;
    }
    headings.remove(column);
    rows.replaceAll(
        row -> {
          List<String> cells = new ArrayList<>(Arrays.asList(row));
          if (column < cells.size()) {
            cells.remove(column);
          }
          return cells.toArray(String[]::new);
        });
  }

  /** Only the rows of the first few of a column's values. */
  private void keepEvery(int column, int values) {
    List<String> kept = new ArrayList<>();
    rows.removeIf(
        row -> {
          String its = column < row.length ? row[column] : "";
          if (kept.size() < values && !kept.contains(its)) {
            kept.add(its);
          }
          return !kept.contains(its);
        });
  }

  private void sidesByTurn() {
    int turn = named("turn");
    int ladle = named("ladle");
    for (String[] row : rows) {
      if (turn < row.length && !row[turn].isEmpty()) {
        set(row, ladle, (row[turn].hashCode() & 1) == 0 ? "A" : "B");
      }
    }
  }

  private void clockJump(int column) {
    String year = List.of("2025", "2027", "2099", "1999").get(random.nextInt(4));
    int from = random.nextInt(rows.size() + 1);
    int to = Math.min(rows.size(), from + random.nextInt(random.nextBoolean() ? 3 : 200));
    for (String[] row : rows.subList(from, to)) {
      if (column < row.length && row[column].startsWith("20")) {
        row[column] = year + row[column].substring(4);
      }
    }
  }

  private void longLabels(int column) {
    int length = 1 + random.nextInt(3000);
    for (String[] row : rows) {
      set(row, column, (column < row.length ? row[column] : "") + "é".repeat(length));
    }
  }

  private String text() {
    StringBuilder text = new StringBuilder(String.join(String.valueOf(separator), headings));
    String end = random.nextInt(4) == 0 ? "\r\n" : "\n";
    text.append(end);
    for (String[] row : rows) {
      String line = String.join(String.valueOf(separator), row);
      text.append(decimalCommas ? line.replace('.', ',') : line).append(end);
    }
    return text.toString();
  }

  private String bytesDamaged(String text) {
    StringBuilder all = new StringBuilder(text);
    int places = 1 + random.nextInt(6);
    for (int i = 0; i < places && !all.isEmpty(); i++) {
      int at = random.nextInt(all.length());
      switch (random.nextInt(4)) {
        case 0 -> all.setLength(at);
        case 1 -> all.delete(at, Math.min(all.length(), at + 1 + random.nextInt(60)));
        case 2 -> all.insert(at, ODD.get(random.nextInt(38)));
        default -> all.setCharAt(at, (char) random.nextInt(256));
      }
    }
    return all.toString();
  }
}
