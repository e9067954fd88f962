package org.evenpour.casting;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a plant itself says of what to look at first, merged over what comes with the program.
 *
 * @param entries by a setting's column, an event's kind or a setting's group
 */
public record PlantAdvice(Map<String, Entry> entries) {

  /** The plant says nothing. */
  public static final PlantAdvice NONE = new PlantAdvice(Map.of());

  /** Copies the map. */
  public PlantAdvice {
    entries = Map.copyOf(entries);
  }

  /**
   * What is said of one setting, event or group.
   *
   * @param look what to look at first, by language ({@code en}, {@code es}); takes the place of
   *     what comes with the program
   * @param caution what keeps people safe, by language; stands beside what comes with the program
   * @param wetsMold whether it may leave a mold wet; null = not said
   */
  public record Entry(
      Map<String, String> look, Map<String, String> caution, @Nullable Boolean wetsMold) {
    /** Copies the maps. */
    public Entry {
      look = Map.copyOf(look);
      caution = Map.copyOf(caution);
    }
  }
}
