package org.evenpour.report.workbook;

import org.apache.poi.xddf.usermodel.XDDFColor;
import org.apache.poi.xddf.usermodel.XDDFShapeProperties;
import org.apache.poi.xddf.usermodel.chart.AxisCrossBetween;
import org.apache.poi.xddf.usermodel.chart.AxisCrosses;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.AxisTickMark;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.MarkerStyle;
import org.apache.poi.xddf.usermodel.chart.XDDFCategoryAxis;
import org.apache.poi.xddf.usermodel.chart.XDDFDataPoint;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xddf.usermodel.chart.XDDFLineChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.MoldVerdict.Standing;
import org.evenpour.report.table.MoldTable;
import org.evenpour.table.Table;
import org.jspecify.annotations.Nullable;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTErrBars;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTNumData;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTNumDataSource;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTNumRef;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTNumVal;
import org.openxmlformats.schemas.drawingml.x2006.chart.STErrBarType;
import org.openxmlformats.schemas.drawingml.x2006.chart.STErrDir;
import org.openxmlformats.schemas.drawingml.x2006.chart.STErrValType;

/** How far each mold stands from the wheel's center, with its interval, the lowest first. */
final class RankingPictures {
  private RankingPictures() {}

  static void write(Paper paper, Printer printer) {
    Table<MoldTable.Row> table = MoldTable.offsets(paper.report(), paper.sentences());
    SXSSFSheet sheet = paper.book().createSheet(table.name());
    Printed<MoldTable.Row> beside = printer.beside(sheet, Picture.BESIDE, table);
    XSSFSheet behind = paper.book().getXSSFWorkbook().getSheet(sheet.getSheetName());
    int pictures = (int) table.rows().stream().map(row -> row.of()).distinct().count();
    int number = 0;
    int from = 0;
    while (from < table.rows().size()) {
      CharacteristicReport of = table.rows().get(from).of();
      int to = from + 1;
      while (to < table.rows().size() && table.rows().get(to).of() == of) {
        to++;
      }
      draw(paper, behind, beside, of, from, to, number++, pictures);
      from = to;
    }
    Picture.finish(paper, sheet, number);
  }

  private static void draw(
      Paper paper,
      XSSFSheet sheet,
      Printed<MoldTable.Row> beside,
      CharacteristicReport characteristic,
      int from,
      int to,
      int number,
      int pictures) {
    Unit unit = paper.unit(characteristic);
    String name = paper.words().characteristic(characteristic.name());
    XSSFChart chart =
        Picture.on(
            sheet,
            number,
            pictures,
            paper.sentences().nameWheels()
                ? paper.say("chart.ranking.named", characteristic.wheel(), name)
                : paper.say("chart.ranking", name));
    XDDFCategoryAxis bottom = chart.createCategoryAxis(AxisPosition.BOTTOM);
    bottom.setTitle(paper.say("chart.mold"));
    XDDFValueAxis left = chart.createValueAxis(AxisPosition.LEFT);
    left.setTitle(paper.say("chart.offset", name, unit.symbol()));
    Picture.quiet(bottom);
    Picture.quiet(left);
    // The line of the molds is the wheel's center; their names stay below.
    bottom.setCrosses(AxisCrosses.AUTO_ZERO);
    bottom.setMajorTickMark(AxisTickMark.NONE);
    left.getOrAddMajorGridProperties().setLineProperties(Picture.line(Picture.HAIRLINE, 0.5, null));
    Scale scale = scale(beside, from, to);
    Picture.scale(left, scale);
    Picture.format(chart, left, "+" + scale.format() + ";-" + scale.format() + ";0");
    left.setCrossBetween(AxisCrossBetween.BETWEEN);
    XDDFLineChartData data = (XDDFLineChartData) chart.createData(ChartTypes.LINE, bottom, left);
    data.setVaryColors(false);
    XDDFLineChartData.Series series =
        (XDDFLineChartData.Series)
            data.addSeries(
                XDDFDataSourcesFactory.fromArray(
                    beside.texts("mold", from, to), beside.range("mold", from, to, true), 3),
                beside.numbers("offset", from, to));
    series.setTitle(name, null);
    series.setSmooth(false);
    series.setLineProperties(Picture.noLine());
    series.setMarkerStyle(MarkerStyle.CIRCLE);
    Picture.mark(series.getCTLineSer().getMarker(), 6, Picture.INK);
    intervals(beside, series, from, to);
    Picture.plot(data);
    Picture.speak(chart, paper.say("language"));
    for (int i = 0; i < to - from; i++) {
      Standing standing = MoldTable.standing(paper.report(), beside.table().rows().get(from + i));
      if (standing != null && standing.standsOut()) {
        boolean isHigh = standing.offset() > 0;
        mark(
            series,
            i,
            isHigh ? MarkerStyle.TRIANGLE : MarkerStyle.DIAMOND,
            isHigh ? Picture.HIGH : Picture.LOW);
      }
    }
  }

  private static void mark(
      XDDFLineChartData.Series series, int index, MarkerStyle marker, XDDFColor color) {
    XDDFDataPoint point = series.getDataPoint(index);
    point.setMarkerStyle(marker);
    series.getCTLineSer().getDPtList().stream()
        .filter(drawn -> drawn.getIdx().getVal() == index)
        .forEach(drawn -> Picture.mark(drawn.getMarker(), 8, color));
  }

  private static void intervals(
      Printed<?> beside, XDDFLineChartData.Series series, int from, int to) {
    CTErrBars bars = series.getCTLineSer().addNewErrBars();
    bars.addNewErrDir().setVal(STErrDir.Y);
    bars.addNewErrBarType().setVal(STErrBarType.BOTH);
    bars.addNewErrValType().setVal(STErrValType.CUST);
    bars.addNewNoEndCap().setVal(true);
    lengths(
        bars.addNewPlus(), beside.range("plus", from, to, true), beside.values("plus", from, to));
    lengths(
        bars.addNewMinus(),
        beside.range("minus", from, to, true),
        beside.values("minus", from, to));
    XDDFShapeProperties shape = new XDDFShapeProperties();
    shape.setLineProperties(Picture.line(Picture.QUIET, 1.25, null));
    bars.setSpPr(shape.getXmlObject());
  }

  private static void lengths(CTNumDataSource into, String range, @Nullable Double[] values) {
    CTNumRef reference = into.addNewNumRef();
    reference.setF(range);
    CTNumData cache = reference.addNewNumCache();
    cache.addNewPtCount().setVal(values.length);
    for (int i = 0; i < values.length; i++) {
      Double value = values[i];
      if (value != null) {
        CTNumVal point = cache.addNewPt();
        point.setIdx(i);
        point.setV(value.toString());
      }
    }
  }

  private static Scale scale(Printed<?> beside, int from, int to) {
    double low = 0;
    double high = 0;
    for (String key : new String[] {"offset", "low", "high"}) {
      for (Double value : beside.values(key, from, to)) {
        low = value == null ? low : Math.min(low, value);
        high = value == null ? high : Math.max(high, value);
      }
    }
    return Scale.over(low, high);
  }
}
