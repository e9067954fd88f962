package org.evenpour.casting;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Names and their indices, in the order in which they first came; owned by the thread that reads
 * the log.
 */
public final class Labels {
  private final Map<String, Integer> indices = new HashMap<>();
  private final List<String> names = new ArrayList<>();

  /** The index of a name, which is added if it is new. */
  public int index(String name) {
    Integer index = indices.get(name);
    if (index == null) {
      index = names.size();
      indices.put(name, index);
      names.add(name);
    }
    return index;
  }

  /** The index of a name; −1 where there is none. */
  public int find(String name) {
    return indices.getOrDefault(name, -1);
  }

  /** The name at an index. */
  public String name(int index) {
    return names.get(index);
  }

  /** How many names there are. */
  public int size() {
    return names.size();
  }

  /** All names, in the order of their indices; follows later additions. */
  public List<String> names() {
    return Collections.unmodifiableList(names);
  }
}
