package org.evenpour.view.screen;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import org.evenpour.audit.ProposedLimits;
import org.evenpour.control.LimitsBook;
import org.evenpour.control.LimitsVersion;
import org.evenpour.view.model.Approving;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.LimitsView;
import org.evenpour.view.model.LimitsView.Past;
import org.evenpour.view.model.LimitsView.Proposal;
import org.evenpour.view.model.LimitsView.Row;
import org.evenpour.view.model.OpenedLog;
import org.evenpour.view.model.Stretch;
import org.jspecify.annotations.Nullable;

/**
 * Limits of the chosen characteristic: those in force and their history, those that the chosen
 * stretch would give, and a person's decision on them. Owned by the event thread.
 */
final class LimitsPage implements Page {
  private final Desk desk;
  private final JPanel screen;
  private final JTextArea state;
  private final JTextArea proposed;
  private final DataTable<Row> figures;
  private final DataTable<Past> history;
  private final JButton propose;
  private final JButton approve;
  private final JButton retire;
  private final JPanel form;
  private final JTextArea asks;
  private final JTextField who;
  private final JTextField why;
  private final JToggleButton all;
  private final JToggleButton fromBase;
  private final JButton keep;
  private final JTextArea said;
  private @Nullable LimitsBook book;
  private @Nullable OpenedLog readFor;
  private @Nullable Proposal proposal;
  private final Background<Proposal> work = new Background<>();
  private boolean isRetiring;

  LimitsPage(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    state = Parts.prose("limits.state", "", look.ink().bold(1.05), look);
    proposed = Parts.prose("limits.said", "", look.ink().font(1), look);
    figures = new DataTable<>("limits.figures", look.say("page.limits.tip"), look, Row::what);
    history =
        new DataTable<>(
            "limits.history",
            look.say("limits.history"),
            look,
            one -> one.version().characteristic() + one.version().version());
    propose = button("propose");
    approve = button("approve");
    retire = button("retire");
    propose.addActionListener(event -> propose());
    approve.addActionListener(event -> ask(false));
    retire.addActionListener(event -> ask(true));
    asks = Parts.prose("limits.asks", "", look.ink().bold(1), look);
    who = Parts.field("limits.name", look.say("limits.name"));
    why = Parts.field("limits.reason", look.say("limits.reason"));
    who.addActionListener(event -> why.requestFocusInWindow());
    why.addActionListener(event -> keep());
    all = Parts.toggle("limits.all", look.say("limits.all"), look.say("limits.all.tip"), look);
    all.setSelected(true);
    fromBase =
        Parts.toggle(
            "limits.from_base",
            look.say("limits.from_base"),
            look.say("limits.from_base.tip"),
            look);
    keep = button("keep");
    keep.addActionListener(event -> keep());
    JButton leave = button("leave");
    leave.addActionListener(event -> giveUp());
    said = Parts.prose("limits.kept", "", look.ink().font(1), look);
    form =
        Parts.panel(
            "limits.form",
            new MigLayout("fillx, hidemode 3, insets 0, gap 8 6", "[]"),
            look.ink().field());
    form.add(asks, "span, growx, wmin 50, wrap");
    form.add(who, "w " + look.px(130) + "!, split 6");
    form.add(why, "growx, pushx, wmin 60");
    form.add(all);
    form.add(fromBase);
    form.add(keep);
    form.add(leave);
    form.setVisible(false);
    screen = build();
  }

  private JPanel build() {
    var look = desk.look();
    int pad = look.px(12);
    JPanel acts = Parts.row("limits.acts", look, propose, approve, retire);
    ((MigLayout) acts.getLayout()).setLayoutConstraints("hidemode 3, insets 0, gap 8");
    JPanel head =
        Parts.panel(
            "limits.head",
            new MigLayout("fillx, hidemode 3, wrap 1, insets " + pad + ", gap 0 6", "[grow,fill]"),
            look.ink().field());
    head.add(state, "wmin 50");
    head.add(acts);
    head.add(proposed, "wmin 50");
    head.add(form, "wmin 50");
    head.add(said, "wmin 50");
    JPanel past =
        Parts.headed(
            "limits.past",
            Parts.row(
                "limits.past.head",
                look,
                Parts.heading("limits.past.title", look.say("limits.history"), look)),
            history.component(),
            look);
    return Parts.headed(
        "page.limits",
        head,
        Parts.over("limits.body", figures.component(), past, 0.64, look),
        look);
  }

