package org.evenpour.report.workbook;

import java.util.List;
import org.evenpour.audit.AuditReport.CapabilityReport;
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.MoldReport;
import org.evenpour.casting.Direction;
import org.evenpour.casting.Unit;

/** Every mold of every characteristic: its level, its limits and how far it stands off. */
final class MoldsSheet {
  private MoldsSheet() {}

  static void write(Paper paper) {
    List<Column> headings =
        List.of(
            Column.words(paper.say("head.wheel")),
            Column.words(paper.say("head.characteristic")),
            Column.words(paper.say("head.unit")),
            Column.words(paper.say("head.mold")),
            Column.figures(paper.say("head.anodes")),
            Column.figures(paper.say("head.mean")),
            Column.figures(paper.say("head.sd")),
            Column.figures(paper.say("head.sigma")),
            Column.figures(paper.say("head.center")),
            Column.figures(paper.say("head.lower_limit")),
            Column.figures(paper.say("head.upper_limit")),
            Column.figures(paper.say("head.offset")),
            Column.figures(paper.say("head.low")),
            Column.figures(paper.say("head.high")),
            Column.words(paper.say("head.stands")),
            Column.figures(paper.say("head.outside")),
            Column.figures(paper.say("head.share_outside")),
            Column.figures(paper.say("head.cpk")));
    Table table = new Table(paper, paper.say("sheet.molds"), headings);
    for (CharacteristicReport characteristic : paper.report().characteristics()) {
      for (MoldReport mold : characteristic.molds()) {
        row(paper, table.next(), characteristic, mold);
      }
    }
    table.finish();
  }

  private static void row(
      Paper paper, Table table, CharacteristicReport characteristic, MoldReport mold) {
    Styles styles = paper.styles();
    Unit unit = paper.unit(characteristic);
    int decimals = paper.decimals(characteristic) + 1;
    table
        .text(characteristic.wheel())
        .text(paper.words().characteristic(characteristic.name()))
        .text(unit.symbol())
        .label(mold.mold())
        .count(mold.count())
        .number(unit.fromCanonical(mold.mean()), styles.number(decimals))
        .number(Paper.difference(unit, mold.sd()), styles.number(decimals))
        .number(Paper.difference(unit, mold.sigmaWithin()), styles.number(decimals))
        .number(unit.fromCanonical(mold.center()), styles.number(decimals))
        .number(Paper.value(unit, mold.lowerLimit()), styles.number(decimals))
        .number(Paper.value(unit, mold.upperLimit()), styles.number(decimals))
        .number(Paper.difference(unit, mold.offset()), styles.departure(decimals))
        .number(Paper.difference(unit, mold.offsetLow()), styles.departure(decimals))
        .number(Paper.difference(unit, mold.offsetHigh()), styles.departure(decimals))
        .text(stands(paper, characteristic, mold))
        .count(mold.outside());
    CapabilityReport capability = mold.capability();
    if (capability == null) {
      table.blank().blank();
    } else {
      CapabilitySheet.share(table, paper, mold, capability, 'P', 'E');
      table.number(
          capability.cpk() == null ? null : (Double) capability.cpk().value(), styles.number(2));
    }
  }

  /** A word where the interval leaves no doubt on which side the mold stands. */
  private static String stands(Paper paper, CharacteristicReport characteristic, MoldReport mold) {
    Double low = mold.offsetLow();
    Double high = mold.offsetHigh();
    if (low == null || high == null || (low <= 0 && high >= 0)) {
      return "";
    }
    Direction way = low > 0 ? Direction.HIGH : Direction.LOW;
    return paper.say("mark." + way.id())
        + " "
        + paper.sentences().state(characteristic.name(), way);
  }
}
