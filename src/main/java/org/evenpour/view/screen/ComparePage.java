package org.evenpour.view.screen;

import java.awt.BorderLayout;
import java.awt.Component;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.swing.DefaultListModel;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.ListSelectionModel;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import org.evenpour.findings.ComparisonReport;
import org.evenpour.findings.ComparisonReport.Compared;
import org.evenpour.report.ComparisonText;
import org.evenpour.view.model.Comparing;
import org.evenpour.view.model.Comparing.Offer;
import org.evenpour.view.model.ComparisonView;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.Stretch;
import org.jspecify.annotations.Nullable;

/**
 * One stretch held against another: what can be compared at the left, the answer and what it rests
 * on beside it.
 */
final class ComparePage implements Page {
  /** A choice: arrow keys pass over what is not wanted. */
  private static final int REST_MILLIS = 250;

  private final Desk desk;
  private final JPanel screen;
  private final DefaultListModel<Offer> model = new DefaultListModel<>();
  private final JList<Offer> list;
  private final JButton keep;
  private final JTextArea which;
  private final JTextArea said;
  private final JTextArea allowance;
  private final PictureView molds;
  private final DataTable<Compared> table;
  private final JPanel body;
  private final Timer rest = new Timer(REST_MILLIS, event -> begin());
  private boolean telling = true;
  private @Nullable Stretch kept;
  private final Background<Optional<ComparisonReport>> work = new Background<>();
  private @Nullable Shown shown;

  /** A comparison, and what it is of. */
  private record Shown(Offer offer, OpenedLog log, @Nullable ComparisonReport report) {}

  ComparePage(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    rest.setRepeats(false);
    list = new JList<>(model);
    list.setName("compare.offers");
    list.getAccessibleContext().setAccessibleName(look.say("page.compare.tip"));
    list.setDropTarget(null);
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.setBackground(look.ink().field());
    list.setFixedCellHeight(look.px(46));
    list.setFixedCellWidth(look.px(160));
    list.setCellRenderer(new TwoLines<>(look, Offer::said, Offer::when));
    list.addListSelectionListener(
        event -> {
          if (telling && !event.getValueIsAdjusting()) {
            rest.restart();
          }
        });
    keep =
        Parts.button("compare.keep", look.say("compare.keep"), look.say("compare.keep.tip"), look);
    keep.addActionListener(
        event -> {
          kept = desk.selection().stretch();
          refresh();
        });
    which = Parts.prose("compare.which", "", look.ink().font(0.92), look);
    which.setForeground(look.ink().dim());
    said = Parts.prose("compare.said", "", look.ink().font(1.05), look);
    allowance = Parts.prose("compare.allowance", "", look.ink().font(0.92), look);
    allowance.setForeground(look.ink().dim());
    molds = new PictureView("compare.molds", look.say("page.compare.tip"), look.ink(), 12);
    table =
        new DataTable<>(
            "compare.table",
            look.say("page.compare.tip"),
            look,
            one -> one.what() + " " + one.characteristic() + " " + one.mold());
    body = Parts.beside("compare.body", molds, table.component(), 0.32, look);
    int pad = look.px(12);
    JPanel head =
        Parts.panel(
            "compare.head",
            new MigLayout("fillx, hidemode 3, wrap 1, insets " + pad + ", gap 0 6", "[grow,fill]"),
            look.ink().field());
    head.add(which, "wmin 50");
    head.add(said, "wmin 50");
    head.add(allowance, "wmin 50");
    JPanel left = Parts.panel("compare.left", new BorderLayout(), look.ink().field());
    left.add(Parts.row("compare.tools", look, keep), BorderLayout.NORTH);
    left.add(Parts.scroll(list), BorderLayout.CENTER);
    screen =
        Parts.beside(
            "page.compare", left, Parts.headed("compare.answer", head, body, look), 0.24, look);
  }

  @Override
  public JComponent screen() {
    return screen;
  }

  @Override
  public Optional<Component> first() {
    return Optional.of(list);
  }

  @Override
  public void refresh() {
    List<Offer> offers = Comparing.offers(desk, kept);
    Offer chosen = list.getSelectedValue();
    telling = false;
    if (!offers.equals(java.util.Collections.list(model.elements()))) {
      model.clear();
      model.addAll(offers);
      int again = again(offers, chosen);
      if (!offers.isEmpty()) {
        list.setSelectedIndex(Math.max(0, again));
        list.ensureIndexIsVisible(Math.max(0, again));
      }
    }
    telling = true;
    keep.setEnabled(desk.selection().stretch() != null);
    Shown now = shown;
    Offer wanted = list.getSelectedValue();
    if (!screen.isVisible()) {
      leave();
      // Nobody looks: nothing is computed, and a log that was read again is not kept.
      shown = now != null && isOfThis(now.log()) ? now : null;
      return;
    }
    if (wanted != null && (now == null || !now.offer().equals(wanted) || !isOfThis(now.log()))) {
      rest.restart();
    }
    show();
  }

