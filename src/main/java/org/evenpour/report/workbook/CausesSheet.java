package org.evenpour.report.workbook;

import org.apache.poi.xddf.usermodel.XDDFShapeProperties;
import org.apache.poi.xddf.usermodel.XDDFSolidFillProperties;
import org.apache.poi.xddf.usermodel.chart.AxisCrossBetween;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.AxisTickMark;
import org.apache.poi.xddf.usermodel.chart.BarDirection;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.XDDFBarChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFCategoryAxis;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.evenpour.findings.CausesReport.Counted;
import org.evenpour.report.table.CauseTable;
import org.evenpour.table.Table;

/** Which causes people confirmed, the most frequent first, as columns and beside them. */
final class CausesSheet {
  /** A choice: more columns than this cannot be told apart; the table beside has all. */
  private static final int MOST_COLUMNS = 16;

  private CausesSheet() {}

  /** Nothing where no mark is about a signal of this audit. */
  static void write(Paper paper, Printer printer) {
    Table<Counted> table = CauseTable.of(paper.report(), paper.sentences());
    if (table.rows().isEmpty()) {
      return;
    }
    SXSSFSheet sheet = paper.book().createSheet(table.name());
    Printed<Counted> beside = printer.beside(sheet, Picture.BESIDE, table);
    int drawn = (int) table.rows().stream().filter(one -> one.right() > 0).count();
    if (drawn > 0) {
      // The most frequent stand first, so that those that were right for any are the first ones.
      draw(paper, sheet, beside, Math.min(drawn, MOST_COLUMNS));
    }
    Picture.finish(paper, sheet, 1);
  }

  private static void draw(Paper paper, SXSSFSheet sheet, Printed<Counted> beside, int drawn) {
    XSSFChart chart =
        Picture.on(
            paper.book().getXSSFWorkbook().getSheet(sheet.getSheetName()),
            0,
            1,
            paper.say("chart.causes"));
    int most = beside.table().rows().get(0).right();
    XDDFCategoryAxis bottom = chart.createCategoryAxis(AxisPosition.BOTTOM);
    XDDFValueAxis left = chart.createValueAxis(AxisPosition.LEFT);
    Picture.quiet(bottom);
    Picture.quiet(left);
    bottom.setMajorTickMark(AxisTickMark.NONE);
    bottom.setTitle(paper.say("head.cause"));
    left.setTitle(paper.say("chart.causes.count"));
    left.setCrossBetween(AxisCrossBetween.BETWEEN);
    // Counts: from nothing, in whole steps.
    double step = Math.max(1, Scale.over(0, most).step());
    left.setMinimum(0);
    left.setMaximum(Math.ceil(most / step) * step);
    left.setMajorUnit(step);
    Picture.format(chart, left, "0");
    XDDFBarChartData data = (XDDFBarChartData) chart.createData(ChartTypes.BAR, bottom, left);
    data.setVaryColors(false);
    data.setBarDirection(BarDirection.COL);
    data.setGapWidth(40);
    var series =
        data.addSeries(
            XDDFDataSourcesFactory.fromArray(
                beside.texts("cause", 0, drawn), beside.range("cause", 0, drawn, true), 0),
            beside.numbers("right", 0, drawn));
    series.setTitle(paper.say("head.right"), null);
    XDDFShapeProperties shape = new XDDFShapeProperties();
    shape.setFillProperties(new XDDFSolidFillProperties(Picture.INK));
    series.setShapeProperties(shape);
    Picture.plot(data);
    Picture.speak(chart, paper.say("language"));
  }
}
