package org.evenpour.view.screen;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.EvidenceView;
import org.evenpour.view.model.ScatterView;
import org.evenpour.view.model.SettingRows;
import org.jspecify.annotations.Nullable;

/**
 * What each setting does; the chosen one over the characteristic on the same turns, and against it.
 */
final class SettingsPage implements Page {
  private final Desk desk;
  private final JPanel screen;
  private final DataTable<SettingRows.Row> table;
  private final PictureView stack;
  private final PictureView scatter;
  private final JTextArea said;

  SettingsPage(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    table =
        new DataTable<>(
            "settings.table", look.say("page.settings.tip"), look, row -> row.report().name());
    table.showOnlyWholeColumns();
    table.onChosen(row -> desk.selection().chooseSetting(row.report().name()));
    stack = new PictureView("settings.stack", look.say("page.settings.tip"), look.ink(), 8);
    stack.onScroll(Scrolling.of(desk));
    stack.onSpot(spot -> desk.selection().chooseSignal(desk.log().signal(spot.name())));
    scatter = new PictureView("settings.scatter", look.say("settings.scatter"), look.ink(), 8);
    said = Parts.prose("settings.said", "", look.ink().font(0.95), look);
    int pad = look.px(12);
    JPanel lower =
        Parts.panel(
            "settings.lower",
            new MigLayout("fill, hidemode 3, gap 0 0, insets 0", "[grow,fill]", "[]0[grow,fill]"),
            look.ink().field());
    lower.add(said, "wmin 50, gap " + pad + " " + pad + " " + pad / 2 + " 0, wrap");
    lower.add(Parts.beside("settings.pictures", stack, scatter, 0.64, look), "grow, push");
    screen = Parts.over("page.settings", table.component(), lower, 0.42, look);
  }

  @Override
  public JComponent screen() {
    return screen;
  }

  @Override
  public void refresh() {
    CharacteristicReport report = desk.characteristic();
    if (report == null) {
      return;
    }
    var look = desk.look();
    List<SettingRows.Row> rows = SettingRows.of(desk, report);
    table.show(desk.about(), SettingRows.columns(desk, report), rows);
    @Nullable String setting = desk.selection().setting();
    SettingRows.Row chosen =
        rows.stream()
            .filter(row -> row.report().name().equals(setting))
            .findFirst()
            .orElse(rows.isEmpty() ? null : rows.get(0));
    String name = chosen == null ? "" : chosen.report().name();
    table.choose(row -> row.report().name().equals(name));
    stack.setVisible(chosen != null);
    if (chosen == null) {
      said.setText(look.say("settings.none"));
      stack.clear();
      scatter.setVisible(false);
      return;
    }
    said.setText(SettingRows.said(desk, chosen));
    Desk seen = desk.asNow();
    scatter.setVisible(!chosen.report().category());
    scatter.show(() -> ScatterView.of(seen, chosen, report));
    stack.show(() -> EvidenceView.settingOver(seen, chosen.report().name(), report));
    screen.revalidate();
  }

  @Override
  public List<Export> exports() {
    var look = desk.look();
    String of = desk.selection().characteristic();
    List<Export> exports = new ArrayList<>();
    exports.addAll(Export.table(look, look.say("page.settings"), "settings-" + of, table));
    exports.addAll(Export.picture(look, look.say("page.settings"), "setting-" + of, stack));
    if (scatter.isVisible()) {
      exports.addAll(Export.picture(look, look.say("settings.scatter"), "scatter-" + of, scatter));
    }
    return exports;
  }
}