  /**
   * Where the chosen offer stands now; in a log that grows, the same one goes on to a later turn.
   */
  private static int again(List<Offer> offers, @Nullable Offer chosen) {
    int exactly = chosen == null ? -1 : offers.indexOf(chosen);
    for (int i = 0; i < offers.size() && exactly < 0 && chosen != null; i++) {
      Offer one = offers.get(i);
      boolean isIt =
          one.said().equals(chosen.said())
              && Objects.equals(one.mold(), chosen.mold())
              && one.second().from() == chosen.second().from();
      exactly = isIt ? i : -1;
    }
    return exactly;
  }

  @SuppressWarnings("ReferenceEquality") // the very same audit; to compare it would cost more
  private boolean isOfThis(OpenedLog log) {
    return log.report() == desk.report();
  }

  @Override
  public void leave() {
    rest.stop();
    work.cancel();
  }

  private void begin() {
    leave(); // what was wanted before
    Offer wanted = list.getSelectedValue();
    if (wanted != null) {
      OpenedLog log = desk.log();
      show();
      work.begin(
          isGivenUp -> Optional.ofNullable(Comparing.of(log, wanted, isGivenUp)),
          report -> {
            shown = new Shown(wanted, log, report.orElse(null));
            show();
          },
          why -> {
            throw new IllegalStateException("two stretches could not be compared", why);
          });
    }
  }

  /** Computes at once, on the event thread: for pictures that nobody waits for. */
  void now() {
    rest.stop();
    Offer wanted = list.getSelectedValue();
    if (wanted != null) {
      OpenedLog log = desk.log();
      shown = new Shown(wanted, log, Comparing.of(log, wanted, () -> false));
      show();
    }
  }

  /**
   * Chooses an event's offer.
   *
   * @param part a mold, empty for the whole wheel, and after an @ the event's turn; without one the
   *     mold's newest event is meant. Another one leaves what is chosen
   */
  @Override
  public void turnTo(String part) {
    int end = part.lastIndexOf('@');
    String its = end < 0 ? part : part.substring(0, end);
    for (int i = 0; i < model.size() && !part.isEmpty(); i++) {
      Offer one = model.get(i);
      String mold = one.mold() == null ? "" : one.mold();
      // An event of a turn is followed by the next.
      boolean isThen =
          end < 0
              || Math.abs(one.second().from() - Double.parseDouble(part.substring(end + 1))) <= 1;
      if (mold.equals(its) && isThen && one.isEvent()) {
        list.setSelectedIndex(i);
        list.ensureIndexIsVisible(i);
        return;
      }
    }
  }

  private void show() {
    var look = desk.look();
    Shown now = shown;
    Offer wanted = list.getSelectedValue();
    ComparisonReport report = now == null ? null : now.report();
    boolean isBusy = wanted != null && (now == null || !wanted.equals(now.offer()));
    body.setVisible(report != null && !isBusy);
    allowance.setVisible(report != null && !isBusy);
    which.setVisible(report != null && !isBusy);
    if (wanted == null || now == null || report == null || isBusy) {
      String key = wanted == null ? "compare.nothing" : isBusy ? "compare.busy" : "compare.empty";
      said.setText(look.say(key));
      screen.revalidate();
      return;
    }
    ComparisonText text = new ComparisonText(desk.sentences());
    which.setText(look.say("compare.which", text.span(report.first()), text.span(report.second())));
    said.setText(String.join("\n", text.lines(report)));
    said.getAccessibleContext().setAccessibleName(said.getText());
    allowance.setText(text.allowance(report));
    Desk seen = desk.asNow();
    molds.show(() -> ComparisonView.molds(seen, report));
    table.show(
        wanted.said() + wanted.when(),
        ComparisonView.columns(desk, report),
        ComparisonView.rows(report));
    screen.revalidate();
    screen.repaint();
  }

  @Override
  public List<Export> exports() {
    var look = desk.look();
    List<Export> exports = new ArrayList<>();
    if (body.isVisible()) {
      exports.addAll(Export.picture(look, look.say("page.compare"), "comparison", molds));
      exports.addAll(Export.table(look, look.say("page.compare"), "comparison", table));
    }
    return exports;
  }
}
