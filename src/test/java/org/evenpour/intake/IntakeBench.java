package org.evenpour.intake;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.evenpour.casting.CastingRecord;
import org.evenpour.column.Pages;

/**
 * Writes a large log of a plant of our own and measures how long it takes to read: {@code
 * IntakeBench write FILE ROWS [quoted]}, {@code IntakeBench read FILE}; and what a row costs by
 * stage, on one thread, {@code IntakeBench stages FILE}.
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
    if (arguments[0].equals("stages")) {
      stages(file);
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

  /** Twice: the first time is of a runtime that has not compiled yet. */
  private static void stages(Path file) throws IOException, IntakeException {
    for (int time = 0; time < 2; time++) {
      long begin = now();
      long rows = pass(file, false);
      long read = now();
      rows = Math.max(rows, pass(file, true));
      long looked = now();
      LogBlocks blocks = LogBlocks.open(file);
      LogBlocks.Heading heading = blocks.heading();
      LogHeader header =
          LogHeader.read(file.toString(), heading.line(), heading.text(), Profiles.NONE);
      blocks.separate((byte) header.separator());
      RowCutter cutter = header.cutter(LogBlocks.RECORD_LIMIT);
      RowIntake intake = new RowIntake(Profiles.NONE, Pages.ofMemory(), null, null);
      intake.open(header);
      Block block = cutter.newBlock(LogBlocks.READ_BYTES);
      long cut = 0;
      long taken = 0;
      while (blocks.next(block)) {
        long from = now();
        cutter.cut(block);
        long to = now();
        for (int row = 0; row < block.rows; row++) {
          intake.take(block, row, block.line[row]);
        }
        intake.settle(block);
        cut += to - from;
        taken += now() - to;
      }
      blocks.close();
      System.err.printf(
          Locale.ROOT,
          "%,d rows; nanoseconds a row: bytes read %.0f, each looked at %.0f more; rows cut and cells"
              + " parsed %.0f, judged and taken in %.0f%n",
          rows,
          (read - begin) / (double) rows,
          (looked - read - (read - begin)) / (double) rows,
          cut / (double) rows,
          taken / (double) rows);
    }
  }

  /** This thread's processor time: what else the machine does is no part of it. */
  private static long now() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  /** Counts the line ends, or reads the bytes alone. */
  private static long pass(Path file, boolean looks) throws IOException {
    long lines = 1;
    byte[] bytes = new byte[LogBlocks.READ_BYTES];
    try (InputStream in = Files.newInputStream(file)) {
      for (int n = in.read(bytes); n > 0; n = in.read(bytes)) {
        for (int i = 0; looks && i < n; i++) {
          lines += bytes[i] == '\n' ? 1 : 0;
        }
      }
    }
    return lines;
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
