package org.evenpour.view.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;
import static org.evenpour.view.screen.Screens.find;
import static org.evenpour.view.screen.Screens.onEventThread;

import com.sun.management.HotSpotDiagnosticMXBean;
import java.awt.Component;
import java.awt.Graphics2D;
import java.awt.GraphicsEnvironment;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.Transferable;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.image.BufferedImage;
import java.awt.print.PageFormat;
import java.awt.print.PrinterJob;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import javax.imageio.ImageIO;
import javax.print.DocFlavor;
import javax.print.StreamPrintService;
import javax.print.StreamPrintServiceFactory;
import javax.swing.AbstractButton;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JMenu;
import javax.swing.JTable;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.TransferHandler;
import org.evenpour.plant.PlantFiles;
import org.evenpour.table.Cell;
import org.evenpour.view.model.BoardDesk;
import org.evenpour.view.model.BoardSample;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.Sample;
import org.evenpour.view.model.Selection;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;

/** The real window on a real display, with real keys and clicks. */
class WindowIT {
  private static final long PATIENCE_NANOS = 30_000_000_000L;
  private static final long FREEZE_MILLIS = 250;

  /** 9 of the desk, three times each, and 13 of the window. */
  private static final int ACTIONS = 40;

  /** A choice: what comes and goes between two measures. */
  private static final long MORE_MEBIBYTES = 4;

  /** Memory is measured after so many actions. */
  private static final int MEMORY_EVERY = 1000;

  @RegisterExtension final EventThreadGuard guard = new EventThreadGuard();

  @SuppressWarnings("NullAway.Init") // made before each test
  private MainWindow window;

  @SuppressWarnings("NullAway.Init") // made before each test
  private BoardDesk board;

  private int acknowledged;

