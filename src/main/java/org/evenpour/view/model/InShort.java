package org.evenpour.view.model;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.evenpour.casting.MoldOrder;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.findings.MoldVerdict.Verdict;
import org.evenpour.findings.NotLookedFor;
import org.evenpour.findings.RejectReport;
import org.evenpour.findings.SettingsWatched.Move;
import org.evenpour.picture.Mark;
import org.evenpour.report.BeyondSentences;
import org.evenpour.report.GaugeText;
import org.evenpour.report.NextSteps;
import org.evenpour.report.RejectText;
import org.evenpour.report.Sentences;
import org.evenpour.report.SetPointText;
import org.evenpour.report.SettingSentences;
import org.evenpour.report.Topic;
import org.evenpour.report.VerdictSentences;
import org.evenpour.words.Digits;
import org.evenpour.words.Remark;
import org.evenpour.words.Words;

/**
 * The record in short: what a plant meeting asks, as sentences that know where their evidence is
 * seen. The sentences are those of the summary, and have one source with them; here nothing is cut.
 *
 * @param title the time that it is of
 * @param counts what was read
 * @param setAside how many rows were set aside
 * @param isMuch whether that is so much that the figures are in doubt
 * @param notes how many notes there are
 * @param rows in the order in which they are read
 */
public record InShort(
    String title, String counts, long setAside, boolean isMuch, int notes, List<Row> rows) {

  /** So many matters that have passed are told; the page of signals has all. A choice. */
  private static final int PASSED = 8;

  /** So many times of more rejects are told; their page has all. A choice. */
  private static final int SPELLS = 3;

  /**
   * A sentence.
   *
   * @param section key of the heading that it stands under
   * @param caution what is to be minded first; empty where nothing is
   * @param mark which way something departs
   * @param sentence what is said
   * @param isQuiet whether it has passed, or asks nothing
   * @param opens where it is seen
   */
  public record Row(
      String section,
      String caution,
      Mark mark,
      String sentence,
      boolean isQuiet,
      Evidence opens) {}

  /** Copies the list. */
  public InShort {
    rows = List.copyOf(rows);
  }

  /** Of what the desk shows now: the chosen stretch, or the whole record. */
  public static InShort of(Desk desk) {
    return new Telling(desk).told();
  }

  /** One telling: the report of the stretch, and what is told of the whole record. */
  private static final class Telling {
    private final Desk desk;
    private final AuditReport report;
    private final Sentences sentences;
    private final Words words;
    private final List<Row> rows = new ArrayList<>();
    private final List<Row> passed = new ArrayList<>();

    Telling(Desk desk) {
      this.desk = desk;
      report = desk.figured();
      sentences = desk.sentences();
      words = sentences.words();
    }

    InShort told() {
      lookFirst();
      molds();
      capability();
      rejects();
      advice();
      passed();
      beforeUse();
      AuditReport.Log log = report.log();
      AuditReport whole = desk.report();
      return new InShort(
          title(log),
          desk.look()
              .say(
                  "short.counts",
                  words.count(log.rowsKept()),
                  words.count(log.molds()),
                  words.count(log.turns())),
          whole.log().rowsSetAside(),
          whole.notes().stream().anyMatch(one -> one.key().equals(AuditReport.MUCH_SET_ASIDE)),
          whole.notes().size(),
          rows);
    }

    private String title(AuditReport.Log log) {
      double hours = Duration.between(log.firstCastAt(), log.lastCastAt()).toMinutes() / 60.0;
      boolean isDays = hours >= 36;
      String key = isDays ? "short.title.days" : "short.title.hours";
      return desk.look()
          .say(
              key,
              sentences.date(log.firstCastAt()),
              sentences.date(log.lastCastAt()),
              Digits.number(isDays ? hours / 24 : hours, isDays && hours < 240 ? 1 : 0));
    }

    private void add(String section, Mark mark, String sentence, boolean quiet, Evidence opens) {
      rows.add(new Row(section, "", mark, sentence, quiet, opens));
    }

    /** What departs, as the summary orders it; what has passed is told later. */
    private void lookFirst() {
      AuditReport whole = desk.report();
      NextSteps steps = desk.nextSteps();
      List<Topic> topics = Topic.of(whole).stream().filter(this::isHere).toList();
      for (Topic topic : topics) {
        boolean open = topic.first().open();
        Row row =
            new Row(
                open ? "short.look" : "short.passed",
                "",
                Charts.mark(topic.largest()),
                (sentences.brief(topic) + " " + steps.of(topic)).strip(),
                !open,
                Evidence.signal(topic.largest()));
        (open ? rows : passed).add(row);
      }
      BeyondSentences beyond = new BeyondSentences(whole, sentences);
      for (Departure one : beyond.holding()) {
        add("short.look", Mark.NONE, beyond.sentence(one), false, Evidence.page("signals"));
      }
      SettingSentences settings = new SettingSentences(sentences);
      for (Move move : SettingSentences.holding(whole)) {
        Evidence its = Evidence.setting(move.wheel(), move.setting());
        add("short.look", Mark.NONE, settings.brief(move), false, its);
      }
      List<String> quiet =
          topics.isEmpty() ? desk.quiet().lines(words) : desk.quiet().notLookedFor(words);
      quiet.forEach(said -> add("short.look", Mark.NONE, said, true, Evidence.page("signals")));
    }

    private void passed() {
      int more = passed.size() - PASSED;
      rows.addAll(passed.subList(0, Math.min(PASSED, passed.size())));
      if (more > 0) {
        String said = desk.look().say(more == 1 ? "short.more.one" : "short.more", more);
        add("short.passed", Mark.NONE, said, true, Evidence.page("signals"));
      }
    }

    private boolean isHere(Topic topic) {
      return desk.selection().stretch() == null
          || topic.signals().stream()
              .anyMatch(
                  one ->
                      one.wheel().equals(desk.selection().wheel())
                          && desk.turns().touches(desk.from(one), desk.to(one)));
    }

    /** What to do with the molds, the gravest first; what is to be minded before any of it. */
    private void molds() {
      VerdictSentences verdicts = new VerdictSentences(report, sentences);
      String caution = verdicts.cautionOfAll();
      for (MoldVerdict one : toDo(report)) {
        rows.add(
            new Row(
                "short.molds",
                caution,
                mark(one),
                said(desk, verdicts, one),
                one.verdict() == Verdict.WATCH,
                Evidence.mold(one.wheel(), one.mold(), one.characteristic())));
      }
      for (String said : verdicts.overview()) {
        rows.add(new Row("short.molds", caution, Mark.NONE, said, true, Evidence.page("molds")));
      }
    }

    private static Mark mark(MoldVerdict one) {
      MoldVerdict.Standing its = one.standing(one.characteristic());
      return its == null ? Mark.NONE : its.offset() > 0 ? Mark.HIGH : Mark.LOW;
    }

    /** How capable each characteristic is, and the change that would do most. */
    private void capability() {
      VerdictSentences verdicts = new VerdictSentences(report, sentences);
      CharacteristicReport most = verdicts.biggestLever();
      String lever = most == null ? null : verdicts.whatIf(most);
      if (most != null && lever != null) {
        add("short.capability", Mark.NONE, lever, false, capability(most));
      }
      for (CharacteristicReport one : report.characteristics()) {
        CapabilityReport its = one.overall().capability();
        if (its == null) {
          continue;
        }
        String said =
            desk.look()
                .say(
                    one.inFull().isStable() ? "short.capable" : "short.capable.unstable",
                    sentences.title(one.wheel(), one.name()),
                    sentences.estimate(its.cpk()),
                    sentences.estimate(its.ppk()),
                    Digits.percent(its.fractionOutsideObserved()));
        add("short.capability", Mark.NONE, said, true, capability(one));
      }
    }

    private static Evidence capability(CharacteristicReport one) {
      return Evidence.characteristic("capability", one.wheel(), one.name());
    }

    private void rejects() {
      RejectText text = new RejectText(sentences);
      for (RejectReport its : report.rejects()) {
        add("short.rejects", Mark.NONE, text.line(its), false, Evidence.rejects(its.wheel(), null));
      }
      RejectText.ranked(report).stream()
          .limit(SPELLS)
          .forEach(
              spell ->
                  add(
                      "short.rejects",
                      Mark.HIGH,
                      text.spell(spell),
                      !spell.signal().open(),
                      Evidence.rejects(spell.signal().wheel(), spell.signal().mold())));
    }

    /** Whether to adjust, and what the gauge is worth. */
    private void advice() {
      SetPointText setPoints = SetPointText.of(sentences, report);
      SetPointText.told(report)
          .forEach(
              one ->
                  add(
                      "short.advice",
                      Mark.NONE,
                      setPoints.line(one),
                      one.moveBy() == null,
                      new Evidence("setpoint", one.wheel(), null, null, null, null, "")));
      GaugeText gauges = new GaugeText(sentences);
      report.gauges().stream()
          .flatMap(gauge -> gauges.lines(gauge).stream())
          .forEach(said -> add("short.advice", Mark.NONE, said, true, Evidence.page("capability")));
      if (!report.causes().marks().isEmpty()) {
        String said = CausesView.overview(desk);
        add("short.advice", Mark.NONE, said, true, Evidence.page("causes"));
      }
    }

    /** What was not used, and what to know: of the whole record. */
    private void beforeUse() {
      AuditReport whole = desk.report();
      long aside = whole.log().rowsSetAside();
      if (aside > 0) {
        double share = (double) aside / Math.max(1, whole.log().rowsRead());
        String said =
            desk.look()
                .say(
                    aside == 1 ? "short.aside.one" : "short.aside",
                    words.count(aside),
                    words.count(whole.log().rowsRead()),
                    Digits.percent(share));
        add("short.before", Mark.NONE, said, false, Evidence.part("record", "aside"));
      }
      for (Remark note : whole.notes()) {
        if (!isSaid(note)) {
          String said = Words.capital(desk.look().language().say(note));
          add("short.before", Mark.NONE, said, true, Evidence.part("record", "notes"));
        }
      }
    }

    /** What was not looked for is said where the signals stand. */
    private static boolean isSaid(Remark note) {
      return note.key().equals(NotLookedFor.NOTE)
          || note.values().stream().anyMatch(value -> value instanceof Remark its && isSaid(its));
    }
  }

  /** Molds that somebody is to do something about or to watch, the gravest first. */
  static List<MoldVerdict> toDo(AuditReport report) {
    return report.verdicts().stream()
        .filter(one -> one.verdict() != null && one.verdict() != Verdict.KEEP)
        .sorted(
            Comparator.comparing((MoldVerdict one) -> one.verdict(), Comparator.reverseOrder())
                .thenComparing(MoldVerdict::mold, MoldOrder::compare))
        .toList();
  }

  /** {@code Mold 8: level or dress. Wedge 1.9 mm … Thick side: top left.} */
  static String said(Desk desk, VerdictSentences verdicts, MoldVerdict one) {
    String reason = verdicts.reason(one);
    String side = verdicts.thickSide(one.thickSide());
    String thick = desk.sentences().words().say("why.thick", side);
    boolean isUnsaid = !side.isEmpty() && !reason.contains(thick);
    return desk.look()
        .say(
            desk.sentences().nameWheels() ? "short.mold.wheel" : "short.mold",
            one.mold(),
            Objects.requireNonNull(verdicts.verdict(one)).toLowerCase(Locale.ROOT),
            isUnsaid ? reason + " " + thick : reason,
            one.wheel());
  }
}
