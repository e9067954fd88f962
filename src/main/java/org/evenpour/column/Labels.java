package org.evenpour.column;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Names and their indices, in the order in which they first came; owned by the thread that reads
 * the log. What {@link #frozen} gives may be read by any.
 */
public final class Labels {
  private final @Nullable Map<String, Integer> indices; // null where it is frozen
  private final List<String> names;

  /** Without any names yet. */
  public Labels() {
    this(new HashMap<>(), new ArrayList<>());
  }

  private Labels(@Nullable Map<String, Integer> indices, List<String> names) {
    this.indices = indices;
    this.names = names;
  }

  /** The names that there are now. None can be added, and to find one takes a look at each. */
  public Labels frozen() {
    return new Labels(null, List.copyOf(names));
  }

  /** The index of a name, which is added if it is new. */
  public int index(String name) {
    if (indices == null) {
      throw new IllegalStateException("no name can be added to what is frozen: " + name);
    }
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
    return indices == null ? names.indexOf(name) : indices.getOrDefault(name, -1);
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
