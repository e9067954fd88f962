package org.evenpour.view.screen;

import static org.evenpour.view.screen.Screens.onEventThread;

import com.sun.management.OperatingSystemMXBean;
import java.awt.AWTEvent;
import java.awt.Component;
import java.awt.EventQueue;
import java.awt.Frame;
import java.awt.Toolkit;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.Writer;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.RepaintManager;
import org.evenpour.casting.WheelRecord;
import org.evenpour.intake.IntakeException;
import org.evenpour.live.LiveEngine;
import org.evenpour.plant.PlantFiles;
import org.evenpour.plant.PlantNow;
import org.evenpour.view.model.BoardModel;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.Selection;
import org.jspecify.annotations.Nullable;

/** What {@code scripts/bench live} measures; passes and fails nothing. Needs a display. */
final class LiveBench {
  private static final int WARM_UP = 40;
  private static final int ANODES = 200;
  private static final long SEED = 20_260_307;
  private static final int LEAST_PAUSE_MILLIS = 20;
  private static final int MOST_PAUSE_MILLIS = 500;
  private static final long QUIET_MILLIS = 20_000;

  /** What stands on the board when it was painted, and when that was. */
  private record Painted(String place, long atNanos) {}

  private final List<Painted> painted = new ArrayList<>();
  private final FileChannel log;
  private final List<String> rows;
  private final int turnColumn;
  private final int moldColumn;
  private int next;

  private LiveBench(FileChannel log, String headings, List<String> rows) {
    this.log = log;
    this.rows = rows;
    List<String> columns = List.of(headings.split(",", -1));
    turnColumn = columns.indexOf("turn");
    moldColumn = columns.indexOf("mold");
  }

  /**
   * {@code LOG PROFILE BEFORE FOLDER [desk [PAGE...]]}: follows a log of so many anodes of LOG in
   * FOLDER, and appends those that follow in LOG; looks at the board, or at all pictures of these
   * pages of the desk, with the first mold and the first signal open; of all pages where none is
   * named.
   */
  public static void main(String[] arguments) throws Exception {
    Path profile = Path.of(arguments[1]);
    int before = Integer.parseInt(arguments[2]);
    Path followed = Path.of(arguments[3]).resolve("followed-log.csv");
    Files.deleteIfExists(followed);
    List<String> rows = new ArrayList<>();
    String headings;
    try (BufferedReader in = Files.newBufferedReader(Path.of(arguments[0]));
        Writer out = Files.newBufferedWriter(followed)) {
      headings = in.readLine();
      out.write(headings + "\n");
      for (int row = 0; row < before; row++) {
        out.write(in.readLine() + "\n");
      }
      for (String row = in.readLine(); row != null && rows.size() < 4_000; row = in.readLine()) {
        rows.add(row);
      }
    }
    try (FileChannel log = FileChannel.open(followed, StandardOpenOption.APPEND)) {
      LiveBench bench = new LiveBench(log, headings, rows);
      if (arguments.length > 4) {
        MainWindow window = onEventThread(() -> desk(followed, profile));
        bench.watch(() -> place(window));
        while (onEventThread(() -> place(window) == null)) {
          Thread.sleep(50);
        }
        Thread.sleep(5_000); // whatever is drawn for the first time
        List<String> pages = List.of(arguments).subList(5, arguments.length);
        for (String page : pages.isEmpty() ? Pages.KEYS : pages) {
          onEventThread(
              () -> {
                turnTo(window.desk(), page);
                return page;
              });
          bench.latency("desk, " + page + ",", before);
        }
      } else {
        bench.watch(
            () -> {
              BoardScreen board = board();
              return board == null || !isPainted(board) ? null : board.model().place();
            });
        Viewer.follow(
            followed, new PlantFiles(List.of(), profile, null), "en", false, Clock.systemUTC());
        while (!onEventThread(LiveBench::isComplete)) {
          Thread.sleep(50);
        }
        Thread.sleep(5_000); // the desk, behind the board, has read the log as well
        bench.latency("board", before);
        bench.processor(before);
      }
    }
    System.exit(0);
  }

  private static void turnTo(DeskPlace desk, String page) {
    Selection selection = desk.selection();
    desk.turnTo(page);
    OpenedLog log = Objects.requireNonNull(desk.log());
    selection.chooseMold(
        page.equals("molds") ? log.wheels().get(0).record().molds().name(0) : null);
    selection.chooseSignal(
        page.equals("signals") && !log.ranked().isEmpty() ? log.ranked().get(0) : null);
  }

