package org.evenpour.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.apache.commons.csv.CSVRecord;
import org.evenpour.simulate.SimulatedFiles.Anode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An ordinary plant beside the same one in ideal condition. */
class ConditionTest {
  @TempDir Path directory;

  private SimulatedFiles files(Scenario scenario) throws IOException {
    return SimulatedFiles.of(directory.resolve(scenario.condition().name()), scenario);
  }

  /** 24 days of a sound wheel: some 21,000 anodes. */
  private static Scenario ordinary() {
    return Scenario.week(4).withDays(24).withCondition(Condition.ORDINARY);
  }

  @Test
  void theScaleShowsHalvesOfAKilogramAndTheGaugeTenthsOfAMillimeter() throws IOException {
    for (Anode anode : files(ordinary()).anodes()) {
      assertThat(anode.row().get("mass_kg")).matches("|\\d+\\.[05]");
      assertThat(anode.row().get("thickness_center_mm")).matches("|\\d+\\.\\d");
    }
  }

  /** Four standard errors of a share. */
  @Test
  void someWeightsAndMeasuresAreMissingAndAllElseIsThere() throws IOException {
    List<Anode> anodes = files(ordinary()).anodes();
    double weightless = share(anodes, Anode::mass);
    double unmeasured = share(anodes, Anode::thickness);
    assertThat(anodes).noneMatch(a -> Double.isNaN(a.mass()) && Double.isNaN(a.thickness()));
    assertThat(weightless).isCloseTo(0.005, within(4 * Math.sqrt(0.005 / anodes.size())));
    assertThat(unmeasured).isCloseTo(0.02, within(4 * Math.sqrt(0.02 / anodes.size())));
    for (Anode anode : anodes) {
      for (Map.Entry<String, String> cell : anode.row().toMap().entrySet()) {
        boolean mayBeMissing =
            cell.getKey().startsWith("mass_kg")
                || cell.getKey().startsWith("thickness_")
                || cell.getKey().equals("defect");
        assertThat(!cell.getValue().isEmpty() || mayBeMissing).as(cell.getKey()).isTrue();
      }
    }
  }

  private static double share(List<Anode> anodes, ToDoubleFunction<Anode> value) {
    return anodes.stream().filter(a -> Double.isNaN(value.applyAsDouble(a))).count()
        / (double) anodes.size();
  }

  /** Third and fourth moments within turns: in ideal condition 0 and 3. */
  @Test
  void poursAreSkewedToTheHeavySideAndHaveHeavyTails() throws IOException {
    List<Anode> real = files(ordinary()).anodes();
    List<Anode> ideal = files(ordinary().withCondition(Condition.IDEAL)).anodes();
    assertThat(moment(real, 3)).isGreaterThan(0.12);
    assertThat(moment(ideal, 3)).isCloseTo(0, within(0.07));
    // Start-up turns scatter more widely in either condition.
    assertThat(moment(real, 4)).isGreaterThan(moment(ideal, 4) + 0.3);
    assertThat(moment(ideal, 4)).isBetween(2.9, 3.5);
  }

  /** Of mass in its own turn, in standard units. */
  private static double moment(List<Anode> anodes, int power) {
    Map<Integer, List<Anode>> turns = new HashMap<>();
    anodes.forEach(a -> turns.computeIfAbsent(a.turn(), t -> new ArrayList<>()).add(a));
    List<Double> all = new ArrayList<>();
    for (List<Anode> turn : turns.values()) {
      double[] kg = turn.stream().mapToDouble(Anode::mass).filter(x -> !Double.isNaN(x)).toArray();
      double mean = java.util.Arrays.stream(kg).average().orElse(0);
      for (double x : kg) {
        all.add(x - mean);
      }
    }
    double variance = all.stream().mapToDouble(x -> x * x).average().orElseThrow();
    return all.stream()
        .mapToDouble(x -> Math.pow(x / Math.sqrt(variance), power))
        .average()
        .orElseThrow();
  }

