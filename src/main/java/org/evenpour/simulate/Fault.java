package org.evenpour.simulate;

import java.util.Optional;

/** What can go wrong on a simulated wheel, and what only looks as if it could. */
public enum Fault {
  /** Pour rate creeps up and takes the mass of every anode along. */
  POUR_RATE_DRIFT(
      "pour-rate-drift",
      Reach.WHEEL,
      "pour_rate_kg_s",
      "pour rate creeps up, and the mass of every anode with it"),
  /** Some adjacent molds lose spray water. */
  STARVED_SPRAY(
      "starved-spray",
      Reach.MOLD,
      "spray_flow_l_min",
      "three or four adjacent molds lose spray water, run hot and cast thin from the next turn"),
  /** One mold gets less wash. */
  THIN_WASH(
      "thin-wash",
      Reach.MOLD,
      "wash_volume_ml",
      "one mold's nozzle clogs; thickness falls as the coat thins, until the nozzle is cleaned"),
  /** One ladle's scale drifts. */
  LADLE_SCALE_BIAS(
      "ladle-scale-bias",
      Reach.SIDE,
      "",
      "one ladle side's scale drifts and its anodes grow heavy, until the scale is checked"),
  /** One mold wears. */
  MOLD_WEAR("mold-wear", Reach.MOLD, "", "one mold wears: its plan grows and its floor dishes"),
  /** One position gets another mold. */
  MOLD_CHANGE(
      "mold-change",
      Reach.MOLD,
      "mold_changed",
      "one position gets another mold, of another thickness and out of level"),
  /** The melt runs hot or cold. */
  MELT_TEMPERATURE(
      "melt-temperature",
      Reach.WHEEL,
      "melt_temp_c",
      "the melt runs hot or cold for some turns; thickness shifts on the whole wheel"),
  /** One mold shifts and no record says why. */
  UNEXPLAINED("unexplained", Reach.MOLD, "", "one mold shifts in thickness, and no setting moves"),
  /** The ladle stops late, now more, now less. */
  LATE_CUT_OFF(
      "late-cut-off",
      Reach.WHEEL,
      "",
      "the ladle is cut off late for some turns: overweight, with a larger spread"),
  /** One anode is far too light. */
  SINGLE_BAD_POUR("single-bad-pour", Reach.POUR, "", "one anode is far too light"),
  /** A setting steps and nothing follows. */
  IDLE_SETTING_STEP(
      "idle-setting-step",
      Reach.NOTHING,
      "launder_level_mm",
      "decoy: the launder level steps for some turns, and nothing follows"),
  /** Something is done at a mold and nothing follows. */
  IDLE_EVENT(
      "idle-event",
      Reach.NOTHING,
      "nozzle_cleaned",
      "decoy: a nozzle is cleaned at a sound mold, and nothing follows");

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
  private final String description;

  Fault(String id, Reach reach, String cause, String description) {
    this.id = id;
    this.reach = reach;
    this.cause = cause;
    this.description = description;
  }

  /** Its stable name, such as {@code thin-wash}. */
  public String id() {
    return id;
  }

  /** What it does, in one line. */
  public String description() {
    return description;
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
