package org.evenpour.view.screen;

import java.awt.Dimension;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JMenu;
import javax.swing.JMenuBar;
import javax.swing.JMenuItem;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import org.evenpour.live.Snapshot;
import org.evenpour.plant.PlantFiles;
import org.evenpour.view.model.BoardDesk;
import org.evenpour.view.model.DisplayUnits;
import org.evenpour.view.model.Language;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.OpenedLog;

/**
 * The window: places, menus and the look. When the look changes, the screens are built anew from
 * the places. Owned by the event thread.
 */
public final class MainWindow {
  private final JFrame frame = new JFrame();
  private final List<Place> places = new ArrayList<>();
  private final DeskPlace desk;
  private Language language;
  private DisplayUnits units = DisplayUnits.METRIC;
  private boolean unitsChosen;
  private boolean dark;
  private boolean full;
  private String place = "desk";
  private Look look;
  private WindowScreen screen;

  /**
   * @param clock tells when something was said
   * @param others makes the places that stand before the desk
   */
  MainWindow(
      String languageTag,
      boolean dark,
      InstantSource clock,
      Function<MainWindow, List<Place>> others) {
    this.language = Language.of(languageTag);
    this.dark = dark;
    frame.setName("evenpour");
    frame.setDefaultCloseOperation(JFrame.DISPOSE_ON_CLOSE);
    frame.setMinimumSize(new Dimension(960, 600));
    Dimension available = frame.getToolkit().getScreenSize();
    frame.setSize(Math.min(1600, available.width), Math.min(960, available.height));
    frame.setLocationRelativeTo(null);
    look = Look.of(dark, language, units, frame.getHeight());
    desk = new DeskPlace(new FileDialogs(frame.getRootPane(), () -> look), clock, this::opened);
    places.addAll(others.apply(this));
    places.add(desk);
    place = places.get(0).key();
    Theme.install(look.ink());
    screen = build();
    frame.addWindowListener(
        new WindowAdapter() {
          @Override
          public void windowClosed(WindowEvent event) {
            // On the way to full screen and back the frame is closed and comes again.
            if (!frame.isDisplayable()) {
              desk.close();
            }
          }
        });
    Timer settled = new Timer(120, event -> fitText());
    settled.setRepeats(false);
    frame.addComponentListener(
        new ComponentAdapter() {
          @Override
          public void componentResized(ComponentEvent event) {
            settled.restart();
          }
        });
  }

  /** The frame, for tests. */
  public JFrame frame() {
    return frame;
  }

  /** The quality engineer's place. */
  public DeskPlace desk() {
    return desk;
  }

  /** Opens files on the desk. */
  public void open(PlantFiles sources) {
    desk.open(sources);
  }

  /**
   * Opens, on the desk, a log that an engine follows, and shows there what the engine hears.
   *
   * @param snapshots the engine's newest
   * @param telling when there is a newer one
   * @param sources the log, which need not be there yet, its profile and its events
   */
  public void follow(Supplier<Snapshot> snapshots, BoardDesk.Telling telling, PlantFiles sources) {
    desk.follow(snapshots, telling, sources);
  }

  /** Shows a place. */
  public void choose(String key) {
    place = key;
    screen.choose(key);
    screen.screen().requestFocusInWindow();
  }

  private WindowScreen build() {
    WindowScreen built =
        new WindowScreen(
            look,
            places,
            place,
            new WindowScreen.Acts(this::choose, this::changeUnits, this::changeDark, desk::add));
    frame.setContentPane(built.screen());
    frame.setJMenuBar(menus());
    hideMenus();
    OpenedLog log = desk.log();
    built.says(log == null ? "" : said(log));
    frame.setTitle(
        log == null
            ? look.say("window.title")
            : look.say("window.title") + " – " + String.join(", ", log.report().log().files()));
    keys(built.screen());
    frame.revalidate();
    frame.repaint();
    return built;
  }

  private void rebuild() {
    Look before = look;
    look = Look.of(dark, language, units, frame.getHeight());
    if (!look.ink().equals(before.ink())) {
      Theme.install(look.ink());
      // Only the frame itself stays: what stands in it is built anew, in the new dress.
      frame.setJMenuBar(null);
      frame.setContentPane(new JPanel());
      SwingUtilities.updateComponentTreeUI(frame.getRootPane());
    }
    screen.close();
    screen = build();
    Tips.forget(screen.screen());
  }

  private void fitText() {
    if (Look.textPx(frame.getHeight()) != look.ink().textPx()) {
      rebuild();
    }
  }

