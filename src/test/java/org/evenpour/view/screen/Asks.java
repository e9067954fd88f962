package org.evenpour.view.screen;

import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Answers in place of a person: opens nothing.
 *
 * @param to where to save; null = not at all
 */
record Asks(@Nullable Path to) implements FileAsk {
  static final FileAsk NOBODY = new Asks(null);

  @Override
  public List<Path> open() {
    return List.of();
  }

  @Override
  public @Nullable Path save(String proposedName) {
    return to;
  }
}
