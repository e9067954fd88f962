package org.evenpour.view.screen;

import java.awt.Component;
import java.awt.Container;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.lang.reflect.InvocationTargetException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;
import javax.swing.AbstractButton;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;

/** Finds and paints components without a display. */
final class Screens {
  private Screens() {}

  /** Runs on the event thread and hands back what came out. */
  @SuppressWarnings("NullAway") // null only where the work itself hands back null
  static <T> T onEventThread(Callable<T> work) {
    AtomicReference<T> result = new AtomicReference<>();
    try {
      SwingUtilities.invokeAndWait(
          () -> {
            try {
              result.set(work.call());
            } catch (Exception e) {
              throw new IllegalStateException(e);
            }
          });
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (InvocationTargetException e) {
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw new IllegalStateException(e.getCause());
    }
    return result.get();
  }

  /** Presses a button. */
  static void press(Component root, String name) {
    onEventThread(
        () -> {
          find(root, name, AbstractButton.class).doClick(0);
          return true;
        });
  }

  /** Types into a field, in place of what stands there. */
  static void type(Component root, String name, String text) {
    onEventThread(
        () -> {
          find(root, name, JTextField.class).setText(text);
          return true;
        });
  }

  /** All components within, itself first. */
  static List<Component> all(Component root) {
    List<Component> found = new ArrayList<>();
    found.add(root);
    if (root instanceof Container container) {
      for (Component part : container.getComponents()) {
        found.addAll(all(part));
      }
    }
    return found;
  }

  /** The component with this name. */
  static <T extends Component> T find(Component root, String name, Class<T> kind) {
    return all(root).stream()
        .filter(part -> name.equals(part.getName()))
        .map(kind::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("no component " + name));
  }

  /** Lays out and paints a screen. */
  static BufferedImage paint(Component screen, int width, int height) {
    screen.setSize(width, height);
    for (int i = 0; i < 3; i++) {
      all(screen).forEach(Component::doLayout);
    }
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    screen.paint(g);
    g.dispose();
    return image;
  }
}
