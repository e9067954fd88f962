package org.evenpour.view.screen;

import java.awt.BorderLayout;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import org.evenpour.casting.CauseMark;
import org.evenpour.live.LogsAtRest;
import org.evenpour.live.RecordNow;
import org.evenpour.live.Snapshot;
import org.evenpour.plant.PlantFiles;
import org.evenpour.view.model.Approving;
import org.evenpour.view.model.BoardDesk;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.Marking;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.Selection;
import org.evenpour.view.model.StretchReport;
import org.evenpour.words.Remark;
import org.jspecify.annotations.Nullable;

/**
 * The quality engineer's place: opens logs on a worker thread and shows the desk, or what to do
 * while there is none. Owned by the event thread.
 */
public final class DeskPlace implements Place {
  private final FileAsk ask;
  private final Selection selection = new Selection();
  private final Consumer<OpenedLog> onOpened;
  private final Marking marking;
  private final Approving approving;
  private List<CauseMark> marks = List.of();
  // A worker that saves asks for both. What is shown stays while others are read.
  private volatile PlantFiles sources = PlantFiles.NONE;
  private volatile PlantFiles shown = PlantFiles.NONE;
  private @Nullable OpenedLog log;
  private String page = Pages.KEYS.get(0);
  private @Nullable JPanel host;
  private @Nullable Look look;
  private @Nullable DeskScreen desk;
  private final StretchFigures figures = new StretchFigures(selection, this::log, this::figured);
  private final AtomicBoolean isDue = new AtomicBoolean();
  private @Nullable Runnable unlisten;
  private @Nullable Supplier<Snapshot> engine;
  private @Nullable LogsAtRest resting;
  private @Nullable RecordNow heard;
  private boolean isArranging;
  private @Nullable JProgressBar progress;
  private @Nullable Throwable unshown;

  /**
   * @param ask for files
   * @param clock tells when a cause was marked
   * @param onOpened is told of each log that was opened, on the event thread
   */
  public DeskPlace(FileAsk ask, InstantSource clock, Consumer<OpenedLog> onOpened) {
    this.ask =
        new FileAsk() {
          @Override
          public List<Path> open() {
            return ask.open();
          }

          @Override
          public @Nullable Path save(String proposedName) {
            return ask.save(proposedName);
          }

          @Override
          public void mayWrite(Path file) throws IOException {
            sources.notToBeLost().mayWrite(file);
            shown.notToBeLost().mayWrite(file);
          }
        };
    this.onOpened = onOpened;
    marking = new CauseKeeping(() -> shown.causesFile(), clock, this::marked);
    approving = new LimitsKeeping(() -> shown.limitsFile(), clock);
  }

  @Override
  public String key() {
    return "desk";
  }

  /** What is chosen on the desk. */
  public Selection selection() {
    return selection;
  }

  /** What is open; null = nothing. */
  public @Nullable OpenedLog log() {
    return log;
  }

  @Override
  public JComponent screen(Look newLook) {
    look = newLook;
    JPanel panel = Parts.panel("place.desk", new BorderLayout(), newLook.ink().ground());
    host = panel;
    panel.addComponentListener(
        new ComponentAdapter() {
          @Override
          public void componentShown(ComponentEvent event) {
            hear(); // it may have grown behind the board
            refresh();
          }
        });
    fill();
    return panel;
  }

  /** Asks which files to open, and opens them. */
  public void ask() {
    List<Path> files = ask.open();
    if (!files.isEmpty()) {
      open(sources.with(files));
    }
  }

  /** Opens files that were dropped or chosen beside those that are open. */
  public void add(List<Path> files) {
    open(sources.with(files));
  }

  /** Reads the same files again; what an engine follows, it reads again by itself. */
  public void reload() {
    if (!isFollowing() && !sources.logs().isEmpty()) {
      open(sources);
    }
  }

  /** Opens files; what was being read is given up. */
  public void open(PlantFiles next) {
    unfollow();
    sources = next;
    if (!next.logs().isEmpty()) {
      LogsAtRest its = new LogsAtRest(next);
      resting = its;
      listen(its::snapshot, its::onSnapshot);
      its.start();
    }
    fill();
  }

  /**
   * Shows from now on what an engine knows of the log that it follows: each anode as it comes, and
   * the figures of the last turn that closed.
   *
   * @param snapshots the engine's newest
   * @param telling when there is a newer one
   * @param followed the log, its profile and its events
   */
  public void follow(Supplier<Snapshot> snapshots, BoardDesk.Telling telling, PlantFiles followed) {
    unfollow();
    sources = followed;
    listen(snapshots, telling);
    fill();
    hear();
  }

  private void listen(Supplier<Snapshot> snapshots, BoardDesk.Telling telling) {
    engine = snapshots;
    unlisten = telling.tell(this::news);
  }

