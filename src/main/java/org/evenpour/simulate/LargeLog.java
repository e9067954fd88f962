package org.evenpour.simulate;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.SplittableRandom;
import org.evenpour.casting.PartFiles;

/**
 * A long, sound casting log of eleven columns for measuring speed: some 76 bytes a row, so that
 * five million rows are some 378 MB. The same seed gives the same file, byte for byte.
 *
 * <p>Owned by the thread that writes.
 */
public final class LargeLog {
  private static final int MOLDS = 26;
  private static final int CHARGE_POURS = 769;
  private static final int DAY_SECONDS = 86_400;
  private static final int CHARGE_SECONDS = 21 * 3600;

  /** The wheel has turned before: six digits from the first row, and so rows of equal length. */
  private static final int FIRST_TURN = 100_001;

  private static final String HEADER =
      "cast_at,wheel,charge,turn,mold,ladle,mass_kg,thickness_mm,"
          + "pour_rate_kg_s,wash_volume_ml,spray_flow_l_min\n";

  private final OutputStream out;
  private final Noise noise;
  private final byte[] buffer = new byte[1 << 16];
  private int used;
  private long dateDay = Long.MIN_VALUE;
  private byte[] date = {};

  private LargeLog(OutputStream out, long seed) {
    this.out = out;
    this.noise = new Noise(new SplittableRandom(seed));
  }

  /**
   * Writes the log, over an older one.
   *
   * @param rows 0 or more, without the header
   */
  public static void write(Path file, int rows, long seed) throws IOException {
    if (rows < 0) {
      throw new IllegalArgumentException("rows must be 0 or more, not " + rows);
    }
    Path part = PartFiles.make(file.resolveSibling(file.getFileName() + ".part"));
    try {
      try (OutputStream out = Files.newOutputStream(part)) {
        LargeLog log = new LargeLog(out, seed);
        log.ascii(HEADER);
        log.rows(rows);
        log.flush();
      }
      PartFiles.finish(part, file);
    } finally {
      PartFiles.drop(part);
    }
  }

  private void rows(int rows) throws IOException {
    double[] level = new double[MOLDS];
    double[] washDrift = new double[MOLDS];
    for (int mold = 0; mold < MOLDS; mold++) {
      level[mold] = noise.normalWithinTwo(0.5);
    }
    double turnKg = 0;
    double rateDrift = 0;
    double sprayDrift = 0;
    long second = LocalDate.of(2016, 1, 4).toEpochDay() * DAY_SECONDS + 6 * 3600;
    long chargeSecond = second;
    for (int row = 0; row < rows; row++) {
      int mold = row % MOLDS;
      if (mold == 0) {
        turnKg = noise.next(turnKg, 0.5, 0.7);
        sprayDrift = noise.next(sprayDrift, 0.8, 2);
      }
      if (row > 0 && row % CHARGE_POURS == 0) {
        chargeSecond += CHARGE_SECONDS;
        second = chargeSecond;
      }
      rateDrift = noise.next(rateDrift, 0.995, 0.06);
      washDrift[mold] = noise.next(washDrift[mold], 0.9, 6);
      double rate = rateDrift + noise.normal(0.1);
      double wash = washDrift[mold] + noise.normal(5);
      double mass =
          Plant.TARGET_MASS_KG + turnKg + Effect.POUR_RATE_ON_MASS.of(rate) + noise.normal(1.0);
      double thickness =
          mass / Plant.MASS_PER_MM_KG
              + level[mold]
              + Effect.WASH_ON_THICKNESS.of(wash)
              + noise.normal(0.12);
      instant(second);
      ascii(",T1,");
      number(1041 + row / CHARGE_POURS, 0);
      ascii(",");
      number(FIRST_TURN + row / MOLDS, 0);
      ascii(",");
      number(mold + 1, 0);
      ascii(mold % 2 == 0 ? ",A," : ",B,");
      number(Math.round(mass * 10), 1);
      ascii(",");
      number(Math.round(thickness * 100), 2);
      ascii(",");
      number(Math.round((Plant.POUR_RATE_KG_S + rate) * 100), 2);
      ascii(",");
      number(Math.round((Plant.WASH_VOLUME_ML + wash) * 10), 1);
      ascii(",");
      number(Math.round((Plant.SPRAY_FLOW_L_MIN + sprayDrift + noise.normal(2)) * 10), 1);
      ascii("\n");
      second += 29 + row % 3;
    }
  }

  private void instant(long second) throws IOException {
    long day = Math.floorDiv(second, DAY_SECONDS);
    if (day != dateDay) {
      dateDay = day;
      date = LocalDate.ofEpochDay(day).toString().getBytes(StandardCharsets.US_ASCII);
    }
    int ofDay = Math.floorMod(second, DAY_SECONDS);
    room(32);
    System.arraycopy(date, 0, buffer, used, date.length);
    used += date.length;
    two('T', ofDay / 3600);
    two(':', ofDay / 60 % 60);
    two(':', ofDay % 60);
    ascii("-03:00");
  }

  private void two(char before, int value) {
    buffer[used++] = (byte) before;
    buffer[used++] = (byte) ('0' + value / 10);
    buffer[used++] = (byte) ('0' + value % 10);
  }

  /** A number of at least 1 whose last digits are decimals. */
  private void number(long scaled, int decimals) throws IOException {
    room(24);
    int end = used;
    for (long rest = scaled; rest > 0; rest /= 10) {
      end++;
    }
    end += decimals > 0 ? 1 : 0;
    int at = end;
    long rest = scaled;
    for (int digit = 0; rest > 0; digit++) {
      if (digit == decimals && decimals > 0) {
        buffer[--at] = '.';
      }
      buffer[--at] = (byte) ('0' + rest % 10);
      rest /= 10;
    }
    used = end;
  }

  private void ascii(String text) throws IOException {
    room(text.length());
    for (int i = 0; i < text.length(); i++) {
      buffer[used++] = (byte) text.charAt(i);
    }
  }

  private void room(int bytes) throws IOException {
    if (used + bytes > buffer.length) {
      flush();
    }
  }

  private void flush() throws IOException {
    out.write(buffer, 0, used);
    used = 0;
  }
}
