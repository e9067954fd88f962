package org.evenpour.view.screen;

import java.awt.AWTEvent;
import java.awt.EventQueue;
import java.awt.Toolkit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Measures every step of the event thread: how long the dispatch of one event took, and during what
 * the test was busy then. Written by the event thread, read by any.
 */
final class EventThreadSteps extends EventQueue {
  /** One dispatch. */
  record Step(String during, long micros) {}

  private final List<Step> steps = new ArrayList<>();
  private volatile String during = "start";

  /** Measures from now on. */
  static EventThreadSteps begin() {
    EventThreadSteps queue = new EventThreadSteps();
    Toolkit.getDefaultToolkit().getSystemEventQueue().push(queue);
    return queue;
  }

  /** What the steps from now on are said to belong to. */
  void during(String what) {
    during = what;
  }

  @Override
  protected void dispatchEvent(AWTEvent event) {
    String what = during;
    long begun = System.nanoTime();
    try {
      super.dispatchEvent(event);
    } finally {
      long micros = (System.nanoTime() - begun) / 1000;
      synchronized (steps) {
        steps.add(new Step(what, micros));
      }
    }
  }

  /** The longest, longest first. */
  List<Step> longest(int count) {
    synchronized (steps) {
      return steps.stream()
          .sorted(Comparator.comparingLong(Step::micros).reversed())
          .limit(count)
          .toList();
    }
  }

  /** Measures no more. */
  void end() {
    pop();
  }
}
