package org.evenpour.report.workbook;

import java.util.List;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.Estimate;
import org.evenpour.audit.CapabilityInFull.Group;
import org.evenpour.casting.Unit;
import org.jspecify.annotations.Nullable;

/** Every characteristic by ladle side, charge and crew. */
final class GroupsSheet {
  private GroupsSheet() {}

  static void write(Paper paper) {
    if (paper.report().characteristics().stream().allMatch(c -> c.inFull().groups().isEmpty())) {
      return;
    }
    String from = paper.say("head.from");
    String to = paper.say("head.to");
    String cpk = paper.say("head.cpk");
    String ppk = paper.say("head.ppk");
    Table table =
        new Table(
            paper,
            paper.say("sheet.groups"),
            List.of(
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.characteristic")),
                Column.words(paper.say("head.unit")),
                Column.words(paper.say("head.by")),
                Column.words(paper.say("head.which")),
                Column.figures(paper.say("head.anodes")),
                Column.figures(paper.say("head.mean")),
                Column.figures(paper.say("head.sd")),
                Column.figures(cpk),
                Column.figures(paper.say("head.interval", cpk, from)),
                Column.figures(paper.say("head.interval", cpk, to)),
                Column.figures(ppk),
                Column.figures(paper.say("head.interval", ppk, from)),
                Column.figures(paper.say("head.interval", ppk, to)),
                Column.figures(paper.say("head.outside")),
                Column.words(paper.say("head.note"))));
    for (CharacteristicReport one : paper.report().characteristics()) {
      Unit unit = paper.unit(one);
      var digits = paper.styles().number(paper.decimals(one) + 1);
      for (Group group : one.inFull().groups()) {
        table
            .next()
            .text(one.wheel())
            .text(paper.words().characteristic(one.name()))
            .text(unit.symbol())
            .text(paper.say("by." + group.by()))
            .label(group.name())
            .count(group.count())
            .number(unit.fromCanonical(group.mean()), digits)
            .number(Paper.difference(unit, group.sd()), digits);
        estimate(paper, table, group.cpk());
        estimate(paper, table, group.ppk());
        table.count(group.outside()).text(group.isFew() ? paper.say("few") : "");
      }
    }
    table.finish();
  }

  private static void estimate(Paper paper, Table table, @Nullable Estimate estimate) {
    var style = paper.styles().number(2);
    table
        .number(estimate == null ? null : (Double) estimate.value(), style)
        .number(estimate == null ? null : estimate.low(), style)
        .number(estimate == null ? null : estimate.high(), style);
  }
}
