package org.evenpour.view.screen;

import java.util.List;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.SetPointView;

/** Whether to adjust each ladle side or to leave it alone. */
final class SetPointPage implements Page {
  private final Desk desk;
  private final JPanel screen;
  private final JTextArea said;
  private final PictureView picture;

  SetPointPage(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    said = Parts.prose("setpoint.said", "", look.ink().font(1), look);
    JTextArea note =
        Parts.prose("setpoint.note", look.say("setpoint.note"), look.ink().font(0.92), look);
    note.setForeground(look.ink().dim());
    picture = new PictureView("setpoint.picture", look.say("page.setpoint.tip"), look.ink(), 10);
    picture.onScroll(Scrolling.of(desk));
    int pad = look.px(10);
    String gaps =
        "gap " + pad + " " + pad + " " + look.px(8) + " " + look.px(2) + ", wmin 50, wrap";
    JPanel above =
        Parts.panel(
            "setpoint.above",
            new MigLayout("fillx, insets 0, gap 0 0", "[grow,fill]"),
            look.ink().field());
    above.add(said, gaps);
    above.add(note, gaps);
    screen = Parts.headed("page.setpoint", above, picture, look);
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
    String text = SetPointView.said(desk);
    said.setText(text.isEmpty() ? desk.look().say("setpoint.none") : text);
    said.getAccessibleContext().setAccessibleName(said.getText());
    Desk seen = desk.asNow();
    picture.show(() -> SetPointView.picture(seen));
    screen.revalidate();
  }

  @Override
  public List<Export> exports() {
    return Export.picture(desk.look(), desk.look().say("page.setpoint"), "set-points", picture);
  }
}
