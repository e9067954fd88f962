package org.evenpour.casting;

/**
 * What a profile says of one setting.
 *
 * @param group such as {@code wash}, {@code pour}, {@code cooling}; empty when not given
 * @param lagTurns after how many pours in the same mold it acts; 0 = on this very pour
 */
public record SettingProfile(String group, int lagTurns) {

  /** A setting that no profile speaks of. */
  public static final SettingProfile NONE = new SettingProfile("", 0);
}
