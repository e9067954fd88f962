package org.evenpour.view.screen;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.findings.CausesReport.Counted;
import org.evenpour.view.model.CausesView;
import org.evenpour.view.model.Desk;

/** Which causes people confirmed, the most frequent first, as bars and as a table. */
final class CausesPage implements Page {
  private final Desk desk;
  private final JPanel screen;
  private final JTextArea overview;
  private final JTextArea note;
  private final PictureView bars;
  private final DataTable<Counted> table;
  private final JPanel body;

  CausesPage(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    overview = Parts.prose("causes.overview", "", look.ink().bold(1.05), look);
    note = Parts.prose("causes.note", "", look.ink().font(0.92), look);
    note.setForeground(look.ink().dim());
    bars = new PictureView("causes.bars", look.say("page.causes.tip"), look.ink(), 12);
    table =
        new DataTable<>(
            "causes.table", look.say("page.causes.tip"), look, one -> one.cause().key());
    table.onChosen(
        one -> {
          if (one.cause().kind() == Kind.SETTING) {
            desk.selection().chooseSetting(one.cause().name());
          }
        });
    body = Parts.over("causes.body", bars, table.component(), 0.56, look);
    int pad = look.px(12);
    JPanel head =
        Parts.panel(
            "causes.head",
            new net.miginfocom.swing.MigLayout(
                "fillx, hidemode 3, wrap 1, insets " + pad + ", gap 0 4", "[grow,fill]"),
            look.ink().field());
    head.add(overview, "wmin 50");
    head.add(note, "wmin 50");
    screen = Parts.headed("page.causes", head, body, look);
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
    var look = desk.look();
    var causes = desk.report().causes();
    overview.setText(CausesView.overview(desk));
    note.setText(
        causes.unmatched().isEmpty()
            ? look.say("causes.note")
            : look.say("causes.note")
                + " "
                + look.say("causes.unmatched", causes.unmatched().size()));
    body.setVisible(!causes.causes().isEmpty());
    Desk seen = desk.asNow();
    bars.show(() -> CausesView.bars(seen));
    table.show("causes", CausesView.columns(desk), causes.causes());
    screen.revalidate();
  }

  @Override
  public List<Export> exports() {
    var look = desk.look();
    List<Export> exports = new ArrayList<>();
    if (body.isVisible()) {
      exports.addAll(Export.picture(look, look.say("page.causes"), "causes", bars));
    }
    exports.addAll(Export.table(look, look.say("page.causes"), "causes", table));
    return exports;
  }
}
