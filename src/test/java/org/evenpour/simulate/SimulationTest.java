package org.evenpour.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SimulationTest {
  private static final Scenario SAMPLE =
      Scenario.week(20260307).withFaults(List.of(Fault.values())).withCondition(Condition.ORDINARY);
  private static final List<String> NAMES =
      List.of(
          "casting-log.csv", "events.csv", "profile.yaml", "truth.csv", "gauge.csv", "effects.csv");

  @TempDir Path directory;

  /** The sample is part of the source: this holds under every locale, zone and platform. */
  @Test
  void writesTheSampleByteForByte() throws IOException {
    Simulation.write(directory, SAMPLE);
    for (String name : NAMES) {
      assertThat(directory.resolve(name))
          .hasSameBinaryContentAs(Path.of("samples", "tordilla-week", name));
    }
  }

  @Test
  void writesAnotherLogForAnotherSeed() throws IOException {
    Simulation.write(directory.resolve("a"), Scenario.week(1));
    Simulation.write(directory.resolve("b"), Scenario.week(2));
    assertThat(SimulatedFiles.bytes(directory.resolve("a/casting-log.csv")))
        .isNotEqualTo(SimulatedFiles.bytes(directory.resolve("b/casting-log.csv")));
  }

  @Test
  void streamsTheRowsThatItWrites() throws IOException {
    Simulation.write(directory, SAMPLE);
    List<String> lines = new ArrayList<>(List.of(Simulation.header()));
    Simulation.rows(SAMPLE).forEachRemaining(row -> lines.add(row.line()));
    assertThat(String.join("\n", lines) + "\n")
        .isEqualTo(Files.readString(directory.resolve("casting-log.csv"), StandardCharsets.UTF_8));
  }

  /** 300 t in anodes of 390 kg are 769 a charge; 21 hours apart, a week casts eight charges. */
  @Test
  void castsEightChargesOfThreeHundredTonnesAWeek() throws IOException {
    Simulation.Summary summary = Simulation.write(directory, SAMPLE);
    assertThat(summary.charges()).isEqualTo(8);
    assertThat(summary.anodes()).isBetween(8 * 740, 8 * 793);
    assertThat(Files.size(directory.resolve("casting-log.csv"))).isLessThan(900_000);
  }

  @Test
  void replacesAnEarlierRunAndLeavesNothingElse() throws IOException {
    Files.writeString(directory.resolve("casting-log.csv"), "old");
    Simulation.write(directory, Scenario.week(3));
    try (Stream<Path> files = Files.list(directory)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(NAMES);
    }
    assertThat(directory.resolve("casting-log.csv")).content().startsWith("cast_at,wheel,");
  }

  @Test
  void refusesMoreFaultsThanThereIsRoomForAndWritesNothing() {
    Path out = directory.resolve("out");
    Scenario crowded =
        Scenario.week(1).withDays(1).withFaults(Collections.nCopies(5, Fault.LATE_CUT_OFF));
    assertThatThrownBy(() -> Simulation.write(out, crowded))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("simulate more days");
    Scenario full = Scenario.week(1).withFaults(Collections.nCopies(27, Fault.THIN_WASH));
    assertThatThrownBy(() -> Simulation.write(out, full))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("take more molds");
    assertThat(out).doesNotExist();
  }

  @Test
  void castsMoldAfterMoldAndNeverTheSameOneTwiceInATurn() throws IOException {
    SimulatedFiles files = SimulatedFiles.of(directory, SAMPLE);
    OffsetDateTime last = OffsetDateTime.MIN;
    int lastPlace = -1;
    for (SimulatedFiles.Anode anode : files.anodes()) {
      OffsetDateTime castAt = OffsetDateTime.parse(anode.row().get("cast_at"));
      int place = anode.turn() * 26 + anode.mold() - 1;
      assertThat(castAt).isAfter(last);
      assertThat(place).isGreaterThan(lastPlace);
      assertThat(anode.mold()).isBetween(1, 26);
      assertThat(anode.side()).isEqualTo(anode.mold() % 2 == 1 ? "A" : "B");
      last = castAt;
      lastPlace = place;
    }
  }

  /** What an ordinary plant leaves out is told by ConditionTest. */
  @Test
  void fillsEveryCellButTheDefectOfAnAcceptedAnode() throws IOException {
    Scenario ideal = SAMPLE.withCondition(Condition.IDEAL);
    for (SimulatedFiles.Anode anode : SimulatedFiles.of(directory, ideal).anodes()) {
      CSVRecord row = anode.row();
      assertThat(row.isConsistent()).isTrue();
      assertThat(row.toList().subList(0, row.size() - 1)).doesNotContain("");
      assertThat(row.get("defect").isEmpty()).isEqualTo(row.get("disposition").equals("accepted"));
    }
  }

  /** The tolerances that profile.yaml states, judged on what the log shows. */
  @Test
  void rejectsByTheProfilesTolerances() throws IOException {
    SimulatedFiles files = SimulatedFiles.of(directory, SAMPLE);
    assertThat(directory.resolve("profile.yaml"))
        .content()
        .contains("mass: {unit: kg, lower: 385, target: 390, upper: 395")
        .contains("thickness: {unit: mm, lower: 43.2, target: 44.7, upper: 46.2")
        .contains("wedge: {unit: mm, upper: 2.5}");
    for (SimulatedFiles.Anode anode : files.anodes()) {
      boolean isOut =
          anode.mass() < 385
              || anode.mass() > 395
              || anode.thickness() < 43.2 - 1e-9
              || anode.thickness() > 46.2 + 1e-9
              || anode.wedge() > 2.5 + 1e-9;
      assertThat(Set.of("mass", "thickness", "wedge").contains(anode.row().get("defect")))
          .as("turn %d mold %d", anode.turn(), anode.mold())
          .isEqualTo(isOut);
    }
    assertThat(files.summary().rejected() / (double) files.summary().anodes())
        .isBetween(0.01, 0.05);
  }

  @Test
  void writesEventsInOrderAndWithinTheLog() throws IOException {
    SimulatedFiles files = SimulatedFiles.of(directory, SAMPLE);
    OffsetDateTime last = OffsetDateTime.parse("2026-03-02T05:30:00-03:00");
    Set<String> kinds = new HashSet<>();
    for (CSVRecord event : files.events()) {
      OffsetDateTime at = OffsetDateTime.parse(event.get("at"));
      assertThat(at).isAfterOrEqualTo(last).isBefore(OffsetDateTime.parse("2026-03-09T12:00:00Z"));
      last = at;
      kinds.add(event.get("event"));
    }
    assertThat(kinds)
        .containsExactlyInAnyOrder(
            "wash_batch", "wheel_stopped", "nozzle_cleaned", "mold_changed", "scale_checked");
  }

  @Test
  void changesTheSerialExactlyWhereTheMoldIsChanged() throws IOException {
    SimulatedFiles files = SimulatedFiles.of(directory, SAMPLE);
    CSVRecord event =
        files.events().stream()
            .filter(row -> row.get("event").equals("mold_changed"))
            .findFirst()
            .orElseThrow();
    OffsetDateTime changedAt = OffsetDateTime.parse(event.get("at"));
    for (SimulatedFiles.Anode anode : files.anodes()) {
      boolean isNew =
          anode.mold() == Integer.parseInt(event.get("mold"))
              && OffsetDateTime.parse(anode.row().get("cast_at")).isAfter(changedAt);
      assertThat(anode.row().get("mold_serial"))
          .isEqualTo("K" + ((isNew ? 400 : 300) + anode.mold()));
    }
  }

  @Test
  void runsOtherWheels() throws IOException {
    Scenario wide = Scenario.week(5).withMolds(40).withSides(1).withFault(Fault.LADLE_SCALE_BIAS);
    SimulatedFiles files = SimulatedFiles.of(directory, wide);
    assertThat(files.anodes()).extracting(SimulatedFiles.Anode::mold).contains(40);
    assertThat(files.anodes()).extracting(SimulatedFiles.Anode::side).containsOnly("A");
  }
}
