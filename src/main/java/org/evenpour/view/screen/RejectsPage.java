package org.evenpour.view.screen;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import org.evenpour.report.RejectText;
import org.evenpour.report.table.RejectTables;
import org.evenpour.report.table.RejectTables.Place;
import org.evenpour.report.table.RejectTables.SpellRow;
import org.evenpour.table.Column;
import org.evenpour.table.Table;
import org.evenpour.view.model.Desk;

/** What was rejected, when it was more than usual, and where. */
final class RejectsPage implements Page {
  /** So many spells are said; the table has all. A choice. */
  private static final int MOST = 2;

  private final Desk desk;
  private final JPanel screen;
  private final JTextArea said;
  private final DataTable<SpellRow> spells;
  private final DataTable<Place> places;
  private final JPanel body;

  RejectsPage(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    said = Parts.prose("rejects.said", "", look.ink().font(1), look);
    spells =
        new DataTable<>(
            "rejects.spells", look.say("page.rejects.tip"), look, row -> row.its().signal().id());
    spells.onChosen(
        row -> {
          String mold = row.its().signal().mold();
          if (mold != null) {
            desk.selection().chooseMold(mold);
          }
        });
    places =
        new DataTable<>(
            "rejects.places", look.say("page.rejects.tip"), look, row -> row.by() + row.name());
    body = Parts.over("rejects.body", spells.component(), places.component(), 0.4, look);
    int pad = look.px(12);
    JPanel head =
        Parts.panel(
            "rejects.head",
            new MigLayout("fillx, insets " + pad + ", gap 0 0", "[grow,fill]"),
            look.ink().field());
    head.add(said, "wmin 50");
    screen = Parts.headed("page.rejects", head, body, look);
  }

  @Override
  public boolean isOfOneCharacteristic() {
    return false;
  }

  @Override
  public JComponent screen() {
    return screen;
  }

  @Override
  public void refresh() {
    boolean isAny = !desk.report().rejects().isEmpty();
    List<String> lines = new ArrayList<>();
    if (isAny) {
      RejectText text = new RejectText(desk.sentences());
      lines.addAll(text.lines(desk.report()));
      RejectText.ranked(desk.report()).stream().limit(MOST).map(text::spell).forEach(lines::add);
    } else {
      lines.add(desk.look().say("rejects.none"));
    }
    said.setText(String.join("\n", lines));
    said.getAccessibleContext().setAccessibleName(said.getText());
    body.setVisible(isAny);
    Table<SpellRow> when = RejectTables.spells(desk.report(), desk.sentences());
    spells.show("spells", some(when, "signal", "words"), when.rows());
    Table<Place> where = RejectTables.places(desk.report(), desk.sentences());
    places.show("places", some(where), where.rows());
    screen.revalidate();
  }

  /** Columns that say something here: of one wheel nobody needs the name. */
  private <R> List<Column<R>> some(Table<R> table, String... without) {
    boolean isOne = desk.report().log().wheels().size() < 2;
    return table.columns().stream()
        .filter(one -> !List.of(without).contains(one.key()))
        .filter(one -> !isOne || !one.key().equals("wheel"))
        .toList();
  }

  @Override
  public List<Export> exports() {
    var look = desk.look();
    List<Export> exports = new ArrayList<>();
    exports.addAll(Export.table(look, look.say("page.rejects"), "rejects-in-time", spells));
    exports.addAll(Export.table(look, look.say("rejects.where"), "rejects-by-place", places));
    return exports;
  }
}
