package org.evenpour.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LargeLogTest {
  @TempDir Path directory;

  @Test
  void writesElevenReadableColumnsOfSomeSeventySixBytesARow() throws IOException {
    Path file = directory.resolve("large.csv");
    LargeLog.write(file, 20_000, 1);
    List<CSVRecord> rows = SimulatedFiles.table(file);
    assertThat(rows).hasSize(20_000);
    assertThat(Files.size(file) / 20_000.0).isBetween(75.0, 76.0);
    OffsetDateTime last = OffsetDateTime.MIN;
    for (int i = 0; i < rows.size(); i++) {
      CSVRecord row = rows.get(i);
      OffsetDateTime castAt = OffsetDateTime.parse(row.get("cast_at"));
      assertThat(row.size()).isEqualTo(11);
      assertThat(castAt).isAfter(last);
      assertThat(Integer.parseInt(row.get("turn"))).isEqualTo(100_001 + i / 26);
      assertThat(Integer.parseInt(row.get("mold"))).isEqualTo(1 + i % 26);
      assertThat(Double.parseDouble(row.get("mass_kg"))).isBetween(380.0, 400.0);
      assertThat(Double.parseDouble(row.get("thickness_mm"))).isBetween(42.0, 48.0);
      assertThat(Double.parseDouble(row.get("pour_rate_kg_s"))).isBetween(14.0, 16.0);
      assertThat(Double.parseDouble(row.get("wash_volume_ml"))).isBetween(580.0, 700.0);
      assertThat(Double.parseDouble(row.get("spray_flow_l_min"))).isBetween(100.0, 140.0);
      last = castAt;
    }
  }

  @Test
  void writesTheSameBytesForTheSameSeed() throws IOException {
    Path first = directory.resolve("first.csv");
    Path second = directory.resolve("second.csv");
    Path other = directory.resolve("other.csv");
    LargeLog.write(first, 3000, 7);
    LargeLog.write(second, 3000, 7);
    LargeLog.write(other, 3000, 8);
    assertThat(first).hasSameBinaryContentAs(second);
    assertThat(Files.mismatch(first, other)).isPositive();
  }

  @Test
  void writesOnlyTheHeaderForNoRows() throws IOException {
    Path file = directory.resolve("none.csv");
    LargeLog.write(file, 0, 1);
    assertThat(SimulatedFiles.table(file)).isEmpty();
    assertThat(Files.readAllLines(file)).hasSize(1);
  }
}
