package org.evenpour.simulate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.evenpour.simulate.SimulatedFiles.Anode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;

class TruthTest {
  private static final long[] SEEDS = {11, 12};

  @TempDir Path directory;

  /**
   * What the truth says is in the recorded figures too: during the episode against before it, and
   * against the turn's other molds or the other ladle side where there are any.
   */
  @ParameterizedTest
  @EnumSource(
      value = Fault.class,
      mode = Mode.EXCLUDE,
      names = {"IDLE_SETTING_STEP", "IDLE_EVENT", "SET_POINT_MOVE"})
  void theShiftIsInTheLog(Fault fault) throws IOException {
    for (long seed : SEEDS) {
      SimulatedFiles files = SimulatedFiles.of(directory, Scenario.week(seed).withFault(fault));
      assertThat(files.truth()).as("seed %d", seed).isNotEmpty();
      Set<Integer> shifted =
          files.truth().stream()
              .filter(row -> !row.get("mold").isEmpty())
              .map(row -> Integer.parseInt(row.get("mold")))
              .collect(Collectors.toSet());
      for (CSVRecord row : files.truth()) {
        double size = Double.parseDouble(row.get("size"));
        if (row.get("characteristic").equals(PlantedShift.REJECTS)) {
          assertMoreAreRejected(files.anodes(), row);
        } else if (row.get("direction").equals("spread")) {
          assertThat(addedSpread(files.anodes(), row)).isBetween(0.6 * size, 1.4 * size);
        } else {
          assertThat(observed(files.anodes(), shifted, row))
              .as("seed %d, %s", seed, row)
              .isBetween(size - tolerance(row), size + tolerance(row));
          assertThat(row.get("direction")).isEqualTo(size > 0 ? "high" : "low");
        }
      }
    }
  }

  /**
   * Anodes that are rejected for what no figure shows: as many as usual, and as many more as the
   * truth says, within four standard errors of the count (Poisson) and one anode.
   */
  private static void assertMoreAreRejected(List<Anode> anodes, CSVRecord truth) {
    int first = Integer.parseInt(truth.get("first_turn"));
    int last = Integer.parseInt(truth.get("last_turn"));
    String mold = truth.get("mold");
    Predicate<Anode> own = a -> mold.isEmpty() || a.mold() == Integer.parseInt(mold);
    List<Anode> before = anodes.stream().filter(own).filter(a -> a.turn() < first).toList();
    List<Anode> during =
        anodes.stream().filter(own).filter(a -> a.turn() >= first && a.turn() <= last).toList();
    double usual = before.stream().filter(TruthTest::isSurfaceReject).count();
    double share = (usual + 0.0115) / (before.size() + 1.0);
    double expected = during.size() * (share + Double.parseDouble(truth.get("size")));
    double counted = during.stream().filter(TruthTest::isSurfaceReject).count();
    assertThat(counted)
        .as(truth.toString())
        .isBetween(expected - 4 * Math.sqrt(expected) - 1, expected + 4 * Math.sqrt(expected) + 1);
  }

  private static boolean isSurfaceReject(Anode anode) {
    String defect = anode.row().get("defect");
    return Stream.of(Defect.values()).anyMatch(each -> each.word().equals(defect));
  }

  private static double observed(List<Anode> anodes, Set<Integer> shifted, CSVRecord truth) {
    ToDoubleFunction<Anode> value = SimulatedFiles.judged(truth.get("characteristic"));
    int first = Integer.parseInt(truth.get("first_turn"));
    int last = Integer.parseInt(truth.get("last_turn"));
    String mold = truth.get("mold");
    String side = truth.get("side");
    Predicate<Anode> during = anode -> anode.turn() >= first && anode.turn() <= last;
    Predicate<Anode> before = anode -> anode.turn() < first;
    if (truth.get("scope").equals("wheel")) {
      return mean(anodes, during, value) - mean(anodes, before, value);
    }
    Predicate<Anode> target =
        mold.isEmpty()
            ? anode -> anode.side().equals(side)
            : anode -> anode.mold() == Integer.parseInt(mold);
    Predicate<Anode> peer =
        mold.isEmpty()
            ? anode -> !anode.side().equals(side)
            : anode -> !shifted.contains(anode.mold());
    return mean(anodes, during.and(target), value)
        - mean(anodes, during.and(peer), value)
        - mean(anodes, before.and(target), value)
        + mean(anodes, before.and(peer), value);
  }

