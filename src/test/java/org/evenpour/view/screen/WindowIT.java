package org.evenpour.view.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.evenpour.view.screen.Screens.find;
import static org.evenpour.view.screen.Screens.onEventThread;

import java.awt.Component;
import java.awt.GraphicsEnvironment;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import javax.imageio.ImageIO;
import javax.swing.AbstractButton;
import javax.swing.JFrame;
import javax.swing.JList;
import javax.swing.JTable;
import javax.swing.JTextField;
import org.evenpour.view.model.Sample;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The real window on a real display, with real keys and clicks. */
class WindowIT {
  private static final long PATIENCE_NANOS = 30_000_000_000L;
  private static final long FREEZE_MILLIS = 250;

  /** Fonts, glyphs and the like that a first use keeps. */
  private static final long MORE_MEBIBYTES = 16;

  @RegisterExtension final EventThreadGuard guard = new EventThreadGuard();

  @SuppressWarnings("NullAway.Init") // made before each test
  private MainWindow window;

  @SuppressWarnings("NullAway.Init") // made before each test
  private Robot robot;

  @BeforeEach
  void openTheSample() throws Exception {
    assumeThat(GraphicsEnvironment.isHeadless()).as("there is no display").isFalse();
    robot = new Robot();
    robot.setAutoDelay(15);
    window =
        onEventThread(
            () -> {
              MainWindow made = new MainWindow("en", false, all -> List.of());
              made.frame().setSize(1280, 800);
              made.frame().setLocation(0, 0);
              made.frame().setVisible(true);
              made.open(Sample.SOURCES);
              return made;
            });
    until(() -> window.desk().desk() != null);
    settle();
  }

  @AfterEach
  void close() {
    if (window != null) {
      onEventThread(
          () -> {
            window.frame().dispose();
            return true;
          });
    }
  }

  private JFrame frame() {
    return window.frame();
  }

  private static void until(Callable<Boolean> isDone) throws InterruptedException {
    long end = System.nanoTime() + PATIENCE_NANOS;
    while (!onEventThread(isDone)) {
      assertThat(System.nanoTime()).as("patience").isLessThan(end);
      Thread.sleep(20);
    }
  }

  private void settle() {
    robot.waitForIdle();
    robot.delay(80);
    robot.waitForIdle();
  }

  private void click(Component part, int x, int y) {
    Point at =
        onEventThread(
            () -> {
              Point corner = part.getLocationOnScreen();
              return new Point(corner.x + x, corner.y + y);
            });
    robot.mouseMove(at.x, at.y);
    robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
    robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
    settle();
  }

  private <T extends Component> T named(String name, Class<T> kind) {
    return onEventThread(() -> find(frame(), name, kind));
  }

  private void press(int code, int with) {
    if (with != 0) {
      robot.keyPress(with);
    }
    robot.keyPress(code);
    robot.keyRelease(code);
    if (with != 0) {
      robot.keyRelease(with);
    }
    settle();
  }

  @Test
  void aClickOpensAMoldAndEscapeClosesIt() throws Exception {
    click(named("desk.pages", JList.class), 40, 50);
    JTable table = named("molds.table", JTable.class);
    Rectangle row = onEventThread(() -> table.getCellRect(4, 0, true));
    click(table, row.x + 10, row.y + 10);
    until(() -> window.desk().selection().mold() != null);
    keepPicture("window-mold");
    press(KeyEvent.VK_ESCAPE, 0);
    until(() -> window.desk().selection().mold() == null);
  }

  @Test
  void typingFiltersTheMolds() throws Exception {
    click(named("desk.pages", JList.class), 40, 50);
    JTable table = named("molds.table", JTable.class);
    int all = onEventThread(table::getRowCount);
    click(named("molds.filter", JTextField.class), 20, 10);
    press(KeyEvent.VK_1, 0);
    press(KeyEvent.VK_7, 0);
    assertThat(onEventThread(table::getRowCount)).isPositive().isLessThan(all);
  }

  @Test
  void draggingOnTheStripChoosesAStretch() throws Exception {
    Component strip = named("strip", Component.class);
    Point at = onEventThread(strip::getLocationOnScreen);
    int width = onEventThread(strip::getWidth);
    robot.mouseMove(at.x + width / 3, at.y + 20);
    robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
    for (int i = 1; i <= 10; i++) {
      robot.mouseMove(at.x + width / 3 + i * width / 30, at.y + 20);
    }
    robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
    settle();
    until(() -> window.desk().selection().stretch() != null);
    click(named("strip.whole", AbstractButton.class), 20, 15);
    until(() -> window.desk().selection().stretch() == null);
  }

  @Test
  void unitsAndColorsChangeAtOnce() throws Exception {
    click(named("units", AbstractButton.class), 15, 12);
    until(() -> "lb · in".equals(find(frame(), "units", AbstractButton.class).getText()));
    click(named("dark", AbstractButton.class), 15, 12);
    until(() -> find(frame(), "dark", AbstractButton.class).isSelected());
    keepPicture("window-dark");
    assertThat(window.desk().selection().watchers()).isEqualTo(1);
  }

