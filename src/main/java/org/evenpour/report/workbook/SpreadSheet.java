package org.evenpour.report.workbook;

import java.util.List;
import javax.xml.namespace.QName;
import org.apache.poi.xddf.usermodel.XDDFColor;
import org.apache.poi.xddf.usermodel.XDDFShapeProperties;
import org.apache.poi.xddf.usermodel.XDDFSolidFillProperties;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.AxisTickMark;
import org.apache.poi.xddf.usermodel.chart.BarDirection;
import org.apache.poi.xddf.usermodel.chart.BarGrouping;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.LegendPosition;
import org.apache.poi.xddf.usermodel.chart.XDDFBarChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFCategoryAxis;
import org.apache.poi.xddf.usermodel.chart.XDDFChartLegend;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.xmlbeans.XmlCursor;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.CapabilityInFull.Source;
import org.evenpour.report.table.SpreadTables;
import org.evenpour.table.Table;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTBarChart;

/** Where the spread comes from, one bar a characteristic, and what would be left without a part. */
final class SpreadSheet {
  /** From dark to light, so that print without colour tells them apart. */
  private static final int[] GRAYS = {0x40, 0x78, 0xa8, 0xd4};

  /** So many columns of the tables below it are as wide as it is. */
  private static final int COLUMNS = 9;

  private static final int ROWS = 15;

  private SpreadSheet() {}

  static void write(Paper paper, Printer printer) {
    Table<CharacteristicReport> table = SpreadTables.parts(paper.report(), paper.sentences());
    if (table.rows().isEmpty()) {
      return;
    }
    SXSSFSheet sheet =
        printer.together(
            table.name(),
            List.of(table, SpreadTables.without(paper.report(), paper.sentences())),
            ROWS);
    if (sheet != null) {
      draw(paper, sheet, printer.printed("spread"));
    }
  }

  private static void draw(Paper paper, SXSSFSheet sheet, Printed<?> beside) {
    XSSFChart chart =
        Picture.over(
            paper.book().getXSSFWorkbook().getSheet(sheet.getSheetName()),
            0,
            ROWS - 1,
            COLUMNS,
            paper.say("chart.spread"));
    XDDFCategoryAxis left = chart.createCategoryAxis(AxisPosition.LEFT);
    XDDFValueAxis bottom = chart.createValueAxis(AxisPosition.BOTTOM);
    Picture.quiet(left);
    Picture.quiet(bottom);
    left.setMajorTickMark(AxisTickMark.NONE);
    left.setTitle(paper.say("head.characteristic"));
    bottom.setTitle(paper.say("chart.share"));
    bottom.setMinimum(0);
    bottom.setMaximum(1);
    bottom.setMajorUnit(0.25);
    Picture.format(chart, bottom, "0%");
    XDDFBarChartData data = (XDDFBarChartData) chart.createData(ChartTypes.BAR, left, bottom);
    data.setBarDirection(BarDirection.BAR);
    data.setBarGrouping(BarGrouping.STACKED);
    int rows = beside.table().rows().size();
    String[] names =
        beside.table().rows().stream()
            .map(row -> (CharacteristicReport) row)
            .map(one -> Texts.cell(paper.sentences().title(one.wheel(), one.name())))
            .toArray(String[]::new);
    for (Source source : Source.values()) {
      var series =
          data.addSeries(
              XDDFDataSourcesFactory.fromArray(
                  names, beside.range("characteristic", 0, rows, true), 1),
              beside.numbers(source.name(), 0, rows));
      series.setTitle(SpreadTables.name(paper.words(), source), null);
      series.setShapeProperties(gray(GRAYS[source.ordinal()]));
    }
    Picture.plot(data);
    stack(chart.getCTChart().getPlotArea().getBarChartArray(0));
    XDDFChartLegend legend = chart.getOrAddLegend();
    legend.setPosition(LegendPosition.TOP);
    Picture.speak(chart, paper.say("language"));
  }

  /** By its text, for the small schema library that comes with POI has no type for it. */
  private static void stack(CTBarChart bars) {
    try (XmlCursor cursor = bars.addNewOverlap().newCursor()) {
      cursor.setAttributeText(new QName("val"), "100");
    }
  }

  private static XDDFShapeProperties gray(int level) {
    XDDFShapeProperties shape = new XDDFShapeProperties();
    byte each = (byte) level;
    shape.setFillProperties(
        new XDDFSolidFillProperties(XDDFColor.from(new byte[] {each, each, each})));
    return shape;
  }
}
