package org.evenpour.view.screen;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.Tables;
import org.evenpour.view.model.Tables.MoldRow;
import org.jspecify.annotations.Nullable;

/** Every mold in a table; the chosen one's record beside it. */
final class MoldsPage implements Page {
  private final Desk desk;
  private final JPanel screen;
  private final DataTable<MoldRow> table;
  private final JTextField filter;
  private final JToggleButton withSignal;
  private final MoldDetail detail;

  MoldsPage(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    table = new DataTable<>("molds.table", look.say("page.molds.tip"), look, MoldRow::mold);
    table.showOnlyWholeColumns();
    table.onChosen(row -> desk.selection().chooseMold(row.mold()));
    filter = Filters.field("molds.filter", look, this::applyFilter);
    withSignal = Parts.toggle("molds.with-signal", look.say("filter.signal"), "", look);
    withSignal.addActionListener(event -> applyFilter());
    detail = new MoldDetail(desk);
    JPanel list =
        Parts.headed(
            "molds.list",
            Parts.row("molds.tools", look, filter, withSignal),
            table.component(),
            look);
    screen = Parts.beside("page.molds", list, detail.screen(), 0.46, look);
  }

  private void applyFilter() {
    table.filter(filter.getText(), row -> !withSignal.isSelected() || row.signal() != null);
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
    table.show(desk.about(), Tables.moldColumns(desk, report), Tables.molds(desk, report));
    @Nullable String mold = desk.selection().mold();
    table.choose(row -> row.mold().equals(mold));
    detail.refresh(report, mold);
    screen.revalidate();
    screen.repaint();
  }

  @Override
  public java.util.Optional<JComponent> filter() {
    return java.util.Optional.of(filter);
  }

  @Override
  public boolean close() {
    boolean wasOpen = desk.selection().mold() != null;
    desk.selection().chooseMold(null);
    return wasOpen;
  }

  @Override
  public List<Export> exports() {
    var look = desk.look();
    List<Export> exports = new ArrayList<>();
    exports.addAll(
        Export.table(
            look, look.say("page.molds"), "molds-" + desk.selection().characteristic(), table));
    exports.addAll(detail.exports());
    return exports;
  }
}
