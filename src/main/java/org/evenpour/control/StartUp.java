package org.evenpour.control;

import org.evenpour.casting.WheelProfile;

/**
 * Tells which anodes are start-up: the first pour of each mold at the start of a log or after a
 * stop, when molds are cold and their wash may be wet. Common practice, no source: the first one or
 * two turns after a stop scatter more. Owned by one thread.
 */
public final class StartUp {
  private final long stopMillis;
  private final int molds;
  private long lastAtMillis;
  private boolean any;
  private int left;

  /**
   * @param profile says how long a gap is a stop
   * @param molds how many the wheel has where the profile does not say
   */
  public StartUp(WheelProfile profile, int molds) {
    stopMillis = Math.round(profile.stopMinutes() * 60_000);
    Integer told = profile.molds();
    this.molds = told == null ? molds : told;
  }

  /** Takes the next anode's time and tells whether it is start-up. */
  public boolean isStartUp(long castAtMillis) {
    if (!any || castAtMillis - lastAtMillis > stopMillis) {
      left = molds;
    }
    any = true;
    lastAtMillis = castAtMillis;
    if (left > 0) {
      left--;
      return true;
    }
    return false;
  }
}
