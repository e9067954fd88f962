package org.evenpour.view.screen;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.concurrent.FutureTask;
import javax.swing.SwingUtilities;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.picture.Ink;
import org.evenpour.picture.Points;
import org.evenpour.picture.SeriesPicture;
import org.evenpour.picture.SeriesPicture.Axis;
import org.evenpour.picture.SeriesPicture.Band;
import org.evenpour.picture.SeriesPicture.Line;
import org.evenpour.plant.PlantFiles;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.Selection;
import org.evenpour.view.model.Stretch;

/** What {@code scripts/bench window} measures; passes and fails nothing. */
final class WindowBench {
  private WindowBench() {}

  /**
   * {@code start LOG PROFILE} or {@code steps LOG PROFILE}, with a display; or {@code pan}, without
   * one.
   */
  public static void main(String[] arguments) throws Exception {
    switch (arguments[0]) {
      case "start" -> start(Path.of(arguments[1]), Path.of(arguments[2]));
      case "steps" -> steps(Path.of(arguments[1]), Path.of(arguments[2]));
      default -> pan();
    }
    System.exit(0);
  }

  /** The longest steps of the event thread while a log is opened and every page is looked at. */
  private static void steps(Path log, Path profile) throws Exception {
    EventThreadSteps steps = EventThreadSteps.begin();
    steps.during("window");
    FutureTask<MainWindow> opened =
        new FutureTask<>(
            () -> {
              MainWindow window =
                  new MainWindow("en", false, InstantSource.system(), made -> List.of());
              window.frame().setVisible(true);
              return window;
            });
    SwingUtilities.invokeLater(opened);
    MainWindow window = opened.get();
    settle();
    steps.during("opening");
    SwingUtilities.invokeAndWait(() -> window.open(new PlantFiles(List.of(log), profile, null)));
    while (onEventThread(() -> window.desk().desk() == null)) {
      Thread.sleep(10);
    }
    linger();
    OpenedLog its = Objects.requireNonNull(window.desk().log());
    Selection selection = window.desk().selection();
    for (int round = 1; round <= 2; round++) {
      for (String page : Pages.KEYS) {
        doing(steps, "page " + page, round, () -> window.desk().turnTo(page));
        doing(
            steps, page + ", thickness", round, () -> selection.chooseCharacteristic("thickness"));
        doing(steps, page + ", mass", round, () -> selection.chooseCharacteristic("mass"));
        doing(steps, page + ", mold", round, () -> selection.chooseMold("7"));
        doing(
            steps,
            page + ", stretch",
            round,
            () -> selection.chooseStretch(new Stretch(105_000, 130_000)));
        doing(steps, page + ", whole", round, () -> selection.chooseStretch(null));
        doing(steps, page + ", back", round, () -> window.desk().back());
        if (page.equals("signals")) {
          List<Signal> signals = its.report().signals();
          for (int i = 0; i < Math.min(4, signals.size()); i++) {
            Signal signal = signals.get(i);
            doing(steps, "signal " + signal.id(), round, () -> selection.chooseSignal(signal));
          }
        }
      }
    }
    for (EventThreadSteps.Step step : steps.longest(12)) {
      System.out.printf(
          Locale.ROOT, "event thread %7.1f ms  %s%n", step.micros() / 1000.0, step.during());
    }
    System.out.printf(Locale.ROOT, "%d signals%n", its.report().signals().size());
  }

  private static void doing(EventThreadSteps steps, String what, int round, Runnable act)
      throws Exception {
    steps.during(what + " (" + round + ")");
    SwingUtilities.invokeAndWait(act);
    linger();
  }

  private static void linger() throws Exception {
    settle();
    Thread.sleep(150);
    settle();
  }

  /**
   * From the start of the process to a window that can be used, and to one that shows everything.
   */
  private static void start(Path log, Path profile) throws Exception {
    long began = ManagementFactory.getRuntimeMXBean().getStartTime();
    FutureTask<MainWindow> opened =
        new FutureTask<>(
            () -> {
              MainWindow window =
                  new MainWindow("en", false, InstantSource.system(), made -> List.of());
              window.frame().setVisible(true);
              window.open(new PlantFiles(List.of(log), profile, null));
              return window;
            });
    SwingUtilities.invokeLater(opened);
    MainWindow window = opened.get();
    settle();
    say("first usable window", System.currentTimeMillis() - began);
    while (onEventThread(() -> window.desk().desk() == null)) {
      Thread.sleep(10);
    }
    settle();
    say("content complete", System.currentTimeMillis() - began);
  }

  private static void settle() throws Exception {
    // Twice: what the first round laid out is painted in the second.
    for (int i = 0; i < 2; i++) {
      SwingUtilities.invokeAndWait(() -> {});
    }
  }

  private static boolean onEventThread(java.util.concurrent.Callable<Boolean> question)
      throws Exception {
    FutureTask<Boolean> task = new FutureTask<>(question);
    SwingUtilities.invokeAndWait(task);
    return task.get();
  }

  /**
   * Frames of a series of a million anodes, zooming in and panning, as they are drawn in the
   * window.
   */
  private static void pan() {
    int n = 1_000_000;
    double[] x = new double[n];
    double[] y = new double[n];
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < n; i++) {
      x[i] = i;
      y[i] = 390 + 1.5 * random.nextGaussian();
    }
    Points points = new Points(x, y, new int[] {5_000, 400_000, 999_999});
    BufferedImage image = new BufferedImage(1200, 600, BufferedImage.TYPE_INT_RGB);
    double[] millis = new double[400];
    for (int frame = 0; frame < millis.length; frame++) {
      double width = n * Math.pow(0.985, frame % 200);
      double from = (n - width) * (frame % 37) / 36;
      long before = System.nanoTime();
      Graphics2D g = image.createGraphics();
      new SeriesPicture(
              points,
              new Axis("Anode", from, from + width),
              new Axis("Mass, kg", 380, 400),
              new Band(385.0, 390.0, 395.0, "tolerance"),
              List.of(new Line(386, "limit", false), new Line(390, "center", true)),
              List.of(),
              List.of())
          .paint(g, new Rectangle2D.Double(0, 0, 1200, 600), Ink.light(14));
      g.dispose();
      millis[frame] = (System.nanoTime() - before) / 1e6;
    }
    double[] warm = Arrays.copyOfRange(millis, 100, millis.length);
    Arrays.sort(warm);
    System.out.printf(
        Locale.ROOT,
        "pan and zoom over 1,000,000 anodes: median %.1f ms a frame, 95 %% under %.1f ms%n",
        warm[warm.length / 2],
        warm[warm.length * 95 / 100]);
  }

  private static void say(String what, long millis) {
    System.out.printf(Locale.ROOT, "%-22s %5.2f s%n", what, millis / 1000.0);
  }
}
