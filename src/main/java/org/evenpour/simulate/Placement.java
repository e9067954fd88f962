package org.evenpour.simulate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Where and when the faults are: after the first quarter of the log, those of the whole wheel or of
 * a ladle side one after the other, those of molds each in a mold of its own.
 *
 * <p>Owned by the thread that places.
 */
final class Placement {
  private static final int FEWEST_TURNS = 5;
  private static final int APART_TURNS = 3;

  private final Scenario scenario;
  private final Schedule schedule;
  private final Noise noise;
  private final int soundTurns;
  private final boolean[] taken;

  private Placement(Scenario scenario, Schedule schedule, Noise noise) {
    this.scenario = scenario;
    this.schedule = schedule;
    this.noise = noise;
    this.soundTurns = (schedule.turns() + 3) / 4;
    this.taken = new boolean[scenario.molds()];
  }

  static List<PlantedFault> of(Scenario scenario, Schedule schedule, Noise noise) {
    return new Placement(scenario, schedule, noise).place();
  }

  private List<PlantedFault> place() {
    @Nullable PlantedFault[] placed = new PlantedFault[scenario.faults().size()];
    List<Integer> shared = new ArrayList<>();
    // Whole sectors first, while there is room for them.
    for (int i = 0; i < placed.length; i++) {
      Fault fault = scenario.faults().get(i);
      switch (fault) {
        case STARVED_SPRAY -> placed[i] = onMolds(fault, noise.whole(3, 4));
        case POUR_RATE_DRIFT, LADLE_SCALE_BIAS, MELT_TEMPERATURE, LATE_CUT_OFF -> shared.add(i);
        default -> {}
      }
    }
    for (int i = 0; i < placed.length; i++) {
      Fault fault = scenario.faults().get(i);
      switch (fault) {
        case THIN_WASH, MOLD_WEAR, MOLD_CHANGE, UNEXPLAINED, SINGLE_BAD_POUR, IDLE_EVENT ->
            placed[i] = onMolds(fault, 1);
        case IDLE_SETTING_STEP ->
            placed[i] = within(fault, soundTurns + 1, schedule.turns(), 20, 40, -1, 0);
        default -> {}
      }
    }
    placeInOrder(shared, placed);
    // What fits into the room that the others leave.
    for (int i = 0; i < placed.length; i++) {
      Fault fault = scenario.faults().get(i);
      switch (fault) {
        case OVER_REDUCED_MELT -> placed[i] = betweenOthers(fault, placed);
        case WET_WASH -> placed[i] = onMolds(fault, room(noise.whole(3, 4)));
        case SET_POINT_MOVE ->
            placed[i] = within(fault, soundTurns + 1, schedule.turns(), 20, 40, -1, 0);
        default -> {}
      }
    }
    return Arrays.stream(placed).map(Objects::requireNonNull).toList();
  }

  private void placeInOrder(List<Integer> shared, @Nullable PlantedFault[] placed) {
    shuffle(shared);
    if (shared.isEmpty()) {
      return;
    }
    int slot = (schedule.turns() - soundTurns) / shared.size();
    if (slot < FEWEST_TURNS + APART_TURNS) {
      throw tooMany("faults of the whole wheel", "simulate more days");
    }
    for (int i = 0; i < shared.size(); i++) {
      Fault fault = scenario.faults().get(shared.get(i));
      int from = soundTurns + 1 + i * slot;
      int to = from + slot - 1 - APART_TURNS;
      placed[shared.get(i)] =
          switch (fault) {
            case POUR_RATE_DRIFT -> within(fault, from, to, 20, 30, -1, 0);
            case LADLE_SCALE_BIAS -> within(fault, from, to, 25, 40, -1, 0);
            case MELT_TEMPERATURE -> within(fault, from, to, 8, 12, -1, 0);
            default -> within(fault, from, to, FEWEST_TURNS, 6, -1, 0);
          };
    }
  }

  /**
   * In the longest stretch without another fault of the whole wheel. A melt is reduced too far
   * before it is cast: from a charge's start to its end, where one leaves room.
   */
  private PlantedFault betweenOthers(Fault fault, @Nullable PlantedFault[] placed) {
    List<PlantedFault> others =
        Arrays.stream(placed)
            .flatMap(Stream::ofNullable)
            .filter(other -> other.molds() == 0)
            .filter(other -> !other.fault().isDecoy() && other.fault() != Fault.SET_POINT_MOVE)
            .sorted(Comparator.comparingInt(PlantedFault::firstTurn))
            .toList();
    int from = soundTurns + 1;
    int to = from - 1;
    int free = from;
    for (PlantedFault other : others) {
      if (other.firstTurn() - 1 - APART_TURNS - free > to - from) {
        from = free;
        to = other.firstTurn() - 1 - APART_TURNS;
      }
      free = other.lastTurn() + APART_TURNS;
    }
    if (schedule.turns() - free > to - from) {
      from = free;
      to = schedule.turns();
    }
    if (to - from + 1 < FEWEST_TURNS) {
      throw tooMany("faults of the whole wheel", "simulate more days");
    }
    int last = to - 2 * FEWEST_TURNS;
    int earliest = from;
    List<Integer> starts =
        schedule.chargeStarts().stream().filter(turn -> turn >= earliest && turn <= last).toList();
    if (starts.isEmpty()) {
      return planted(fault, from, Math.min(to, from + noise.whole(12, 20) - 1), -1, 0);
    }
    int first = starts.get(noise.whole(0, starts.size() - 1));
    int end = first + schedule.chargeOf(first).turns(scenario.molds()) - 1;
    return planted(fault, first, Math.min(to, end), -1, 0);
  }

