package org.evenpour.report;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.evenpour.casting.Quantity;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.AuditReport.CapabilityReport;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Link;
import org.evenpour.findings.AuditReport.Overall;
import org.evenpour.findings.BeyondSettings.Departure;
import org.evenpour.findings.NotLookedFor;
import org.evenpour.findings.RejectReport.Spell;
import org.evenpour.findings.SettingsWatched;
import org.evenpour.words.Digits;
import org.evenpour.words.Remark;
import org.evenpour.words.Words;

/** What the crew lead must know of an audit, on one screen. */
public final class Summary {

  /** At most so many lines. */
  public static final int LINES = 32;

  /** At most so many columns. */
  public static final int COLUMNS = 100;

  private static final int CHARACTERISTIC_LINES = 5;
  private static final int ADVICE_LINES = 4;
  private static final int SIGNAL_LINES = 10;
  private static final int MIN_SIGNAL_LINES = 3;
  private static final int QUIET_LINES = 3;
  private static final int MOVE_LINES = 3;
  private static final int BEYOND = 2;
  private static final int REJECT_LINES = 3;
  private static final int SPELL_LINES = 2;
  private static final int VERDICT_LINES = 2;
  private static final int CAUSE_LINES = 2;
  private static final int NOTE_LINES = 3;
  private static final int EFFECT_LINES = 6;
  private static final int EFFECTS_OF_EACH = 3;

  private final AuditReport report;
  private final Words words;
  private final Sentences sentences;
  private boolean advised;

  private Summary(AuditReport report, ZoneId zone, Words words) {
    this.report = report;
    this.words = words;
    this.sentences = Sentences.of(report, words, zone);
  }

  /**
   * The summary, each line ended by a line feed.
   *
   * @param zone in which times are told
   */
  public static String text(AuditReport report, ZoneId zone) {
    return text(report, zone, Words.english());
  }

  /** The same in another language. */
  public static String text(AuditReport report, ZoneId zone, Words words) {
    return String.join("\n", new Summary(report, zone, words).lines()) + "\n";
  }

  private List<String> lines() {
    List<String> lines = new ArrayList<>(header());
    lines.add("");
    lines.addAll(characteristics());
    lines.addAll(rejects());
    lines.addAll(found());
    lines.addAll(whatIf());
    int afterFigures = lines.size();
    lines.add("");
    List<String> moves = moves();
    List<String> causes = causes();
    List<String> toDo = new ArrayList<>(verdicts());
    toDo.addAll(advice(ADVICE_LINES - causes.size()));
    toDo.addAll(causes);
    // The heading; the closing line; how many notes there are.
    int notes = report.notes().stream().allMatch(Summary::isSaid) ? 0 : 1;
    int others = 1 + (toDo.isEmpty() ? 0 : 1 + toDo.size()) + 2 + notes;
    int room = Math.min(SIGNAL_LINES, LINES - lines.size() - others);
    lines.addAll(lookFirst(Math.max(room - moves.size(), MIN_SIGNAL_LINES)));
    lines.addAll(moves);
    advised |= !toDo.isEmpty(); // a mold to replace or a ladle to leave alone is advice too
    if (!toDo.isEmpty()) {
      lines.add("");
      lines.addAll(toDo);
    }
    int left = LINES - lines.size() - 1 - (advised ? 1 : 0); // a blank line goes before them
    List<String> closing = notes(Math.min(NOTE_LINES, left));
    if (advised) {
      closing.add(words.say("safety"));
    }
    if (!closing.isEmpty()) {
      lines.add("");
      lines.addAll(closing);
    }
    lines.addAll(afterFigures, effects(Math.min(EFFECT_LINES, LINES - lines.size())));
    return lines;
  }

