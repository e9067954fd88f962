package org.evenpour.view.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.evenpour.view.screen.Screens.find;
import static org.evenpour.view.screen.Screens.onEventThread;

import java.awt.Component;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import javax.swing.AbstractButton;
import javax.swing.JComponent;
import javax.swing.JList;
import javax.swing.JTable;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import org.evenpour.plant.PlantFiles;
import org.evenpour.report.Topic;
import org.evenpour.view.model.Comparing;
import org.evenpour.view.model.DisplayUnits;
import org.evenpour.view.model.InShort;
import org.evenpour.view.model.Language;
import org.evenpour.view.model.Look;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.Sample;
import org.evenpour.view.model.Stretch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DeskScreenTest {
  @RegisterExtension final EventThreadGuard guard = new EventThreadGuard();

  private record Open(DeskPlace place, JComponent screen) {}

  private static Open open(String language, boolean dark, FileAsk ask) {
    return onEventThread(
        () -> {
          Look look = Look.of(dark, Language.of(language), DisplayUnits.METRIC, 720);
          Theme.install(look.ink());
          DeskPlace place = new DeskPlace(ask, InstantSource.system(), log -> {});
          JComponent screen = place.screen(look);
          place.show(Sample.opened());
          place.selection().chooseCharacteristic("thickness");
          return new Open(place, screen);
        });
  }

  @Test
  void aMoldChosenInTheTableIsChosenEverywhere() {
    Open open = open("en", false, Asks.NOBODY);
    onEventThread(
        () -> {
          open.place().turnTo("molds");
          JTable table = find(open.screen(), "molds.table", JTable.class);
          table.setRowSelectionInterval(3, 3);
          String mold = String.valueOf(open.place().selection().mold());
          assertThat(mold).isNotEqualTo("null");
          assertThat(find(open.screen(), "mold.detail", JComponent.class).isVisible()).isTrue();
          open.place().turnTo("record");
          JTable rows = find(open.screen(), "record.table", JTable.class);
          assertThat(rows.getRowCount())
              .isEqualTo(Sample.opened().wheels().get(0).rows(mold).length);
          open.place().turnTo("capability");
          JTable molds = find(open.screen(), "capability.molds", JTable.class);
          assertThat(molds.getSelectedRow()).isNotNegative();
          open.place().back();
          return null;
        });
  }

  @Test
  void aSentenceOpensItsEvidenceAndBackComesBackToIt() {
    Open open = open("en", false, Asks.NOBODY);
    onEventThread(
        () -> {
          DeskScreen desk = Objects.requireNonNull(open.place().desk());
          assertThat(desk.pageKey()).isEqualTo("short");
          JList<?> list = find(open.screen(), "short.list", JList.class);
          for (int i = 0; i < list.getModel().getSize(); i++) {
            list.setSelectedIndex(i);
            InShort.Row row = (InShort.Row) list.getModel().getElementAt(i);
            list.getActionMap().get("open").actionPerformed(null);
            assertThat(desk.pageKey()).isEqualTo(row.opens().page());
            open.place().back();
            assertThat(desk.pageKey()).isEqualTo("short");
            assertThat(list.getSelectedIndex()).isEqualTo(i);
          }
          find(open.screen(), "short.notes", AbstractButton.class).doClick();
          assertThat(desk.pageKey()).isEqualTo("record");
          assertThat(find(open.screen(), "record.notes", JToggleButton.class).isSelected())
              .isTrue();
          // Whoever went on from there by himself is not sent back.
          open.place().turnTo("molds");
          open.place().back();
          assertThat(desk.pageKey()).isEqualTo("molds");
          return null;
        });
  }

  @Test
  void whatIsTypedIsGoneToAndWhatIsNotThereIsSaid() {
    Open open = open("es", false, Asks.NOBODY);
    onEventThread(
        () -> {
          open.place().goTo();
          var menu =
              Objects.requireNonNull(Objects.requireNonNull(open.place().desk()).goTo().opened());
          JTextField field = find(menu, "goto.field", JTextField.class);
          field.setText("nunca");
          field.postActionEvent();
          assertThat(find(menu, "goto.said", JTextArea.class).getText()).contains("«nunca»");
          assertThat(open.place().selection().stretch()).isNull();
          field.setText("120-150");
          field.postActionEvent();
          assertThat(open.place().selection().stretch()).isEqualTo(new Stretch(120, 151));
          find(menu, "goto.charge", AbstractButton.class).doClick(0);
          assertThat(open.place().selection().stretch()).isEqualTo(new Stretch(211, 241));
          find(menu, "goto.whole", AbstractButton.class).doClick(0);
          assertThat(open.place().selection().stretch()).isNull();
          return null;
        });
  }

  /** The job "after a mold change: did it work", from the signal that it explains. */
  @Test
  void anEventBesideASignalIsHeldAgainstWhatWasBeforeIt() {
    Open open = open("en", false, Asks.NOBODY);
    onEventThread(
        () -> {
          open.place().turnTo("signals");
          open.place()
              .selection()
              .chooseSignal(
                  Sample.opened().report().signals().stream()
                      .filter(one -> "4".equals(one.mold()) && one.characteristic().equals("wedge"))
                      .findFirst()
                      .orElseThrow());
          find(open.screen(), "signal.compare", AbstractButton.class).doClick(0);
          DeskScreen desk = Objects.requireNonNull(open.place().desk());
          assertThat(desk.pageKey()).isEqualTo("compare");
          Comparing.Offer offer =
              (Comparing.Offer)
                  find(open.screen(), "compare.offers", JList.class).getSelectedValue();
          assertThat(offer.mold()).isEqualTo("4");
          assertThat(offer.second().from()).isEqualTo(120);
          open.place().back();
          assertThat(desk.pageKey()).isEqualTo("signals");
          return null;
        });
  }

  @Test
  void rowsAreCopiedWithTheirHeadingsAndFieldsFilter() {
    Open open = open("en", false, Asks.NOBODY);
    onEventThread(
        () -> {
          open.place().turnTo("molds");
          JTable table = find(open.screen(), "molds.table", JTable.class);
          find(open.screen(), "molds.filter", JTextField.class).setText("mold:2");
          assertThat(table.getRowCount()).isEqualTo(1);
          find(open.screen(), "molds.filter", JTextField.class).setText("");
          table.setRowSelectionInterval(1, 3);
          String[] lines = CopiedRows.text(table).split("\n", -1);
          assertThat(lines).hasSize(5); // headings, three rows, and the end of the last
          assertThat(lines[0].split("\t", -1)).hasSize(table.getColumnCount());
          assertThat(lines[0]).startsWith("Mold\t");
          assertThat(lines[1].split("\t", -1)).hasSize(table.getColumnCount());
          assertThat(String.join("", lines)).doesNotContain("org.evenpour").doesNotContain("Cell");
          // What is chosen stays chosen while the pages show it.
          assertThat(table.getSelectedRows()).containsExactly(1, 2, 3);
          return null;
        });
  }

  @Test
  void helpNamesThePageAndEveryKeyInBothLanguages() {
    for (String tag : Language.TAGS) {
      Look look = Look.of(false, Language.of(tag), DisplayUnits.METRIC, 720);
      onEventThread(
          () -> {
            for (String page : Pages.KEYS) {
              JComponent sheet = HelpSheet.sheet(page, look);
              assertThat(find(sheet, "help.what", JTextArea.class).getText())
                  .isEqualTo(look.say("page." + page + ".tip"));
              assertThat(Screens.all(sheet).stream().filter(p -> "help.does".equals(p.getName())))
                  .hasSize(HelpSheet.KEYS.size());
            }
            return null;
          });
    }
  }

  @Test
  void aComparisonIsMadeOnAWorkerAndTheNewestChoiceIsShown() throws Exception {
    Open open = open("en", false, Asks.NOBODY);
    onEventThread(
        () -> {
          open.place().turnTo("compare");
          JList<?> list = find(open.screen(), "compare.offers", JList.class);
          list.setSelectedIndex(0);
          DeskScreen desk = Objects.requireNonNull(open.place().desk());
          desk.page().turnTo("4");
          assertThat(list.getSelectedIndex()).isPositive();
          return null;
        });
    String said = "";
    for (int i = 0; i < 600 && !said.contains("Thickness of mold 4"); i++) {
      Thread.sleep(50);
      said = onEventThread(() -> find(open.screen(), "compare.said", JTextArea.class).getText());
    }
    assertThat(said).startsWith("Thickness of mold 4 against the others").contains(": real.");
    onEventThread(
        () -> {
          assertThat(find(open.screen(), "compare.table", JTable.class).getRowCount())
              .isGreaterThan(60);
          return null;
        });
  }

  @Test
  void aSignalChosenInTheListShowsItsEvidence() {
    Open open = open("en", false, Asks.NOBODY);
    onEventThread(
        () -> {
          open.place().turnTo("signals");
          JList<?> list = find(open.screen(), "signals.list", JList.class);
          assertThat(list.getModel().getSize())
              .isEqualTo(
                  Topic.of(Sample.opened().report()).stream()
                      .mapToInt(topic -> topic.signals().size())
                      .sum());
          list.setSelectedIndex(2);
          assertThat(open.place().selection().signal()).isNotNull();
          PictureView stack = find(open.screen(), "signal.stack", PictureView.class);
          assertThat(stack.isVisible()).isTrue();
          assertThat(stack.picture()).isNotNull();
          open.place().back();
          assertThat(open.place().selection().signal()).isNull();
          return null;
        });
  }

  @Test
  void aFilterKeepsRowsThatHoldItsLettersAndTheirOrder() {
    Open open = open("en", false, Asks.NOBODY);
    onEventThread(
        () -> {
          open.place().turnTo("molds");
          JTable table = find(open.screen(), "molds.table", JTable.class);
          int all = table.getRowCount();
          find(open.screen(), "molds.filter", JTextField.class).setText("since");
          int some = table.getRowCount();
          assertThat(some).isPositive().isLessThan(all);
          find(open.screen(), "molds.filter", JTextField.class).setText("");
          find(open.screen(), "molds.with-signal", JToggleButton.class).doClick();
          assertThat(table.getRowCount()).isEqualTo(some);
          return null;
        });
  }

  @Test
  void aStretchShortensEveryPage() {
    Open open = open("en", false, Asks.NOBODY);
    onEventThread(
        () -> {
          open.place().selection().chooseStretch(new Stretch(100, 120));
          assertThat(find(open.screen(), "strip.whole", AbstractButton.class).isVisible()).isTrue();
          open.place().turnTo("record");
          JTable rows = find(open.screen(), "record.table", JTable.class);
          assertThat(rows.getRowCount()).isLessThan(600);
          find(open.screen(), "strip.whole", AbstractButton.class).doClick();
          assertThat(rows.getRowCount()).isEqualTo(6107);
          return null;
        });
  }

  @Test
  void rowsOfOneMoldSayWhoseTheyAreAndTheWayBack() {
    Open open = open("en", false, Asks.NOBODY);
    onEventThread(
        () -> {
          open.place().turnTo("record");
          JTable rows = find(open.screen(), "record.table", JTable.class);
          AbstractButton used = find(open.screen(), "record.used", AbstractButton.class);
          AbstractButton every = find(open.screen(), "record.every", AbstractButton.class);
          assertThat(used.getText()).isEqualTo("Rows used: 6,107");
          assertThat(every.isVisible()).isFalse();
          open.place().selection().chooseMold("17");
          assertThat(used.getText()).isEqualTo("Rows used of mold 17: " + rows.getRowCount());
          assertThat(rows.getRowCount()).isBetween(200, 300);
          every.doClick();
          assertThat(rows.getRowCount()).isEqualTo(6107);
          assertThat(every.isVisible()).isFalse();
          return null;
        });
  }

  @Test
  void anotherLogBeginsWithNothingChosen(@TempDir Path folder) throws Exception {
    Open open = open("en", false, Asks.NOBODY);
    Path other = folder.resolve("first-turns.csv");
    Files.write(other, Files.readAllLines(Sample.SOURCES.logs().get(0)).subList(0, 300));
    onEventThread(
        () -> {
          open.place().selection().chooseMold("17");
          open.place().selection().chooseStretch(new Stretch(2, 9));
          open.place().open(new PlantFiles(List.of(other), null, null));
          return null;
        });
    for (int i = 0; i < 600 && onEventThread(() -> open.place().isReading()); i++) {
      Thread.sleep(50);
    }
    onEventThread(
        () -> {
          assertThat(Objects.requireNonNull(open.place().log()).record().rowsKept()).isEqualTo(299);
          assertThat(open.place().selection().mold()).isNull();
          assertThat(open.place().selection().stretch()).isNull();
          return null;
        });
  }

  @Test
  void aCharacteristicIsOfferedOnlyWhereItIsShown() {
    Open open = open("en", false, Asks.NOBODY);
    onEventThread(
        () -> {
          for (String page : Pages.KEYS) {
            open.place().turnTo(page);
            assertThat(find(open.screen(), "characteristic.mass", AbstractButton.class).isVisible())
                .as(page)
                .isEqualTo(
                    List.of("wheel", "molds", "settings", "capability", "compare", "limits")
                        .contains(page));
          }
          return null;
        });
  }

  @Test
  void everyPagePaintsInBothThemesAndLanguages() {
    for (String language : Language.TAGS) {
      for (boolean dark : new boolean[] {false, true}) {
        Open open = open(language, dark, Asks.NOBODY);
        onEventThread(
            () -> {
              for (String page : Pages.KEYS) {
                open.place().turnTo(page);
                var image = Screens.paint(open.screen(), 1280, 720);
                Set<Integer> colors = new HashSet<>();
                for (int x = 0; x < 1280; x += 3) {
                  for (int y = 0; y < 720; y += 3) {
                    colors.add(image.getRGB(x, y));
                  }
                }
                assertThat(colors.size()).as(page).isGreaterThan(20);
              }
              return null;
            });
      }
    }
  }

  @Test
  void whatCanBeFocusedHasANameForScreenReaders() {
    Open open = open("es", false, Asks.NOBODY);
    onEventThread(
        () -> {
          Pages.KEYS.forEach(open.place()::turnTo);
          List<String> nameless = new ArrayList<>();
          for (Component part : Screens.all(open.screen())) {
            boolean isOurs =
                part instanceof AbstractButton
                    || part instanceof JTable
                    || part instanceof JTextField
                    || part instanceof PictureView
                    || part instanceof StripView
                    || part instanceof JList;
            if (isOurs && part.isFocusable() && part.getName() != null) {
              String said = part.getAccessibleContext().getAccessibleName();
              if (said == null || said.isBlank()) {
                nameless.add(part.getName());
              }
            } else if (isOurs && part.getName() == null && part.getParent().getName() != null) {
              nameless.add(part.getClass() + " in " + part.getParent().getName());
            }
          }
          assertThat(nameless).isEmpty();
          return null;
        });
  }

  @Test
  void everyPageSavesWhatItShows(@TempDir Path folder) {
    Open open = open("en", false, Asks.NOBODY);
    List<Export> exports =
        onEventThread(
            () -> {
              open.place().selection().chooseMold("17");
              List<Export> all = new ArrayList<>();
              for (String page : Pages.KEYS) {
                open.place().turnTo(page);
                if (Objects.requireNonNull(open.place().desk()).page()
                    instanceof ComparePage compare) {
                  compare.now();
                }
                if (page.equals("signals")) {
                  open.place().selection().chooseSignal(Sample.opened().report().signals().get(0));
                }
                DeskScreen desk = Objects.requireNonNull(open.place().desk());
                List<Export> its = desk.save().exports();
                assertThat(its).as(page).hasSizeGreaterThan(1);
                all.addAll(its);
              }
              return all;
            });
    assertThat(exports)
        .allSatisfy(
            export -> {
              Path file = folder.resolve(export.fileName());
              onEventThread(export.shown()::get).write(file, Export.Progress.NONE);
              assertThat(begins(file)).isTrue();
            });
  }

  /** Whether a file begins as its ending promises. */
  private static boolean begins(Path file) throws IOException {
    byte[] bytes = Files.readAllBytes(file);
    String name = file.toString();
    if (name.endsWith(".png")) {
      return bytes.length > 1000 && bytes[1] == 'P' && bytes[2] == 'N' && bytes[3] == 'G';
    }
    if (name.endsWith(".xlsx")) {
      return bytes[0] == 'P' && bytes[1] == 'K';
    }
    return name.endsWith(".svg") ? bytes[0] == '<' : bytes.length > 10;
  }

  @Test
  void screensThatAreGoneWatchNoMore() {
    Open open = open("en", false, Asks.NOBODY);
    onEventThread(
        () -> {
          for (int i = 0; i < 5; i++) {
            open.place().screen(Look.of(true, Language.of("en"), DisplayUnits.METRIC, 720));
          }
          assertThat(open.place().selection().watchers()).isEqualTo(1);
          return null;
        });
  }

  @Test
  void anEmptyDeskSaysWhatToDo() {
    onEventThread(
        () -> {
          Look look = Look.of(false, Language.of("en"), DisplayUnits.METRIC, 720);
          Theme.install(look.ink());
          DeskPlace place = new DeskPlace(Asks.NOBODY, InstantSource.system(), log -> {});
          JComponent screen = place.screen(look);
          assertThat(find(screen, "empty.button", AbstractButton.class).isEnabled()).isTrue();
          return null;
        });
  }

  @ParameterizedTest
  @CsvSource({"en,there is no column cast_at", "es,no hay columna cast_at"})
  void aFileThatCannotBeReadIsSaidWhereItWasOpened(
      String language, String said, @TempDir Path folder) throws Exception {
    Path broken = Files.writeString(folder.resolve("broken.csv"), "a,b\n1,2\n");
    Look look = Look.of(false, Language.of(language), DisplayUnits.METRIC, 720);
    Open open =
        onEventThread(
            () -> {
              Theme.install(look.ink());
              DeskPlace place = new DeskPlace(Asks.NOBODY, InstantSource.system(), log -> {});
              JComponent screen = place.screen(look);
              place.open(new PlantFiles(List.of(broken), null, null));
              return new Open(place, screen);
            });
    assertThat(failure(open.screen())).contains("broken.csv:1: " + said);
    // Another language says the same anew.
    Look other = Look.of(false, Language.of("es"), DisplayUnits.METRIC, 720);
    JComponent again = onEventThread(() -> open.place().screen(other));
    assertThat(failure(again)).contains("broken.csv:1: no hay columna cast_at");
  }

  private static String failure(JComponent screen) throws Exception {
    long end = System.nanoTime() + 20_000_000_000L;
    while (System.nanoTime() < end) {
      String said =
          onEventThread(
              () ->
                  Screens.all(screen).stream()
                      .filter(part -> "failed.why".equals(part.getName()))
                      .map(part -> ((JTextArea) part).getText())
                      .findFirst()
                      .orElse(""));
      if (!said.isEmpty()) {
        return said;
      }
      Thread.sleep(20);
    }
    return "";
  }

  @Test
  void reasonsAndNotesAreSaidInTheLanguageOfTheWindow(@TempDir Path folder) throws Exception {
    List<String> lines = Files.readAllLines(Sample.SOURCES.logs().get(0)).subList(0, 400);
    Path log = folder.resolve("log.csv");
    Files.writeString(log, String.join("\n", lines) + "\nyesterday,T1\n");
    OpenedLog opened = Sample.read(new PlantFiles(List.of(log), Sample.SOURCES.profile(), null));
    Open open = open("es", false, Asks.NOBODY);
    onEventThread(
        () -> {
          open.place().show(opened);
          open.place().turnTo("record");
          JTable rows = find(open.screen(), "record.aside.table", JTable.class);
          assertThat(rows.getRowCount()).isEqualTo(1);
          assertThat(rows.getValueAt(0, 2).toString()).contains("hay 2 celdas");
          find(open.screen(), "record.notes", JToggleButton.class).doClick();
          String notes = find(open.screen(), "record.noted", JTextArea.class).getText();
          assertThat(notes).contains("ninguno está aprobado todavía").doesNotContain("proposed");
          assertThat(notes.split("\n\n")).hasSize(opened.report().notes().size());
          return null;
        });
  }
}
