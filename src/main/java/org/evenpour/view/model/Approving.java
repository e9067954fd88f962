package org.evenpour.view.model;

import java.time.Instant;
import java.util.List;
import java.util.function.Consumer;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsVersion;
import org.jspecify.annotations.Nullable;

/** Keeps which limits people approve and retire. Used on the event thread. */
public interface Approving {

  /**
   * What came of it.
   *
   * @param book all that stands in the file now; null where nothing was written
   * @param problem why nothing was; null where it was
   */
  record Kept(@Nullable LimitsBook book, @Nullable Throwable problem) {}

  /**
   * Approves limits, and returns at once.
   *
   * @param drafts not approved yet
   * @param validFrom turns that begin then or later are judged by them; null = from now on
   * @param done is told on the event thread what came of it
   */
  void approve(
      List<LimitsVersion> drafts,
      @Nullable Instant validFrom,
      String who,
      String why,
      Consumer<Kept> done);

  /** Retires a version from now on, and returns at once. */
  void retire(LimitsVersion version, String who, String why, Consumer<Kept> done);

  /** Reads what stands in the file, and returns at once. */
  void read(Consumer<Kept> done);

  /** The time, which tells what is in force. */
  Instant now();

  /** Who decided last; empty where nobody did yet. */
  String who();
}