  @TempDir
  @SuppressWarnings("NullAway.Init") // made before each test
  Path folder;

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
              MainWindow made =
                  new MainWindow("en", false, InstantSource.system(), all -> List.of(board(all)));
              made.choose("desk");
              made.frame().setSize(1280, 800);
              made.frame().setLocation(0, 0);
              made.frame().setVisible(true);
              made.open(sources());
              return made;
            });
    until(() -> window.desk().desk() != null);
    settle();
  }

  /** The sample; whatever is marked goes into a file of this test's own. */
  private PlantFiles sources() {
    return new PlantFiles(
        Sample.SOURCES.logs(),
        Sample.SOURCES.profile(),
        Sample.SOURCES.events(),
        List.of(),
        null,
        folder.resolve("causes.jsonl"));
  }

  /** The board at a moment when much is wrong. */
  private BoardPlace board(MainWindow made) {
    BoardSample sample = BoardSample.at(BoardSample.UNEVEN);
    InstantSource clock = InstantSource.fixed(sample.castAt().plusSeconds(20));
    board =
        new BoardDesk(
            sample::snapshot, listener -> () -> {}, (signal, who, note) -> acknowledged++, clock);
    return new BoardPlace(
        board,
        new BoardActs(
            made::changeUnits, made::changeDark, made::changeFull, () -> made.choose("desk")));
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

  /**
   * Gives what was pressed time to come back from the display, and the event thread time for it.
   * {@link Robot#waitForIdle} would wait for ten seconds and more where no event comes.
   */
  private void settle() {
    for (int i = 0; i < 2; i++) {
      robot.delay(60);
      onEventThread(() -> true);
    }
  }

  private void click(Component part) {
    click(part, onEventThread(() -> new Rectangle(part.getSize())));
  }

  /** In the middle of a piece of a part, wherever fonts have put it. */
  private void click(Component part, Rectangle piece) {
    Point at =
        onEventThread(
            () -> {
              Point corner = part.getLocationOnScreen();
              return new Point(
                  corner.x + (int) piece.getCenterX(), corner.y + (int) piece.getCenterY());
            });
    robot.mouseMove(at.x, at.y);
    robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
    robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
    settle();
  }

  private void openPage(String key) {
    JList<?> pages = named("desk.pages", JList.class);
    int index = Pages.KEYS.indexOf(key);
    click(pages, onEventThread(() -> pages.getCellBounds(index, index)));
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
    openPage("molds");
    JTable table = named("molds.table", JTable.class);
    Rectangle row = onEventThread(() -> table.getCellRect(4, 0, true));
    click(table, row);
    until(() -> window.desk().selection().mold() != null);
    keepPicture("window-mold");
    press(KeyEvent.VK_ESCAPE, 0);
    until(() -> window.desk().selection().mold() == null);
  }

  @Test
  void aSentenceOpensItsEvidenceByKeysAndEscComesBack() throws Exception {
    press(KeyEvent.VK_1, KeyEvent.VK_CONTROL);
    JList<?> list = named("short.list", JList.class);
    until(list::isFocusOwner);
    keepPicture("window-short");
    press(KeyEvent.VK_DOWN, 0);
    press(KeyEvent.VK_ENTER, 0);
    until(() -> "signals".equals(page()));
    assertThat(onEventThread(() -> window.desk().selection().signal())).isNotNull();
    press(KeyEvent.VK_ESCAPE, 0);
    until(() -> "short".equals(page()) && list.isFocusOwner());
    assertThat(onEventThread(list::getSelectedIndex)).isEqualTo(1);
    click(list, onEventThread(() -> list.getCellBounds(2, 2)));
    until(() -> !"short".equals(page()));
    press(KeyEvent.VK_LEFT, KeyEvent.VK_ALT);
    until(() -> "short".equals(page()));
  }

  @Test
  void typingFiltersTheMolds() throws Exception {
    openPage("molds");
    JTable table = named("molds.table", JTable.class);
    int all = onEventThread(table::getRowCount);
    click(named("molds.filter", JTextField.class));
    press(KeyEvent.VK_1, 0);
    press(KeyEvent.VK_7, 0);
    assertThat(onEventThread(table::getRowCount)).isPositive().isLessThan(all);
  }

  @Test
  void aLinkIsMarkedByMouseAndTakenBackByKeys() throws Exception {
    Path file = folder.resolve("causes.jsonl");
    openPage("signals");
    onEventThread(
        () -> {
          window
              .desk()
              .selection()
              .chooseSignal(
                  Sample.opened().report().signals().stream()
                      .filter(one -> "1".equals(one.mold()))
                      .filter(one -> one.characteristic().equals("thickness"))
                      .reduce((first, last) -> last)
                      .orElseThrow());
          return true;
        });
    settle();
    click(named("cause.right", AbstractButton.class));
    type("ana");
    press(KeyEvent.VK_ENTER, 0);
    type("pump");
    keepPicture("window-mark");
    click(named("cause.keep", AbstractButton.class));
    JTable links = named("signal.links", JTable.class);
    until(() -> cells(links).contains("✓ right"));
    assertThat(Files.readString(file)).contains("\"who\":\"ana\",\"why\":\"pump\"");
    until(() -> find(frame(), "cause.said", JTextArea.class).getText().equals("Kept."));
    keepPicture("window-marked");

    // It is there again after the files were read anew, and on the page of causes.
    press(KeyEvent.VK_R, KeyEvent.VK_CONTROL);
    until(() -> !window.desk().isReading());
    settle();
    assertThat(onEventThread(() -> cells(find(frame(), "signal.links", JTable.class))))
        .contains("✓ right");
    press(KeyEvent.VK_0, KeyEvent.VK_CONTROL);
    assertThat(onEventThread(() -> cells(find(frame(), "causes.table", JTable.class))))
        .contains("Spray flow", "1", "100 %");
    keepPicture("window-causes");

    press(KeyEvent.VK_4, KeyEvent.VK_CONTROL);
    onEventThread(() -> find(frame(), "cause.back", AbstractButton.class).requestFocusInWindow());
    settle();
    press(KeyEvent.VK_SPACE, 0);
    type("sorry"); // who marked last is there already
    press(KeyEvent.VK_ENTER, 0);
    until(() -> !cells(find(frame(), "signal.links", JTable.class)).contains("✓ right"));
    assertThat(Files.readAllLines(file)).hasSize(2).last().asString().contains("\"open\"");

    // Escape leaves what is asked, not the signal.
    onEventThread(() -> find(frame(), "cause.wrong", AbstractButton.class).requestFocusInWindow());
    settle();
    press(KeyEvent.VK_SPACE, 0);
    press(KeyEvent.VK_ESCAPE, 0);
    assertThat(window.desk().selection().signal()).isNotNull();
    assertThat(named("cause.fields", JComponent.class).isVisible()).isFalse();
    assertThat(Files.readAllLines(file)).hasSize(2);
  }

  private void type(String letters) {
    letters.toUpperCase(Locale.ROOT).chars().forEach(code -> press(code, 0));
  }

  private static List<String> cells(JTable table) {
    List<String> cells = new ArrayList<>();
    for (int row = 0; row < table.getRowCount(); row++) {
      for (int column = 0; column < table.getModel().getColumnCount(); column++) {
        if (table.getModel().getValueAt(row, column) instanceof Cell cell) {
          cells.add(cell.text());
        }
      }
    }
    return cells;
  }

  @Test
  void draggingOnTheStripChoosesAStretch() throws Exception {
    StripView strip = named("strip", StripView.class);
    until(strip::isCurrent); // what is not drawn yet cannot be dragged on
    Point at = onEventThread(strip::getLocationOnScreen);
    int width = onEventThread(strip::getWidth);
    int middle = at.y + onEventThread(strip::getHeight) / 2;
    robot.mouseMove(at.x + width / 3, middle);
    robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
    for (int i = 1; i <= 10; i++) {
      robot.mouseMove(at.x + width / 3 + i * width / 30, middle);
    }
    robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
    settle();
    until(() -> window.desk().selection().stretch() != null);
    click(named("strip.whole", AbstractButton.class));
    until(() -> window.desk().selection().stretch() == null);
  }

  @Test
  void unitsAndColorsChangeAtOnce() throws Exception {
    click(named("units", AbstractButton.class));
    until(() -> "lb · in".equals(find(frame(), "units", AbstractButton.class).getText()));
    click(named("dark", AbstractButton.class));
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
    OpenedLog kept = Sample.opened();
    restore();
    List<Long> heap = new ArrayList<>(List.of(usedMebibytes()));
    long longest = 0;
    String slowest = "";
    Map<String, Long> most = new TreeMap<>();
    for (int i = 0; i < actions && thrown.isEmpty(); i++) {
      int what = random.nextInt(ACTIONS);
      int where = random.nextInt(10_000);
      long begun = System.nanoTime();
      String did = onEventThread(() -> act(what, where));
      onEventThread(() -> true);
      long took = (System.nanoTime() - begun) / 1_000_000;
      if (i % MEMORY_EVERY == MEMORY_EVERY - 1) {
        restore();
        heap.add(usedMebibytes());
      }
      // The first ones find cold code.
      if (i > 60) {
        most.merge(did, took, Math::max);
      }
      if (i > 60 && took > longest) {
        longest = took;
        slowest = did + " at action " + i;
      }
    }
    assertThat(thrown).isEmpty();
    restore();
    // What has a finalizer, such as the graphics that a table was drawn with, and all that it
    // reaches, goes with the second collection only.
    heap.add(usedMebibytes());
    settle();
    Map<String, Long> live = Live.instances();
    System.getLogger("evenpour.window")
        .log(
            System.Logger.Level.INFO,
            "{0} actions: longest {1} ms ({2}); heap in MiB {3}; {4}",
            actions,
            longest,
            slowest,
            heap,
            most);
    // Whatever was opened, turned to and left: what is seen is there, and nothing that was seen.
    assertThat(live.get(WindowScreen.class.getName())).isEqualTo(1);
    assertThat(live.get(DeskScreen.class.getName())).isEqualTo(1);
    assertThat(live.get(BoardScreen.class.getName())).isEqualTo(1);
    assertThat(live.get(MoldDetail.class.getName())).isNull();
    // The one that is open, and the one that this test keeps.
    assertThat(live.get(OpenedLog.class.getName())).isEqualTo(2);
    assertThat(kept).isSameAs(Sample.opened());
    if (asked) {
      assertThat(longest)
          .as("longest time on the event thread in ms: %s, seed %d", slowest, seed)
          .isLessThan(FREEZE_MILLIS);
      // By then the first uses are over, of the workbook's parts too. What the runtime keeps until
      // memory is short, such as glyphs in every size that was ever drawn, is no business of ours.
      if (letsGoAtOnce()) {
        int warm = Math.min(2, heap.size() - 1);
        assertThat(heap.get(heap.size() - 1)).isLessThan(heap.get(warm) + MORE_MEBIBYTES);
      }
    }
  }

  /** As it began, with nothing under way; what is kept then is kept for good. */
  private void restore() throws Exception {
    onEventThread(
        () -> {
          if (frame().isUndecorated()) {
            window.changeFull();
          }
          window.changeLanguage("en");
          if (find(frame(), "dark", AbstractButton.class).isSelected()) {
            window.changeDark();
          }
          if (!"kg · mm".equals(find(frame(), "units", AbstractButton.class).getText())) {
            window.changeUnits();
          }
          frame().setSize(1280, 800);
          frame().validate();
          Selection chosen = window.desk().selection();
          chosen.chooseMold(null);
          chosen.chooseSetting(null);
          chosen.chooseStretch(null);
          chosen.chooseCharacteristic("mass");
          window.choose("desk");
          window.desk().turnTo("wheel");
          return true;
        });
    until(() -> !window.desk().isReading() && isStill() && !isAnythingUnderWay());
    // Pages that were built are let go; only the first one is there again.
    onEventThread(
        () -> {
          window.changeDark();
          window.changeDark();
          frame().getContentPane().requestFocusInWindow();
          return true;
        });
    settle();
    until(this::isStill);
    settle();
  }

  /** What was given up may still be read or computed, and keeps what it works on until then. */
  private static boolean isAnythingUnderWay() {
    return Thread.getAllStackTraces().entrySet().stream()
        .filter(one -> one.getKey().getName().matches("SwingWorker.*|evenpour-logs"))
        .anyMatch(
            one ->
                Arrays.stream(one.getValue())
                    .anyMatch(frame -> frame.getClassName().startsWith("org.evenpour")));
  }

  private boolean isStill() {
    DeskScreen screen = window.desk().desk();
    return screen != null
        && !screen.save().isSaving()
        && Screens.all(frame()).stream()
            .filter(PictureView.class::isInstance)
            .map(PictureView.class::cast)
            .allMatch(view -> !view.isShowing() || view.isCurrent());
  }

  /** Whether soft references are let go with every garbage collection. */
  private static boolean letsGoAtOnce() {
    return ManagementFactory.getPlatformMXBean(HotSpotDiagnosticMXBean.class)
        .getVMOption("SoftRefLRUPolicyMSPerMB")
        .getValue()
        .equals("0");
  }

  private static long usedMebibytes() throws InterruptedException {
    for (int i = 0; i < 3; i++) {
      System.gc();
      Thread.sleep(100);
    }
    Runtime runtime = Runtime.getRuntime();
    return (runtime.totalMemory() - runtime.freeMemory()) >> 20;
  }

  /**
   * What belongs to the desk comes three times as often as what changes the whole window or reads a
   * file.
   */
  private String act(int what, int where) throws Exception {
    return what < 27 ? onDesk(what % 9, where) : inWindow(what - 27, where);
  }

  private String inWindow(int what, int where) throws Exception {
    DeskPlace desk = window.desk();
    switch (what) {
      case 0 -> {
        window.changeDark();
        return "theme";
      }
      case 1 -> {
        window.changeUnits();
        return "units";
      }
      case 2 -> {
        window.changeLanguage(where % 2 == 0 ? "es" : "en");
        return "language";
      }
      case 3 -> {
        window.choose(where % 2 == 0 ? "board" : "desk");
        return "place";
      }
      case 4 -> {
        var names = List.of("next", "previous", "ring", "wheel", "pouring", "reverse");
        board.act(names.get(where % names.size()));
        return "board";
      }
      case 5 -> {
        board.hold(BoardSample.at(BoardSample.UNEVEN).snapshot().now());
        board.acknowledge("R. Aliaga", "looked at");
        return "acknowledge";
      }
      case 6 -> {
        frame().setSize(960 + where % 640, 600 + where % 300);
        frame().validate();
        return "resize";
      }
      case 7 -> {
        PageFormat page = new PageFormat();
        page.setOrientation(PageFormat.LANDSCAPE);
        BufferedImage paper = new BufferedImage(842, 595, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = paper.createGraphics();
        Printing.sheet((JComponent) frame().getContentPane(), g, page, 0);
        g.dispose();
        return "print";
      }
      case 8 -> {
        DeskScreen screen = desk.desk();
        if (screen != null) {
          List<Export> exports = screen.save().exports();
          // The workbook comes last, and takes longest.
          Export export =
              exports.get(
                  where % (where % 7 == 0 ? exports.size() : Math.max(1, exports.size() - 1)));
          screen.save().save(export, folder.resolve(export.fileName()));
          return "save";
        }
        return "save";
      }
      case 9 -> {
        DeskScreen screen = desk.desk();
        if (screen != null && screen.save().isSaving()) {
          screen.save().button().doClick(0);
        }
        return "stop saving";
      }
      case 10 -> {
        // Once in a while; each reads and audits the whole sample.
        if (where % 8 == 0) {
          desk.reload();
        }
        return "reload";
      }
      case 11 -> {
        if (where % 8 == 0) {
          drop(Sample.SOURCES.logs());
        }
        return "drop";
      }
      default -> {
        if (where % 8 == 0) {
          window.changeFull();
        }
        return "full screen";
      }
    }
  }

  /** Drops files on the window as a file browser would hand them over. */
  private void drop(List<Path> files) {
    JComponent screen = (JComponent) frame().getContentPane();
    Transferable dropped =
        new Transferable() {
          @Override
          public DataFlavor[] getTransferDataFlavors() {
            return new DataFlavor[] {DataFlavor.javaFileListFlavor};
          }

          @Override
          public boolean isDataFlavorSupported(DataFlavor flavor) {
            return flavor.equals(DataFlavor.javaFileListFlavor);
          }

          @Override
          public Object getTransferData(DataFlavor flavor) {
            return files.stream().map(Path::toFile).toList();
          }
        };
    assertThat(
            screen
                .getTransferHandler()
                .importData(new TransferHandler.TransferSupport(screen, dropped)))
        .isTrue();
  }

  private String onDesk(int what, int where) {
    DeskPlace desk = window.desk();
    switch (what) {
      case 0 -> {
        String page = Pages.KEYS.get(where % Pages.KEYS.size());
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

  @Test
  void aDroppedLogIsOpenedAndADroppedProfileJoinsIt() throws Exception {
    Path log = Files.copy(Sample.SOURCES.logs().get(0), folder.resolve("dropped.csv"));
    onEventThread(
        () -> {
          drop(List.of(log));
          return true;
        });
    until(() -> window.frame().getTitle().contains("dropped.csv"));
    Path profile =
        Files.writeString(
            folder.resolve("wide.yaml"),
            "molds: 26\ncharacteristics:\n  mass: {unit: kg, lower: 300, upper: 500}\n");
    onEventThread(
        () -> {
          drop(List.of(profile));
          return true;
        });
    until(
        () -> {
          OpenedLog opened = window.desk().log();
          Double lower =
              opened == null
                  ? null
                  : opened.report().characteristics().get(0).specification().lower();
          return lower != null && lower == 300;
        });
    assertThat(frame().getTitle()).contains("dropped.csv");
  }

  @Test
  void theLanguageChangesEveryWordAtOnce() throws Exception {
    JMenu languages = onEventThread(() -> frame().getJMenuBar().getMenu(3));
    click(languages);
    click(onEventThread(() -> languages.getItem(1)));
    until(() -> "Registro".equals(frame().getJMenuBar().getMenu(0).getText()));
    assertThat(named("desk.title", JLabel.class).getText()).isEqualTo("En breve");
  }

  @Test
  void fullScreenHidesTheMenuBarAndItsKeysStillWork() throws Exception {
    onEventThread(
        () -> {
          frame().getContentPane().requestFocusInWindow();
          return true;
        });
    press(KeyEvent.VK_F11, 0);
    until(() -> frame().isUndecorated() && frame().isShowing());
    settle();
    assertThat(onEventThread(() -> frame().getJMenuBar().getHeight())).isZero();
    keepPicture("window-full");
    press(KeyEvent.VK_3, KeyEvent.VK_CONTROL);
    until(() -> "molds".equals(page()));
    press(KeyEvent.VK_F11, 0);
    until(() -> !frame().isUndecorated() && frame().isShowing());
    settle();
    assertThat(onEventThread(() -> frame().getJMenuBar().getHeight())).isPositive();
    press(KeyEvent.VK_1, KeyEvent.VK_CONTROL);
    until(() -> "short".equals(page()));
  }

  private String page() {
    DeskScreen screen = window.desk().desk();
    return screen == null ? "" : screen.pageKey();
  }

  @Test
  void aPageIsPrintedWholeOnOneSheet() throws Exception {
    Path paper = folder.resolve("page.ps");
    StreamPrintServiceFactory[] makers =
        StreamPrintServiceFactory.lookupStreamPrintServiceFactories(
            DocFlavor.SERVICE_FORMATTED.PRINTABLE, "application/postscript");
    assumeThat(makers).as("this runtime prints to PostScript").isNotEmpty();
    try (OutputStream out = Files.newOutputStream(paper)) {
      StreamPrintService service = makers[0].getPrintService(out);
      onEventThread(
          () -> {
            PrinterJob job = PrinterJob.getPrinterJob();
            job.setPrintService(service);
            Printing.prepare(job, (JComponent) frame().getContentPane(), "page", new PageFormat());
            job.print();
            return true;
          });
      service.dispose();
    }
    String text = Files.readString(paper, StandardCharsets.ISO_8859_1);
    assertThat(text).startsWith("%!PS");
    // Adobe, PostScript Language Reference, 3rd ed., appendix on structure: a page begins so.
    assertThat(text.split("\n%%Page:", -1)).hasSize(2);
  }

  private void keepPicture(String name) throws Exception {
    Rectangle bounds = onEventThread(frame()::getBounds);
    Path folder = Files.createDirectories(Path.of("target", "window-pictures"));
    ImageIO.write(robot.createScreenCapture(bounds), "png", folder.resolve(name + ".png").toFile());
  }
}
