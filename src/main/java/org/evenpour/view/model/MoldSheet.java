package org.evenpour.view.model;

import java.util.ArrayList;
import java.util.List;
import org.evenpour.casting.Scope;
import org.evenpour.findings.AuditReport;
import org.evenpour.findings.MoldVerdict;
import org.evenpour.findings.MoldVerdict.Verdict;
import org.evenpour.picture.Sheet;
import org.evenpour.picture.Sheet.Item;
import org.evenpour.report.NextSteps;
import org.evenpour.report.Sentences;
import org.evenpour.report.Topic;
import org.evenpour.report.VerdictSentences;
import org.evenpour.words.Words;

/**
 * What maintenance is told: the molds to replace, to level or to dress, where and why; what departs
 * just now at a mold or a ladle side; the molds to watch. The caution stands before all of it.
 */
public final class MoldSheet {
  private MoldSheet() {}

  /** Of what the desk shows now. */
  public static Sheet of(Desk desk) {
    Look look = desk.look();
    AuditReport report = desk.figured();
    Sentences sentences = desk.sentences();
    VerdictSentences verdicts = new VerdictSentences(report, sentences);
    List<MoldVerdict> all = InShort.toDo(report);
    List<Item> items = new ArrayList<>();
    items.add(Item.heading(look.say("paper.act")));
    int heads = items.size();
    all.stream()
        .filter(one -> one.verdict() != Verdict.WATCH)
        .forEach(one -> items.add(item(desk, verdicts, one, true)));
    if (items.size() == heads) {
      items.add(new Item("", "", look.say("paper.none"), false));
    }
    List<Topic> now =
        Topic.of(desk.report()).stream()
            .filter(one -> one.first().open())
            .filter(one -> one.first().scope() == Scope.MOLD || one.first().scope() == Scope.SIDE)
            .toList();
    if (!now.isEmpty()) {
      items.add(Item.heading(look.say("paper.look")));
      NextSteps steps = desk.nextSteps();
      for (Topic topic : now) {
        String said = (sentences.brief(topic) + " " + steps.of(topic)).strip();
        items.add(new Item(Words.capital(sentences.places(List.of(topic))), "", said, true));
      }
    }
    List<MoldVerdict> watched = all.stream().filter(one -> one.verdict() == Verdict.WATCH).toList();
    if (!watched.isEmpty()) {
      items.add(Item.heading(look.say("paper.watch")));
      watched.forEach(one -> items.add(item(desk, verdicts, one, false)));
    }
    AuditReport.Log log = report.log();
    String wheels = String.join(", ", log.wheels());
    return new Sheet(
        wheels.isEmpty() ? look.say("paper.title") : look.say("paper.title.wheel", wheels),
        look.say(
            "paper.under",
            sentences.date(log.firstCastAt()),
            sentences.date(log.lastCastAt()),
            String.join(", ", log.files())),
        verdicts.cautionOfAll().isEmpty()
            ? String.join(" ", sentences.cautions().ofMoldWork())
            : verdicts.cautionOfAll(),
        items,
        look.say("paper.done"),
        sentences.words().say("safety"));
  }

  private static Item item(Desk desk, VerdictSentences verdicts, MoldVerdict one, boolean isWork) {
    Look look = desk.look();
    List<String> where = new ArrayList<>();
    String serial = one.serial();
    if (serial != null && !serial.isEmpty()) {
      where.add(look.say("paper.serial", serial));
    }
    Words words = desk.sentences().words();
    Long casts = one.castsOnMold();
    where.add(
        casts == null
            ? look.say("paper.casts", words.count(one.casts()))
            : look.say("paper.casts.all", words.count(casts)));
    String side = verdicts.thickSide(one.thickSide());
    String why = verdicts.reason(one);
    if (!side.isEmpty() && !why.contains(side)) {
      where.add(look.say("paper.thick", side));
    }
    String name =
        desk.sentences().nameWheels()
            ? look.say("paper.mold.wheel", one.mold(), one.wheel())
            : look.say("mold.name", one.mold());
    return new Item(
        look.say("paper.what", name, verdicts.verdict(one)),
        String.join("  ·  ", where),
        why,
        isWork);
  }
}