  /** On any thread: however much is new, it is looked at once. */
  private void news() {
    if (isDue.compareAndSet(false, true)) {
      SwingUtilities.invokeLater(
          () -> {
            isDue.set(false);
            hear();
          });
    }
  }

  @SuppressWarnings("ReferenceEquality") // the very same audit; to compare it would cost more
  private void hear() {
    Supplier<Snapshot> source = engine;
    if (source == null) {
      return;
    }
    RecordNow now = source.get().record();
    RecordNow before = heard;
    OpenedLog known = log;
    JPanel panel = host;
    if (now == null) {
      showProgress();
    } else if (now == before) {
      refresh();
    } else if (known == null || before == null || !now.goesOnFrom(before)) {
      arrange(now, source);
    } else if (now.report() != before.report()) {
      heard = now;
      renew(known.grown(now, false));
    } else if (panel != null && panel.isVisible()) {
      heard = now;
      log = known.grown(now, true);
      refresh();
    }
  }

  /** The rows of another reading are arranged beside: a long record's would hold up the screen. */
  private void arrange(RecordNow now, Supplier<Snapshot> source) {
    if (isArranging) {
      return; // what there is then is heard when it is done
    }
    isArranging = true;
    CompletableFuture.supplyAsync(() -> OpenedLog.of(now))
        .whenComplete(
            (opened, why) ->
                SwingUtilities.invokeLater(
                    () -> {
                      isArranging = false;
                      if (engine == source) {
                        arranged(now, opened, why);
                      }
                      hear();
                    }));
  }

  private void arranged(RecordNow now, @Nullable OpenedLog opened, @Nullable Throwable why) {
    RecordNow before = heard;
    OpenedLog known = log;
    unshown = why;
    heard = now;
    if (opened == null) {
      fill();
    } else if (before != null) {
      renew(opened);
    } else {
      if (known != null && !known.record().logs().equals(opened.record().logs())) {
        selection.forget();
      }
      show(opened, sources);
    }
  }

  private void refresh() {
    DeskScreen now = desk;
    if (now != null) {
      now.refresh();
    }
  }

  /** Puts the same log, read again, in the place of what is shown; nothing else changes. */
  void renew(OpenedLog again) {
    OpenedLog before = log;
    if (before == null) {
      show(again);
      return;
    }
    // A file that is only added to may have grown while the logs were read.
    boolean isBehind = again.report().causes().read() < marks.size();
    log = (isBehind ? again.marked(marks) : again).with(before.part());
    onOpened.accept(again);
    figures.again();
    selection.renew(before, again);
    DeskScreen seen = desk;
    if (seen != null) {
      seen.refreshUnseen();
    }
  }

  /** Whether files are being read just now. */
  boolean isReading() {
    return resting != null && heard == null && failure() == null;
  }

  /** Why the newest reading failed; null where it did not. */
  private @Nullable Throwable failure() {
    LogsAtRest its = resting;
    return unshown != null || its == null ? unshown : its.failure();
  }

  /** Whether more of the log is expected. */
  boolean isFollowing() {
    return engine != null && resting == null;
  }

  /** Why the log, which has changed, could not be read again; null where it could. */
  @Nullable String notRenewed() {
    Throwable why = heard == null ? null : failure();
    Supplier<Snapshot> source = engine;
    Remark stuck = source == null ? null : source.get().stuck();
    Look now = look;
    if (now == null) {
      return null;
    }
    return why != null ? Reasons.of(why, now) : stuck == null ? null : now.language().say(stuck);
  }

  /** Shows what now stands in the file of marks, unless another log was opened meanwhile. */
  private void marked(Path file, List<CauseMark> all) {
    OpenedLog now = log;
    if (now != null && !shown.logs().isEmpty() && shown.causesFile().path().equals(file)) {
      marks = all;
      log = now.marked(all);
      refresh();
    }
  }

  private void figured(@Nullable StretchReport part) {
    OpenedLog now = log;
    if (now != null) {
      log = now.with(part);
      refresh();
    }
  }

  /** The window is gone: nothing is read, heard or computed any more. */
  void close() {
    figures.cancel();
    unfollow();
  }

  private void unfollow() {
    Runnable end = unlisten;
    if (end != null) {
      end.run();
    }
    LogsAtRest its = resting;
    if (its != null) {
      its.close();
    }
    unlisten = null;
    engine = null;
    resting = null;
    heard = null;
    unshown = null;
  }

  /** Shows what is already opened, and keeps marks where its files say. */
  void show(OpenedLog opened, PlantFiles its) {
    sources = its;
    shown = its;
    marks = List.of();
    show(opened);
  }

  /** Shows what is already opened. */
  public void show(OpenedLog opened) {
    log = opened;
    figures.forget();
    onOpened.accept(opened);
    selection.chooseWheel(opened.wheel(selection.wheel()).record().wheel());
    opened.fit(selection);
    fill();
  }

