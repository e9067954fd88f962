package org.evenpour.view.screen;

import java.awt.event.KeyEvent;
import java.util.List;
import javax.swing.AbstractAction;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;
import org.evenpour.audit.Causes;
import org.evenpour.casting.CauseMark.Cause;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Verdict;
import org.evenpour.findings.AuditReport.Signal;
import org.evenpour.report.Topic;
import org.evenpour.view.model.Desk;
import org.evenpour.view.model.LinkRow;
import org.evenpour.view.model.Marking;
import org.jspecify.annotations.Nullable;

/**
 * Where a person says whether a cause is right or wrong, who says so and why. What was typed stays
 * until it is on the disk or given up. Owned by the event thread.
 */
final class CauseForm {
  private final Desk desk;
  private final JPanel screen;
  private final JPanel choices;
  private final JPanel fields;
  private final JButton right;
  private final JButton wrong;
  private final JButton back;
  private final JButton other;
  private final JTextArea asks;
  private final JTextField cause;
  private final JTextField who;
  private final JTextField why;
  private final JButton keep;
  private final JTextArea said;
  private @Nullable Signal signal;
  private @Nullable LinkRow row;
  private @Nullable Asked asked;

  /** What is being said of what; the cause is null while it is still to be typed. */
  private record Asked(Signal signal, @Nullable Cause cause, Verdict verdict) {}

