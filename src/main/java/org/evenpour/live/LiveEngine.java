package org.evenpour.live;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import org.evenpour.feed.Feed;
import org.evenpour.feed.GrowingLog;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.intake.LogHeader;
import org.evenpour.intake.Profiles;
import org.evenpour.intake.WildTimes;
import org.evenpour.plant.PlantNow;
import org.evenpour.plant.Seen;
import org.evenpour.plant.SeenFile;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * From a feed to snapshots: what the feed's thread hands over waits in a bounded queue; one thread
 * takes it in, leaves a snapshot and tells whoever listens. What takes longer, audits and links, is
 * done on a thread of its own meanwhile, and no anode waits for it.
 *
 * <p>Where the queue is full, a feed whose source keeps its rows waits; of any other the row is
 * lost, counted and shown. {@link #snapshot}, {@link #onSnapshot} and {@link #acknowledge} may be
 * called by any thread and never wait.
 */
public final class LiveEngine implements AutoCloseable {
  /** Some 80 hours of casting: an engine that is late by more will not catch up. */
  static final int QUEUE = 10_000;

  private static final long WAIT_MILLIS = 1_000;
  private static final long STOP_MILLIS = 5_000;

  /** A choice: by then an anode is painted, and its processor is free for what takes longer. */
  private static final long SETTLE_MILLIS = 50;

  private static final long LOOK_AROUND_NANOS = TimeUnit.SECONDS.toNanos(1);

  private Feed feed;
  private LiveRecord record;
  private final @Nullable Plant plant;
  private Profiles profiles = Profiles.NONE;
  private boolean isBeginningAnew;
  private volatile @Nullable Taking taking;
  private long lookedAround = System.nanoTime();
  private final InstantSource clock;
  private final BlockingQueue<Item> queue;
  private final Queue<Seen> acknowledged = new ConcurrentLinkedQueue<>();
  private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
  private final AtomicLong lost = new AtomicLong();
  private final Thread thread = new Thread(this::run, "evenpour-engine");

  /** One thread, even for streams in parallel: the screen needs a processor. */
  private final ForkJoinPool beside = new ForkJoinPool(1);

  private final Function<Settling, Settling.Settled> judge;
  private @Nullable CompletableFuture<Settling.Settled> settling;
  private WildTimes wild = WildTimes.lookedFor();
  private volatile Snapshot latest;
  private volatile boolean closed;

  /** What came of the feed. */
  private sealed interface Item {
    record Header(LogHeader header) implements Item {}

    @SuppressWarnings("ArrayRecordComponent") // handed on, never compared
    record Row(long line, byte[] text, Instant at) implements Item {}

    record CaughtUp(Instant at) implements Item {}

    record Trouble(@Nullable Remark what) implements Item {}

    /** Something is to be done that did not come of the feed. */
    record Wake() implements Item {}
  }

  /**
   * @param feed is started and closed by this engine
   * @param record takes the rows in; from now on the engine's thread owns it
   * @param clock tells when a signal was acknowledged
   */
  public LiveEngine(Feed feed, LiveRecord record, InstantSource clock) {
    this(feed, record, clock, QUEUE);
  }

  /** With another length of the queue. */
  LiveEngine(Feed feed, LiveRecord record, InstantSource clock, int queueLength) {
    this(feed, record, clock, queueLength, Settling::run);
  }

  /** With another way to judge. */
  LiveEngine(
      Feed feed,
      LiveRecord record,
      InstantSource clock,
      int queueLength,
      Function<Settling, Settling.Settled> judge) {
    this(feed, record, clock, queueLength, judge, null);
  }

  /**
   * Follows a log, and what the plant says beside it. When the profile changes, the log is read
   * anew by it; until that is done the last snapshot stands.
   *
   * @param log need not be there yet
   * @param beside what the plant says; from now on the engine's thread owns it
   * @param clock tells when something came
   * @param pause between two looks at the log
   */
  public static LiveEngine following(
      Path log, PlantNow beside, InstantSource clock, Duration pause) {
    Plant plant = new Plant(log, beside, clock, pause);
    Feed feed = plant.feed();
    WildTimes wild = WildTimes.lookedFor();
    LiveEngine engine =
        new LiveEngine(feed, plant.record(feed, wild), clock, QUEUE, Settling::run, plant);
    engine.wild = wild;
    engine.profiles = beside.profiles();
    return engine;
  }

  /** What a feed and a record are made of. */
  private record Plant(Path log, PlantNow beside, InstantSource clock, Duration pause) {
    Feed feed() {
      return new GrowingLog(log, beside.profiles(), clock, pause);
    }

    LiveRecord record(Feed feed, WildTimes wild) {
      LiveRecord record =
          new LiveRecord(
              feed.name(), beside.profiles(), beside.events(), SeenFile.beside(log), wild);
      record.plant(beside.records());
      return record;
    }
  }

  private LiveEngine(
      Feed feed,
      LiveRecord record,
      InstantSource clock,
      int queueLength,
      Function<Settling, Settling.Settled> judge,
      @Nullable Plant plant) {
    this.judge = judge;
    this.plant = plant;
    this.feed = feed;
    this.record = record;
    this.clock = clock;
    queue = new ArrayBlockingQueue<>(queueLength);
    latest = Snapshot.before(feed.name());
    thread.setDaemon(true);
  }

  /** Begins; to be called once. */
  public void start() {
    thread.start();
  }

  /** What is known now. */
  public Snapshot snapshot() {
    return latest;
  }

  /**
   * Tells, on the engine's thread, whenever there is a new snapshot; what is told must not wait.
   *
   * @return ends it
   */
  public Runnable onSnapshot(Runnable listener) {
    listeners.add(listener);
    return () -> listeners.remove(listener);
  }

  /**
   * Somebody has seen a signal. It stands in the file, and in the next snapshot, a moment later.
   *
   * @param who their name; empty where they do not say
   * @param note what they found or did
   */
  public void acknowledge(Signal signal, String who, String note) {
    acknowledged.add(Seen.of(clock.instant(), signal, who, note));
    wake();
  }

  @SuppressWarnings("ReturnValueIgnored") // where the queue is full, the engine is awake
  private void wake() {
    queue.offer(new Item.Wake());
  }

  @Override
  public void close() {
    // Never interrupted: that would close the file in which a note is just being kept.
    closed = true;
    wake();
    try {
      thread.join(STOP_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    begin();
    while (!closed) {
      try {
        goOn();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt(); // nobody here interrupts; whoever does wants an end
        break;
      } catch (RuntimeException | Error e) {
        failed(e);
      }
    }
    feed.close();
    beside.shutdownNow();
    writeAcknowledged();
  }

  private void goOn() throws InterruptedException {
    Item first = queue.poll(WAIT_MILLIS, TimeUnit.MILLISECONDS);
    if (writeAcknowledged()) {
      publish();
    }
    if (first != null) {
      List<Item> batch = new ArrayList<>();
      batch.add(first);
      queue.drainTo(batch);
      take(batch);
    }
    settled();
    if (System.nanoTime() - lookedAround >= LOOK_AROUND_NANOS) {
      lookedAround = System.nanoTime();
      lookAround();
    }
  }

  /** A fault of ours: the board says so, shows the next anodes all the same, and goes on. */
  private void failed(Throwable fault) {
    try {
      record.failed(fault);
      publish();
    } catch (RuntimeException | Error e) {
      // Not even that: the last picture stays, and does not look as if all were well.
      latest = latest.withUnjudged(Remark.of("live.unjudged", latest.rows()));
    }
  }

  private void begin() {
    Taking its = new Taking(feed.keepsRows());
    taking = its;
    feed.start(its);
  }

  /** The log is read anew; until that is done the last snapshot stands. */
  private void beginAnew(Plant its, WildTimes fresh) {
    feed.close();
    queue.clear();
    feed = its.feed();
    wild = fresh;
    record = its.record(feed, fresh);
    settling = null;
    isBeginningAnew = true;
    begin();
  }

  /** Other files may have changed: what others acknowledged, and what the plant says. */
  private void lookAround() {
    boolean isNew = record.readSeen();
    Plant its = plant;
    if (its != null) {
      its.beside().look();
      if (its.beside().profiles().equals(profiles)) {
        isNew |= record.events(its.beside().events());
        isNew |= record.plant(its.beside().records());
      } else {
        profiles = its.beside().profiles();
        beginAnew(its, WildTimes.lookedFor());
      }
      isNew |= record.plantTrouble(its.beside().trouble());
    }
    if (isNew) {
      settle();
      publish();
    }
  }

  /** The newest anode is shown first; what takes longer follows. */
  private void take(List<Item> batch) {
    boolean caughtUp = false;
    boolean isNew = false;
    for (Item item : batch) {
      caughtUp |= item instanceof Item.CaughtUp;
      isNew |= !(item instanceof Item.CaughtUp || item instanceof Item.Wake);
      try {
        take(item);
      } catch (RuntimeException e) {
        record.failed(e); // the rows behind it are not to be lost with it
      }
    }
    Plant its = plant;
    if (caughtUp && its != null && wild.isAnyFound()) {
      beginAnew(its, wild.forNextReadingOfGrown());
      return;
    }
    if (isNew) {
      publish();
    } else if (caughtUp) {
      latest = record.lookedAt(latest);
    }
    if (caughtUp) {
      settle();
    }
  }

  /** Begins what takes longer, if there is something and nothing was begun. */
  private void settle() {
    if (settling != null || !record.isUnsettled()) {
      return;
    }
    Settling begun = record.settling();
    if (begun != null) {
      // Until there are limits nothing else is to be shown, and every processor may help.
      CompletableFuture<Settling.Settled> its =
          begun.by() == null
              ? CompletableFuture.supplyAsync(() -> judge.apply(begun))
              : CompletableFuture.supplyAsync(
                  () -> judge.apply(begun),
                  CompletableFuture.delayedExecutor(SETTLE_MILLIS, TimeUnit.MILLISECONDS, beside));
      settling = its;
      its.whenComplete((done, failed) -> wake());
    }
  }

  private void settled() {
    CompletableFuture<Settling.Settled> its = settling;
    if (its != null && its.isDone()) {
      settling = null;
      try {
        record.settled(its.join());
      } catch (CompletionException e) {
        record.failed(e.getCause() == null ? e : e.getCause());
      }
      publish();
    }
  }

  private void publish() {
    Snapshot fresh = record.snapshot(lost.get());
    if (isBeginningAnew && fresh.reading() && fresh.trouble() == null) {
      return;
    }
    isBeginningAnew = false;
    latest = fresh;
    listeners.forEach(Runnable::run);
  }

  private boolean writeAcknowledged() {
    boolean any = false;
    for (Seen one = acknowledged.poll(); one != null; one = acknowledged.poll()) {
      record.seen(one);
      any = true;
    }
    return any;
  }

  private void take(Item item) {
    if (item instanceof Item.Row row) {
      record.row(row.line(), row.text(), row.at());
    } else if (item instanceof Item.Header header) {
      record.header(header.header());
    } else if (item instanceof Item.CaughtUp caughtUp) {
      record.looked(caughtUp.at());
    } else if (item instanceof Item.Trouble trouble) {
      record.trouble(trouble.what());
    }
  }

  /** Puts what is heard into the queue, on the feed's thread. */
  private final class Taking implements Feed.Listener {
    private final boolean feedKeepsRows;

    Taking(boolean feedKeepsRows) {
      this.feedKeepsRows = feedKeepsRows;
    }

    @Override
    public void header(LogHeader header) {
      put(new Item.Header(header));
    }

    @Override
    public void row(long line, byte[] text, Instant arrivedAt) {
      Item.Row row = new Item.Row(line, text, arrivedAt);
      if (feedKeepsRows) {
        put(row);
      } else if (!queue.offer(row)) {
        lost.incrementAndGet();
      }
    }

    @Override
    public void caughtUp(Instant at) {
      if (queue.remainingCapacity() > 0) { // else it is told again soon
        put(new Item.CaughtUp(at));
      }
    }

    @Override
    public void trouble(Remark what) {
      put(new Item.Trouble(what));
    }

    @Override
    public void recovered() {
      put(new Item.Trouble(null));
    }

    private void put(Item item) {
      if (taking != this) {
        return; // of a feed that hung when it was closed
      }
      try {
        queue.put(item);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt(); // the feed is being closed
      }
    }
  }
}
