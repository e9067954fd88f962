package org.evenpour.view.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.evenpour.view.screen.Screens.onEventThread;

import java.awt.Component;
import java.awt.Graphics;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JMenuItem;
import javax.swing.JOptionPane;
import javax.swing.JTable;
import javax.swing.JToggleButton;
import javax.swing.JToolTip;
import javax.swing.plaf.basic.BasicHTML;
import javax.swing.text.View;
import org.evenpour.plant.PlantFiles;
import org.evenpour.report.Summary;
import org.evenpour.report.workbook.AuditWorkbook;
import org.evenpour.view.model.DisplayUnits;
import org.evenpour.view.model.Language;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.Sample;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What stands in a log is text, whatever it looks like; nothing is fetched from anywhere. */
class HostileTextTest {
  private static final Look LOOK = Look.of(false, Language.of("en"), DisplayUnits.METRIC, 800);

  @TempDir Path folder;

  @SuppressWarnings("NullAway.Init") // made before each test
  private ServerSocket server;

  private final AtomicInteger calls = new AtomicInteger();

  @BeforeEach
  void listen() throws IOException {
    server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    Thread listening =
        new Thread(
            () -> {
              while (!server.isClosed()) {
                try (Socket socket = server.accept()) {
                  calls.incrementAndGet();
                } catch (IOException closed) {
                  return;
                }
              }
            });
    listening.setDaemon(true);
    listening.start();
  }

  @AfterEach
  void close() throws IOException {
    server.close();
  }

  /** A text that Swing would take for a page with a picture. */
  private String page(String name) {
    return "<html><img src=http://127.0.0.1:" + server.getLocalPort() + "/" + name + ">";
  }

  private static void paint(View view) {
    Graphics g = new BufferedImage(200, 200, BufferedImage.TYPE_INT_RGB).createGraphics();
    g.setClip(0, 0, 200, 200);
    view.setSize(200, 200);
    view.paint(g, new Rectangle(200, 200));
    g.dispose();
  }

  private void waitForCalls(int wanted) throws InterruptedException {
    for (int i = 0; i < 100 && calls.get() < wanted; i++) {
      Thread.sleep(20);
    }
  }

  /** The listener would hear it: so its silence says something. */
  @Test
  void theListenerHearsWhereTextIsTakenForAPage() throws Exception {
    onEventThread(
        () -> {
          paint(BasicHTML.createHTMLView(new JLabel(), page("control")));
          return "";
        });
    waitForCalls(1);
    assertThat(calls).hasPositiveValue();
  }

  @Test
  void noPartOfTheWindowTakesTextForAPage() throws Exception {
    List<JComponent> parts =
        onEventThread(
            () -> {
              Theme.install(LOOK.ink());
              String text = page("part").replace("html", "HtMl");
              JToolTip tip = new JToolTip();
              tip.setTipText(Tips.wrapped(text + " and more of it".repeat(20)));
              JLabel later = new JLabel();
              later.setText(text);
              JComboBox<String> box = new JComboBox<>(new String[] {text});
              JTable table = new JTable(new Object[][] {{text}}, new Object[] {text});
              JOptionPane said = new JOptionPane(text);
              List<JComponent> all =
                  new ArrayList<>(
                      List.of(
                          new JLabel(text),
                          later,
                          new JButton(text),
                          new JToggleButton(text),
                          new JMenuItem(text),
                          tip,
                          said));
              Component cell =
                  new DefaultListCellRenderer()
                      .getListCellRendererComponent(new JList<>(), text, 0, false, false);
              all.add((JComponent) cell);
              all.add(
                  (JComponent)
                      box.getRenderer()
                          .getListCellRendererComponent(new JList<>(), text, 0, false, false));
              all.add((JComponent) table.prepareRenderer(table.getCellRenderer(0, 0), 0, 0));
              all.add(
                  (JComponent)
                      table
                          .getTableHeader()
                          .getDefaultRenderer()
                          .getTableCellRendererComponent(table, text, false, false, -1, 0));
              all.add(box);
              all.forEach(part -> Screens.paint(part, 300, 100));
              return all;
            });
    for (JComponent part : parts) {
      areText(part);
    }
    Thread.sleep(300);
    assertThat(calls).hasValue(0);
  }

