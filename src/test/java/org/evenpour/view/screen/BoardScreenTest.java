package org.evenpour.view.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.evenpour.view.screen.Screens.find;
import static org.evenpour.view.screen.Screens.onEventThread;

import java.awt.Color;
import java.awt.event.ActionEvent;
import java.awt.image.BufferedImage;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JTextField;
import org.evenpour.live.Snapshot;
import org.evenpour.picture.Ink;
import org.evenpour.plant.Seen;
import org.evenpour.view.model.BoardDesk;
import org.evenpour.view.model.BoardSample;
import org.evenpour.view.model.Look;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BoardScreenTest {
  @RegisterExtension final EventThreadGuard guard = new EventThreadGuard();

  private final List<String> notes = new ArrayList<>();
  private final List<String> names = new ArrayList<>();

  /** Color is spent only on what departs. */
  @ParameterizedTest
  @CsvSource({"1280, 720, false", "1280, 720, true", "1920, 1080, false", "1024, 768, true"})
  void showsNoColorWhileTheWheelIsEven(int width, int height, boolean dark) {
    Look look = BoardSample.look("en", dark);
    BufferedImage even = paint(BoardSample.EVEN, 5, look, width, height);
    assertThat(count(even, look.ink().heavy())).isZero();
    assertThat(count(even, look.ink().light())).isZero();
    BufferedImage uneven = paint(BoardSample.UNEVEN, 5, look, width, height);
    assertThat(count(uneven, look.ink().heavy())).isGreaterThan(100);
    assertThat(count(uneven, look.ink().light())).isGreaterThan(100);
  }

  /** The figure's place is inverted when the feed is silent: seen from anywhere, in any color. */
  @ParameterizedTest
  @CsvSource({"false", "true"})
  void invertsTheFigureWhenTheFeedIsSilent(boolean dark) {
    Look look = BoardSample.look("en", dark);
    BufferedImage live = paint(BoardSample.EVEN, 5, look, 1280, 720);
    BufferedImage silent = paint(BoardSample.EVEN, 3600, look, 1280, 720);
    int area = 690 * 200;
    assertThat(countIn(live, look.ink().text(), 20, 60, 690, 200)).isLessThan(area / 4);
    assertThat(countIn(silent, look.ink().text(), 20, 60, 690, 200)).isGreaterThan(area / 2);
  }

  @Test
  void keepsANoteWithTwoKeysAndNeverWithoutANote() {
    Look look = BoardSample.look("en", false);
    onEventThread(
        () -> {
          BoardScreen screen = screen(BoardSample.UNEVEN, 5, look);
          Screens.paint(screen, 1280, 720);
          JTextField note = find(screen, "board.note", JTextField.class);
          assertThat(note.isVisible()).isFalse();
          press(screen, "seen");
          assertThat(note.isVisible()).isTrue();
          press(note, "keep");
          assertThat(note.isVisible()).as("an empty note is not kept").isTrue();
          assertThat(notes).isEmpty();
          note.setText("  nozzles cleaned ");
          press(screen, "pouring"); // letters belong to the note
          press(note, "keep");
          assertThat(note.isVisible()).isFalse();
          // One for each signal of the line: four molds thin with one spray are one line.
          int kept = notes.size();
          assertThat(notes).isNotEmpty().containsOnly("nozzles cleaned");
          assertThat(names).hasSize(kept).containsOnly("");
          press(screen, "seen");
          press(note, "leave");
          assertThat(note.isVisible()).isFalse();
          assertThat(notes).hasSize(kept);
          return true;
        });
  }

  @Test
  void offersTheNameOfTheLastNoteUntilTheShiftIsOver() {
    Look look = BoardSample.look("en", false);
    BoardSample sample = BoardSample.at(BoardSample.UNEVEN);
    Snapshot[] now = {sample.snapshot()};
    Instant[] clock = {sample.castAt()};
    BoardDesk desk =
        new BoardDesk(
            () -> now[0],
            listener -> () -> {},
            (signal, who, note) -> {
              List<Seen> seen = new ArrayList<>(now[0].seen());
              seen.add(Seen.of(clock[0], signal, who, note));
              now[0] = now[0].withSeen(seen);
            },
            () -> clock[0]);
    onEventThread(
        () -> {
          BoardScreen screen = new BoardScreen(desk, look, BoardActs.NONE);
          Screens.paint(screen, 1280, 720);
          JTextField note = find(screen, "board.note", JTextField.class);
          JTextField who = find(screen, "board.who", JTextField.class);
          press(screen, "seen");
          assertThat(who.isVisible()).isTrue();
          assertThat(who.getText()).isEmpty();
          who.setText(" Rosa ");
          note.setText("nozzles cleaned");
          press(who, "keep");
          assertThat(now[0].seen()).extracting(Seen::who).containsOnly("Rosa");
          assertThat(screen.model().signals())
              .anySatisfy(one -> assertThat(one.seen()).contains("by Rosa"));

          press(screen, "seen"); // two keys and a note still do
          assertThat(who.getText()).isEqualTo("Rosa");
          note.setText("strainer cleaned");
          press(note, "keep");
          Seen last = now[0].seen().get(now[0].seen().size() - 1);
          assertThat(last.who()).isEqualTo("Rosa");
          assertThat(last.note()).isEqualTo("strainer cleaned");

          clock[0] = clock[0].plusSeconds(8 * 3_600); // the usual length of a shift
          press(screen, "seen");
          assertThat(who.getText()).isEmpty();
          return true;
        });
  }

  @Test
  void hasNothingToSeeWhileTheWheelIsEven() {
    onEventThread(
        () -> {
          BoardScreen screen = screen(BoardSample.EVEN, 5, BoardSample.look("en", false));
          press(screen, "seen");
          assertThat(find(screen, "board.note", JTextField.class).isVisible()).isFalse();
          return true;
        });
  }

  @Test
  void speaksToThoseWhoCannotSeeIt() {
    String said =
        onEventThread(
            () ->
                screen(BoardSample.UNEVEN, 5, BoardSample.look("en", false))
                    .getAccessibleContext()
                    .getAccessibleDescription());
    assertThat(said)
        .contains("Mass 390.5 kg, +0.5 kg over target")
        .contains("Molds 13, 14, 15 and 16 run thin");
  }

  /** Nothing is cut off at the right edge or the lower one, in any size, language or state. */
  @ParameterizedTest
  @CsvSource({"1280, 720", "1024, 768", "1366, 768", "1920, 1080", "2560, 1080", "3840, 2160"})
  void leavesTheEdgesFree(int width, int height) {
    for (String language : new String[] {"en", "es"}) {
      Look look = BoardSample.look(language, false);
      for (int turn : new int[] {BoardSample.EVEN, BoardSample.UNEVEN}) {
        for (long seconds : new long[] {5, 300_000}) {
          BufferedImage image = paint(turn, seconds, look, width, height);
          int ground = look.ink().ground().getRGB();
          int hairline = look.ink().hairline().getRGB();
          for (int y = 0; y < height; y++) {
            int rgb = image.getRGB(width - 2, y);
            assertThat(rgb == ground || near(rgb, hairline))
                .as("%s turn %d at y %d: %x", language, turn, y, rgb)
                .isTrue();
          }
          for (int x = 0; x < width; x++) {
            assertThat(image.getRGB(x, height - 1)).isEqualTo(ground);
          }
        }
      }
    }
  }

  private static boolean near(int a, int b) {
    Color one = new Color(a);
    Color other = new Color(b);
    return Math.abs(one.getRed() - other.getRed()) < 60
        && Math.abs(one.getGreen() - other.getGreen()) < 60
        && Math.abs(one.getBlue() - other.getBlue()) < 60;
  }

  /** WCAG 2.2: text that the board writes has a contrast of at least 4.5 : 1. */
  @Test
  void writesWithEnoughContrast() {
    for (Ink ink : new Ink[] {Ink.light(13), Ink.dark(13)}) {
      for (Color text : new Color[] {ink.text(), ink.dim(), ink.heavyText(), ink.lightText()}) {
        assertThat(contrast(text, ink.ground())).isGreaterThan(4.5);
      }
    }
  }

  private static double contrast(Color a, Color b) {
    double one = luminance(a) + 0.05;
    double other = luminance(b) + 0.05;
    return Math.max(one, other) / Math.min(one, other);
  }

  private static double luminance(Color color) {
    return 0.2126 * linear(color.getRed())
        + 0.7152 * linear(color.getGreen())
        + 0.0722 * linear(color.getBlue());
  }

  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }

  private BoardScreen screen(int turn, long secondsLater, Look look) {
    BoardSample sample = BoardSample.at(turn);
    return new BoardScreen(
        new BoardDesk(
            () -> sample.snapshot().lookedAt(sample.castAt().plusSeconds(secondsLater)),
            listener -> () -> {},
            (signal, who, note) -> {
              notes.add(note);
              names.add(who);
            },
            () -> sample.castAt().plusSeconds(secondsLater)),
        look,
        BoardActs.NONE);
  }

  private BufferedImage paint(int turn, long secondsLater, Look look, int width, int height) {
    return onEventThread(() -> Screens.paint(screen(turn, secondsLater, look), width, height));
  }

  private static void press(javax.swing.JComponent at, String name) {
    at.getActionMap()
        .get(name)
        .actionPerformed(new ActionEvent(at, ActionEvent.ACTION_PERFORMED, name));
  }

  private static int count(BufferedImage image, Color color) {
    return countIn(image, color, 0, 0, image.getWidth(), image.getHeight());
  }

  private static int countIn(BufferedImage image, Color color, int x, int y, int w, int h) {
    int count = 0;
    for (int row = y; row < y + h; row++) {
      for (int column = x; column < x + w; column++) {
        count += image.getRGB(column, row) == color.getRGB() ? 1 : 0;
      }
    }
    return count;
  }
}
