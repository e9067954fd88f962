package org.evenpour.view.screen;

import java.nio.file.Path;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.evenpour.audit.Causes;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.store.CausesFile;
import org.evenpour.view.model.Marking;
import org.jspecify.annotations.Nullable;

/** Writes marks to their file on a worker thread. Owned by the event thread. */
final class CauseKeeping implements Marking {
  private final Supplier<CausesFile> file;
  private final InstantSource clock;
  private final BiConsumer<Path, List<CauseMark>> kept;
  private String who = "";

  /**
   * @param file where marks stand
   * @param clock tells when something was said
   * @param kept is told the file and all marks that stand there after one was added
   */
  CauseKeeping(
      Supplier<CausesFile> file, InstantSource clock, BiConsumer<Path, List<CauseMark>> kept) {
    this.file = file;
    this.clock = clock;
    this.kept = kept;
  }

  @Override
  public String who() {
    return who;
  }

  @Override
  public void keep(
      Signal signal,
      Cause cause,
      Verdict verdict,
      String by,
      String why,
      Consumer<@Nullable Throwable> done) {
    CauseMark mark =
        Causes.mark(
            signal, cause, verdict, by, why, clock.instant().truncatedTo(ChronoUnit.MILLIS));
    CausesFile into = file.get();
    new Background<List<CauseMark>>()
        .begin(
            isGivenUp -> into.add(mark),
            all -> {
              who = mark.who();
              kept.accept(into.path(), all);
              done.accept(null);
            },
            done);
  }
}
