package org.evenpour.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** However many threads cut a log, and wherever its blocks end, its record is the same. */
class CuttersTest {
  private static final String[] FAULTS = {
    "\"unclosed", "", "x", "\"W\n1\"", "\"C\"\"7\"", "1e400", "nan", ",", "\u00ff", "\0"
  };

  /** Three wheels whose rows alternate, one row in eighty with a fault somewhere. */
  private static String log(int rows) {
    Random random = new Random(16);
    StringBuilder log =
        new StringBuilder("cast_at,wheel,turn,mold,ladle,charge,mass_kg,spray_flow_l_min,remark\n");
    for (int i = 0; i < rows; i++) {
      String[] cells = {
        "2026-01-%02dT%02d:%02d:%02dZ"
            .formatted(1 + i / 8640, i / 360 % 24, i / 6 % 60, i % 6 * 10),
        "W" + (random.nextInt(3) + 1),
        String.valueOf(i / 60),
        String.valueOf(i / 3 % 20 + 1),
        i % 2 == 0 ? "A" : "B",
        "C" + i / 500,
        String.format(Locale.ROOT, "%.1f", 400 + random.nextGaussian()),
        i % 7 == 0 ? "" : String.format(Locale.ROOT, "%.2f", 120 + random.nextGaussian()),
        i % 3 == 0 ? "so" : ""
      };
      if (random.nextInt(80) == 0) {
        cells[random.nextInt(cells.length)] = FAULTS[random.nextInt(FAULTS.length)];
      }
      log.append(String.join(",", cells)).append(i % 11 == 0 ? "\r\n" : "\n");
    }
    return log.toString();
  }

  @Test
  void makeTheSameRecordHoweverManyTheyAre(@TempDir Path folder) throws Exception {
    Path file = folder.resolve("log.csv");
    Files.writeString(file, log(30_000));

    List<String> one = told(file, 1);

    assertThat(one).hasSizeGreaterThan(20_000);
    assertThat(one).anyMatch(line -> line.startsWith("aside"));
    for (int cutters : new int[] {2, 3, 8}) {
      assertThat(told(file, cutters)).isEqualTo(one);
    }
  }

  private static List<String> told(Path file, int cutters) throws IOException, IntakeException {
    List<String> told = new ArrayList<>();
    try (SetAside nowhere = SetAside.nowhere()) {
      CastingRecord record =
          LogReader.read(
              List.of(file), Profiles.NONE, List.of(), null, null, nowhere, Progress.NONE, cutters);
      record.setAside().forEach(row -> told.add("aside " + row));
      record.warnings().forEach(warning -> told.add("warning " + warning));
      for (WheelRecord wheel : record.wheels()) {
        for (int i = 0; i < wheel.rows(); i++) {
          StringBuilder row = new StringBuilder(wheel.wheel());
          row.append(' ')
              .append(wheel.castAtMillis().get(i))
              .append(' ')
              .append(wheel.line().get(i));
          row.append(' ').append(wheel.turn().get(i));
          row.append(' ').append(wheel.molds().name(wheel.mold().get(i)));
          row.append(' ').append(wheel.side().get(i));
          for (Characteristic one : wheel.characteristics()) {
            row.append(' ').append(one.values().get(i));
          }
          for (Setting one : wheel.settings()) {
            DoubleColumn numbers = one.numbers();
            IntColumn categories = one.categories();
            row.append(' ').append(one.name()).append('=');
            row.append(
                numbers != null ? numbers.get(i) : categories == null ? -1 : categories.get(i));
          }
          told.add(row.toString());
        }
      }
    }
    return told;
  }
}
