package org.evenpour.view.screen;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.picture.SpreadBar;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.SetPointView;
import org.evenpour.view.model.Tables;
import org.evenpour.view.model.Tables.CapabilityRow;
import org.evenpour.view.model.WheelView;
import org.jspecify.annotations.Nullable;

/**
 * How well the anodes keep within the tolerance, with intervals, and whether that can be relied on.
 */
final class CapabilityPage implements Page {
  private final Desk desk;
  private final JPanel screen;
  private final DataTable<CapabilityRow> whole;
  private final DataTable<CapabilityRow> molds;
  private final JLabel title;
  private final JTextArea none;
  private final PictureView spread;
  private final JLabel spreadTitle;
  private final JTextArea whatIf;

  CapabilityPage(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    whole =
        new DataTable<>(
            "capability.wheel", look.say("capability.wheel"), look, CapabilityRow::name);
    molds =
        new DataTable<>(
            "capability.molds", look.say("page.capability.tip"), look, CapabilityRow::name);
    molds.onChosen(
        row -> {
          if (row.mold() != null) {
            desk.selection().chooseMold(row.mold());
          }
        });
    spread = new PictureView("capability.spread", look.say("spread.title"), look.ink(), 8);
    whatIf = Parts.prose("capability.what-if", "", look.ink().font(1), look);
    whole.onChosen(
        row -> {
          for (CharacteristicReport one : desk.report().characteristics()) {
            if (desk.name(one.name()).equals(row.name())) {
              desk.selection().chooseCharacteristic(one.name());
            }
          }
        });
    title = Parts.heading("capability.molds.title", "", look);
    none = Parts.prose("capability.none", "", look.ink().font(1), look);
    none.setForeground(look.ink().dim());
    int pad = look.px(10);
    long lines =
        desk.report().characteristics().stream()
            .filter(one -> one.wheel().equals(desk.selection().wheel()))
            .count();
    long height = look.px(30) * (lines + 1) + look.px(14);
    JPanel above =
        Parts.panel(
            "capability.above",
            new MigLayout("fillx, hidemode 3, insets 0, gap 0 0", "[grow,fill]"),
            look.ink().field());
    String gaps =
        "gap " + pad + " " + pad + " " + look.px(8) + " " + look.px(4) + ", wmin 50, wrap";
    above.add(Parts.heading("capability.wheel.title", look.say("capability.wheel"), look), gaps);
    above.add(whole.component(), "growx, h " + height + "!, wrap");
    JTextArea note =
        Parts.prose("capability.note", look.say("capability.note"), look.ink().font(0.92), look);
    note.setForeground(look.ink().dim());
    above.add(note, gaps);
    spreadTitle = Parts.heading("capability.spread.title", "", look);
    above.add(spreadTitle, gaps);
    above.add(spread, "growx, h " + look.px(78) + "!, wrap");
    above.add(whatIf, gaps);
    String gauges = SetPointView.gauges(desk);
    if (!gauges.isEmpty()) {
      above.add(Parts.prose("capability.gauge", gauges, look.ink().font(1), look), gaps);
    }
    above.add(title, gaps);
    above.add(none, gaps);
    screen = Parts.headed("page.capability", above, molds.component(), look);
  }

  @Override
  public JComponent screen() {
    return screen;
  }

  @Override
  public void refresh() {
    var look = desk.look();
    whole.show(
        desk.selection().wheel(),
        Tables.capabilityColumns(desk, "characteristic"),
        Tables.capability(desk));
    String chosen = desk.name(desk.selection().characteristic());
    whole.choose(row -> row.name().equals(chosen));
    CharacteristicReport report = desk.characteristic();
    boolean isKnown = report != null && report.specification().hasLimits();
    String name = look.language().report().characteristic(desk.selection().characteristic());
    title.setText(look.say("capability.molds", name));
    none.setText(look.say("capability.none", name));
    none.setVisible(!isKnown);
    molds.component().setVisible(isKnown);
    if (report != null) {
      molds.show(
          desk.about(), Tables.capabilityColumns(desk, "mold"), Tables.capability(desk, report));
      @Nullable String mold = desk.selection().mold();
      molds.choose(row -> mold != null && mold.equals(row.mold()));
      SpreadBar bar = WheelView.spread(desk, report);
      spreadTitle.setVisible(bar != null);
      spreadTitle.setText(look.say("capability.spread", name));
      spread.setVisible(bar != null);
      spread.show(() -> bar);
      whatIf.setText(
          String.join(
              "\n",
              report.inFull().whatIfs().stream()
                  .map(one -> desk.verdicts().whatIf(report, one))
                  .toList()));
      whatIf.setVisible(bar != null && !report.inFull().whatIfs().isEmpty());
    }
    screen.revalidate();
  }

  @Override
  public List<Export> exports() {
    var look = desk.look();
    List<Export> exports = new ArrayList<>();
    exports.addAll(Export.table(look, look.say("capability.wheel"), "capability-wheel", whole));
    exports.addAll(
        Export.table(
            look, title.getText(), "capability-molds-" + desk.selection().characteristic(), molds));
    if (spread.isVisible()) {
      exports.addAll(
          Export.picture(
              look,
              look.say("spread.title"),
              "capability-spread-" + desk.selection().characteristic(),
              spread));
    }
    return exports;
  }
}