  /**
   * Half a pour sigma in 400 turns; faults aside, the two logs differ by nothing else that lasts.
   */
  @Test
  void moldsWearThinner() {
    Wheel worn = Wheel.of(ordinary());
    Wheel kept = Wheel.of(ordinary().withCondition(Condition.IDEAL));
    double[] early = new double[3];
    double[] late = new double[3];
    int turns = worn.schedule().turns();
    while (worn.hasNext()) {
      Pour one = worn.next().pour();
      Pour other = kept.next().pour();
      // What the pour itself has more of passes on through mass.
      double thinner =
          one.thickness().meanMm()
              - other.thickness().meanMm()
              - (one.massKg() - other.massKg()) / Plant.MASS_PER_MM_KG;
      double[] part = one.turn() <= turns / 2 ? early : late;
      part[0]++;
      part[1] += thinner;
      part[2] += one.turn();
    }
    double perTurn =
        (late[1] / late[0] - early[1] / early[0]) / (late[2] / late[0] - early[2] / early[0]);
    // ±30 % between 26 molds: two standard errors of their mean.
    assertThat(perTurn).isBetween(-1.12 * 0.5 * 0.2 / 400, -0.88 * 0.5 * 0.2 / 400);
  }

  @Test
  void faultsAndSettingsAreThoseOfTheIdealPlant() throws IOException {
    Scenario ideal = Scenario.week(9).withFaults(List.of(Fault.values()));
    SimulatedFiles one = files(ideal);
    SimulatedFiles other = files(ideal.withCondition(Condition.ORDINARY));
    assertThat(other.events().stream().map(CSVRecord::toList))
        .isEqualTo(one.events().stream().map(CSVRecord::toList).toList());
    assertThat(other.truth()).hasSameSizeAs(one.truth());
    for (int i = 0; i < one.anodes().size(); i++) {
      CSVRecord before = one.anodes().get(i).row();
      CSVRecord after = other.anodes().get(i).row();
      for (String same : List.of("cast_at", "turn", "mold", "melt_temp_c", "wash_volume_ml")) {
        assertThat(after.get(same)).isEqualTo(before.get(same));
      }
    }
  }

  @Test
  void anAnodeThatIsFarOffIsWeighedAndMeasured() {
    for (int seed = 1; seed <= 200; seed++) {
      Scenario bad = Scenario.week(seed).withDays(1).withFault(Fault.SINGLE_BAD_POUR);
      Wheel wheel = Wheel.of(bad.withCondition(Condition.ORDINARY));
      PlantedFault planted = wheel.faults().get(0);
      while (wheel.hasNext()) {
        Pour pour = wheel.next().pour();
        if (pour.turn() == planted.firstTurn() && pour.mold() == planted.firstMold() + 1) {
          assertThat(pour.reading().massKg()).isNotNaN();
          assertThat(pour.reading().thickness().meanMm()).isNotNaN();
        }
      }
    }
  }

  @Test
  void madePlantsDifferInTheirImperfections() {
    int left = 0;
    int toHalf = 0;
    int worn = 0;
    for (int seed = 1; seed <= 100; seed++) {
      MadeSimulation made = MadeSimulation.of(seed, null, Condition.ORDINARY);
      Imperfections its = made.imperfections();
      left += its.pours().skewness() < 0 ? 1 : 0;
      toHalf += its.massStepKg() == 0.5 ? 1 : 0;
      worn += its.wear() > 0 ? 1 : 0;
      assertThat(its.massStepKg()).isLessThanOrEqualTo(made.wheel().plant().mass().pour());
      assertThat(MadeSimulation.of(seed, null, Condition.IDEAL).faults()).isEqualTo(made.faults());
    }
    assertThat(left).isBetween(15, 50);
    assertThat(toHalf).isBetween(40, 75);
    assertThat(worn).isBetween(55, 85);
  }
}
