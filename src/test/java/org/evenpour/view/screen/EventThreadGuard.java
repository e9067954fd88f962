package org.evenpour.view.screen;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.swing.JComponent;
import javax.swing.RepaintManager;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** Fails a test in which a component was touched off the event thread. */
final class EventThreadGuard implements BeforeEachCallback, AfterEachCallback {
  private final List<String> violations = new CopyOnWriteArrayList<>();

  @Override
  public void beforeEach(ExtensionContext context) {
    violations.clear();
    RepaintManager.setCurrentManager(
        new RepaintManager() {
          @Override
          public synchronized void addInvalidComponent(JComponent component) {
            check(component);
            super.addInvalidComponent(component);
          }

          @Override
          public void addDirtyRegion(JComponent component, int x, int y, int w, int h) {
            check(component);
            super.addDirtyRegion(component, x, y, w, h);
          }
        });
  }

  private void check(JComponent component) {
    if (!SwingUtilities.isEventDispatchThread()) {
      violations.add(
          component.getClass().getSimpleName()
              + " "
              + component.getName()
              + " from "
              + Thread.currentThread().getName());
    }
  }

  /** What was touched off the event thread so far. */
  List<String> violations() {
    return violations;
  }

  @Override
  public void afterEach(ExtensionContext context) {
    RepaintManager.setCurrentManager(null);
    if (!violations.isEmpty()) {
      throw new AssertionError("touched off the event thread: " + violations);
    }
  }
}