  private JButton button(String key) {
    var look = desk.look();
    String name = "limits." + key;
    return Parts.button(name, look.say(name), look.say(name + ".tip"), look);
  }

  @Override
  public JComponent screen() {
    return screen;
  }

  @Override
  public void leave() {
    if (work.isBusy()) {
      work.cancel();
      show();
    }
  }

  /** Closes the form, where it is open. */
  @Override
  public boolean close() {
    boolean wasOpen = form.isVisible();
    giveUp();
    return wasOpen;
  }

  @Override
  @SuppressWarnings("ReferenceEquality") // the very same log; to compare it would cost more
  public void refresh() {
    OpenedLog log = desk.log();
    if (readFor == null || readFor.report() != log.report()) {
      readFor = log;
      Approving approving = desk.approving();
      if (approving == null) {
        book = log.plant().book();
      } else {
        approving.read(this::read);
      }
    }
    show();
  }

  private void read(Approving.Kept kept) {
    book = kept.book();
    Throwable problem = kept.problem();
    if (problem != null) {
      tell(Reasons.of(problem, desk.look()));
    }
    show();
  }

  private @Nullable LimitsVersion inForce() {
    Approving approving = desk.approving();
    LimitsBook its = book;
    Instant now = approving == null ? desk.report().log().lastCastAt() : approving.now();
    return its == null
        ? null
        : its.inForce(desk.selection().wheel(), desk.selection().characteristic(), now);
  }

  /** What was proposed of the chosen stretch of the chosen wheel; null where nothing was yet. */
  private @Nullable Proposal fitting() {
    Proposal now = proposal;
    return now != null
            && now.wheel().equals(desk.selection().wheel())
            && Objects.equals(now.turns(), desk.selection().stretch())
        ? now
        : null;
  }

  private void show() {
    var look = desk.look();
    LimitsVersion inForce = inForce();
    state.setText(LimitsView.state(desk, book, inForce));
    Stretch turns = desk.selection().stretch();
    propose.setText(
        turns == null
            ? look.say("limits.propose")
            : look.say("limits.propose.turns", (int) turns.from(), (int) turns.to() - 1));
    propose.getAccessibleContext().setAccessibleName(propose.getText());
    Proposal now = fitting();
    ProposedLimits its = now == null ? null : now.of(desk.selection().characteristic());
    LimitsVersion draft = its == null ? null : its.draft();
    propose.setEnabled(!work.isBusy());
    approve.setEnabled(now != null && !drafts(now).isEmpty() && desk.approving() != null);
    retire.setEnabled(inForce != null && desk.approving() != null);
    List<String> lines = new ArrayList<>();
    if (work.isBusy()) {
      lines.add(look.say("limits.computing"));
    } else if (its == null) {
      lines.add(look.say("limits.choose"));
    } else if (draft == null) {
      lines.add(LimitsView.lacks(desk, its));
    } else if (now != null) {
      lines.add(LimitsView.leftOut(desk, draft));
      lines.add(LimitsView.found(desk, now, draft));
      if (inForce != null) {
        lines.add(LimitsView.moved(desk, inForce, draft));
      }
    }
    proposed.setText(String.join("\n", lines));
    proposed.getAccessibleContext().setAccessibleName(proposed.getText());
    figures.show(desk.about(), LimitsView.columns(desk), LimitsView.rows(desk, inForce, draft));
    LimitsBook known = book;
    Approving approving = desk.approving();
    Instant at = approving == null ? desk.report().log().lastCastAt() : approving.now();
    history.show(
        desk.about(),
        LimitsView.pastColumns(desk),
        known == null
            ? List.of()
            : LimitsView.history(desk, known, desk.selection().characteristic(), at));
    said.setVisible(!said.getText().isEmpty());
    screen.revalidate();
    screen.repaint();
  }

