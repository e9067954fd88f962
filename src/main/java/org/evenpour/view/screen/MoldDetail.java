package org.evenpour.view.screen;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.MoldReport;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.picture.AnodeOutline;
import org.evenpour.report.Figures;
import org.evenpour.report.Quiet;
import org.evenpour.view.model.Charts;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.WheelView;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** One mold's record: its series, its distribution, its thickness by point, its signals. */
final class MoldDetail {
  private final Desk desk;
  private final JPanel screen;
  private final JLabel title;
  private final JLabel facts;
  private final PictureView series;
  private final PictureView distribution;
  private final PictureView outline;
  private final JTextArea signals;

  MoldDetail(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    title = Parts.title("mold.title", "", look);
    facts = Parts.dim("mold.facts", "", look);
    JButton close = Parts.button("mold.close", "✕", look.say("mold.close"), look);
    close.addActionListener(event -> desk.selection().chooseMold(null));
    series =
        new PictureView("mold.series", look.language().report().say("head.mold"), look.ink(), 4);
    series.onScroll(Scrolling.of(desk));
    series.onSpot(spot -> desk.selection().chooseSignal(desk.log().signal(spot.name())));
    distribution = new PictureView("mold.distribution", look.say("distribution"), look.ink(), 4);
    outline =
        new PictureView("mold.outline", look.language().report().say("head.mold"), look.ink(), 8);
    signals = Parts.prose("mold.signals", "", look.ink().font(1), look);
    int pad = look.px(12);
    screen =
        Parts.panel(
            "mold.detail",
            new MigLayout(
                "fill, hidemode 3, gap 0 0, insets 0 " + pad + " " + pad + " " + pad,
                "[grow,fill,50%][grow,fill,50%]",
                "[]2[]6[]4[grow 55,fill]6[grow 45,fill]"),
            look.ink().field());
    screen.add(title, "split 2, span, pushx, growx, gaptop " + look.px(8));
    screen.add(close, "gaptop " + look.px(8) + ", wrap");
    screen.add(facts, "span, wrap");
    screen.add(signals, "span, growx, wmin 50, wrap");
    screen.add(series, "span, grow, push, wrap");
    screen.add(distribution, "grow, push");
    screen.add(outline, "grow, push");
    screen.setVisible(false);
  }

  JPanel screen() {
    return screen;
  }

  void refresh(CharacteristicReport report, @Nullable String mold) {
    MoldReport its = OpenedLog.mold(report, mold);
    screen.setVisible(its != null);
    if (its == null || mold == null) {
      return;
    }
    var look = desk.look();
    Figures figures = desk.figures(report);
    title.setText(look.say("mold.name", mold) + "  ·  " + desk.name(report.name()));
    facts.setText(facts(its, figures));
    var sentences = desk.sentences();
    List<String> said = new ArrayList<>();
    MoldVerdict verdict = WheelView.verdict(desk, report.wheel(), mold);
    if (verdict != null) {
      String what = Words.capital(desk.verdicts().verdict(verdict));
      boolean saidBelow =
          verdict.reason() == MoldVerdict.Reason.SIGNAL
              && report.name().equals(verdict.characteristic());
      String judged =
          saidBelow ? what + "." : look.say("mold.verdict", what, desk.verdicts().reason(verdict));
      said.add((desk.verdicts().caution(verdict) + " " + judged).strip());
    }
    int before = said.size();
    for (Signal signal : desk.signals()) {
      if (mold.equals(signal.mold()) && signal.characteristic().equals(report.name())) {
        said.add(Charts.mark(signal).sign() + " " + sentences.signal(signal));
      }
    }
    if (said.size() == before) {
      Quiet quiet = desk.quiet(report);
      said.addAll(
          quiet.isWhole()
              ? List.of(
                  look.say(
                      "mold.no.signals", look.language().report().characteristic(report.name())))
              : quiet.notLookedFor(sentences.words()));
    }
    signals.setText(String.join("\n", said.subList(0, Math.min(before + 3, said.size()))));
    Desk seen = desk.asNow();
    series.show(() -> Charts.mold(seen, report, mold));
    distribution.show(() -> WheelView.distribution(seen, report, mold));
    AnodeOutline points = WheelView.outline(desk, mold);
    outline.setVisible(points != null);
    outline.show(() -> points);
  }

  private String facts(MoldReport its, Figures figures) {
    var look = desk.look();
    Double offset = its.offset();
    String text =
        look.say(
            "mold.facts",
            look.language().screen().count(its.count()),
            figures.mean(its.mean()),
            offset == null ? "—" : figures.departure(offset, figures.decimals() + 1));
    var capability = its.capability();
    var cpk = capability == null ? null : capability.cpk();
    Long outside = its.outside();
    return cpk == null || outside == null
        ? text
        : text + " · " + look.say("mold.capability", Digits.number(cpk.value(), 2), outside);
  }

  List<Export> exports() {
    String mold = desk.selection().mold();
    if (!screen.isVisible() || mold == null) {
      return List.of();
    }
    var look = desk.look();
    String of = "mold-" + mold.replaceAll("[^A-Za-z0-9]", "_") + "-";
    String name = look.say("mold.name", mold);
    List<Export> exports = new ArrayList<>();
    exports.addAll(Export.picture(look, name, of + desk.selection().characteristic(), series));
    exports.addAll(
        Export.picture(
            look, name + ", " + look.say("distribution"), of + "distribution", distribution));
    return exports;
  }
}
