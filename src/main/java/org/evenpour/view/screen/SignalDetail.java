package org.evenpour.view.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import net.miginfocom.swing.MigLayout;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.report.Quiet;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.Evidence;
import org.evenpour.view.model.EvidenceView;
import org.evenpour.view.model.LinkRow;
import org.evenpour.view.model.OpenedLog;
import org.jspecify.annotations.Nullable;

/** What speaks for one signal: the sentence, the picture that proves it, the links. */
final class SignalDetail {
  private static final int ROWS = 4;
  private static final int LEAST_ROWS = 2;

  private final Desk desk;
  private final JPanel screen;
  private final JTextArea sentence;
  private final JTextArea tests;
  private final JTextArea none;
  private final PictureView stack;
  private final javax.swing.JLabel heading;
  private final DataTable<LinkRow> links;
  private final JTextArea reasoning;
  private final CauseForm form;
  private final JButton compare;
  private @Nullable PageActs acts;
  private @Nullable Link seen;
  private @Nullable Signal shown;
  private @Nullable String setting;
  private @Nullable String chosen;

  SignalDetail(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    sentence = Parts.prose("signal.sentence", "", look.ink().bold(1.05), look);
    tests = Parts.prose("signal.tests", "", look.ink().font(0.92), look);
    tests.setForeground(look.ink().dim());
    none = Parts.prose("signal.none", "", look.ink().font(1), look);
    none.setForeground(look.ink().dim());
    stack = new PictureView("signal.stack", look.say("page.signals.tip"), look.ink(), 4);
    stack.onScroll(Scrolling.of(desk));
    heading = Parts.heading("signal.links.title", look.say("signal.links"), look);
    links = new DataTable<>("signal.links", look.say("signal.links"), look, LinkRow::key);
    links.showOnlyWholeColumns();
    links.onChosen(
        row -> {
          chosen = row.key();
          Link link = row.link();
          if (link != null && !link.event()) {
            setting = link.name();
            desk.selection().chooseSetting(link.name());
          }
          refresh(shown, false);
        });
    reasoning = Parts.prose("signal.reasoning", "", look.ink().font(0.92), look);
    form = new CauseForm(desk);
    compare =
        Parts.button(
            "signal.compare", look.say("signal.compare"), look.say("signal.compare.tip"), look);
    compare.addActionListener(event -> compare());
    compare.setVisible(false);
    int pad = look.px(12);
    // Where room is short, the picture keeps what it needs and the list shows fewer rows.
    String tableHeight =
        look.px(30) * (LEAST_ROWS + 1)
            + ":"
            + (look.px(30) * (ROWS + 1) + look.px(8))
            + ":"
            + (look.px(30) * (ROWS + 1) + look.px(8));
    screen =
        Parts.panel(
            "signal.detail",
            new MigLayout(
                "fill, hidemode 3, gap 0 0, insets " + pad,
                "[grow,fill]",
                "[]4[]6[grow,fill]8[]2[]4[]4[]4[]"),
            look.ink().field());
    screen.add(sentence, "wmin 50, wrap");
    screen.add(tests, "wmin 50, wrap");
    screen.add(stack, "grow, push, hmin " + look.px(190) + ", wrap");
    screen.add(heading, "wrap");
    screen.add(links.component(), "growx, h " + tableHeight + ", wrap");
    screen.add(none, "wmin 50, wrap");
    screen.add(reasoning, "wmin 50, wrap");
    screen.add(compare, "growx 0, wrap");
    screen.add(form.screen(), "growx, wmin 50, wrap");
  }

  JPanel screen() {
    return screen;
  }

  void act(PageActs its) {
    acts = its;
  }

  /** Holds what was before the chosen event against what came after it. */
  private void compare() {
    PageActs its = acts;
    Link link = seen;
    Signal signal = shown;
    if (its != null && link != null && signal != null) {
      String mold = signal.mold() == null ? "" : signal.mold();
      its.open(Evidence.part("compare", mold + "@" + link.sinceTurn()));
    }
  }

  private void sees(@Nullable Link link) {
    seen = link != null && link.event() && link.sinceTurn() != null ? link : null;
    compare.setVisible(seen != null && acts != null);
  }

  /** That nothing departs, of what was looked at. */
  private String quiet() {
    Quiet quiet = desk.quiet();
    return quiet.isWhole()
        ? desk.look().say("signals.none")
        : String.join("\n", quiet.lines(desk.sentences().words()));
  }

  void refresh(@Nullable Signal signal, boolean isNoneThere) {
    CharacteristicReport report =
        signal == null
            ? null
            : OpenedLog.characteristic(desk.report(), signal.wheel(), signal.characteristic());
    boolean isKnown = signal != null && report != null;
    List<LinkRow> rows = signal == null ? List.of() : LinkRow.of(desk, signal);
    boolean isLinked = isKnown && !rows.isEmpty();
    sentence.setVisible(isKnown);
    tests.setVisible(isKnown);
    stack.setVisible(isKnown);
    heading.setVisible(isLinked);
    links.component().setVisible(isLinked);
    none.setVisible(!isLinked);
    var look = desk.look();
    if (signal == null || report == null) {
      shown = null;
      reasoning.setVisible(false);
      form.show(null, null);
      sees(null);
      none.setText(isNoneThere ? quiet() : look.say("signals.choose"));
      screen.revalidate();
      return;
    }
    if (shown == null || !signal.id().equals(shown.id())) {
      chosen = EvidenceView.best(desk, signal);
      String numbers = EvidenceView.bestSetting(desk, signal);
      setting =
          rows.stream()
              .filter(one -> one.key().equals(chosen) && one.cause().kind() == Kind.SETTING)
              .findFirst()
              .map(one -> one.cause().name())
              .orElse(numbers);
    }
    shown = signal;
    sentence.setText((desk.sentences().signal(signal) + " " + desk.nextSteps().of(signal)).strip());
    tests.setText(look.say("signal.tests", tests(signal)));
    none.setText(look.say("signal.nolinks"));
    Desk now = desk.asNow();
    String beside = setting;
    LinkRow row = rows.stream().filter(one -> one.key().equals(chosen)).findFirst().orElse(null);
    Link link = row == null ? null : row.link();
    stack.show(() -> EvidenceView.stack(now, signal, report, beside, link));
    links.show(signal.id(), EvidenceView.columns(desk, report, signal), rows);
    links.choose(one -> one.key().equals(chosen));
    String why = row == null ? "" : row.reasoning(desk, signal);
    reasoning.setText(why);
    reasoning.getAccessibleContext().setAccessibleName(why);
    reasoning.setVisible(!why.isEmpty());
    form.show(signal, row);
    sees(link);
    screen.revalidate();
    screen.repaint();
  }

  private String tests(Signal signal) {
    List<String> names = new ArrayList<>();
    for (String test : signal.tests()) {
      String key = "test." + test;
      var words = desk.look().language().report();
      names.add(words.has(key) ? uncapital(words.say(key)) : test.replace('-', ' '));
    }
    return String.join(", ", names);
  }

  private static String uncapital(String text) {
    return text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
  }

  List<Export> exports() {
    Signal signal = shown;
    if (signal == null) {
      return List.of();
    }
    var look = desk.look();
    List<Export> exports = new ArrayList<>();
    exports.addAll(Export.picture(look, look.say("page.signals"), "signal-" + signal.id(), stack));
    exports.addAll(Export.table(look, look.say("signal.links"), "signal-" + signal.id(), links));
    return exports;
  }
}
