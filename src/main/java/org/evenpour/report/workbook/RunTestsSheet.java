package org.evenpour.report.workbook;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.MoldReport;
import org.evenpour.report.RunTests;

/** How often each run test found its pattern, for the whole wheel and for every mold alone. */
final class RunTestsSheet {
  private RunTestsSheet() {}

  static void write(Paper paper) {
    List<Column> headings =
        new ArrayList<>(
            List.of(
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.characteristic")),
                Column.words(paper.say("head.mold"))));
    RunTests.IDS.forEach(id -> headings.add(Column.figures(paper.say("test." + id))));
    Table table = new Table(paper, paper.say("sheet.tests"), headings);
    for (CharacteristicReport characteristic : paper.report().characteristics()) {
      if (characteristic.wheelChart() != null) {
        row(
            paper,
            table,
            characteristic,
            paper.say("mold.wheel"),
            characteristic.wheelChart().tests());
      }
      for (MoldReport mold : characteristic.molds()) {
        row(paper, table, characteristic, mold.mold(), mold.tests());
      }
    }
    table.finish();
  }

  private static void row(
      Paper paper,
      Table table,
      CharacteristicReport characteristic,
      String mold,
      Map<String, Long> tests) {
    table
        .next()
        .text(characteristic.wheel())
        .text(paper.words().characteristic(characteristic.name()))
        .label(mold);
    for (String id : RunTests.IDS) {
      table.count(tests.get(id));
    }
  }
}
