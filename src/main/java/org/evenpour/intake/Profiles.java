package org.evenpour.intake;

import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.evenpour.casting.WheelProfile;

/**
 * What the plant says of its wheels.
 *
 * @param wheels one profile for each wheel, and at most one that names no wheel
 */
public record Profiles(List<WheelProfile> wheels) {

  /** Nothing is said of any wheel. */
  public static final Profiles NONE = new Profiles(List.of());

  /** Copies the list, so that profiles never change. */
  public Profiles {
    wheels = List.copyOf(wheels);
  }

  /**
   * The profile of a wheel: the one that names it, else the one that names none, else {@link
   * WheelProfile#DEFAULT}.
   *
   * @param wheel its name; empty where the log has no wheel column
   */
  public WheelProfile forWheel(String wheel) {
    WheelProfile common = WheelProfile.DEFAULT;
    for (WheelProfile profile : wheels) {
      if (wheel.equals(profile.wheel())) {
        return profile;
      }
      if (profile.wheel() == null) {
        common = profile;
      }
    }
    return common;
  }

  /** In which zone times without one are read, and times are told: the first wheel's. */
  public ZoneId zone() {
    return wheels.isEmpty() ? forWheel("").zone() : wheels.get(0).zone();
  }

  /** Every profile's headings, in lower case, to the names that the program knows. */
  Map<String, String> headings() {
    Map<String, String> all = new LinkedHashMap<>();
    for (WheelProfile profile : wheels) {
      profile
          .headings()
          .forEach((heading, name) -> all.put(heading.strip().toLowerCase(Locale.ROOT), name));
    }
    return all;
  }

  /** A setting's name as the profiles spell it; as it stands where none speaks of it. */
  String settingName(String column) {
    for (WheelProfile profile : wheels) {
      for (String name : profile.settings().keySet()) {
        if (name.equalsIgnoreCase(column)) {
          return name;
        }
      }
    }
    return column;
  }
}
