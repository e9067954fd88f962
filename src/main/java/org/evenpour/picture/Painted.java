package org.evenpour.picture;

import java.awt.geom.Point2D;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What came out of drawing a picture.
 *
 * @param spots the places that can be pointed at, the topmost last
 * @param fields where values lie; empty where there are no axes
 */
public record Painted(List<Spot> spots, List<Field> fields) {

  /** Nothing to point at. */
  public static final Painted PLAIN = new Painted(List.of(), List.of());

  /** Copies the lists. */
  public Painted {
    spots = List.copyOf(spots);
    fields = List.copyOf(fields);
  }

  /** How the horizontal axis lies, which all fields share; null where there is none. */
  public @Nullable Field scale() {
    return fields.isEmpty() ? null : fields.get(0);
  }

  /** The topmost spot at a place. */
  public @Nullable Spot spot(Point2D place) {
    for (int i = spots.size() - 1; i >= 0; i--) {
      if (spots.get(i).shape().contains(place)) {
        return spots.get(i);
      }
    }
    return null;
  }

  /** What stands at a place, in words: the spot there, or the nearest value; empty = nothing. */
  public String says(Point2D place) {
    Spot spot = spot(place);
    return spot != null
        ? spot.says()
        : fields.stream()
            .map(field -> field.says(place))
            .filter(said -> !said.isEmpty())
            .findFirst()
            .orElse("");
  }
}
