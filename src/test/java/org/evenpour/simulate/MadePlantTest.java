package org.evenpour.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.apache.commons.csv.CSVRecord;
import org.evenpour.intake.EventsReader;
import org.evenpour.intake.LogReader;
import org.evenpour.intake.ProfileReader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.SetAside;
import org.evenpour.simulate.MadeSetting.Rhythm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MadePlantTest {
  private static final List<String> NAMES =
      List.of("casting-log.csv", "events.csv", "profile.yaml", "truth.csv", "effects.csv");

  @TempDir Path folder;

  private static List<MadeSimulation> some() {
    return some(Condition.IDEAL);
  }

  private static List<MadeSimulation> some(Condition condition) {
    return LongStream.rangeClosed(1, 60)
        .mapToObj(seed -> MadeSimulation.of(seed, null, condition))
        .toList();
  }

  @Test
  void writesTheSameBytesForTheSameSeedAndOthersForAnother() throws IOException {
    for (int i = 0; i < 3; i++) {
      MadeSimulation.write(folder.resolve("run" + i), i == 2 ? 8 : 7, null, Condition.IDEAL);
    }
    for (String name : NAMES) {
      assertThat(folder.resolve("run1").resolve(name))
          .hasSameBinaryContentAs(folder.resolve("run0").resolve(name));
    }
    assertThat(SimulatedFiles.bytes(folder.resolve("run2/casting-log.csv")))
        .isNotEqualTo(SimulatedFiles.bytes(folder.resolve("run0/casting-log.csv")));
  }

  @Test
  void theIntakeTakesEveryRow() throws Exception {
    for (int seed = 1; seed <= 6; seed++) {
      Path made = folder.resolve("seed" + seed);
      Condition condition = seed % 2 == 0 ? Condition.IDEAL : Condition.ORDINARY;
      Simulation.Summary summary = MadeSimulation.write(made, seed, null, condition);
      Profiles profiles = ProfileReader.read(made.resolve("profile.yaml"));
      var record =
          LogReader.read(
              List.of(made.resolve("casting-log.csv")),
              profiles,
              EventsReader.read(made.resolve("events.csv"), profiles),
              null,
              null,
              SetAside.nowhere(),
              (done, total) -> {});
      assertThat(record.rowsSetAside()).isZero();
      assertThat(record.wheels().get(0).rows()).isEqualTo(summary.anodes());
      assertThat(record.warnings()).isEmpty();
    }
  }

  /** The definition: with and without a change of one unit that lasts to the end of the log. */
  @Test
  void effectsAreWhatALastingChangeOfOneUnitDoes() {
    for (MadeSimulation made : some()) {
      MadePlant plant = made.wheel().plant();
      MadeWheel.Values without = made.wheel().values(List.of());
      for (int i = 0; i < plant.settings().size(); i++) {
        MadeFault change =
            new MadeFault("", "", MadeFault.Place.WHEEL, 50, plant.turns() - 1, 0, i, 1, 0, 0);
        MadeWheel.Values with = made.wheel().values(List.of(change));
        int from = 50 + plant.settings().get(i).lagTurns();
        String name = plant.settings().get(i).name();
        for (int t = 0; t < plant.turns(); t++) {
          assertThat(with.kg()[t][3] - without.kg()[t][3])
              .isCloseTo(t < from ? 0 : effect(plant, name, "mass"), within(1e-9));
          assertThat(with.mm()[t][3] - without.mm()[t][3])
              .isCloseTo(t < from ? 0 : effect(plant, name, "thickness"), within(1e-9));
        }
      }
    }
  }

  private static double effect(MadePlant plant, String setting, String characteristic) {
    return plant.effects().stream()
        .filter(e -> e.setting().equals(setting) && e.characteristic().equals(characteristic))
        .findFirst()
        .orElseThrow()
        .size();
  }

  @ParameterizedTest
  @EnumSource
  void theLogShowsWhatTheWheelDidToWithinRounding(Condition condition) throws IOException {
    for (int seed = 1; seed <= 4; seed++) {
      MadeSimulation.write(folder, seed, null, condition);
      MadeSimulation made = MadeSimulation.of(seed, null, condition);
      double halfKg = made.imperfections().massStepKg() / 2;
      double halfMm = condition == Condition.IDEAL ? 0.005 : 0.05;
      MadePlant plant = made.wheel().plant();
      MadeWheel.Values values = made.wheel().values(made.faults());
      List<CSVRecord> rows = SimulatedFiles.table(folder.resolve("casting-log.csv"));
      for (CSVRecord row : rows) {
        int t = Integer.parseInt(row.get("turn")) - plant.firstTurn();
        int m = Integer.parseInt(row.get("mold")) - 1;
        if (!row.get("mass_kg").isEmpty()) {
          assertThat(Double.parseDouble(row.get("mass_kg")))
              .isCloseTo(values.kg()[t][m], within(halfKg + 1e-4));
        }
        List<String> points =
            row.toMap().entrySet().stream()
                .filter(cell -> cell.getKey().startsWith("thickness_"))
                .map(cell -> cell.getValue())
                .toList();
        if (!points.contains("")) {
          double mm = points.stream().mapToDouble(Double::parseDouble).average().orElseThrow();
          assertThat(mm).isCloseTo(values.mm()[t][m], within(halfMm + 1e-5));
        }
        for (int i = 0; i < plant.settings().size(); i++) {
          MadeSetting setting = plant.settings().get(i);
          String cell = row.get(setting.name());
          if (!cell.isEmpty()) {
            // Half a step; a step over the square root of 12 is less than a tenth of the spread.
            assertThat(Double.parseDouble(cell))
                .isCloseTo(values.settings()[i][t][m], within(0.101 * setting.sd()));
          }
        }
      }
    }
  }

  /** Each part of the stated sigma by itself: over 60 plants their own spread averages out. */
  @ParameterizedTest
  @EnumSource
  void statesTheSigmasThatTheWheelHas(Condition condition) {
    double pours = 0;
    double turns = 0;
    List<MadeSimulation> all = some(condition);
    for (MadeSimulation made : all) {
      MadePlant plant = made.wheel().plant();
      double[][] kg = made.wheel().values(List.of()).kg();
      double[] byTurn =
          IntStream.range(0, plant.turns())
              .mapToDouble(t -> java.util.Arrays.stream(kg[t]).average().orElseThrow())
              .toArray();
      double mean = java.util.Arrays.stream(byTurn).average().orElseThrow();
      double squares = 0;
      for (double one : byTurn) {
        squares += (one - mean) * (one - mean);
      }
      MadeFault.Place wheel = MadeFault.Place.WHEEL;
      turns += Math.sqrt(squares / (plant.turns() - 1)) / plant.sigma(wheel, true) / all.size();
      MadeFault.Place mold = new MadeFault.Place(0, 1, -1);
      pours += successive(kg, byTurn, plant) / plant.sigma(mold, true) / all.size();
    }
    assertThat(turns).isBetween(0.85, 1.05);
    assertThat(pours).isBetween(0.9, 1.1);
  }

  /** S.d. of the molds' residuals about turn and mold. */
  private static double successive(double[][] kg, double[] byTurn, MadePlant plant) {
    double squares = 0;
    for (int m = 0; m < plant.molds(); m++) {
      double mean = 0;
      for (int t = 0; t < plant.turns(); t++) {
        mean += (kg[t][m] - byTurn[t]) / plant.turns();
      }
      for (int t = 0; t < plant.turns(); t++) {
        squares += Math.pow(kg[t][m] - byTurn[t] - mean, 2);
      }
    }
    return Math.sqrt(squares / ((plant.turns() - 1.0) * (plant.molds() - 1.0)));
  }

  @Test
  void aTwinFollowsAtItsCorrelationAndDoesNothing() {
    int twins = 0;
    for (MadeSimulation made : some()) {
      MadePlant plant = made.wheel().plant();
      for (int i = 0; i < plant.settings().size(); i++) {
        MadeSetting setting = plant.settings().get(i);
        if (setting.isFollower()) {
          twins++;
          assertThat(setting.acts()).isFalse();
          assertThat(plant.settings().get(setting.leader()).acts()).isTrue();
          double[][][] x = made.wheel().values(made.faults()).settings();
          assertThat(Math.abs(correlation(x[i], x[setting.leader()]))).isGreaterThan(0.7);
        }
      }
    }
    assertThat(twins).isBetween(20, 40);
  }

  private static double correlation(double[][] x, double[][] y) {
    double n = 0;
    double sx = 0;
    double sy = 0;
    for (int t = 0; t < x.length; t++) {
      for (int m = 0; m < x[t].length; m++) {
        n++;
        sx += x[t][m];
        sy += y[t][m];
      }
    }
    double xx = 0;
    double yy = 0;
    double xy = 0;
    for (int t = 0; t < x.length; t++) {
      for (int m = 0; m < x[t].length; m++) {
        double dx = x[t][m] - sx / n;
        double dy = y[t][m] - sy / n;
        xx += dx * dx;
        yy += dy * dy;
        xy += dx * dy;
      }
    }
    return xy / Math.sqrt(xx * yy);
  }

  @Test
  void placesFaultsAfterTheFirstThirdAndApart() {
    for (MadeSimulation made : some()) {
      MadePlant plant = made.wheel().plant();
      Set<Integer> molds = new HashSet<>();
      Set<Integer> sharedTurns = new HashSet<>();
      Set<List<Integer>> settingTurns = new HashSet<>();
      long faults = made.faults().stream().filter(f -> !f.name().equals("decoy-move")).count();
      assertThat(faults).isBetween(2L, 7L);
      for (MadeFault fault : made.faults()) {
        assertThat(fault.firstTurn()).isGreaterThan(plant.turns() / 3);
        assertThat(fault.lastTurn() - fault.firstTurn()).isGreaterThanOrEqualTo(8);
        assertThat(fault.lastTurn()).isLessThan(plant.turns());
        for (int t = fault.firstTurn(); t <= fault.lastTurn(); t++) {
          assertThat(fault.setting() < 0 || settingTurns.add(List.of(fault.setting(), t))).isTrue();
        }
        if (fault.name().equals("decoy-move")) {
          assertThat(plant.settings().get(fault.setting()).acts()).isFalse();
          continue;
        }
        for (int m = 0; m < fault.place().molds(); m++) {
          assertThat(molds.add(fault.place().firstMold() + m)).isTrue();
        }
        if (fault.place().isShared()) {
          for (int t = fault.firstTurn(); t <= fault.lastTurn(); t++) {
            assertThat(sharedTurns.add(t)).isTrue();
          }
        }
      }
    }
  }

  @Test
  void theTruthIsAsLargeAsAsked() {
    for (long seed = 1; seed <= 40; seed++) {
      MadeSimulation made = MadeSimulation.of(seed, 3.0, Condition.IDEAL);
      for (MadeFault fault : made.faults()) {
        List<MadeTruth> truths = MadeTruth.of(made.wheel(), List.of(fault));
        double largest = truths.stream().mapToDouble(MadeTruth::sizeSigma).max().orElse(0);
        if (fault.name().equals("decoy-move")) {
          assertThat(truths).isEmpty();
        } else if (fault.rampTurns() > 0) {
          assertThat(largest).isBetween(1.5, 3.0);
        } else {
          assertThat(largest).as("seed %d, %s", seed, fault).isBetween(2.9, 3.1);
        }
      }
    }
  }

  @Test
  void drawsOneOfEverythingInSixtyPlants() {
    Set<String> names = new HashSet<>();
    Set<Rhythm> rhythms = new HashSet<>();
    Set<MadePlant.Sides> sides = new HashSet<>();
    Set<Integer> lags = new HashSet<>();
    for (MadeSimulation made : some()) {
      made.faults().forEach(fault -> names.add(fault.name()));
      sides.add(made.wheel().plant().sides());
      for (MadeSetting setting : made.wheel().plant().settings()) {
        rhythms.add(setting.rhythm());
        lags.add(setting.lagTurns());
      }
    }
    assertThat(names)
        .contains(
            "setting-step-mold",
            "setting-step-molds",
            "setting-step-side",
            "setting-step-wheel",
            "setting-ramp-mold",
            "setting-ramp-wheel",
            "unrecorded-mold",
            "unrecorded-side",
            "unrecorded-wheel",
            "unrecorded-mold-beside-decoy",
            "unrecorded-wheel-beside-decoy",
            "mold-change",
            "decoy-move");
    assertThat(rhythms).containsExactlyInAnyOrder(Rhythm.values());
    assertThat(sides).containsExactlyInAnyOrder(MadePlant.Sides.values());
    assertThat(lags).containsExactlyInAnyOrder(0, 1, 2, 3);
  }

  @Test
  void refusesASizeThatNoFaultCanHave() {
    assertThatThrownBy(() -> MadeSimulation.write(folder.resolve("no"), 1, -1.0, Condition.IDEAL))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("-1");
    assertThat(folder.resolve("no")).doesNotExist();
  }
}
