package org.evenpour.feed;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Arrays;
import java.util.Objects;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.evenpour.casting.FileException;
import org.evenpour.intake.ArrivingRecords;
import org.evenpour.intake.IntakeException;
import org.evenpour.intake.LogHeader;
import org.evenpour.intake.Profiles;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * Follows a casting log that grows: reads it from its beginning, then looks again and again whether
 * something was added. A look asks for the file's time and length and no more; only when they are
 * others, and once a second, is the file itself looked into.
 *
 * <p>A last line without its end is waited for. A log that was renamed away is read to its end and
 * the new one of its name from its beginning; one that was cut off or written anew is read from its
 * beginning, unless what was read still stands in it; rows that were handed on before are not
 * handed on again. A log that is not there yet, or cannot be read, is told and tried again.
 *
 * <p>Its state is owned by its own thread; {@link #start} and {@link #close} belong to the owner.
 */
public final class GrowingLog implements Feed {
  private static final System.Logger LOG = System.getLogger("org.evenpour.feed");

  private static final int CHUNK = 1 << 16;

  /** So many of the last bytes read must still stand where they stood. */
  private static final int REMEMBERED = 512;

  private static final long STOP_SECONDS = 5;

  /** So long after the last look into the file it is looked into again, changed or not. */
  private static final long TELL_NANOS = TimeUnit.SECONDS.toNanos(1);

  /** Looking takes at most one part in so many of the time, however slow the drive. */
  private static final int SHARE = 10;

  private final Path file;
  private final Profiles profiles;
  private final InstantSource clock;
  private final Duration pause;
  private final CountDownLatch stop = new CountDownLatch(1);
  private @Nullable Thread thread;

  private final byte[] chunk = new byte[CHUNK];
  private @Nullable FileChannel channel;
  private @Nullable Object key;
  private @Nullable FileStamp stamp;
  private ArrivingRecords records;
  private long position;
  private byte[] remembered = new byte[0];
  private boolean unusable;
  private final HandedRows handed = new HandedRows();
  private @Nullable Remark told;

  /**
   * A log to follow.
   *
   * @param file need not be there yet
   * @param profiles whose headings are made the names that the program knows
   * @param clock tells when something came
   * @param pause between two looks; longer where the drive is slow to answer
   */
  public GrowingLog(Path file, Profiles profiles, InstantSource clock, Duration pause) {
    this.file = file;
    this.profiles = profiles;
    this.clock = clock;
    this.pause = pause;
    records = new ArrivingRecords(file.toString(), profiles);
  }

  @Override
  public String name() {
    Path name = file.getFileName();
    return name == null ? file.toString() : name.toString();
  }

  @Override
  public boolean keepsRows() {
    return true;
  }

  @Override
  public void start(Listener listener) {
    if (thread != null) {
      throw new IllegalStateException("this feed was started before");
    }
    Thread follower = new Thread(() -> follow(listener), "evenpour-feed");
    follower.setDaemon(true);
    thread = follower;
    follower.start();
  }

  @Override
  public void close() {
    stop.countDown();
    Thread follower = thread;
    if (follower == null || follower == Thread.currentThread()) {
      return;
    }
    follower.interrupt();
    try {
      follower.join(TimeUnit.SECONDS.toMillis(STOP_SECONDS));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void follow(Listener listener) {
    try {
      long took = 0;
      long pauseNanos;
      long lookedInto = System.nanoTime() - TELL_NANOS;
      do {
        long before = took;
        long began = System.nanoTime();
        if (began - lookedInto >= TELL_NANOS || !Objects.equals(FileStamp.of(file), stamp)) {
          look(listener);
          lookedInto = began;
        }
        took = System.nanoTime() - began;
        // One look that was only held up says nothing of the drive.
        pauseNanos = Math.max(pause.toNanos(), (SHARE - 1) * Math.min(took, before));
      } while (!stop.await(pauseNanos, TimeUnit.NANOSECONDS));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      closeChannel();
    }
  }

  /** Looks into the file once and hands over all that is new; of whoever does without a thread. */
  public void look(Listener listener) {
    try {
      lookInto(listener);
      if (!unusable) {
        if (told != null) {
          told = null;
          listener.recovered();
        }
        listener.caughtUp(clock.instant());
      }
    } catch (IntakeException e) {
      unusable = true;
      tell(listener, e.remark());
    } catch (NoSuchFileException e) {
      // Perhaps renamed away and not there anew yet: the channel still leads to its end.
      tell(listener, trouble(e));
    } catch (IOException e) {
      closeChannel();
      if (stop.getCount() > 0) {
        tell(listener, trouble(e));
      }
    } catch (RuntimeException e) {
      // A fault of ours in what stands there: told, and tried again when something else does.
      LOG.log(System.Logger.Level.WARNING, "a look into " + file + " failed", e);
      tell(listener, trouble(new IOException(e)));
    }
  }

  private void lookInto(Listener listener) throws IOException, IntakeException {
    stamp = null;
    BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
    FileStamp fresh = FileStamp.of(now);
    stamp = fresh; // of before the file is read: what is added meanwhile makes another
    if (now.isDirectory()) {
      throw new FileException(Remark.of("live.folder"));
    }
    FileChannel old = channel;
    if (old == null || !fresh.identity().equals(key)) {
      channel = FileChannel.open(file, StandardOpenOption.READ);
      key = fresh.identity();
    }
    FileChannel current = Objects.requireNonNull(channel);
    try {
      if (position > 0 && !holdsWhatWasRead(current)) {
        if (old != null && old != current && !unusable) {
          // Renamed away: what was added to it since the last look is still to be had.
          readOn(old, listener, clock.instant());
          records.finish(handing(listener, clock.instant()));
        }
        restart();
      }
    } finally {
      if (old != current) {
        close(old);
      }
    }
    if (!unusable) {
      Instant grown = now.lastModifiedTime().toInstant();
      readOn(current, listener, position == 0 ? earlier(grown) : clock.instant());
    }
  }

  private boolean holdsWhatWasRead(FileChannel in) throws IOException {
    ByteBuffer there = ByteBuffer.allocate(remembered.length);
    while (there.hasRemaining()) {
      long at = position - remembered.length + there.position();
      if (in.read(there, at) < 0) {
        return false;
      }
    }
    return Arrays.equals(there.array(), remembered);
  }

  private void readOn(FileChannel from, Listener listener, Instant arrivedAt)
      throws IOException, IntakeException {
    ArrivingRecords.Reader reader = handing(listener, arrivedAt);
    while (stop.getCount() > 0) {
      int count = from.read(ByteBuffer.wrap(chunk), position);
      if (count <= 0) {
        records.pause(reader);
        return;
      }
      position += count;
      remember(count);
      records.add(chunk, count, reader);
    }
  }

  private void remember(int count) {
    int kept = Math.min(REMEMBERED, remembered.length + count);
    byte[] next = new byte[kept];
    int fresh = Math.min(kept, count);
    int old = kept - fresh;
    System.arraycopy(remembered, remembered.length - old, next, 0, old);
    System.arraycopy(chunk, count - fresh, next, old, fresh);
    remembered = next;
  }

  private void restart() {
    handed.again();
    records = new ArrivingRecords(file.toString(), profiles);
    position = 0;
    remembered = new byte[0];
    unusable = false;
  }

  private ArrivingRecords.Reader handing(Listener listener, Instant arrivedAt) {
    return new ArrivingRecords.Reader() {
      @Override
      public void header(LogHeader header) {
        handed.header(header);
        listener.header(header);
      }

      @Override
      public void record(long line, byte[] text) {
        if (handed.isNew(text)) {
          listener.row(line, text, arrivedAt);
        }
      }
    };
  }

  /** A file's time may be ahead of this clock where it lies on another machine. */
  private Instant earlier(Instant time) {
    Instant now = clock.instant();
    return time.isBefore(now) ? time : now;
  }

  private void tell(Listener listener, Remark what) {
    if (!what.equals(told)) {
      told = what;
      listener.trouble(what);
    }
  }

  private Remark trouble(IOException e) {
    Remark why =
        e instanceof NoSuchFileException
            ? Remark.of("live.missing")
            : e instanceof AccessDeniedException
                ? Remark.of("live.denied")
                : Remark.of("live.unreadable", FileException.reason(e));
    return Remark.of("at.file", file.toString(), why);
  }

  private void closeChannel() {
    close(channel);
    channel = null;
  }

  private static void close(@Nullable FileChannel open) {
    if (open != null) {
      try {
        open.close();
      } catch (IOException e) {
        // It was only read; nothing is lost.
      }
    }
  }
}