  private List<String> header() {
    RecordText its = new RecordText(sentences, report.log());
    List<String> lines = new ArrayList<>(List.of(cut(its.period(its.wheels())), cut(its.counts())));
    report.notes().stream()
        .filter(note -> note.key().equals(AuditReport.MUCH_SET_ASIDE))
        .forEach(note -> lines.addAll(wrapped(words.say(note), "").stream().limit(3).toList()));
    String approved = approved();
    if (!approved.isEmpty()) {
      lines.add(cut(approved));
    }
    return lines;
  }

  /** Which approved limits were used last; empty where none were. */
  private String approved() {
    List<String> items = new ArrayList<>();
    for (CharacteristicReport each : report.characteristics()) {
      List<AuditReport.LimitsUsed> used = each.monitoring().used();
      AuditReport.LimitsUsed last = used.isEmpty() ? null : used.get(used.size() - 1);
      if (last != null && last.approvedAt() != null) {
        String item =
            words.say(
                "summary.approved.item",
                String.valueOf(last.version()),
                String.valueOf(last.who()),
                sentences.date(last.approvedAt()),
                words.count(last.turns()));
        String name = words.characteristic(each.name());
        String whose = sentences.nameWheels() ? sentences.label(each.wheel()) + " " + name : name;
        int same = items.indexOf(item);
        if (same < 0) {
          items.add(whose);
          items.add(item);
        } else {
          items.set(same - 1, items.get(same - 1) + ", " + whose);
        }
      }
    }
    List<String> said = new ArrayList<>();
    for (int i = 0; i < items.size(); i += 2) {
      said.add(items.get(i) + ": " + items.get(i + 1));
    }
    return said.isEmpty() ? "" : words.say("summary.approved", String.join("; ", said));
  }

  private List<String> characteristics() {
    // Mass against its set-point says nothing here that mass does not, where nobody specified it.
    List<CharacteristicReport> all =
        report.characteristics().stream()
            .filter(
                one ->
                    !one.name().equals(Quantity.MASS_DEVIATION) || one.specification().hasLimits())
            .toList();
    int shown = all.size() > CHARACTERISTIC_LINES ? CHARACTERISTIC_LINES - 1 : all.size();
    List<String[]> rows = new ArrayList<>();
    rows.add(
        new String[] {
          "",
          words.say("summary.mean"),
          words.say("summary.sd"),
          words.say("summary.cpk"),
          words.say("summary.ppk"),
          words.say("summary.outside"),
          ""
        });
    all.subList(0, shown).forEach(characteristic -> rows.add(cells(characteristic)));
    List<String> lines = columns(rows);
    if (shown < all.size()) {
      lines.add(words.say("summary.more.characteristics", all.size() - shown));
    }
    return lines;
  }

  /** How fast a shift would be found, of as many characteristics as two lines hold. */
  private List<String> found() {
    List<String> items = new ArrayList<>();
    List<String> lines = List.of();
    for (CharacteristicReport each : report.characteristics()) {
      AuditReport.Finds finds = each.monitoring().finds();
      if (finds != null) {
        Figures figures = sentences.figures(each.wheel(), each.name());
        String name = words.characteristic(each.name());
        items.add(
            words.say(
                "summary.finds.item",
                sentences.nameWheels() ? sentences.label(each.wheel()) + " " + name : name,
                figures.size(finds.shift(), figures.decimalsOf(finds.shift())),
                turns(finds.moldTurns()),
                turns(finds.wheelTurns())));
        List<String> more =
            wrapped(
                words.say(
                    each.monitoring().falseAlarmsPerShift() == 1
                        ? "summary.finds.one"
                        : "summary.finds",
                    shortest(each.monitoring().falseAlarmsPerShift()),
                    String.join("; ", items)),
                "");
        if (more.size() > 2) {
          break;
        }
        lines = more;
      }
    }
    return lines;
  }

  private static String turns(double turns) {
    return Digits.number(turns, 0);
  }

  private static String shortest(double x) {
    String text = Digits.number(x, 2);
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
  }

