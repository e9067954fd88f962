package org.evenpour.view.screen;

import java.util.List;
import java.util.function.Function;
import org.evenpour.view.model.Desk;

/** The desk's pages, in the order of its list. */
final class Pages {
  private Pages() {}

  /** Every page is made anew for each log and look. */
  static final List<Function<Desk, Page>> OF_DESK =
      List.of(
          WheelPage::new,
          MoldsPage::new,
          SignalsPage::new,
          SettingsPage::new,
          CapabilityPage::new,
          SetPointPage::new,
          RecordPage::new,
          CausesPage::new);
}
