package org.evenpour.view.model;

import java.util.function.Consumer;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.findings.AuditReport.Signal;
import org.jspecify.annotations.Nullable;

/** Keeps what people say of causes. Used on the event thread. */
public interface Marking {

  /**
   * Keeps a mark, and returns at once.
   *
   * @param done is told on the event thread, when the mark is on the disk, null; or why it is not
   */
  void keep(
      Signal signal,
      Cause cause,
      Verdict verdict,
      String who,
      String why,
      Consumer<@Nullable Throwable> done);

  /** Who marked last; empty where nobody did yet. */
  String who();
}
