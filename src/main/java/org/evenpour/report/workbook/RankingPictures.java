package org.evenpour.report.workbook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
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
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.MoldReport;
import org.evenpour.casting.Unit;
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
  private static final int BESIDE = Picture.COLUMNS + 1;

  private RankingPictures() {}

  /** A mold whose offset is known, in the unit that is shown. */
  private record Offset(String mold, double value, @Nullable Double low, @Nullable Double high) {
    @Nullable Double minus() {
      return low == null ? null : (Double) (value - low);
    }

    @Nullable Double plus() {
      return high == null ? null : (Double) (high - value);
    }
  }

  static void write(Paper paper) {
    SXSSFSheet sheet = paper.book().createSheet(paper.say("sheet.ranking"));
    Beside beside =
        new Beside(
            paper,
            sheet,
            BESIDE,
            List.of(
                paper.say("head.wheel"),
                paper.say("head.characteristic"),
                paper.say("head.unit"),
                paper.say("head.mold"),
                paper.say("head.offset"),
                paper.say("head.low"),
                paper.say("head.high"),
                paper.say("head.minus"),
                paper.say("head.plus")));
    XSSFSheet behind = paper.book().getXSSFWorkbook().getSheet(sheet.getSheetName());
    int number = 0;
    for (CharacteristicReport characteristic : paper.report().characteristics()) {
      List<Offset> offsets = offsets(paper, characteristic);
      if (!offsets.isEmpty()) {
        draw(paper, behind, beside, characteristic, offsets, number);
        number++;
      }
    }
    beside.finish(number);
  }

  private static List<Offset> offsets(Paper paper, CharacteristicReport characteristic) {
    Unit unit = paper.unit(characteristic);
    List<Offset> offsets = new ArrayList<>();
    for (MoldReport mold : characteristic.molds()) {
      Double value = Paper.difference(unit, mold.offset());
      if (value != null) {
        offsets.add(
            new Offset(
                mold.mold(),
                value,
                Paper.difference(unit, mold.offsetLow()),
                Paper.difference(unit, mold.offsetHigh())));
      }
    }
    offsets.sort(Comparator.comparingDouble(Offset::value));
    return offsets;
  }

  private static void draw(
      Paper paper,
      XSSFSheet sheet,
      Beside beside,
      CharacteristicReport characteristic,
      List<Offset> offsets,
      int number) {
    Unit unit = paper.unit(characteristic);
    int row = beside.rowIndex();
    var style = paper.styles().departure(paper.decimals(characteristic) + 1);
    var size = paper.styles().number(paper.decimals(characteristic) + 1);
    for (Offset offset : offsets) {
      beside
          .next()
          .text(characteristic.wheel())
          .text(paper.words().characteristic(characteristic.name()))
          .text(unit.symbol())
          .label(offset.mold())
          .number(offset.value(), style)
          .number(offset.low(), style)
          .number(offset.high(), style)
          .difference(4, 5, offset.minus(), size)
          .difference(6, 4, offset.plus(), size);
    }
    String name = paper.words().characteristic(characteristic.name());
    XSSFChart chart =
        Picture.on(
            sheet,
            number,
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
    Scale scale = scale(offsets);
    Picture.scale(left, scale);
    Picture.format(chart, left, "+" + scale.format() + ";-" + scale.format() + ";0");
    left.setCrossBetween(AxisCrossBetween.BETWEEN);
    XDDFLineChartData data = (XDDFLineChartData) chart.createData(ChartTypes.LINE, bottom, left);
    data.setVaryColors(false);
    XDDFLineChartData.Series series =
        (XDDFLineChartData.Series)
            data.addSeries(
                XDDFDataSourcesFactory.fromArray(
                    offsets.stream()
                        .map(offset -> Texts.cell(offset.mold()))
                        .toArray(String[]::new),
                    beside.range(row, offsets.size(), 3),
                    3),
                beside.numbers(row, 4, column(offsets, Offset::value)));
    series.setTitle(name, null);
    series.setSmooth(false);
    series.setLineProperties(Picture.noLine());
    series.setMarkerStyle(MarkerStyle.CIRCLE);
    Picture.mark(series.getCTLineSer().getMarker(), 6, Picture.INK);
    intervals(beside, series, offsets, row);
    chart.plot(data);
    Picture.speak(chart, paper.say("language"));
    for (int i = 0; i < offsets.size(); i++) {
      Double low = offsets.get(i).low();
      Double high = offsets.get(i).high();
      if (low != null && low > 0) {
        mark(series, i, MarkerStyle.TRIANGLE, Picture.HIGH);
      } else if (high != null && high < 0) {
        mark(series, i, MarkerStyle.DIAMOND, Picture.LOW);
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
      Beside beside, XDDFLineChartData.Series series, List<Offset> offsets, int row) {
    CTErrBars bars = series.getCTLineSer().addNewErrBars();
    bars.addNewErrDir().setVal(STErrDir.Y);
    bars.addNewErrBarType().setVal(STErrBarType.BOTH);
    bars.addNewErrValType().setVal(STErrValType.CUST);
    bars.addNewNoEndCap().setVal(true);
    lengths(bars.addNewPlus(), beside.range(row, offsets.size(), 8), column(offsets, Offset::plus));
    lengths(
        bars.addNewMinus(), beside.range(row, offsets.size(), 7), column(offsets, Offset::minus));
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

  private static Scale scale(List<Offset> offsets) {
    double low = 0;
    double high = 0;
    for (Offset offset : offsets) {
      low = Math.min(low, offset.low() == null ? offset.value() : offset.low());
      high = Math.max(high, offset.high() == null ? offset.value() : offset.high());
    }
    return Scale.over(low, high);
  }

  private static @Nullable Double[] column(
      List<Offset> offsets, Function<Offset, @Nullable Double> value) {
    @Nullable Double[] values = new @Nullable Double[offsets.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = value.apply(offsets.get(i));
    }
    return values;
  }
}