  /**
   * As many random actions as {@code -Devenpour.actions} says; {@code evenpour.seed} repeats them.
   * Freezes and memory are judged only where a number was asked for: how long a step takes on
   * whatever machine runs the whole gate says nothing of the window.
   */
  @Test
  void randomActionsEndWithoutAnExceptionOrAFreeze() throws Exception {
    long seed = Long.getLong("evenpour.seed", 20_260_307L);
    int actions = Integer.getInteger("evenpour.actions", 300);
    Random random = new Random(seed);
    List<Throwable> thrown = new ArrayList<>();
    onEventThread(
        () -> {
          Thread.currentThread().setUncaughtExceptionHandler((thread, e) -> thrown.add(e));
          return true;
        });
    boolean asked = Integer.getInteger("evenpour.actions") != null;
    long before = usedMebibytes();
    long longest = 0;
    String slowest = "";
    for (int i = 0; i < actions && thrown.isEmpty(); i++) {
      int what = random.nextInt(9);
      int where = random.nextInt(10_000);
      long begun = System.nanoTime();
      String did = onEventThread(() -> act(what, where));
      onEventThread(() -> true);
      long took = (System.nanoTime() - begun) / 1_000_000;
      // The first ones find cold code.
      if (i > 60 && took > longest) {
        longest = took;
        slowest = did + " at action " + i;
      }
    }
    assertThat(thrown).isEmpty();
    long after = usedMebibytes();
    System.getLogger("evenpour.window")
        .log(
            System.Logger.Level.INFO,
            "{0} actions: longest {1} ms ({2}); heap {3} MiB before, {4} MiB after",
            actions,
            longest,
            slowest,
            before,
            after);
    if (asked) {
      assertThat(longest)
          .as("longest time on the event thread in ms: %s, seed %d", slowest, seed)
          .isLessThan(FREEZE_MILLIS);
      assertThat(after).isLessThan(before + MORE_MEBIBYTES);
    }
  }

  private static long usedMebibytes() throws InterruptedException {
    for (int i = 0; i < 3; i++) {
      System.gc();
      Thread.sleep(100);
    }
    Runtime runtime = Runtime.getRuntime();
    return (runtime.totalMemory() - runtime.freeMemory()) >> 20;
  }

  private String act(int what, int where) {
    DeskPlace desk = window.desk();
    switch (what) {
      case 0 -> {
        String page = DeskPlace.PAGES.get(where % DeskPlace.PAGES.size());
        desk.turnTo(page);
        return "page " + page;
      }
      case 1 -> {
        var signals = Sample.opened().report().signals();
        desk.selection().chooseSignal(signals.get(where % signals.size()));
        return "signal";
      }
      case 2 -> {
        desk.selection().chooseMold(Integer.toString(1 + where % 26));
        return "mold";
      }
      case 3 -> {
        double from = 1 + where % 200;
        desk.selection()
            .chooseStretch(
                org.evenpour.view.model.Stretch.between(from, from + where % 37, 1, 241));
        return "stretch";
      }
      case 4 -> {
        desk.selection().chooseCharacteristic(List.of("mass", "thickness", "wedge").get(where % 3));
        return "characteristic";
      }
      case 5 -> {
        desk.back();
        return "back";
      }
      case 6 -> {
        List<JTable> tables =
            Screens.all(frame()).stream()
                .filter(part -> part instanceof JTable && part.isShowing())
                .map(JTable.class::cast)
                .filter(table -> table.getRowCount() > 0)
                .toList();
        if (!tables.isEmpty()) {
          JTable table = tables.get(where % tables.size());
          int row = where % table.getRowCount();
          table.setRowSelectionInterval(row, row);
        }
        return "row";
      }
      case 7 -> {
        List<JTable> tables =
            Screens.all(frame()).stream()
                .filter(part -> part instanceof JTable && part.isShowing())
                .map(JTable.class::cast)
                .filter(table -> table.getRowSorter() != null)
                .toList();
        if (!tables.isEmpty()) {
          JTable table = tables.get(where % tables.size());
          table.getRowSorter().toggleSortOrder(where % table.getColumnCount());
        }
        return "sort";
      }
      default -> {
        List<JTextField> fields =
            Screens.all(frame()).stream()
                .filter(part -> part instanceof JTextField && part.isShowing())
                .map(JTextField.class::cast)
                .toList();
        if (!fields.isEmpty()) {
          fields.get(0).setText(where % 3 == 0 ? "" : Integer.toString(where % 30));
        }
        return "filter";
      }
    }
  }

  private void keepPicture(String name) throws Exception {
    Rectangle bounds = onEventThread(frame()::getBounds);
    Path folder = Files.createDirectories(Path.of("target", "window-pictures"));
    ImageIO.write(robot.createScreenCapture(bounds), "png", folder.resolve(name + ".png").toFile());
  }
}
