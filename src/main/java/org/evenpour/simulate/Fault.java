package org.evenpour.simulate;

import java.util.Optional;
import org.evenpour.casting.EventKind;

/** What can go wrong on a simulated wheel, and what only looks as if it could. */
public enum Fault {
  /** Pour rate creeps up, and the mass of every anode with it. */
  POUR_RATE_DRIFT("pour-rate-drift", Reach.WHEEL, "pour_rate_kg_s"),
  /** Three or four adjacent molds lose spray water, run hot, stick, and warp for good. */
  STARVED_SPRAY("starved-spray", Reach.MOLD, "spray_flow_l_min"),
  /** One mold's wash nozzle clogs; anodes stick in it, until the nozzle is cleaned. */
  THIN_WASH("thin-wash", Reach.MOLD, "wash_volume_ml"),
  /** One ladle side's scale drifts and its anodes grow heavy, until the scale is checked. */
  LADLE_SCALE_BIAS("ladle-scale-bias", Reach.SIDE, ""),
  /** One mold wears: its plan grows and its floor dishes. */
  MOLD_WEAR("mold-wear", Reach.MOLD, ""),
  /** One position gets another mold, of another thickness and out of level. */
  MOLD_CHANGE("mold-change", Reach.MOLD, EventKind.MOLD_CHANGED),
  /** The melt runs hot or cold for some turns: fins, or ripples and cold shuts. */
  MELT_TEMPERATURE("melt-temperature", Reach.WHEEL, "melt_temp_c"),
  /** One mold shifts in thickness, and no setting moves. */
  UNEXPLAINED("unexplained", Reach.MOLD, ""),
  /** The ladle is cut off late for some turns: overweight, with a larger spread. */
  LATE_CUT_OFF("late-cut-off", Reach.WHEEL, ""),
  /** One anode is far too light. */
  SINGLE_BAD_POUR("single-bad-pour", Reach.POUR, ""),
  /** The melt is reduced too far: gas, and swollen faces, until it has taken up oxygen again. */
  OVER_REDUCED_MELT("over-reduced-melt", Reach.WHEEL, "oxygen_ppm"),
  /** Three or four adjacent molds get too much spray water: wet wash, steam, swelling, blisters. */
  WET_WASH("wet-wash", Reach.MOLD, "spray_flow_l_min"),
  /** Decoy: the launder level steps for some turns, and nothing follows. */
  IDLE_SETTING_STEP("idle-setting-step", Reach.NOTHING, "launder_level_mm"),
  /** Decoy: a nozzle is cleaned at a sound mold, and nothing follows. */
  IDLE_EVENT("idle-event", Reach.NOTHING, EventKind.NOZZLE_CLEANED),
  /** The set-point of the pour is moved up and down again, by less than a sigma; mass follows. */
  SET_POINT_MOVE("set-point-move", Reach.WHEEL, "target_mass_kg");

  /** How far a fault reaches. */
  enum Reach {
    POUR,
    MOLD,
    SIDE,
    WHEEL,
    NOTHING
  }

  private final String id;
  private final Reach reach;
  private final String cause;

  Fault(String id, Reach reach, String cause) {
    this.id = id;
    this.reach = reach;
    this.cause = cause;
  }

  /** Its stable name, such as {@code thin-wash}. */
  public String id() {
    return id;
  }

  /** The setting's column or the event that it comes from; empty where no record shows it. */
  public String cause() {
    return cause;
  }

  /** Whether it only looks like a cause: something moves, and no characteristic follows. */
  public boolean isDecoy() {
    return reach == Reach.NOTHING;
  }

  Reach reach() {
    return reach;
  }

  /** The fault of this name, if there is one. */
  public static Optional<Fault> ofId(String id) {
    for (Fault fault : values()) {
      if (fault.id.equals(id)) {
        return Optional.of(fault);
      }
    }
    return Optional.empty();
  }
}
