package org.evenpour.intake;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.evenpour.casting.CastingRecord;

/**
 * Writes a large log of a plant of our own and measures how long it takes to read: {@code
 * IntakeBench write FILE ROWS [quoted]}, {@code IntakeBench read FILE}.
 */
final class IntakeBench {
  private static final int MOLDS = 26;
  private static final int ROWS_PER_CHARGE = 750;

  private IntakeBench() {}

  public static void main(String[] arguments) throws IOException, IntakeException {
    Path file = Path.of(arguments[1]);
    if (arguments[0].equals("write")) {
      write(file, Integer.parseInt(arguments[2]), arguments.length > 3);
      return;
    }
    long begin = System.nanoTime();
    CastingRecord record =
        LogReader.read(
            List.of(file), Profiles.NONE, List.of(), null, null, SetAside.nowhere(), Progress.NONE);
    double seconds = (System.nanoTime() - begin) / 1e9;
    Runtime runtime = Runtime.getRuntime();
    System.err.printf(
        Locale.ROOT,
        "%,d rows, %,d set aside, %.0f MB in %.2f s; heap %,d MiB of %,d%n%s%n",
        record.rowsRead(),
        record.rowsSetAside(),
        Files.size(file) / 1e6,
        seconds,
        (runtime.totalMemory() - runtime.freeMemory()) >> 20,
        runtime.maxMemory() >> 20,
        record.warnings());
  }

  private static void write(Path file, int rows, boolean quoted) throws IOException {
    Random random = new Random(1);
    long millis = Instant.parse("2020-01-01T00:00:00Z").toEpochMilli();
    String quote = quoted ? "\"" : "";
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 20)) {
      out.write(
          ("cast_at,wheel,charge,turn,mold,ladle,mass_kg,thickness_mm,"
                  + "wash_volume_ml,pour_rate_kg_s,spray_flow_l_min\n")
              .getBytes(StandardCharsets.UTF_8));
      StringBuilder row = new StringBuilder();
      for (int i = 0; i < rows; i++) {
        millis += 28_800;
        row.setLength(0);
        row.append(Instant.ofEpochMilli(millis)).append(',');
        row.append(quote).append("N2").append(quote).append(",C");
        row.append(1000 + i / ROWS_PER_CHARGE).append(',');
        row.append(1 + i / MOLDS).append(',').append(1 + i % MOLDS).append(',');
        row.append(i % 2 == 0 ? 'A' : 'B').append(',');
        row.append(Math.round((388 + random.nextGaussian() * 2.5) * 10) / 10.0).append(',');
        row.append(Math.round((43.2 + random.nextGaussian() * 0.4) * 100) / 100.0).append(',');
        row.append(Math.round((900 + random.nextGaussian() * 30) * 10) / 10.0).append(',');
        row.append(Math.round((11 + random.nextGaussian() * 0.5) * 1000) / 1000.0).append(',');
        row.append(Math.round((55 + random.nextGaussian()) * 100) / 100.0).append('\n');
        out.write(row.toString().getBytes(StandardCharsets.UTF_8));
      }
    }
  }
}
