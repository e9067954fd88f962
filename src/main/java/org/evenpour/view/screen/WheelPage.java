package org.evenpour.view.screen;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.picture.SpreadBar;
import org.evenpour.view.model.Charts;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.WheelView;

/** The wheel from above, what it did turn by turn, and where the spread comes from. */
final class WheelPage implements Page {
  private final Desk desk;
  private final JPanel screen;
  private final PictureView ring;
  private final PictureView series;
  private final PictureView distribution;
  private final PictureView spread;
  private final JTextArea unknown;

  WheelPage(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    ring = new PictureView("wheel.ring", look.say("page.wheel.tip"), look.ink(), 12);
    series = new PictureView("wheel.series", look.say("series.wheel"), look.ink(), 8);
    distribution = new PictureView("wheel.distribution", look.say("distribution"), look.ink(), 8);
    spread = new PictureView("wheel.spread", look.say("spread.title"), look.ink(), 8);
    unknown = Parts.prose("wheel.unknown", look.say("spread.none"), look.ink().font(1), look);
    ring.onSpot(spot -> desk.selection().chooseMold(spot.name()));
    series.onSpot(spot -> desk.selection().chooseSignal(desk.log().signal(spot.name())));
    series.onScroll(Scrolling.of(desk));
    screen =
        Parts.panel(
            "page.wheel",
            new MigLayout("fill, insets 0, gap 0 0", "[44%,fill][56%,fill]", "[fill]"),
            look.ink().field());
    JPanel right =
        Parts.panel(
            "wheel.right",
            new MigLayout(
                "fill, insets 0, gap 0 0, hidemode 3",
                "[fill,grow]",
                "[]0[grow 52,fill]0[]0[grow 30,fill]0[]0[::" + look.px(86) + ",grow 18,fill]"),
            look.ink().field());
    String pad = "gapleft " + look.px(10) + ", gaptop " + look.px(6) + ", wrap";
    right.add(Parts.heading("wheel.series.title", look.say("series.wheel"), look), pad);
    right.add(series, "grow, push, wrap");
    right.add(Parts.heading("wheel.distribution.title", look.say("distribution"), look), pad);
    right.add(distribution, "grow, push, wrap");
    right.add(Parts.heading("wheel.spread.title", look.say("spread.title"), look), pad);
    right.add(spread, "grow, h " + look.px(78) + "!, wrap");
    right.add(unknown, "growx, gapleft " + look.px(10));
    screen.add(ring, "grow, push");
    screen.add(right, "grow, push");
  }

  @Override
  public JComponent screen() {
    return screen;
  }

  @Override
  public void refresh() {
    CharacteristicReport report = desk.characteristic();
    if (report == null) {
      ring.clear();
      series.clear();
      distribution.clear();
      return;
    }
    Desk seen = desk.asNow();
    ring.show(() -> WheelView.ring(seen, report));
    series.show(() -> Charts.wheel(seen, report));
    distribution.show(() -> WheelView.distribution(seen, report, null));
    SpreadBar bar = WheelView.spread(desk, report);
    spread.setVisible(bar != null);
    unknown.setVisible(bar == null);
    spread.show(() -> bar);
  }

  @Override
  public List<Export> exports() {
    var look = desk.look();
    String of = desk.selection().characteristic();
    List<Export> exports = new ArrayList<>();
    exports.addAll(Export.picture(look, look.say("page.wheel"), "wheel-" + of, ring));
    exports.addAll(Export.picture(look, look.say("series.wheel"), "turns-" + of, series));
    exports.addAll(
        Export.picture(look, look.say("distribution"), "distribution-" + of, distribution));
    if (spread.isVisible()) {
      exports.addAll(Export.picture(look, look.say("spread.title"), "spread-" + of, spread));
    }
    CharacteristicReport report = desk.characteristic();
    if (report != null) {
      exports.addAll(
          Export.picture(
              look,
              look.say("offsets.title"),
              "offsets-" + of,
              () -> {
                Desk seen = desk.asNow();
                return () -> WheelView.intervals(seen, report);
              }));
    }
    return exports;
  }
}
