package org.evenpour.casting;

import org.jspecify.annotations.Nullable;

/**
 * What a profile says of one setting.
 *
 * @param group such as {@code wash}, {@code pour}, {@code cooling}; empty when not given
 * @param lagTurns after how many pours in the same mold it acts; 0 = on this very pour
 * @param wetsMold whether it may leave a mold wet; null = not said
 */
public record SettingProfile(String group, int lagTurns, @Nullable Boolean wetsMold) {

  /** A setting that no profile speaks of. */
  public static final SettingProfile NONE = new SettingProfile("", 0);

  /** Where nothing is said of a wet mold. */
  public SettingProfile(String group, int lagTurns) {
    this(group, lagTurns, null);
  }
}