  private static double mean(
      List<Anode> anodes, Predicate<Anode> which, ToDoubleFunction<Anode> value) {
    return anodes.stream().filter(which).mapToDouble(value).average().orElseThrow();
  }

  /**
   * Some three standard errors of a wheel, whose turns are correlated, and four of a mold or a
   * side, which are compared within turns.
   */
  private static double tolerance(CSVRecord truth) {
    int turns =
        Integer.parseInt(truth.get("last_turn")) - Integer.parseInt(truth.get("first_turn")) + 1;
    double sigma = truth.get("characteristic").equals("mass") ? 1.2 : 0.24;
    double errors = truth.get("scope").equals("wheel") ? 3 * 0.67 * Math.sqrt(2.5) : 4;
    return errors * sigma / Math.sqrt(turns);
  }

  private static double addedSpread(List<Anode> anodes, CSVRecord truth) {
    ToDoubleFunction<Anode> value = SimulatedFiles.judged(truth.get("characteristic"));
    int first = Integer.parseInt(truth.get("first_turn"));
    int last = Integer.parseInt(truth.get("last_turn"));
    double during = variance(anodes, a -> a.turn() >= first && a.turn() <= last, value);
    return Math.sqrt(during - variance(anodes, a -> a.turn() < first, value));
  }

  private static double variance(
      List<Anode> anodes, Predicate<Anode> which, ToDoubleFunction<Anode> value) {
    Map<Integer, List<Anode>> turns =
        anodes.stream().filter(which).collect(Collectors.groupingBy(Anode::turn));
    double squares = 0;
    int freedom = 0;
    for (List<Anode> turn : turns.values()) {
      double mean = mean(turn, anode -> true, value);
      for (Anode anode : turn) {
        squares += (value.applyAsDouble(anode) - mean) * (value.applyAsDouble(anode) - mean);
      }
      freedom += turn.size() - 1;
    }
    return squares / freedom;
  }

  @ParameterizedTest
  @EnumSource(Fault.class)
  void aFaultTouchesNothingOutsideItsReach(Fault fault) throws IOException {
    SimulatedFiles sound = SimulatedFiles.of(directory.resolve("sound"), Scenario.week(11));
    SimulatedFiles faulty =
        SimulatedFiles.of(directory.resolve("faulty"), Scenario.week(11).withFault(fault));
    PlantedFault planted = Wheel.of(Scenario.week(11).withFault(fault)).faults().get(0);
    Map<List<Integer>, List<String>> before =
        sound.anodes().stream()
            .collect(Collectors.toMap(a -> List.of(a.turn(), a.mold()), a -> a.row().toList()));
    int changed = 0;
    for (Anode anode : faulty.anodes()) {
      List<String> row = before.get(List.of(anode.turn(), anode.mold()));
      if (row != null && !row.equals(anode.row().toList())) {
        changed++;
        assertThat(anode.turn()).isGreaterThanOrEqualTo(planted.firstTurn());
        if (planted.firstMold() >= 0) {
          assertThat(anode.mold() - 1)
              .isBetween(planted.firstMold(), planted.firstMold() + planted.molds() - 1);
        }
        if (planted.side() >= 0) {
          assertThat(anode.side()).isEqualTo(planted.side() == 0 ? "A" : "B");
        }
      }
    }
    assertThat(changed > 0).isEqualTo(fault != Fault.IDLE_EVENT);
  }

