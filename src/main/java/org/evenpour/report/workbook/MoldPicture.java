package org.evenpour.report.workbook;

import java.util.ArrayList;
import java.util.List;
import org.apache.poi.xddf.usermodel.PresetLineDash;
import org.apache.poi.xddf.usermodel.XDDFLineProperties;
import org.apache.poi.xddf.usermodel.chart.AxisCrossBetween;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.AxisTickMark;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.LegendPosition;
import org.apache.poi.xddf.usermodel.chart.MarkerStyle;
import org.apache.poi.xddf.usermodel.chart.XDDFCategoryAxis;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xddf.usermodel.chart.XDDFLineChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.report.table.MoldTable;
import org.jspecify.annotations.Nullable;

/** Each mold's mean against the tolerance, whose lines follow a change of a limit. */
final class MoldPicture {
  private MoldPicture() {}

  /**
   * Draws it over rows of a sheet that were left free.
   *
   * @param toRow index of the row below it
   */
  static void draw(
      Paper paper,
      Printer printer,
      SXSSFSheet sheet,
      CharacteristicReport of,
      int firstRow,
      int toRow) {
    Printed<?> molds = printer.printed("molds");
    int from = -1;
    int to = -1;
    for (int i = 0; i < molds.table().rows().size(); i++) {
      if (((MoldTable.Row) molds.table().rows().get(i)).of() == of) {
        from = from < 0 ? i : from;
        to = i + 1;
      }
    }
    String name = paper.sentences().title(of.wheel(), of.name());
    XSSFChart chart =
        Picture.over(
            paper.book().getXSSFWorkbook().getSheet(sheet.getSheetName()),
            firstRow,
            toRow,
            Grid.COLUMNS,
            paper.say("chart.molds", name));
    XDDFCategoryAxis bottom = chart.createCategoryAxis(AxisPosition.BOTTOM);
    XDDFValueAxis left = chart.createValueAxis(AxisPosition.LEFT);
    bottom.setTitle(paper.say("chart.mold"));
    left.setTitle(paper.say("chart.axis", name, paper.unit(of).symbol()));
    Picture.quiet(bottom);
    Picture.quiet(left);
    bottom.setMajorTickMark(AxisTickMark.NONE);
    left.getOrAddMajorGridProperties().setLineProperties(Picture.line(Picture.HAIRLINE, 0.5, null));
    left.setCrossBetween(AxisCrossBetween.BETWEEN);
    Scale scale = scale(molds, from, to);
    Picture.scale(left, scale);
    Picture.format(chart, left, scale.format());
    XDDFLineChartData data = (XDDFLineChartData) chart.createData(ChartTypes.LINE, bottom, left);
    data.setVaryColors(false);
    for (String limit : List.of("lower", "target", "upper")) {
      if (isThere(molds.values(limit, from, to))) {
        boolean isTarget = limit.equals("target");
        series(
            data,
            molds,
            from,
            to,
            limit,
            paper.say("head." + limit),
            Picture.line(
                isTarget ? Picture.QUIET : Picture.INK, 1, isTarget ? null : PresetLineDash.DASH),
            MarkerStyle.NONE);
      }
    }
    XDDFLineChartData.Series means =
        series(
            data,
            molds,
            from,
            to,
            "mean",
            paper.say("chart.molds.mean"),
            Picture.noLine(),
            MarkerStyle.CIRCLE);
    Picture.mark(means.getCTLineSer().getMarker(), 6, Picture.INK);
    Picture.plot(data);
    chart.getOrAddLegend().setPosition(LegendPosition.RIGHT);
    Picture.speak(chart, paper.say("language"));
  }

  private static boolean isThere(@Nullable Double[] values) {
    return values.length > 0 && values[0] != null;
  }

  private static XDDFLineChartData.Series series(
      XDDFLineChartData data,
      Printed<?> molds,
      int from,
      int to,
      String column,
      String name,
      XDDFLineProperties line,
      MarkerStyle marker) {
    XDDFLineChartData.Series series =
        (XDDFLineChartData.Series)
            data.addSeries(
                XDDFDataSourcesFactory.fromArray(
                    molds.texts("mold", from, to), molds.range("mold", from, to, true), 3),
                molds.numbers(column, from, to));
    series.setTitle(name, null);
    series.setSmooth(false);
    series.setLineProperties(line);
    series.setMarkerStyle(marker);
    return series;
  }

  private static Scale scale(Printed<?> molds, int from, int to) {
    List<Double> all = new ArrayList<>();
    for (String key : List.of("mean", "lower", "upper")) {
      for (Double value : molds.values(key, from, to)) {
        if (value != null) {
          all.add(value);
        }
      }
    }
    double low = all.stream().mapToDouble(one -> one).min().orElse(0);
    double high = all.stream().mapToDouble(one -> one).max().orElse(1);
    return Scale.over(low, high);
  }
}
