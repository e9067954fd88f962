package org.evenpour.view.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.evenpour.view.screen.Screens.onEventThread;

import java.awt.Dimension;
import java.awt.Rectangle;
import java.util.List;
import javax.swing.JPanel;
import org.evenpour.view.model.DisplayUnits;
import org.evenpour.view.model.Language;
import org.evenpour.view.model.Look;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Two parts that share a panel, in whole pixels that are reckoned here. */
class SharedRoomTest {
  private static final Look LOOK =
      Look.of(false, Language.of("en"), DisplayUnits.METRIC, /* height= */ 720);

  /** A part that would like more, and at the least, than it gets. */
  private static JPanel greedy() {
    JPanel part = new JPanel();
    part.setMinimumSize(new Dimension(500, 500));
    part.setPreferredSize(new Dimension(900, 90));
    return part;
  }

  private static List<Rectangle> laidOut(JPanel panel, int width, int height) {
    panel.setSize(width, height);
    panel.invalidate();
    panel.doLayout();
    return List.of(panel.getComponent(0).getBounds(), panel.getComponent(1).getBounds());
  }

  @ParameterizedTest
  @ValueSource(ints = {400, 401, 799, 1280, 3840})
  void aDetailTakesItsShareWhileItIsVisible(int width) {
    onEventThread(
        () -> {
          JPanel panel = Parts.beside("both", greedy(), new JPanel(), 0.46, LOOK);
          int gap = LOOK.px(8);
          int left = (int) Math.round((width - gap) * 0.46);
          assertThat(laidOut(panel, width, 300))
              .containsExactly(
                  new Rectangle(0, 0, left, 300),
                  new Rectangle(left + gap, 0, width - gap - left, 300));
          panel.getComponent(1).setVisible(false);
          assertThat(laidOut(panel, width, 300).get(0)).isEqualTo(new Rectangle(0, 0, width, 300));
          return true;
        });
  }

  @ParameterizedTest
  @ValueSource(ints = {300, 301, 555, 2160})
  void theUpperTakesItsShareOfTheHeight(int height) {
    onEventThread(
        () -> {
          int gap = LOOK.px(8);
          int top = (int) Math.round((height - gap) * 0.56);
          assertThat(laidOut(Parts.over("both", greedy(), new JPanel(), 0.56, LOOK), 640, height))
              .containsExactly(
                  new Rectangle(0, 0, 640, top),
                  new Rectangle(0, top + gap, 640, height - gap - top));
          return true;
        });
  }
}