  /** So many adjacent molds as are free, and no more than asked. */
  private int room(int molds) {
    for (int wanted = molds; wanted > 1; wanted--) {
      int run = 0;
      for (boolean isTaken : taken) {
        run = isTaken ? 0 : run + 1;
        if (run == wanted) {
          return wanted;
        }
      }
    }
    return 1;
  }

  private void shuffle(List<Integer> list) {
    for (int i = list.size() - 1; i > 0; i--) {
      int j = noise.whole(0, i);
      Integer held = list.get(i);
      list.set(i, list.get(j));
      list.set(j, held);
    }
  }

  private PlantedFault onMolds(Fault fault, int molds) {
    int mold = freeMolds(molds);
    int last = schedule.turns();
    return switch (fault) {
      case STARVED_SPRAY, WET_WASH -> within(fault, soundTurns + 1, last, 20, 35, mold, molds);
      case THIN_WASH -> within(fault, soundTurns + 1, last, 25, 45, mold, molds);
      case UNEXPLAINED -> within(fault, soundTurns + 1, last, 30, 50, mold, molds);
      case MOLD_WEAR -> {
        int first = soundTurns + noise.whole(1, Math.max(1, last / 5));
        yield planted(fault, first, last, mold, molds);
      }
      case MOLD_CHANGE -> planted(fault, changeTurn(), last, mold, molds);
      default -> {
        int turn = turnOfWholeWheel();
        yield planted(fault, turn, turn, mold, molds);
      }
    };
  }

  /** Molds are changed between charges; within one only where no other start is late enough. */
  private int changeTurn() {
    List<Integer> starts =
        schedule.chargeStarts().stream()
            .filter(turn -> turn > soundTurns && turn <= schedule.turns() * 3 / 4)
            .toList();
    return starts.isEmpty()
        ? noise.whole(soundTurns + 1, Math.max(soundTurns + 1, schedule.turns() * 3 / 4))
        : starts.get(noise.whole(0, starts.size() - 1));
  }

  /** A turn in which every mold is poured; a charge may end within its last one. */
  private int turnOfWholeWheel() {
    int turn = noise.whole(soundTurns + 1, schedule.turns() - 1);
    Schedule.Charge charge = schedule.chargeOf(turn);
    boolean isLast = turn == charge.firstTurn() + charge.turns(scenario.molds()) - 1;
    return isLast ? turn + 1 : turn;
  }

  private int freeMolds(int molds) {
    List<Integer> free = new ArrayList<>();
    for (int mold = 0; mold + molds <= taken.length; mold++) {
      boolean isFree = true;
      for (int i = mold; i < mold + molds; i++) {
        isFree &= !taken[i];
      }
      if (isFree) {
        free.add(mold);
      }
    }
    if (free.isEmpty()) {
      throw tooMany("faults of single molds", "take more molds");
    }
    int mold = free.get(noise.whole(0, free.size() - 1));
    Arrays.fill(taken, mold, mold + molds, true);
    return mold;
  }

  private PlantedFault within(
      Fault fault, int from, int to, int shortest, int longest, int mold, int molds) {
    int room = to - from + 1;
    int turns = Math.min(noise.whole(shortest, longest), Math.max(1, room * 4 / 5));
    int first = from + noise.whole(0, Math.max(0, room - turns));
    return planted(fault, first, first + turns - 1, mold, molds);
  }

  private PlantedFault planted(Fault fault, int first, int last, int mold, int molds) {
    int side = fault == Fault.LADLE_SCALE_BIAS ? noise.whole(0, scenario.sides() - 1) : -1;
    return new PlantedFault(
        fault, first, last, mold, molds, side, noise.sign(), scenario.sizeSigmas());
  }

  private IllegalArgumentException tooMany(String what, String mend) {
    return new IllegalArgumentException(
        "too many %s for %d turns of %d molds; plant fewer of them, or %s"
            .formatted(what, schedule.turns(), scenario.molds(), mend));
  }
}