  CauseForm(Desk desk) {
    this.desk = desk;
    var look = desk.look();
    right = button("right");
    wrong = button("wrong");
    back = button("back");
    other = button("other");
    right.addActionListener(event -> ask(Verdict.RIGHT));
    wrong.addActionListener(event -> ask(Verdict.WRONG));
    back.addActionListener(event -> ask(Verdict.OPEN));
    other.addActionListener(event -> ask(signal, null, Verdict.RIGHT));
    choices = Parts.row("cause.choices", look, right, wrong, back, other);
    ((MigLayout) choices.getLayout()).setLayoutConstraints("hidemode 3, insets 0, gap 8");
    asks = Parts.prose("cause.asks", "", look.ink().bold(1), look);
    cause = Parts.field("cause.cause", look.say("cause.cause.label"));
    who = Parts.field("cause.who", look.say("cause.who.label"));
    why = Parts.field("cause.why", look.say("cause.why.label"));
    keep = Parts.button("cause.keep", look.say("cause.keep"), look.say("cause.keep.tip"), look);
    JButton leave =
        Parts.button("cause.leave", look.say("cause.leave"), look.say("cause.leave.tip"), look);
    keep.addActionListener(event -> keep());
    leave.addActionListener(event -> close());
    cause.addActionListener(event -> who.requestFocusInWindow());
    who.addActionListener(event -> why.requestFocusInWindow());
    why.addActionListener(event -> keep());
    fields =
        Parts.panel(
            "cause.fields",
            new MigLayout("fillx, hidemode 3, insets 0, gap 8 4", "[]", "[][]"),
            look.ink().field());
    fields.add(asks, "span, growx, wmin 50, wrap");
    fields.add(cause, "growx 60, pushx 60, wmin 60, split 5");
    fields.add(who, "w " + look.px(110) + "!");
    fields.add(why, "growx, pushx, wmin 60");
    fields.add(keep);
    fields.add(leave);
    fields.setVisible(false);
    fields
        .getInputMap(JComponent.WHEN_ANCESTOR_OF_FOCUSED_COMPONENT)
        .put(KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0), "leave");
    fields.getActionMap().put("leave", act(this::close));
    said = Parts.prose("cause.said", "", look.ink().font(0.92), look);
    said.setVisible(false);
    screen =
        Parts.panel(
            "cause.form",
            new MigLayout("fillx, hidemode 3, insets 0, wrap 1, gap 0 2", "[grow,fill]", "[][][]"),
            look.ink().field());
    screen.add(choices);
    screen.add(fields);
    screen.add(said, "wmin 50");
  }

  private static AbstractAction act(Runnable run) {
    return new AbstractAction() {
      @Override
      public void actionPerformed(java.awt.event.ActionEvent event) {
        run.run();
      }
    };
  }

  private JButton button(String key) {
    var look = desk.look();
    String name = "cause." + key;
    return Parts.button(name, look.say(name), look.say(name + ".tip"), look);
  }

  JPanel screen() {
    return screen;
  }

  /** Is about this cause of this signal from now on; what is being typed stays as it is. */
  void show(@Nullable Signal newSignal, @Nullable LinkRow newRow) {
    signal = newSignal;
    row = newRow;
    screen.setVisible(desk.marking() != null && (newSignal != null || asked != null));
    sayAsked();
    var verdict = newRow == null || newRow.mark() == null ? null : newRow.mark().verdict();
    right.setVisible(newRow != null);
    wrong.setVisible(newRow != null);
    back.setVisible(verdict != null);
    right.setEnabled(verdict != Verdict.RIGHT);
    wrong.setEnabled(verdict != Verdict.WRONG);
    name(right, "cause.right.of", newRow);
    name(wrong, "cause.wrong.of", newRow);
    name(back, "cause.back.of", newRow);
  }

  /** A reader hears of what a button is. */
  private void name(JButton button, String key, @Nullable LinkRow of) {
    if (of != null) {
      button.getAccessibleContext().setAccessibleName(desk.look().say(key, of.name(desk)));
    }
  }

  private void ask(Verdict verdict) {
    LinkRow now = row;
    if (now != null) {
      ask(signal, now.cause(), verdict);
    }
  }

  private void ask(@Nullable Signal of, @Nullable Cause its, Verdict verdict) {
    Marking marking = desk.marking();
    if (of == null || marking == null) {
      return;
    }
    asked = new Asked(of, its, verdict);
    sayAsked();
    cause.setText("");
    cause.setVisible(its == null);
    who.setText(marking.who());
    why.setText("");
    tell("");
    choices.setVisible(false);
    fields.setVisible(true);
    screen.revalidate();
    (its == null ? cause : who.getText().isEmpty() ? who : why).requestFocusInWindow();
  }

  /** What is being said; of which signal, where that is not the one that is seen. */
  private void sayAsked() {
    Asked now = asked;
    if (now == null) {
      return;
    }
    Cause its = now.cause();
    String key =
        switch (now.verdict()) {
          case RIGHT -> its == null ? "cause.asks.other" : "cause.asks.right";
          case WRONG -> "cause.asks.wrong";
          case OPEN -> "cause.asks.back";
        };
    String what = desk.look().say(key, its == null ? "" : new LinkRow(its, null, null).name(desk));
    boolean isSeen =
        signal != null
            && signal.sinceAt().equals(now.signal().sinceAt())
            && Causes.place(signal).equals(Causes.place(now.signal()));
    String text =
        isSeen ? what : desk.sentences().lead(new Topic(List.of(now.signal()))) + " " + what;
    asks.setText(text);
    asks.getAccessibleContext().setAccessibleName(text);
  }

  private void tell(String text) {
    Parts.say(said, text);
    screen.revalidate();
  }

  private void keep() {
    Asked now = asked;
    Marking marking = desk.marking();
    if (now == null || marking == null || !keep.isEnabled()) {
      return;
    }
    var look = desk.look();
    JTextField blank = Parts.blank(cause, who, why);
    if (blank != null) {
      tell(look.say("cause.missing", blank.getAccessibleContext().getAccessibleName()));
      blank.requestFocusInWindow();
      return;
    }
    Cause its = now.cause();
    keep.setEnabled(false);
    tell(look.say("cause.keeping"));
    marking.keep(
        now.signal(),
        its == null ? new Cause(Kind.OTHER, cause.getText()) : its,
        now.verdict(),
        who.getText(),
        why.getText(),
        why -> kept(now, why));
  }

  @SuppressWarnings("ReferenceEquality") // the very same that was asked
  private void kept(Asked before, @Nullable Throwable problem) {
    keep.setEnabled(true);
    var look = desk.look();
    if (problem != null) {
      tell(look.say("cause.notkept", Reasons.of(problem, look)));
      why.requestFocusInWindow();
    } else if (asked == before) {
      close();
      tell(look.say("cause.kept"));
    }
  }

  private void close() {
    asked = null;
    fields.setVisible(false);
    choices.setVisible(true);
    tell("");
    show(signal, row);
    JButton next = !right.isVisible() ? other : right.isEnabled() ? right : wrong;
    next.requestFocusInWindow();
  }
}
