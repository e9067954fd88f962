package org.evenpour.report.workbook;

import java.util.ArrayList;
import java.util.List;
import org.apache.poi.xddf.usermodel.PresetLineDash;
import org.apache.poi.xddf.usermodel.XDDFColor;
import org.apache.poi.xddf.usermodel.XDDFLineProperties;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.MarkerStyle;
import org.apache.poi.xddf.usermodel.chart.ScatterStyle;
import org.apache.poi.xddf.usermodel.chart.XDDFNumericalDataSource;
import org.apache.poi.xddf.usermodel.chart.XDDFScatterChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.evenpour.casting.Unit;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.TurnPoint;
import org.evenpour.findings.AuditReport.WheelChart;
import org.evenpour.report.Figures;
import org.evenpour.report.table.LimitsTable;
import org.evenpour.report.table.TurnTables;
import org.evenpour.report.table.TurnTables.LineEnd;
import org.evenpour.report.table.TurnTables.Source;
import org.evenpour.table.Table;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTDLbls;
import org.openxmlformats.schemas.drawingml.x2006.chart.STDLblPos;

/** The whole wheel turn by turn, one picture for each characteristic. */
final class WheelPictures {
  private static final double ROOM_FOR_WORDS = 0.14;

  private WheelPictures() {}

  static void write(Paper paper, Printer printer, List<Source> sources) {
    Table<LineEnd> lines = TurnTables.lines(sources, paper.sentences());
    SXSSFSheet sheet = paper.book().createSheet(lines.name());
    Printed<LineEnd> beside = printer.beside(sheet, Picture.BESIDE, lines);
    XSSFSheet behind = paper.book().getXSSFWorkbook().getSheet(sheet.getSheetName());
    for (int number = 0; number < sources.size(); number++) {
      Source source = sources.get(number);
      draw(paper, behind, beside, source, printer.printed(source.table()), number, sources.size());
    }
    Picture.finish(paper, sheet, sources.size());
  }

  private static void draw(
      Paper paper,
      XSSFSheet sheet,
      Printed<LineEnd> beside,
      Source source,
      Printed<?> turns,
      int number,
      int of) {
    CharacteristicReport characteristic = source.characteristic();
    Unit unit = paper.unit(characteristic);
    List<TurnPoint> present = new ArrayList<>();
    for (TurnPoint point : source.points()) {
      if (point != null) {
        present.add(point);
      }
    }
    String name = paper.words().characteristic(characteristic.name());
    XSSFChart chart =
        Picture.on(
            sheet,
            number,
            of,
            paper.say(
                "chart.limits",
                paper.sentences().nameWheels()
                    ? paper.say("chart.wheel.named", characteristic.wheel(), name)
                    : paper.say("chart.wheel", Words.capital(name)),
                LimitsTable.whose(characteristic, paper.sentences())));
    XDDFValueAxis bottom = chart.createValueAxis(AxisPosition.BOTTOM);
    bottom.setTitle(paper.say("chart.turn"));
    XDDFValueAxis left = chart.createValueAxis(AxisPosition.LEFT);
    left.setTitle(paper.say("chart.axis", name, unit.symbol()));
    Picture.quiet(bottom);
    Picture.quiet(left);
    left.getOrAddMajorGridProperties().setLineProperties(Picture.line(Picture.HAIRLINE, 0.5, null));
    Picture.format(chart, bottom, "0");
    double first = present.get(0).turn();
    double last = present.get(present.size() - 1).turn();
    Scale across = Scale.over(first, last);
    bottom.setMinimum(Math.max(across.from(), first - across.step()));
    bottom.setMaximum(last + Math.max(1, (last - first) * ROOM_FOR_WORDS));
    bottom.setMajorUnit(across.step());
    Scale values = scale(unit, source.chart(), present);
    Picture.scale(left, values);
    Picture.format(chart, left, values.format());
    XDDFScatterChartData data =
        (XDDFScatterChartData) chart.createData(ChartTypes.SCATTER, bottom, left);
    data.setStyle(ScatterStyle.LINE_MARKER);
    data.setVaryColors(false);
    limits(paper, beside, source, 2 * number, data);
    points(paper, source, turns, data);
    Picture.plot(data);
    Picture.speak(chart, paper.say("language"));
  }

