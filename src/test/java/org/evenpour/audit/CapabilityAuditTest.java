package org.evenpour.audit;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Estimate;
import org.evenpour.findings.CapabilityInFull.Group;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Intervals of capability in a whole audit, where turns resemble each other and where not. */
class CapabilityAuditTest {
  private static final int MOLDS = 10;

  @TempDir Path folder;

  /** Ten molds without offsets on two ladle sides; pours of s.d. 1. */
  private CharacteristicReport audit(int turns, double turnSd, double phi, long seed)
      throws Exception {
    Random random = new Random(seed);
    StringBuilder log = new StringBuilder("cast_at,turn,mold,ladle,crew,mass_kg\n");
    double level = random.nextGaussian();
    for (int t = 0; t < turns; t++) {
      for (int m = 0; m < MOLDS; m++) {
        Instant at = Instant.parse("2026-03-02T06:00:00Z").plusSeconds(300L * t + 30L * m);
        log.append(
            String.format(
                Locale.ROOT,
                "%s,%d,%d,%s,%s,%.9f\n",
                at,
                t + 1,
                m + 1,
                m % 2 == 0 ? "A" : "B",
                t / 20 % 2 == 0 ? "red" : "blue",
                388 + turnSd * level + random.nextGaussian()));
      }
      level = phi * level + Math.sqrt(1 - phi * phi) * random.nextGaussian();
    }
    Path file = Files.writeString(folder.resolve("log.csv"), log.toString());
    Profiles profiles =
        ProfileReader.read(
            Files.writeString(
                folder.resolve("p.yaml"),
                "characteristics:\n  mass: {unit: kg, lower: 382, target: 388, upper: 394}\n"));
    return Audit.run(
            LogReader.read(
                List.of(file), profiles, List.of(), null, null, SetAside.nowhere(), Progress.NONE))
        .characteristics()
        .get(0);
  }

  private static CapabilityReport capability(CharacteristicReport report) {
    return requireNonNull(report.overall().capability());
  }

  private static double width(@Nullable Group group) {
    Estimate ppk = requireNonNull(requireNonNull(group).ppk());
    return relative(ppk);
  }

  private static double relative(@Nullable Estimate estimate) {
    Estimate e = requireNonNull(estimate);
    return (requireNonNull(e.high()) - requireNonNull(e.low())) / e.value();
  }

  /**
   * Independent values: Bissell's interval (1990) and that of χ² to within what estimating the turn
   * effects adds, some percent.
   */
  @Test
  void independentPoursHaveTheUsualIntervals() throws Exception {
    CharacteristicReport report = audit(200, 0, 0, 1);
    Estimate ppk = requireNonNull(capability(report).ppk());
    double n = report.overall().count();
    double bissell = 2 * 1.96 * Math.sqrt(1 / (9 * n) + ppk.value() * ppk.value() / (2 * (n - 1)));
    assertThat(relative(ppk) * ppk.value() / bissell).isBetween(0.97, 1.1);
    assertThat(relative(capability(report).pp()) / (2 * 1.96 / Math.sqrt(2 * n)))
        .isBetween(0.97, 1.1);
  }

  /**
   * Turns as large as pours, φ = 0.7: all values of a turn speak with one voice. By the formula of
   * {@link org.evenpour.stats.Resemblance} Ppk's interval is then 3.3 times as wide for 10 molds.
   */
  @Test
  void turnsThatResembleEachOtherWidenEveryInterval() throws Exception {
    CharacteristicReport alone = audit(300, 0, 0, 2);
    CharacteristicReport alike = audit(300, 1, 0.7, 2);
    CapabilityReport narrow = capability(alone);
    CapabilityReport wide = capability(alike);
    assertThat(relative(wide.ppk()) / relative(narrow.ppk())).isBetween(2.5, 4.5);
    assertThat(relative(wide.pp()) / relative(narrow.pp())).isBetween(2.0, 4.0);
    assertThat(relative(wide.cpm()) / relative(narrow.cpm())).isBetween(2.0, 4.5);
    assertThat(relative(wide.cpk()) / relative(narrow.cpk())).isGreaterThan(1.3);
    for (int m = 0; m < MOLDS; m++) {
      assertThat(relative(requireNonNull(alike.molds().get(m).capability()).ppk()))
          .isGreaterThan(relative(requireNonNull(alone.molds().get(m).capability()).ppk()));
    }
    for (String name : List.of("A", "B", "red", "blue")) {
      assertThat(width(group(alike, name)) / width(group(alone, name))).isGreaterThan(1.7);
    }
    // the indices themselves are what they were: mean and s.d. of the values
    Estimate ppk = requireNonNull(wide.ppk());
    double mean = alike.overall().mean();
    double sd = requireNonNull(alike.overall().sd());
    assertThat(ppk.value()).isEqualTo(Math.min(394 - mean, mean - 382) / 3 / sd);
  }

  private static Group group(CharacteristicReport report, String name) {
    return report.inFull().groups().stream()
        .filter(group -> group.name().equals(name))
        .findFirst()
        .orElseThrow();
  }
}