  private static void areText(Component root) {
    for (Component part : Screens.all(root)) {
      if (part instanceof JComponent one) {
        assertThat(one.getClientProperty(BasicHTML.propertyKey)).as("%s", part).isNull();
      }
    }
  }

  /** Eight of a tip's lines are eight lines, though it is no page. */
  @Test
  void aLongTipIsStillBrokenIntoLines() {
    String tip = Tips.wrapped("mold 7 is thin since turn 12 and ".repeat(8));
    assertThat(tip.lines().count()).isGreaterThan(3);
    assertThat(tip.lines().allMatch(line -> line.length() <= 66)).isTrue();
    int one = onEventThread(() -> height("mold 7"));
    int more = onEventThread(() -> height(tip));
    assertThat(more).isGreaterThan(3 * one);
  }

  private static int height(String text) {
    Theme.install(LOOK.ink());
    JToolTip tip = new JToolTip();
    tip.setTipText(text);
    return tip.getPreferredSize().height;
  }

  /** Every page of the desk, the workbook and the summary of a log that is full of such. */
  @Test
  void aLogFullOfPagesIsShownAsItStands() throws Exception {
    OpenedLog log = Sample.read(hostile());
    assertThat(log.record().rowsKept()).isEqualTo(1200);
    PlantFiles sources = hostile();
    for (String page : Pages.KEYS) {
      JComponent screen = onEventThread(() -> drawn(log, sources, page));
      areText(screen);
    }
    Path workbook = folder.resolve("audit.xlsx");
    AuditWorkbook.write(log.report(), log.record(), workbook, log.zone());
    assertThat(Files.size(workbook)).isPositive();
    assertThat(Summary.text(log.report(), log.zone())).contains("<html>");
    Thread.sleep(300);
    assertThat(calls).hasValue(0);
  }

  private static JComponent drawn(OpenedLog log, PlantFiles sources, String page) {
    Theme.install(LOOK.ink());
    DeskPlace desk = new DeskPlace(Asks.NOBODY, InstantSource.fixed(Instant.EPOCH), opened -> {});
    WindowScreen window =
        new WindowScreen(
            LOOK,
            List.of(desk),
            "desk",
            new WindowScreen.Acts(key -> {}, () -> {}, () -> {}, files -> {}));
    desk.turnTo(page);
    desk.show(log, sources);
    log.report().signals().stream().findFirst().ifPresent(desk.selection()::chooseSignal);
    window.says(WindowText.of(log, LOOK));
    PageImages.image(window.screen(), 1280, 800);
    return window.screen();
  }

  /** Twelve molds, two crews, a setting and events, all of them pages; one mold steps. */
  private PlantFiles hostile() throws IOException {
    StringBuilder rows = new StringBuilder("cast_at,mold,mass_kg,crew,defect,disposition,");
    rows.append(page("setting")).append("_ml\n");
    java.util.Random random = new java.util.Random(7);
    for (int i = 0; i < 1200; i++) {
      int mold = i % 12;
      boolean isLate = i > 800 && mold == 3;
      rows.append(Instant.parse("2026-03-01T00:00:00Z").plusSeconds(30L * i))
          .append(',')
          .append(page("mold" + mold))
          .append(',')
          .append(388 + random.nextGaussian() + (isLate ? 8 : 0))
          .append(',')
          .append(page("crew" + i / 300 % 2))
          .append(',')
          .append(i % 50 == 0 ? page("defect") + ",rejected" : ",accepted")
          .append(',')
          .append(50 + random.nextGaussian() + (isLate ? 9 : 0))
          .append('\n');
    }
    Path log = Files.writeString(folder.resolve("<html><b>june.csv"), rows);
    Path events =
        Files.writeString(
            folder.resolve("events.csv"),
            "at,wheel,mold,event,note\n2026-03-01T06:40:00Z,,"
                + page("mold3")
                + ","
                + page("event")
                + ","
                + page("note")
                + "\n");
    return new PlantFiles(List.of(log), null, events);
  }
}