  private void opened(OpenedLog log) {
    if (!unitsChosen) {
      DisplayUnits plant =
          DisplayUnits.like(log.record().wheels().get(0).characteristics().get(0).displayUnit());
      if (plant != units) {
        units = plant;
        SwingUtilities.invokeLater(this::rebuild);
      }
    }
    screen.says(said(log));
    frame.setTitle(
        look.say("window.title") + " – " + String.join(", ", log.report().log().files()));
  }

  private String said(OpenedLog log) {
    return WindowText.of(log, look);
  }

  void changeUnits() {
    unitsChosen = true;
    units = units == DisplayUnits.METRIC ? DisplayUnits.POUND_INCH : DisplayUnits.METRIC;
    rebuild();
  }

  void changeDark() {
    dark = !dark;
    rebuild();
  }

  void changeLanguage(String tag) {
    language = Language.of(tag);
    frame.setLocale(Locale.forLanguageTag(tag));
    JComponent.setDefaultLocale(Locale.forLanguageTag(tag));
    rebuild();
  }

  void changeFull() {
    full = !full;
    frame.dispose();
    frame.setUndecorated(full);
    hideMenus();
    frame.setExtendedState(full ? JFrame.MAXIMIZED_BOTH : JFrame.NORMAL);
    frame.setVisible(true);
  }

  /** In full screen the bar takes no room; a bar without height still hears its keys. */
  private void hideMenus() {
    frame.getJMenuBar().setPreferredSize(full ? new Dimension(0, 0) : null);
  }

  private JMenuBar menus() {
    JMenuBar bar = new JMenuBar();
    JMenu log = menu("menu.log");
    item(log, "menu.open", KeyEvent.VK_O, InputEvent.CTRL_DOWN_MASK, desk::ask);
    item(log, "menu.reload", KeyEvent.VK_R, InputEvent.CTRL_DOWN_MASK, desk::reload);
    item(log, "menu.print", KeyEvent.VK_P, InputEvent.CTRL_DOWN_MASK, this::print);
    item(log, "menu.quit", KeyEvent.VK_Q, InputEvent.CTRL_DOWN_MASK, frame::dispose);
    JMenu page = menu("menu.page");
    for (String name : Pages.KEYS) {
      item(
          page,
          "page." + name,
          Pages.code(name),
          InputEvent.CTRL_DOWN_MASK,
          () -> {
            choose("desk");
            desk.turnTo(name);
          });
    }
    JMenu show = menu("menu.show");
    for (Place one : places) {
      item(
          show,
          "place." + one.key(),
          one == desk ? KeyEvent.VK_F3 : KeyEvent.VK_F2,
          0,
          () -> choose(one.key()));
    }
    item(show, "menu.dark", KeyEvent.VK_D, InputEvent.CTRL_DOWN_MASK, this::changeDark);
    item(show, "menu.units", KeyEvent.VK_U, InputEvent.CTRL_DOWN_MASK, this::changeUnits);
    item(show, "menu.full", KeyEvent.VK_F11, 0, this::changeFull);
    JMenu languages = menu("menu.language");
    for (String tag : Language.TAGS) {
      item(languages, "language." + tag, 0, 0, () -> changeLanguage(tag));
    }
    JMenu help = menu("menu.help");
    item(help, "menu.help.page", KeyEvent.VK_F1, 0, this::help);
    bar.add(log);
    bar.add(page);
    bar.add(show);
    bar.add(languages);
    bar.add(help);
    return bar;
  }

  private JMenu menu(String key) {
    JMenu menu = new JMenu(look.say(key));
    menu.setName(key);
    return menu;
  }

  private void item(JMenu menu, String key, int code, int with, Runnable act) {
    JMenuItem item = new JMenuItem(look.say(key));
    item.setName("item." + key);
    if (code != 0) {
      item.setAccelerator(KeyStroke.getKeyStroke(code, with));
    }
    item.addActionListener(event -> act.run());
    menu.add(item);
  }

  private void keys(JComponent root) {
    Keys.bind(root, KeyEvent.VK_ESCAPE, 0, "back", desk::back);
    Keys.bind(root, KeyEvent.VK_LEFT, InputEvent.ALT_DOWN_MASK, "back", desk::back);
    Keys.bind(root, KeyEvent.VK_S, InputEvent.CTRL_DOWN_MASK, "save", desk::save);
    Keys.bind(root, KeyEvent.VK_F, InputEvent.CTRL_DOWN_MASK, "filter", desk::filter);
    Keys.bind(root, KeyEvent.VK_G, InputEvent.CTRL_DOWN_MASK, "go to", desk::goTo);
  }

  /** What the page is for, and every key; beside the window, so that it covers no figure. */
  private void help() {
    HelpSheet.show(
        frame, desk.desk() == null ? "" : Objects.requireNonNull(desk.desk()).pageKey(), look);
  }

  private void print() {
    Printing.print(screen.screen(), look);
  }
}