  private static MainWindow desk(Path followed, Path profile) {
    try {
      PlantFiles files = new PlantFiles(List.of(followed), profile, null);
      LiveEngine engine =
          LiveEngine.following(followed, new PlantNow(files), Clock.systemUTC(), Viewer.LOOK_EVERY);
      MainWindow window = new MainWindow("en", false, InstantSource.system(), made -> List.of());
      window.frame().setVisible(true);
      engine.start();
      window.follow(engine::snapshot, engine::onSnapshot, files);
      return window;
    } catch (IntakeException | IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The newest anode that the desk knows; null where a picture that is seen is not drawn yet. */
  private static @Nullable String place(MainWindow window) {
    OpenedLog log = window.desk().log();
    if (log == null) {
      return null;
    }
    boolean anyPicture = false;
    for (Component part : Screens.all(window.frame())) {
      boolean isPicture = part instanceof PictureView || part instanceof StripView;
      if (isPicture && part.isShowing()) {
        anyPicture = true;
        boolean isCurrent =
            part instanceof PictureView view ? view.isCurrent() : ((StripView) part).isCurrent();
        if (!isCurrent || !isPainted((JComponent) part)) {
          return null;
        }
      }
    }
    if (!anyPicture) {
      return null;
    }
    WheelRecord read = log.wheels().get(0).record();
    int row = read.rows() - 1;
    return place(read.turn().get(row), read.molds().name(read.mold().get(row)));
  }

  private static String place(int turn, String mold) {
    return "Turn " + turn + "    Mold " + mold;
  }

  /** Notes what is shown whenever the event thread has done something, painting included. */
  private void watch(Supplier<@Nullable String> shows) {
    Toolkit.getDefaultToolkit()
        .getSystemEventQueue()
        .push(
            new EventQueue() {
              @Override
              protected void dispatchEvent(AWTEvent event) {
                super.dispatchEvent(event);
                String place = shows.get();
                if (place != null) {
                  Toolkit.getDefaultToolkit().sync(); // what waits for the display is handed to it
                  synchronized (painted) {
                    painted.add(new Painted(place, System.nanoTime()));
                    painted.notifyAll();
                  }
                }
              }
            });
  }

  /** Whether all that changed in it is painted. */
  private static boolean isPainted(JComponent part) {
    return RepaintManager.currentManager(part).getDirtyRegion(part).isEmpty();
  }

  private void latency(String where, int before) throws Exception {
    SplittableRandom random = new SplittableRandom(SEED);
    double[] millis = new double[ANODES];
    for (int i = -WARM_UP; i < ANODES; i++) {
      Thread.sleep(random.nextInt(LEAST_PAUSE_MILLIS, MOST_PAUSE_MILLIS));
      double took = appendAndWait();
      if (i >= 0) {
        millis[i] = took;
      }
    }
    Arrays.sort(millis);
    System.out.printf(
        Locale.ROOT,
        "%s behind %,7d anodes: from appended to painted, %d anodes: median %.1f ms, 95 %% under %.1f"
            + " ms, longest %.1f ms, %d over 50 ms%n",
        where,
        before,
        ANODES,
        millis[ANODES / 2],
        millis[ANODES * 95 / 100],
        millis[ANODES - 1],
        Arrays.stream(millis).filter(each -> each > 50).count());
  }

  private void processor(int before) throws Exception {
    double silent = processorShare(() -> Thread.sleep(QUIET_MILLIS));
    double casting =
        processorShare(
            () -> {
              for (long second = 0; second < QUIET_MILLIS / 1_000; second++) {
                append();
                Thread.sleep(1_000);
              }
            });
    System.out.printf(
        Locale.ROOT,
        "behind %,7d anodes: %.1f %% of one processor while silent, %.1f %% with an anode a"
            + " second%n",
        before,
        100 * silent,
        100 * casting);
  }

  /** Milliseconds from just before the row is written to just after the board shows it. */
  private double appendAndWait() throws IOException, InterruptedException {
    String[] cells = rows.get(next).split(",", -1);
    String place = place(Integer.parseInt(cells[turnColumn]), cells[moldColumn]);
    synchronized (painted) {
      painted.clear();
    }
    long from = append();
    synchronized (painted) {
      int looked = 0;
      while (true) {
        for (; looked < painted.size(); looked++) {
          if ((painted.get(looked).place() + "    ").contains(place + "    ")) {
            return (painted.get(looked).atNanos() - from) / 1e6;
          }
        }
        painted.wait(10_000);
        if (looked == painted.size()) {
          throw new IllegalStateException("not painted within 10 s: " + place);
        }
      }
    }
  }

  private long append() throws IOException {
    ByteBuffer row = ByteBuffer.wrap((rows.get(next++) + "\n").getBytes(StandardCharsets.UTF_8));
    long from = System.nanoTime();
    while (row.hasRemaining()) {
      log.write(row);
    }
    return from;
  }

  /** Something that takes a while. */
  private interface Work {
    void run() throws IOException, InterruptedException;
  }

  private static double processorShare(Work work) throws IOException, InterruptedException {
    OperatingSystemMXBean system =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    long began = System.nanoTime();
    long before = system.getProcessCpuTime();
    work.run();
    return (double) (system.getProcessCpuTime() - before) / (System.nanoTime() - began);
  }

  private static boolean isComplete() {
    BoardScreen board = board();
    if (board == null) {
      return false;
    }
    BoardModel model = board.model();
    return model.figure() != null && model.verdict().isKnown();
  }

  private static @Nullable BoardScreen board() {
    for (Frame frame : Frame.getFrames()) {
      if (frame.isShowing()) {
        for (Component part : Screens.all(frame)) {
          if (part instanceof BoardScreen screen && screen.isShowing()) {
            return screen;
          }
        }
      }
    }
    return null;
  }
}
