package org.evenpour.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import org.evenpour.feed.Feed;
import org.evenpour.feed.GrowingLog;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogHeader;
import org.evenpour.intake.Profiles;
import org.evenpour.plant.SeenFile;
import org.evenpour.simulate.Scenario;
import org.evenpour.simulate.Simulation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LiveEngineTest {
  @TempDir Path folder;
  private final SimulatedLog log = SimulatedLog.of(Scenario.week(2).withDays(2));

  @Test
  void followsAGrowingLog() throws Exception {
    Path file = folder.resolve("log.csv");
    Files.writeString(file, log.text(600));
    GrowingLog feed =
        new GrowingLog(file, Profiles.NONE, () -> SimulatedLog.NOW, Duration.ofMillis(10));
    try (LiveEngine engine = engine(feed, LiveEngine.QUEUE)) {
      engine.start();
      until(engine, snapshot -> !snapshot.reading() && snapshot.rows() == 600);
      String next = log.lines().get(600);
      Files.writeString(file, next.substring(0, 20), StandardOpenOption.APPEND);
      Files.writeString(file, next.substring(20) + "\n", StandardOpenOption.APPEND);
      Snapshot snapshot = until(engine, one -> one.rows() == 601);
      assertThat(snapshot.rowsSetAside()).isZero();
      assertThat(snapshot.wheels().get(0).last().turn()).isEqualTo(log.turn(600));
    }
  }

  @Test
  void countsRowsThatASourceCannotKeep() throws Exception {
    AllAtOnce feed = new AllAtOnce(log, 1000, false);
    try (LiveEngine engine = engine(feed, 4)) {
      engine.start();
      Snapshot snapshot = until(engine, one -> one.rows() + one.rowsLost() >= 1000);
      assertThat(snapshot.rowsLost()).isPositive();
      assertThat(snapshot.rows() + snapshot.rowsLost()).isEqualTo(1000);
    }
  }

  @Test
  void letsASourceWaitThatKeepsItsRows() throws Exception {
    AllAtOnce feed = new AllAtOnce(log, 1000, true);
    try (LiveEngine engine = engine(feed, 4)) {
      engine.start();
      Snapshot snapshot = until(engine, one -> one.rows() == 1000);
      assertThat(snapshot.rowsLost()).isZero();
    }
  }

  @Test
  void writesDownWhatIsAcknowledgedJustBeforeTheEnd() throws Exception {
    AllAtOnce feed = new AllAtOnce(log, 10, true);
    LiveEngine engine = engine(feed, 100);
    engine.start();
    until(engine, one -> one.rows() == 10);
    engine.acknowledge(Signals.thinMold("7", 12, 14), "", "seen");
    engine.close();
    assertThat(SeenFile.beside(folder.resolve("log.csv")).read()).hasSize(1);
  }

  /** An audit that ends with a fault is tried again with more anodes; the board goes on. */
  @Test
  void aFirstJudgementThatFailsIsToldAndTriedAgainWithMoreAnodes() throws Exception {
    Path file = folder.resolve("log.csv");
    Files.writeString(file, log.text(300));
    try (LiveEngine engine = judging(file, failsWhile(rows -> rows < 500, new AtomicInteger()))) {
      engine.start();
      Snapshot told = until(engine, one -> one.unjudged() != null);
      assertThat(told.trouble()).isNull();
      assertThat(told.reading()).isFalse();
      assertThat(told.report()).isNull();
      // The anodes are shown as they come all the same.
      append(file, 300, 301);
      Snapshot shown =
          until(engine, one -> one.rows() == 301 && !one.wheels().isEmpty() && isOf(one, 300));
      assertThat(String.valueOf(shown.unjudged()))
          .contains("tried again")
          .doesNotContain("Exception", "java", "matrix");
      append(file, 301, 600);
      Snapshot judged = until(engine, one -> one.report() != null && one.rows() == 600);
      assertThat(judged.unjudged()).isNull();
      assertThat(judged.wheels().get(0).characteristics().get(0).limits()).isNotNull();
    }
  }

  @Test
  void whatWasInForceStaysWhereALaterJudgementFails() throws Exception {
    Path file = folder.resolve("log.csv");
    Files.writeString(file, log.text(300));
    AtomicInteger failed = new AtomicInteger();
    try (LiveEngine engine = judging(file, failsWhile(rows -> rows > 300 && rows < 800, failed))) {
      engine.start();
      Snapshot before = until(engine, one -> one.report() != null);
      append(file, 300, 700);
      Snapshot told = until(engine, one -> one.rows() == 700 && one.unjudged() != null);
      assertThat(told.report()).isNotNull();
      assertThat(told.wheels().get(0).characteristics().get(0).limits())
          .isEqualTo(before.wheels().get(0).characteristics().get(0).limits());
      append(file, 700, 1000);
      until(engine, one -> one.rows() == 1000 && one.unjudged() == null && isOf(one, 999));
      assertThat(failed.get()).isBetween(1, 20);
    }
  }

  /** As row by row from nothing: a judgement that always fails is not tried at every anode. */
  @Test
  void aJudgementThatAlwaysFailsIsTriedMoreAndMoreSeldom() throws Exception {
    LiveRecord record =
        new LiveRecord("log", Profiles.NONE, List.of(), SeenFile.beside(folder.resolve("log.csv")));
    SimulatedLog.open(record);
    int tries = 0;
    for (int row = 0; row < 300; row++) {
      log.row(record, row);
      Settling settling = record.settling();
      if (settling != null) {
        tries++;
        record.failed(new StackOverflowError());
      }
    }
    // After 1, 2, 4, 8, 16 and then every 32 anodes.
    assertThat(tries).isBetween(10, 16);
    assertThat(record.snapshot(0).wheels().get(0).last().turn()).isEqualTo(log.turn(299));
    record.caughtUp(SimulatedLog.NOW);
    for (int row = 300; row < 340; row++) {
      log.row(record, row);
      record.caughtUp(SimulatedLog.NOW);
    }
    assertThat(record.snapshot(0).unjudged()).isNull();
    assertThat(record.snapshot(0).report()).isNotNull();
  }

  private boolean isOf(Snapshot snapshot, int row) {
    return snapshot.wheels().get(0).last().turn() == log.turn(row);
  }

  private void append(Path file, int from, int to) throws Exception {
    StringBuilder text = new StringBuilder();
    log.lines().subList(from, to).forEach(line -> text.append(line).append('\n'));
    Files.writeString(file, text, StandardOpenOption.APPEND);
  }

  private static Function<Settling, Settling.Settled> failsWhile(
      IntPredicate wanted, AtomicInteger failed) {
    return settling -> {
      if (wanted.test(settling.record().wheels().get(0).rows())) {
        if (failed.incrementAndGet() % 2 == 0) {
          throw new StackOverflowError();
        }
        throw new IllegalStateException("matrix is not positive definite");
      }
      return settling.run();
    };
  }

  private LiveEngine judging(Path file, Function<Settling, Settling.Settled> judge) {
    GrowingLog feed =
        new GrowingLog(file, Profiles.NONE, () -> SimulatedLog.NOW, Duration.ofMillis(10));
    return new LiveEngine(feed, record(feed), () -> SimulatedLog.NOW, LiveEngine.QUEUE, judge);
  }

  private LiveEngine engine(Feed feed, int queue) {
    return new LiveEngine(feed, record(feed), () -> SimulatedLog.NOW, queue);
  }

  private LiveRecord record(Feed feed) {
    return new LiveRecord(
        feed.name(), Profiles.NONE, List.of(), SeenFile.beside(folder.resolve("log.csv")));
  }

  private static Snapshot until(LiveEngine engine, Predicate<Snapshot> wanted)
      throws InterruptedException {
    Snapshot snapshot = engine.snapshot();
    for (int tries = 0; tries < 3000 && !wanted.test(snapshot); tries++) {
      Thread.sleep(10);
      snapshot = engine.snapshot();
    }
    assertThat(wanted.test(snapshot)).as("%s", snapshot).isTrue();
    return snapshot;
  }

  /** A feed that hands over everything as fast as it can. */
  private static final class AllAtOnce implements Feed {
    private final SimulatedLog log;
    private final int rows;
    private final boolean keepsRows;
    private final CountDownLatch stop = new CountDownLatch(1);

    AllAtOnce(SimulatedLog log, int rows, boolean keepsRows) {
      this.log = log;
      this.rows = rows;
      this.keepsRows = keepsRows;
    }

    @Override
    public String name() {
      return "all at once";
    }

    @Override
    public boolean keepsRows() {
      return keepsRows;
    }

    @Override
    public void start(Listener listener) {
      Thread thread = new Thread(() -> run(listener));
      thread.setDaemon(true);
      thread.start();
    }

    private void run(Listener listener) {
      try {
        listener.header(LogHeader.read("log", 1, Simulation.header(), Profiles.NONE));
        for (int row = 0; row < rows; row++) {
          listener.row(
              row + 2L, log.lines().get(row).getBytes(StandardCharsets.UTF_8), SimulatedLog.NOW);
        }
        do {
          listener.caughtUp(SimulatedLog.NOW);
        } while (!stop.await(10, TimeUnit.MILLISECONDS));
      } catch (IntakeException | InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }

    @Override
    public void close() {
      stop.countDown();
    }
  }
}
