package org.evenpour.view.model;

import org.evenpour.findings.AuditReport.Signal;
import org.jspecify.annotations.Nullable;

/**
 * Where something that is said is seen: a page of the desk, and what is chosen on it.
 *
 * @param page its key
 * @param wheel to choose; null = the one that is chosen
 * @param characteristic to choose; null = the one that is chosen
 * @param mold to choose; null = none is asked for
 * @param signal to choose; null = none is asked for
 * @param setting to choose; null = none is asked for
 * @param part of the page; empty = whatever it shows
 */
public record Evidence(
    String page,
    @Nullable String wheel,
    @Nullable String characteristic,
    @Nullable String mold,
    @Nullable Signal signal,
    @Nullable String setting,
    String part) {

  /** A page as it is. */
  public static Evidence page(String page) {
    return part(page, "");
  }

  /** A part of a page. */
  public static Evidence part(String page, String part) {
    return new Evidence(page, null, null, null, null, null, part);
  }

  /** What speaks for a signal. */
  public static Evidence signal(Signal signal) {
    return new Evidence("signals", signal.wheel(), null, null, signal, null, "");
  }

  /** A mold's record. */
  public static Evidence mold(String wheel, String mold, @Nullable String characteristic) {
    return new Evidence("molds", wheel, characteristic, mold, null, null, "");
  }

  /** A page of one characteristic. */
  public static Evidence characteristic(String page, String wheel, String characteristic) {
    return new Evidence(page, wheel, characteristic, null, null, null, "");
  }

  /** A setting over what it may act on. */
  public static Evidence setting(String wheel, String setting) {
    return new Evidence("settings", wheel, null, null, null, setting, "");
  }

  /** Rejects, of a mold where one is named. */
  public static Evidence rejects(String wheel, @Nullable String mold) {
    return new Evidence("rejects", wheel, null, mold, null, null, "");
  }

  /** Chooses what is seen there; the page itself is not turned to. */
  public void choose(Desk desk) {
    Selection selection = desk.selection();
    if (wheel != null) {
      selection.chooseWheel(wheel);
    }
    String its = characteristic;
    if (its != null && OpenedLog.characteristic(desk.report(), selection.wheel(), its) != null) {
      selection.chooseCharacteristic(its);
    }
    if (mold != null) {
      selection.chooseMold(mold);
    }
    if (signal != null) {
      selection.chooseSignal(signal);
    }
    if (setting != null) {
      selection.chooseSetting(setting);
    }
  }
}
