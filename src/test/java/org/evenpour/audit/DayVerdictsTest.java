package org.evenpour.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.evenpour.casting.CastingRecord;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.findings.MoldVerdict.Reason;
import org.evenpour.findings.MoldVerdict.Verdict;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.Progress;
import org.evenpour.intake.SetAside;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Verdicts on molds by a day of the sample week alone, against what the whole week says of them.
 */
class DayVerdictsTest {
  /** Their cavities are off, says the whole week; what the plant knows of no mold besides. */
  private static final Set<String> TO_LEVEL = Set.of("1", "8", "11", "24", "26");

  @TempDir Path folder;

  private AuditReport audited(List<String> lines, Profiles profiles) throws Exception {
    Path log = folder.resolve("day.csv");
    Files.write(log, lines);
    try (SetAside nowhere = SetAside.nowhere()) {
      CastingRecord record =
          LogReader.read(
              List.of(log),
              profiles,
              EventsReader.read(Sample.TORDILLA.resolve("events.csv"), profiles),
              null,
              null,
              nowhere,
              Progress.NONE);
      return Audit.run(record);
    }
  }

  @Test
  void aDayActsOnNoMoldThatTheWeekKeeps() throws Exception {
    List<String> all = Files.readAllLines(Sample.TORDILLA.resolve("casting-log.csv"));
    Map<String, List<String>> days = new TreeMap<>();
    for (String line : all.subList(1, all.size())) {
      days.computeIfAbsent(line.substring(0, 10), day -> new ArrayList<>(List.of(all.get(0))))
          .add(line);
    }
    assertThat(days).hasSize(7);
    Profiles profiles = ProfileReader.read(Sample.TORDILLA.resolve("profile.yaml"));
    Set<String> told = new TreeSet<>();
    boolean isSettingNamed = false;
    for (List<String> day : days.values()) {
      for (MoldVerdict one : audited(day, profiles).verdicts()) {
        // A day is too short to judge wear by, whatever line runs through it.
        assertThat(one.tellsWear()).isFalse();
        assertThat(one.reason()).isNotIn(Reason.WEARS, Reason.TREND);
        assertThat(one.verdict()).isNotEqualTo(Verdict.REPLACE);
        if (one.verdict() == Verdict.LEVEL) {
          assertThat(TO_LEVEL).contains(one.mold());
          told.add(one.mold());
        }
        isSettingNamed |= one.reason() == Reason.SETTING;
      }
    }
    // Some days show the worst of them all the same.
    assertThat(told).contains("11", "24", "26");
    assertThat(isSettingNamed).isTrue();
  }

  @Test
  void withoutThicknessLevelAndWearAreNotJudged() throws Exception {
    List<String> bare = new ArrayList<>();
    for (String line : Files.readAllLines(Sample.TORDILLA.resolve("casting-log.csv"))) {
      String[] cells = line.split(",", -1);
      bare.add(String.join(",", cells[0], cells[3], cells[4], cells[9]));
    }
    Path profile = folder.resolve("profile.yaml");
    Files.writeString(
        profile, "characteristics:\n  mass: {unit: kg, lower: 380, target: 390, upper: 400}\n");
    AuditReport report = audited(bare, ProfileReader.read(profile));
    assertThat(report.verdicts()).hasSize(26);
    assertThat(report.verdicts())
        .extracting(MoldVerdict::reason)
        .contains(Reason.MASS_ALONE)
        .doesNotContain(Reason.SOUND, Reason.SCATTERS, Reason.WEARS);
  }
}
