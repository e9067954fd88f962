package org.evenpour.intake;

import static org.evenpour.intake.LogColumn.Role;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.evenpour.casting.Unit;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * What the columns of one log mean.
 *
 * @param file as the user named it
 * @param separator between its cells
 * @param columns in their order
 * @param warnings what is odd about them
 */
public record LogHeader(
    String file, char separator, List<LogColumn> columns, List<Remark> warnings) {

  private static final int COLUMNS_LIMIT = 2000;

  private static final Map<String, Role> ROLES =
      Map.ofEntries(
          Map.entry("cast_at", Role.CAST_AT),
          Map.entry("mold", Role.MOLD),
          Map.entry("wheel", Role.WHEEL),
          Map.entry("turn", Role.TURN),
          Map.entry("ladle", Role.LADLE),
          Map.entry("mold_serial", Role.MOLD_SERIAL),
          Map.entry("disposition", Role.DISPOSITION),
          Map.entry("defect", Role.DEFECT),
          Map.entry("charge", Role.NAMED),
          Map.entry("crew", Role.NAMED),
          Map.entry("wash_batch", Role.NAMED));

  private static final String MASS = "mass_";
  private static final String TARGET_MASS = "target_mass_";
  private static final String THICKNESS = "thickness_";

  /** Copies the lists, so that a header never changes. */
  public LogHeader {
    columns = List.copyOf(columns);
    warnings = List.copyOf(warnings);
  }

  /**
   * Reads the line with the headings.
   *
   * @param file as the user named it
   * @param line where the headings stand, from 1
   * @param text the line as it stands there
   * @param profiles whose headings are made the names that the program knows
   * @throws IntakeException if a needed column is missing, or two mean the same
   */
  public static LogHeader read(String file, long line, String text, Profiles profiles)
      throws IntakeException {
    char separator = separator(text);
    return of(file, line, separator, cells(file, line, text, separator), profiles);
  }

  /**
   * Finds out what headings mean.
   *
   * @param file as the user named it
   * @param line where the headings stand, from 1
   * @param separator between the cells of the rows that follow; with any but a comma, a comma may
   *     stand for the decimal point
   * @param headings one for each column
   * @param profiles whose headings are made the names that the program knows
   * @throws IntakeException if a needed column is missing, or two mean the same
   */
  public static LogHeader of(
      String file, long line, char separator, List<String> headings, Profiles profiles)
      throws IntakeException {
    if (headings.size() > COLUMNS_LIMIT) {
      throw new IntakeException(file, line, 0, "log.columns", headings.size());
    }
    Map<String, String> known = profiles.headings();
    List<LogColumn> columns = new ArrayList<>();
    List<Remark> warnings = new ArrayList<>();
    for (int i = 0; i < headings.size(); i++) {
      String heading = headings.get(i).strip();
      String name = known.getOrDefault(heading.toLowerCase(Locale.ROOT), heading);
      columns.add(column(i, heading, name, profiles, warnings));
    }
    LogHeader header =
        new LogHeader(file, separator, withoutSecondThickness(columns, warnings), warnings);
    header.check(line);
    return header;
  }

  /** The first column with a role, if there is one. */
  @Nullable LogColumn find(Role role) {
    for (LogColumn column : columns) {
      if (column.role() == role) {
        return column;
      }
    }
    return null;
  }

  /** The column with a role that no log is without. */
  LogColumn needed(Role role) {
    return Objects.requireNonNull(find(role));
  }

  /** All columns with a role. */
  List<LogColumn> all(Role role) {
    return columns.stream().filter(column -> column.role() == role).toList();
  }

  RowCutter cutter(int limit) {
    return new RowCutter((byte) separator, columns.stream().map(LogColumn::cell).toList(), limit);
  }

  /** The separator of which there are most outside quotes. */
  static char separator(String text) {
    int[] count = new int[3];
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"') {
        quoted = !quoted;
      } else if (!quoted) {
        switch (c) {
          case ',' -> count[0]++;
          case ';' -> count[1]++;
          case '\t' -> count[2]++;
          default -> {}
        }
      }
    }
    if (count[2] > 0 && count[2] >= Math.max(count[0], count[1])) {
      return '\t';
    }
    return count[1] > 0 && count[1] >= count[0] ? ';' : ',';
  }

  /** The cells of a line with headings. */
  static List<String> cells(String file, long line, String text, char separator)
      throws IntakeException {
    CSVFormat format =
        CSVFormat.DEFAULT.builder().setDelimiter(separator).setIgnoreSurroundingSpaces(true).get();
    try (CSVParser parser = CSVParser.parse(text, format)) {
      return parser.iterator().next().toList();
    } catch (IOException | UncheckedIOException e) {
      throw new IntakeException(file, line, 0, "log.quotes");
    }
  }

  private static LogColumn column(
      int index, String heading, String name, Profiles profiles, List<Remark> warnings) {
    String lower = name.toLowerCase(Locale.ROOT);
    if (lower.isEmpty()) {
      return new LogColumn(index, heading, "", Role.UNUSED, Unit.NONE, "");
    }
    Role role = ROLES.get(lower);
    if (role != null) {
      return new LogColumn(index, heading, lower, role, Unit.NONE, "");
    }
    Unit unit = Unit.ofColumn(lower);
    if (lower.equals(MASS + unit.suffix()) && isMass(unit)) {
      return new LogColumn(index, heading, lower, Role.MASS, unit, "");
    }
    if (lower.equals(TARGET_MASS + unit.suffix()) && isMass(unit)) {
      return new LogColumn(index, heading, lower, Role.TARGET_MASS, unit, "");
    }
    if (lower.startsWith(THICKNESS) && unit.canonical().equals(Unit.MM.suffix())) {
      String rest = lower.substring(THICKNESS.length(), lower.length() - unit.suffix().length());
      return rest.isEmpty()
          ? new LogColumn(index, heading, lower, Role.THICKNESS, unit, "")
          : new LogColumn(
              index,
              heading,
              lower,
              Role.THICKNESS_POINT,
              unit,
              rest.substring(0, rest.length() - 1));
    }
    if (lower.equals("mass") || lower.equals("thickness") || lower.equals("target_mass")) {
      warnings.add(
          Remark.of(
              "note.unitless",
              CellText.shown(heading),
              lower + (lower.endsWith("mass") ? "_kg" : "_mm")));
    } else if (lower.startsWith(THICKNESS) || lower.matches("(target_)?mass_[a-z]{1,3}")) {
      warnings.add(
          Remark.of(
              lower.startsWith(THICKNESS) ? "note.unit.thickness" : "note.unit.mass",
              CellText.shown(heading)));
    }
    return new LogColumn(index, heading, profiles.settingName(name), Role.SETTING, unit, "");
  }

  private static boolean isMass(Unit unit) {
    return unit.canonical().equals(Unit.KG.suffix());
  }

  /** Thickness is the mean of its points where there are points. */
  private static List<LogColumn> withoutSecondThickness(
      List<LogColumn> columns, List<Remark> warnings) {
    if (columns.stream().noneMatch(column -> column.role() == Role.THICKNESS_POINT)) {
      return columns;
    }
    List<LogColumn> kept = new ArrayList<>();
    for (LogColumn column : columns) {
      if (column.role() == Role.THICKNESS) {
        warnings.add(Remark.of("note.thickness", CellText.shown(column.heading())));
        kept.add(
            new LogColumn(
                column.index(), column.heading(), column.name(), Role.UNUSED, Unit.NONE, ""));
      } else {
        kept.add(column);
      }
    }
    return kept;
  }

  private void check(long line) throws IntakeException {
    Map<String, LogColumn> seen = new HashMap<>();
    for (LogColumn column : columns) {
      if (column.role() == Role.UNUSED) {
        continue;
      }
      // Two units of the same thing are the same column twice.
      String meaning =
          switch (column.role()) {
            case SETTING -> column.name().toLowerCase(Locale.ROOT);
            case NAMED -> column.name();
            default -> "\t" + column.role() + column.point();
          };
      LogColumn other = seen.put(meaning, column);
      if (other != null) {
        throw new IntakeException(
            file,
            line,
            0,
            "log.same",
            other.index() + 1,
            CellText.shown(other.heading()),
            column.index() + 1,
            CellText.shown(column.heading()));
      }
    }
    List<Object> missing = new ArrayList<>();
    if (find(Role.CAST_AT) == null) {
      missing.add("cast_at");
    }
    if (find(Role.MOLD) == null) {
      missing.add("mold");
    }
    if (find(Role.MASS) == null
        && find(Role.THICKNESS) == null
        && find(Role.THICKNESS_POINT) == null) {
      missing.add(Remark.of("log.column.value"));
    }
    if (!missing.isEmpty()) {
      throw new IntakeException(
          file,
          line,
          0,
          "log.column",
          missing.stream()
              .reduce((one, other) -> Remark.of("log.column.and", one, other))
              .orElseThrow(),
          found(),
          missing.get(0) instanceof String name ? name : "mass_kg");
    }
  }

  private String found() {
    String list =
        columns.stream()
            .limit(40)
            .map(column -> CellText.shown(column.heading()))
            .collect(Collectors.joining(", "));
    return columns.size() > 40 ? list + ", …" : list;
  }
}
