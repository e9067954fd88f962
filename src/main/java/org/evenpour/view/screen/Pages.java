package org.evenpour.view.screen;

import java.awt.event.KeyEvent;
import java.util.List;
import java.util.function.Function;
import org.evenpour.view.model.Desk;

/** The desk's pages, in the order of its list. */
final class Pages {
  private Pages() {}

  /**
   * A page.
   *
   * @param key names it
   * @param page is made anew for each log and look
   */
  record Entry(String key, Function<Desk, Page> page) {}

  /** In their order. */
  static final List<Entry> OF_DESK =
      List.of(
          new Entry("short", InShortPage::new),
          new Entry("wheel", WheelPage::new),
          new Entry("molds", MoldsPage::new),
          new Entry("signals", SignalsPage::new),
          new Entry("settings", SettingsPage::new),
          new Entry("capability", CapabilityPage::new),
          new Entry("rejects", RejectsPage::new),
          new Entry("setpoint", SetPointPage::new),
          new Entry("record", RecordPage::new),
          new Entry("causes", CausesPage::new),
          new Entry("compare", ComparePage::new),
          new Entry("limits", LimitsPage::new));

  /** Their keys. */
  static final List<String> KEYS = OF_DESK.stream().map(Entry::key).toList();

  /** The letters of the pages that digits do not reach: beside, limits. */
  private static final int[] LETTERS = {KeyEvent.VK_B, KeyEvent.VK_L};

  /** What turns to a page with Ctrl: 1 to 9, then 0, then a letter; 0 as a code = none. */
  static int code(String key) {
    int index = KEYS.indexOf(key);
    if (index >= 10 && index < 10 + LETTERS.length) {
      return LETTERS[index - 10];
    }
    return index < 0 || index > 9 ? 0 : KeyEvent.VK_0 + (index + 1) % 10;
  }
}