  /** The page that is seen; null while there is no desk. */
  @Nullable DeskScreen desk() {
    return desk;
  }

  /** Turns to a page. */
  public void turnTo(String key) {
    page = key;
    DeskScreen now = desk;
    if (now != null) {
      now.turnTo(key);
    }
  }

  /** Closes what is open beside a list, else the stretch. */
  void back() {
    DeskScreen now = desk;
    if (now != null) {
      now.back();
    }
  }

  /** Opens the list of what can be saved. */
  void save() {
    DeskScreen now = desk;
    if (now != null) {
      now.save().button().doClick();
    }
  }

  /** Opens the list of stretches to go to. */
  void goTo() {
    DeskScreen now = desk;
    if (now != null) {
      now.goTo().button().doClick();
    }
  }

  /** Goes to the page's filter, if it has one. */
  void filter() {
    DeskScreen now = desk;
    if (now != null) {
      now.page().filter().ifPresent(java.awt.Component::requestFocusInWindow);
    }
  }

  private void fill() {
    JPanel panel = host;
    Look now = look;
    if (panel == null || now == null) {
      return;
    }
    DeskScreen before = desk;
    if (before != null) {
      before.close();
      desk = null;
    }
    panel.removeAll();
    Tips.forget(panel);
    OpenedLog opened = log;
    boolean isBusy = isReading();
    Throwable problem = heard == null ? failure() : unshown;
    if (opened != null) {
      DeskScreen next =
          new DeskScreen(
              new Desk(
                  () -> Objects.requireNonNull(log),
                  selection,
                  now,
                  shown.logs().isEmpty() ? null : marking,
                  shown.logs().isEmpty() ? null : approving),
              new DeskScreen.Growth(this::isFollowing, this::notRenewed, figures),
              page,
              ask,
              key -> page = key);
      desk = next;
      panel.add(next.screen(), BorderLayout.CENTER);
      SwingUtilities.invokeLater(next::focusFirst);
      if (isBusy || problem != null) {
        panel.add(message(now, isBusy, problem, true), BorderLayout.NORTH);
      }
    } else {
      panel.add(message(now, isBusy, problem, false), BorderLayout.CENTER);
    }
    panel.revalidate();
    panel.repaint();
  }

  /** What is going on, what went wrong, or what to do first. */
  private JPanel message(Look now, boolean isBusy, @Nullable Throwable problem, boolean isNarrow) {
    String insets = "insets " + now.px(isNarrow ? 6 : 24);
    JPanel panel =
        Parts.panel(
            "desk.message",
            new MigLayout(isNarrow ? insets : insets + ", wrap 1, align center center", "[]", "[]"),
            now.ink().field());
    String width = isNarrow ? "growx, pushx, wmin 50" : "w " + now.px(480) + "!";
    if (isBusy) {
      panel.add(
          Parts.heading("reading.title", now.say("reading.title", names(sources.logs())), now));
      JProgressBar bar = new JProgressBar(0, 100);
      bar.setName("reading.progress");
      bar.setStringPainted(true);
      progress = bar;
      showProgress();
      panel.add(bar, "w " + now.px(isNarrow ? 240 : 480) + "!");
      JButton cancel = Parts.button("reading.cancel", now.say("reading.cancel"), "", now);
      cancel.addActionListener(
          event -> {
            unfollow();
            sources = shown;
            fill();
          });
      panel.add(cancel);
    } else if (isFollowing()) {
      panel.add(
          Parts.heading("reading.title", now.say("reading.title", names(sources.logs())), now));
    } else if (problem != null) {
      panel.add(Parts.heading("failed.title", now.say("failed.title"), now));
      panel.add(Parts.prose("failed.why", Reasons.of(problem, now), now.ink().font(1), now), width);
      panel.add(chooser(now, "failed.again"));
    } else {
      panel.add(Parts.title("empty.title", now.say("empty.title"), now));
      panel.add(Parts.prose("empty.what", now.say("empty.what"), now.ink().font(1), now), width);
      panel.add(chooser(now, "empty.button"));
    }
    return panel;
  }

  private JButton chooser(Look now, String key) {
    JButton button = Parts.button(key, now.say(key), now.say("button.open.tip"), now);
    button.addActionListener(event -> ask());
    return button;
  }

  private static String names(List<Path> files) {
    return String.join(", ", files.stream().map(file -> "" + file.getFileName()).toList());
  }

  /** How far reading has come, or that it failed. */
  private void showProgress() {
    JProgressBar bar = progress;
    LogsAtRest its = resting;
    Look now = look;
    if (failure() != null) {
      fill();
    } else if (bar != null && its != null && now != null) {
      int percent = its.percent();
      bar.setIndeterminate(percent >= 100);
      bar.setValue(percent);
      bar.setString(percent >= 100 ? now.say("reading.audit") : percent + " %");
    }
  }
}