  private String[] cells(CharacteristicReport characteristic) {
    Figures figures = sentences.figures(characteristic.wheel(), characteristic.name());
    Overall overall = characteristic.overall();
    CapabilityReport capability = overall.capability();
    String name = words.characteristic(characteristic.name());
    String[] cells = {
      sentences.nameWheels() ? sentences.label(characteristic.wheel()) + " " + name : name,
      figures.mean(overall.mean()),
      overall.sd() == null ? words.say("missing") : figures.spread(overall.sd()),
      words.say("missing"),
      words.say("missing"),
      words.say("missing"),
      ""
    };
    if (capability == null) {
      cells[6] = characteristic.specification().hasLimits() ? "" : words.say("summary.unlimited");
    } else {
      cells[3] = sentences.estimate(capability.cpk());
      cells[4] = sentences.estimate(capability.ppk());
      cells[5] =
          words.say(
              "summary.percent", Sentences.percent(capability.fractionOutsideObserved(), words));
      cells[6] = characteristic.inFull().isStable() ? "" : words.say("summary.unstable");
    }
    return cells;
  }

  private static List<String> columns(List<String[]> rows) {
    int[] widths = new int[rows.isEmpty() ? 0 : rows.get(0).length];
    for (String[] row : rows) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], width(row[i]));
      }
    }
    List<String> lines = new ArrayList<>();
    for (String[] row : rows) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < widths.length; i++) {
        if (widths[i] > 0) {
          line.append(row[i]).append(" ".repeat(widths[i] - width(row[i]) + 2));
        }
      }
      lines.add(cut(line.toString().stripTrailing()));
    }
    return lines;
  }

  /** What was rejected, as far as there is room. */
  private List<String> rejects() {
    RejectText text = new RejectText(sentences);
    List<String> lines = new ArrayList<>();
    for (String each : text.lines(report)) {
      lines.addAll(wrapped(each, ""));
    }
    List<String> said = new ArrayList<>(lines.subList(0, Math.min(REJECT_LINES, lines.size())));
    List<Spell> spells = RejectText.ranked(report);
    if (!spells.isEmpty()) {
      // Whole or without what goes with it: half a sentence would be one without its caution.
      List<String> first = wrapped(text.spell(spells.get(0)), "");
      said.addAll(first.size() <= SPELL_LINES ? first : wrapped(text.lead(spells.get(0)), ""));
    }
    if (spells.size() > 1) {
      said.add(
          words.say(
              spells.size() == 2 ? "rejects.more.one" : "rejects.more",
              words.count(spells.size() - 1)));
    }
    return said;
  }

  /** The change that would do most where capability is least. */
  private List<String> whatIf() {
    VerdictSentences verdicts = new VerdictSentences(report, sentences);
    CharacteristicReport most = verdicts.biggestLever();
    String said = most == null ? null : verdicts.whatIf(most);
    return said == null ? List.of() : List.of(cut(said));
  }

  /** What is known to act on each characteristic, as far as there is room. */
  private List<String> effects(int room) {
    EffectSentences effects = new EffectSentences(sentences);
    List<String> lines = new ArrayList<>();
    for (CharacteristicReport each : report.characteristics()) {
      String said = effects.acting(each, report.settings(), EFFECTS_OF_EACH);
      List<String> more = said.isEmpty() ? List.of() : wrapped(said, "");
      if (lines.size() + more.size() <= room) {
        lines.addAll(more);
      }
    }
    return lines;
  }

  /** What to do with the molds, as far as there is room; what is to be minded comes before. */
  private List<String> verdicts() {
    VerdictSentences verdicts = new VerdictSentences(report, sentences);
    List<String> lines = new ArrayList<>();
    for (String wheel : verdicts.overview()) {
      lines.addAll(wrapped(wheel, ""));
    }
    if (lines.size() > VERDICT_LINES) {
      String last = lines.get(VERDICT_LINES - 1);
      lines = new ArrayList<>(lines.subList(0, VERDICT_LINES));
      lines.set(VERDICT_LINES - 1, cut(last + " " + words.say("summary.more.verdicts")));
    }
    String caution = verdicts.cautionOfAll();
    if (!caution.isEmpty()) {
      lines.addAll(0, wrapped(caution, ""));
    }
    return lines;
  }

  /** One line for each ladle side and gauge; those that have something to do come first. */
  private List<String> advice(int room) {
    SetPointText setPoints = SetPointText.of(sentences, report);
    List<String> lines = new ArrayList<>();
    SetPointText.told(report).stream().map(setPoints::line).forEach(lines::add);
    GaugeText gauges = new GaugeText(sentences);
    report.gauges().forEach(gauge -> lines.addAll(gauges.lines(gauge)));
    List<String> shown = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      List<String> more = wrapped(lines.get(i), "");
      boolean last = i == lines.size() - 1;
      if (shown.size() + more.size() > room - (last ? 0 : 1)) {
        shown.add(words.say("summary.more.advice", lines.size() - i));
        break;
      }
      shown.addAll(more);
    }
    return shown;
  }

  /** What people said of causes, in two lines at most; none where nobody did. */
  private List<String> causes() {
    String said = CausesText.overview(report, sentences);
    List<String> lines = said.isEmpty() ? List.of() : wrapped(said, "");
    return lines.size() <= CAUSE_LINES
        ? lines
        : List.of(lines.get(0), cut(lines.get(1) + " " + lines.get(2).strip()));
  }

  /** Settings that moved before any anode shows it, the newest first, as far as there is room. */
  private List<String> moves() {
    SettingSentences settings = new SettingSentences(sentences);
    List<SettingsWatched.Move> holding = SettingSentences.holding(report);
    List<String> lines = new ArrayList<>();
    int said = 0;
    for (SettingsWatched.Move move : holding) {
      boolean last = said == holding.size() - 1;
      List<String> more = wrapped(settings.brief(move), "");
      if (lines.size() + more.size() > MOVE_LINES - (last ? 0 : 1)) {
        break;
      }
      lines.addAll(more);
      advised |= settings.isCautioned(move);
      said++;
    }
    int left = holding.size() - said;
    if (left > 0) {
      lines.add(
          left == 1
              ? words.say("summary.more.move")
              : words.say("summary.more.moves", words.count(left)));
    }
    return lines;
  }

  private List<String> lookFirst(int roomForSignals) {
    List<Topic> topics = Topic.of(report);
    List<String> beyond = beyond();
    if (topics.isEmpty()) {
      List<String> lines = new ArrayList<>(beyond);
      if (!lines.isEmpty()) {
        lines.add(0, words.say("summary.look"));
      }
      lines.addAll(said(Quiet.of(report, sentences).lines(words)));
      return lines;
    }
    int roomForTopics = roomForSignals - beyond.size();
    List<String> lines = new ArrayList<>();
    NextSteps steps = new NextSteps(report, sentences);
    List<Topic> told = new ArrayList<>();
    List<String> unexplained = List.of();
    int said = 0;
    for (int i = 0; i < topics.size(); i++) {
      Topic topic = topics.get(i);
      boolean last = i == topics.size() - 1;
      told.add(topic);
      String left = steps.once(told);
      List<String> with = left.isEmpty() ? List.of() : wrapped(left, "  ");
      int room = roomForTopics - lines.size() - with.size() - (last ? 0 : 1);
      List<String> more = wrapped(sentences.brief(topic), "  ");
      boolean whole = more.size() <= room;
      if (!whole && !lines.isEmpty()) {
        break;
      }
      lines.addAll(whole ? more : wrapped(sentences.lead(topic), "  "));
      unexplained = with;
      advised |= !with.isEmpty();
      said += topic.signals().size();
      Link best = topic.best();
      advised |= whole && best != null && !sentences.advice(best).isEmpty();
      if (!whole) {
        break;
      }
    }
    lines.addAll(unexplained);
    int left = Topic.distinct(report.signals()).size() - said;
    if (left > 0) {
      lines.add(
          "  "
              + (left == 1
                  ? words.say("summary.more.signal")
                  : words.say("summary.more.signals", words.count(left))));
    }
    lines.add(0, words.say("summary.look"));
    lines.addAll(beyond);
    lines.addAll(said(Quiet.of(report, sentences).notLookedFor(words)));
    return lines;
  }

  /** Where the wheel stands off beyond what its settings explain: two of them at most. */
  private List<String> beyond() {
    BeyondSentences beyond = new BeyondSentences(report, sentences);
    List<Departure> all = beyond.all();
    List<String> lines = new ArrayList<>();
    for (Departure one : all.subList(0, Math.min(BEYOND, all.size()))) {
      lines.addAll(wrapped(beyond.sentence(one), "  "));
    }
    if (all.size() > BEYOND) {
      lines.add("  " + words.say("summary.more.beyond", words.count(all.size() - BEYOND)));
    }
    return lines;
  }

  /** Sentences on what was looked for, as far as there is room. */
  private static List<String> said(List<String> sentences) {
    List<String> lines = new ArrayList<>();
    for (String each : sentences) {
      lines.addAll(wrapped(each, ""));
    }
    if (lines.size() <= QUIET_LINES) {
      return lines;
    }
    List<String> some = new ArrayList<>(lines.subList(0, QUIET_LINES));
    some.set(
        QUIET_LINES - 1, cut(some.get(QUIET_LINES - 1) + " " + lines.get(QUIET_LINES).strip()));
    return some;
  }

  private List<String> notes(int room) {
    List<String> lines = new ArrayList<>();
    int said = 0;
    List<Remark> notes = report.notes().stream().filter(note -> !isSaid(note)).toList();
    for (Remark note : notes) {
      List<String> more = wrapped(words.say("summary.note", words.say(note)), "");
      boolean last = said == notes.size() - 1;
      if (lines.size() + more.size() > room - (last ? 0 : 1)) {
        break;
      }
      lines.addAll(more);
      said++;
    }
    if (said < notes.size()) {
      int left = notes.size() - said;
      lines.add(words.say(left == 1 ? "summary.more.note" : "summary.more.notes", left));
    }
    return lines;
  }

  /** What was not looked for, or was set aside, is said where the signals and counts stand. */
  private static boolean isSaid(Remark note) {
    return note.key().equals(NotLookedFor.NOTE)
        || note.key().equals(AuditReport.MUCH_SET_ASIDE)
        || note.values().stream().anyMatch(value -> value instanceof Remark its && isSaid(its));
  }

  /** Breaks a sentence at spaces; its later lines stand two columns in. */
  private static List<String> wrapped(String sentence, String indent) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(indent);
    boolean empty = true;
    for (String word : Arrays.asList(plain(sentence).split(" (?!%)", -1))) {
      if (!empty && width(line) + 1 + width(word) > COLUMNS) {
        lines.add(line.toString());
        line.setLength(0);
        line.append(indent).append("  ");
        empty = true;
      }
      line.append(empty ? "" : " ").append(word);
      empty = false;
    }
    lines.add(line.toString());
    return lines.stream().map(Summary::cut).toList();
  }

  /** A terminal obeys control characters, and text from a log must not command it. */
  private static String plain(String text) {
    return WellFormed.text(text).replaceAll("\\p{Cntrl}|\\p{Zl}|\\p{Zp}", " ");
  }

  private static String cut(String line) {
    String plain = plain(line);
    return width(plain) <= COLUMNS
        ? plain
        : plain.substring(0, plain.offsetByCodePoints(0, COLUMNS - 1)) + "…";
  }

  private static int width(CharSequence text) {
    return (int) text.codePoints().count();
  }
}
