package org.evenpour.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.CastingRecord;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Setting;
import org.evenpour.casting.WheelRecord;

/** Logs written for a test, and what was made of them. */
final class LogText {
  private LogText() {}

  static Path write(Path folder, String name, String text) {
    try {
      return Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Reads one log of these lines. */
  static CastingRecord read(Path folder, String profile, String... lines) throws IntakeException {
    return read(profile, write(folder, "june.csv", String.join("\n", lines) + "\n"));
  }

  static CastingRecord read(String profile, Path... logs) throws IntakeException {
    return LogReader.read(
        List.of(logs),
        ProfileReader.read("wheel.yaml", profile),
        List.of(),
        null,
        null,
        SetAside.nowhere(),
        Progress.NONE);
  }

  /** The only wheel. */
  static WheelRecord wheel(CastingRecord record) {
    if (record.wheels().size() != 1) {
      throw new AssertionError("wheels: " + record.wheels().size());
    }
    return record.wheels().get(0);
  }

  static double[] values(WheelRecord wheel, String characteristic) {
    return wheel.characteristics().stream()
        .filter(one -> one.name().equals(characteristic))
        .map(Characteristic::values)
        .findFirst()
        .orElseThrow()
        .toArray();
  }

  static Setting setting(WheelRecord wheel, String name) {
    return wheel.settings().stream()
        .filter(one -> one.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  static List<String> characteristics(WheelRecord wheel) {
    return wheel.characteristics().stream().map(Characteristic::name).toList();
  }

  /** The molds' labels row by row. */
  static List<String> molds(WheelRecord wheel) {
    List<String> molds = new ArrayList<>();
    for (int row = 0; row < wheel.rows(); row++) {
      molds.add(wheel.molds().name(wheel.mold().get(row)));
    }
    return molds;
  }

  static List<String> reasons(CastingRecord record) {
    return record.setAside().stream().map(row -> row.reason().toString()).toList();
  }
}
