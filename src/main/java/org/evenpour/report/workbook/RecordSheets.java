package org.evenpour.report.workbook;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.Effect;
import org.evenpour.audit.AuditReport.SettingReport;
import org.evenpour.casting.CastingEvent;
import org.evenpour.casting.SetAsideRow;
import org.evenpour.casting.Unit;
import org.evenpour.report.Sentences;

/** What was recorded beside the anodes: settings, events, and the rows that were set aside. */
final class RecordSheets {
  private RecordSheets() {}

  static void settings(Paper paper) {
    Map<String, Unit> judged = new TreeMap<>();
    for (CharacteristicReport characteristic : paper.report().characteristics()) {
      judged.putIfAbsent(characteristic.name(), paper.unit(characteristic));
    }
    List<Column> headings =
        new ArrayList<>(
            List.of(
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.setting")),
                Column.words(paper.say("head.column")),
                Column.words(paper.say("head.unit")),
                Column.words(paper.say("head.group")),
                Column.figures(paper.say("head.lag")),
                Column.figures(paper.say("head.anodes")),
                Column.figures(paper.say("head.missing")),
                Column.figures(paper.say("head.mean")),
                Column.figures(paper.say("head.sd")),
                Column.figures(paper.say("head.minimum")),
                Column.figures(paper.say("head.maximum")),
                Column.figures(paper.say("head.levels"))));
    judged.forEach(
        (name, unit) -> {
          String characteristic = paper.words().characteristic(name);
          String effect =
              unit.symbol().isEmpty()
                  ? paper.say("head.effect.plain", characteristic)
                  : paper.say("head.effect", characteristic, unit.symbol());
          headings.add(Column.figures(effect));
          headings.add(Column.figures(paper.say("head.low")));
          headings.add(Column.figures(paper.say("head.high")));
        });
    Table table = new Table(paper, paper.say("sheet.settings"), headings);
    for (SettingReport setting : paper.report().settings()) {
      setting(paper, table.next(), setting, judged);
    }
    table.finish();
  }

  private static void setting(
      Paper paper, Table table, SettingReport setting, Map<String, Unit> judged) {
    Styles styles = paper.styles();
    int places = SignalsSheet.places(setting.sd() == null ? setting.mean() : setting.sd());
    table
        .text(setting.wheel())
        .text(paper.sentences().setting(setting.name()))
        .text(setting.name())
        .text(Sentences.unit(setting.unit()).symbol())
        .text(setting.group())
        .count(setting.lagTurns())
        .count(setting.count())
        .count(setting.missing())
        .number(setting.mean(), styles.number(places))
        .number(setting.sd(), styles.number(places))
        .number(setting.minimum(), styles.number(places))
        .number(setting.maximum(), styles.number(places))
        .count(setting.category() ? (Integer) setting.levels() : null);
    judged.forEach(
        (name, unit) -> {
          Effect found =
              setting.effects().stream()
                  .filter(effect -> effect.characteristic().equals(name))
                  .findFirst()
                  .orElse(new Effect(name, null, null, null));
          int digits = SignalsSheet.places(found.perUnit());
          table
              .number(Paper.difference(unit, found.perUnit()), styles.departure(digits))
              .number(Paper.difference(unit, found.low()), styles.departure(digits))
              .number(Paper.difference(unit, found.high()), styles.departure(digits));
        });
  }

  static void events(Paper paper) {
    Table table =
        new Table(
            paper,
            paper.say("sheet.events"),
            List.of(
                Column.figures(paper.zoned("head.at")),
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.mold")),
                Column.words(paper.say("head.event")),
                Column.words(paper.say("head.note"))));
    for (CastingEvent event : paper.report().events()) {
      table
          .next()
          .date(event.at())
          .text(event.wheel())
          .label(event.mold())
          .text(paper.sentences().event(event.kind()))
          .prose(event.note());
    }
    table.finish();
  }

  static void setAside(Paper paper) {
    Table table =
        new Table(
            paper,
            paper.say("sheet.set_aside"),
            List.of(
                Column.words(paper.say("head.log")),
                Column.figures(paper.say("head.line")),
                Column.words(paper.say("head.reason")),
                Column.words(paper.say("head.row"))));
    List<SetAsideRow> rows = paper.report().setAside();
    for (SetAsideRow row : rows) {
      table
          .next()
          .text(row.log())
          .count(row.line())
          .prose(row.reason().toString())
          .prose(row.text());
    }
    long all = paper.report().log().rowsSetAside();
    if (rows.size() < all) {
      table
          .next()
          .blank()
          .blank()
          .prose(
              paper.say(
                  "set_aside.more", paper.words().count(rows.size()), paper.words().count(all)));
    }
    table.finish();
  }
}