  private void propose() {
    if (!work.isBusy()) {
      OpenedLog log = desk.log();
      String wheel = desk.selection().wheel();
      Stretch turns = desk.selection().stretch();
      tell("");
      work.begin(
          isGivenUp -> LimitsView.propose(log, wheel, turns),
          its -> {
            proposal = its;
            show();
          },
          why -> {
            throw new IllegalStateException("no limits could be proposed", why);
          });
      show();
    }
  }

  /** Proposes at once, on the event thread: for pictures that nobody waits for. */
  void now() {
    proposal = LimitsView.propose(desk.log(), desk.selection().wheel(), desk.selection().stretch());
    book = desk.log().plant().book();
    show();
  }

  /** The drafts that are to be approved: of all characteristics, or of the chosen one. */
  private List<LimitsVersion> drafts(Proposal now) {
    List<LimitsVersion> drafts = ProposedLimits.drafts(now.all());
    return all.isSelected()
        ? drafts
        : drafts.stream()
            .filter(one -> one.characteristic().equals(desk.selection().characteristic()))
            .toList();
  }

  private void ask(boolean toRetire) {
    Approving approving = desk.approving();
    LimitsVersion inForce = inForce();
    if (approving == null || (toRetire && inForce == null)) {
      return;
    }
    var look = desk.look();
    isRetiring = toRetire;
    asks.setText(
        toRetire && inForce != null
            ? look.say("limits.asks.retire", desk.name(inForce.characteristic()), inForce.version())
            : look.say("limits.asks.approve"));
    all.setVisible(!toRetire);
    fromBase.setVisible(!toRetire);
    who.setText(approving.who());
    why.setText("");
    tell("");
    form.setVisible(true);
    screen.revalidate();
    (who.getText().isEmpty() ? who : why).requestFocusInWindow();
  }

  private void giveUp() {
    form.setVisible(false);
    screen.revalidate();
  }

  private void keep() {
    Approving approving = desk.approving();
    var look = desk.look();
    if (approving == null || !keep.isEnabled()) {
      return;
    }
    JTextField blank = Parts.blank(who, why);
    if (blank != null) {
      tell(look.say("cause.missing", blank.getAccessibleContext().getAccessibleName()));
      blank.requestFocusInWindow();
      return;
    }
    Proposal now = fitting();
    LimitsVersion inForce = inForce();
    if (isRetiring && inForce != null) {
      keep.setEnabled(false);
      approving.retire(inForce, who.getText(), why.getText(), this::kept);
    } else if (!isRetiring && now != null) {
      List<LimitsVersion> drafts = drafts(now);
      if (drafts.isEmpty()) {
        tell(look.say("limits.choose"));
        return;
      }
      keep.setEnabled(false);
      approving.approve(
          drafts,
          fromBase.isSelected() ? after(drafts) : null,
          who.getText(),
          why.getText(),
          this::kept);
    }
  }

  /** Turns after the base are judged by it, and none of its own. */
  private static Instant after(List<LimitsVersion> drafts) {
    return drafts.stream()
        .map(one -> one.base().lastCastAt())
        .max(Instant::compareTo)
        .orElseThrow()
        .plusMillis(1);
  }

  private void kept(Approving.Kept what) {
    keep.setEnabled(true);
    var look = desk.look();
    LimitsBook its = what.book();
    Throwable problem = what.problem();
    if (its != null) {
      book = its;
      giveUp();
      tell(
          isRetiring
              ? look.say("limits.retired.done")
              : look.say(fromBase.isSelected() ? "limits.approved.base" : "limits.approved.now"));
    } else if (problem != null) {
      tell(look.say("cause.notkept", Reasons.of(problem, look)));
      why.requestFocusInWindow();
    }
    show();
  }

  private void tell(String text) {
    Parts.say(said, text);
    screen.revalidate();
  }

  @Override
  public List<Export> exports() {
    var look = desk.look();
    List<Export> exports = new ArrayList<>();
    exports.addAll(Export.table(look, look.say("page.limits"), "limits", figures));
    exports.addAll(Export.table(look, look.say("limits.history"), "limits-history", history));
    return exports;
  }
}