  private static Scale scale(Unit unit, WheelChart chart, List<TurnPoint> points) {
    double low = chart.lowerLimit();
    double high = chart.upperLimit();
    for (TurnPoint point : points) {
      low = Math.min(low, point.value());
      high = Math.max(high, point.value());
    }
    return Scale.over(unit.fromCanonical(low), unit.fromCanonical(high));
  }

  private static void limits(
      Paper paper, Printed<LineEnd> beside, Source source, int row, XDDFScatterChartData data) {
    Figures figures = new Figures(paper.unit(source.characteristic()));
    WheelChart chart = source.chart();
    limit(
        beside,
        data,
        row,
        "center",
        paper.say("chart.center", text(figures, chart.center())),
        Picture.line(Picture.INK, 0.75, null));
    limit(
        beside,
        data,
        row,
        "lower_limit",
        paper.say("chart.lower", text(figures, chart.lowerLimit())),
        Picture.line(Picture.INK, 0.75, PresetLineDash.DASH));
    limit(
        beside,
        data,
        row,
        "upper_limit",
        paper.say("chart.upper", text(figures, chart.upperLimit())),
        Picture.line(Picture.INK, 0.75, PresetLineDash.DASH));
  }

  private static String text(Figures figures, double limit) {
    return Digits.number(figures.unit().fromCanonical(limit), figures.decimals() + 1);
  }

  /** A line from the first turn to the last, and its name where it ends. */
  private static void limit(
      Printed<LineEnd> beside,
      XDDFScatterChartData data,
      int row,
      String column,
      String name,
      XDDFLineProperties line) {
    XDDFScatterChartData.Series series =
        series(
            data,
            beside.numbers("turn", row, row + 2),
            beside.numbers(column, row, row + 2),
            name,
            MarkerStyle.NONE);
    series.setLineProperties(line);
    XDDFScatterChartData.Series end =
        series(
            data,
            beside.numbers("turn", row + 1, row + 2),
            beside.numbers(column, row + 1, row + 2),
            name,
            MarkerStyle.NONE);
    end.setLineProperties(Picture.noLine());
    CTDLbls labels = end.getCTScatterSer().addNewDLbls();
    labels.addNewDLblPos().setVal(STDLblPos.R);
    labels.addNewShowLegendKey().setVal(false);
    labels.addNewShowVal().setVal(false);
    labels.addNewShowCatName().setVal(false);
    labels.addNewShowSerName().setVal(true);
    labels.addNewShowPercent().setVal(false);
    labels.addNewShowBubbleSize().setVal(false);
  }

  private static void points(
      Paper paper, Source source, Printed<?> turns, XDDFScatterChartData data) {
    String name = paper.words().characteristic(source.characteristic().name());
    XDDFScatterChartData.Series charted = column(source, turns, data, "", name, MarkerStyle.CIRCLE);
    charted.setLineProperties(Picture.line(Picture.QUIET, 1, null));
    mark(charted, 3, Picture.QUIET);
    XDDFScatterChartData.Series startUp =
        column(source, turns, data, "_start_up", paper.say("head.turn_start_up"), MarkerStyle.X);
    startUp.setLineProperties(Picture.noLine());
    mark(startUp, 5, Picture.QUIET);
    XDDFScatterChartData.Series beyond =
        column(source, turns, data, "_beyond", paper.say("head.turn_beyond"), MarkerStyle.DIAMOND);
    beyond.setLineProperties(Picture.noLine());
    mark(beyond, 8, Picture.HIGH);
  }

  private static XDDFScatterChartData.Series column(
      Source source,
      Printed<?> turns,
      XDDFScatterChartData data,
      String which,
      String name,
      MarkerStyle marker) {
    int to = source.from() + source.points().size();
    return series(
        data,
        turns.numbers(source.turn(), source.from(), to),
        turns.numbers(source.value() + which, source.from(), to),
        name,
        marker);
  }

  private static XDDFScatterChartData.Series series(
      XDDFScatterChartData data,
      XDDFNumericalDataSource<Double> across,
      XDDFNumericalDataSource<Double> up,
      String name,
      MarkerStyle marker) {
    XDDFScatterChartData.Series series = (XDDFScatterChartData.Series) data.addSeries(across, up);
    series.setTitle(name, null);
    series.setSmooth(false);
    series.setMarkerStyle(marker);
    return series;
  }

  private static void mark(XDDFScatterChartData.Series series, int size, XDDFColor color) {
    Picture.mark(series.getCTScatterSer().getMarker(), size, color);
  }
}
