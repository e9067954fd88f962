package org.evenpour.view.screen;

import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsBook.Retirement;
import org.evenpour.control.LimitsVersion;
import org.evenpour.store.LimitsFile;
import org.evenpour.view.model.Approving;
import org.jspecify.annotations.Nullable;

/** Writes approved limits to their file on a worker thread. Owned by the event thread. */
final class LimitsKeeping implements Approving {
  private final Supplier<LimitsFile> file;
  private final InstantSource clock;
  private String who = "";

  /**
   * @param file where they stand
   * @param clock tells when something was decided
   */
  LimitsKeeping(Supplier<LimitsFile> file, InstantSource clock) {
    this.file = file;
    this.clock = clock;
  }

  @Override
  public Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MILLIS);
  }

  @Override
  public String who() {
    return who;
  }

  @Override
  public void read(Consumer<Kept> done) {
    LimitsFile its = file.get();
    work(() -> its.read().book(), done);
  }

  @Override
  public void approve(
      List<LimitsVersion> drafts,
      @Nullable Instant validFrom,
      String by,
      String because,
      Consumer<Kept> done) {
    LimitsFile its = file.get();
    Instant at = now();
    Instant from = validFrom == null ? at : validFrom;
    String name = line(by);
    String reason = line(because);
    work(
        () -> {
          its.approve(drafts.stream().map(one -> one.approved(from, at, name, reason)).toList());
          return its.read().book();
        },
        kept -> {
          who = kept.book() == null ? who : name;
          done.accept(kept);
        });
  }

  @Override
  public void retire(LimitsVersion version, String by, String because, Consumer<Kept> done) {
    LimitsFile its = file.get();
    Instant at = now();
    String name = line(by);
    Retirement end =
        new Retirement(
            version.wheel(),
            version.characteristic(),
            version.version(),
            at,
            at,
            name,
            line(because));
    work(
        () -> {
          its.retire(List.of(end));
          return its.read().book();
        },
        kept -> {
          who = kept.book() == null ? who : name;
          done.accept(kept);
        });
  }

  /** In one line, as it stands in the file. */
  private static String line(String text) {
    return text.replaceAll("\\p{Cntrl}", " ").strip();
  }

  private static void work(Callable<LimitsBook> act, Consumer<Kept> done) {
    new Background<LimitsBook>()
        .begin(
            isGivenUp -> act.call(),
            book -> done.accept(new Kept(book, null)),
            why -> done.accept(new Kept(null, why)));
  }
}