  @Test
  void decoysMoveASettingOrLeaveAnEventAndNothingElse() throws IOException {
    SimulatedFiles sound = SimulatedFiles.of(directory.resolve("sound"), Scenario.week(11));
    SimulatedFiles decoy =
        SimulatedFiles.of(
            directory.resolve("decoy"),
            Scenario.week(11).withFaults(List.of(Fault.IDLE_SETTING_STEP, Fault.IDLE_EVENT)));
    assertThat(decoy.truth()).isEmpty();
    Set<String> moved = new HashSet<>();
    for (int i = 0; i < sound.anodes().size(); i++) {
      Map<String, String> without = sound.anodes().get(i).row().toMap();
      Map<String, String> with = decoy.anodes().get(i).row().toMap();
      without.forEach(
          (column, value) -> {
            if (!value.equals(with.get(column))) {
              moved.add(column);
            }
          });
    }
    assertThat(moved).containsExactly("launder_level_mm");
    assertThat(decoy.events()).hasSize(sound.events().size() + 1);
  }

  /** Settings wander on a sound wheel too; no mold may wander by a whole pour sigma with them. */
  @Test
  void aSoundWheelHasNoShift() throws IOException {
    SimulatedFiles files = SimulatedFiles.of(directory, Scenario.week(11));
    assertThat(files.truth()).isEmpty();
    int middle = files.summary().turns() / 2;
    for (int mold = 1; mold <= 26; mold++) {
      int number = mold;
      assertThat(halfShift(files.anodes(), middle, number, Anode::mass)).isBetween(-0.7, 0.7);
      assertThat(halfShift(files.anodes(), middle, number, Anode::thickness))
          .isBetween(-0.13, 0.13);
      assertThat(halfShift(files.anodes(), middle, number, Anode::wedge)).isBetween(-0.13, 0.13);
    }
  }

  private static double halfShift(
      List<Anode> anodes, int middle, int mold, ToDoubleFunction<Anode> value) {
    Predicate<Anode> early = anode -> anode.turn() <= middle;
    Predicate<Anode> own = anode -> anode.mold() == mold;
    return mean(anodes, own.and(early.negate()), value)
        - mean(anodes, early.negate(), value)
        - mean(anodes, own.and(early), value)
        + mean(anodes, early, value);
  }

  @Test
  void placesFaultsAfterTheFirstQuarterAndApart() {
    List<Fault> all = new ArrayList<>(List.of(Fault.values()));
    all.add(Fault.THIN_WASH);
    all.add(Fault.LATE_CUT_OFF);
    for (int seed = 1; seed <= 100; seed++) {
      Wheel wheel = Wheel.of(Scenario.week(seed).withFaults(all));
      int turns = wheel.schedule().turns();
      Set<Integer> molds = new HashSet<>();
      Set<Integer> sharedTurns = new HashSet<>();
      for (PlantedFault fault : wheel.faults()) {
        assertThat(fault.firstTurn()).isGreaterThan(turns / 4);
        assertThat(fault.lastTurn()).isBetween(fault.firstTurn(), turns);
        for (int i = 0; i < fault.molds(); i++) {
          assertThat(molds.add(fault.firstMold() + i)).isTrue();
          assertThat(fault.firstMold() + i).isBetween(0, 25);
        }
        // Less than a sigma of the set-point is no fault, and may lie beside one.
        if (fault.molds() == 0
            && !fault.fault().isDecoy()
            && fault.fault() != Fault.SET_POINT_MOVE) {
          for (int turn = fault.firstTurn(); turn <= fault.lastTurn(); turn++) {
            assertThat(sharedTurns.add(turn)).isTrue();
          }
        }
      }
    }
  }

  @Test
  void theBadPourIsAlwaysRecorded() {
    for (int seed = 1; seed <= 20; seed++) {
      Wheel wheel = Wheel.of(Scenario.week(seed).withFault(Fault.SINGLE_BAD_POUR));
      assertThat(Truth.of(wheel)).as("seed %d", seed).hasSize(2);
    }
  }

  @ParameterizedTest
  @EnumSource(Fault.class)
  void everyFaultFitsIntoOneDay(Fault fault) {
    for (int molds : new int[] {16, 40}) {
      for (int seed = 1; seed <= 3; seed++) {
        Scenario day = Scenario.week(seed).withDays(1).withMolds(molds).withFault(fault);
        assertThat(Truth.of(Wheel.of(day)).isEmpty())
            .as("seed %d, %d molds", seed, molds)
            .isEqualTo(fault.isDecoy() || fault == Fault.SET_POINT_MOVE);
      }
    }
  }
}
