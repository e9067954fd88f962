package org.evenpour.report.workbook;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
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
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.AuditReport.TurnPoint;
import org.evenpour.audit.AuditReport.WheelChart;
import org.evenpour.casting.Unit;
import org.evenpour.report.Figures;
import org.evenpour.report.workbook.TurnsSheet.Source;
import org.jspecify.annotations.Nullable;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTDLbls;
import org.openxmlformats.schemas.drawingml.x2006.chart.STDLblPos;

/** The whole wheel turn by turn, one picture for each characteristic. */
final class WheelPictures {
  private static final int BESIDE = Picture.COLUMNS + 1;
  private static final double ROOM_FOR_WORDS = 0.14;

  private WheelPictures() {}

  static void write(Paper paper, List<Source> sources) {
    SXSSFSheet sheet = paper.book().createSheet(paper.say("sheet.wheel"));
    Beside beside =
        new Beside(
            paper,
            sheet,
            BESIDE,
            List.of(
                paper.say("head.wheel"),
                paper.say("head.characteristic"),
                paper.say("head.unit"),
                paper.say("head.turn"),
                paper.say("head.center"),
                paper.say("head.lower_limit"),
                paper.say("head.upper_limit")));
    XSSFSheet behind = paper.book().getXSSFWorkbook().getSheet(sheet.getSheetName());
    for (int number = 0; number < sources.size(); number++) {
      draw(paper, behind, beside, sources.get(number), number);
    }
    beside.finish(sources.size());
  }

  private static void draw(Paper paper, XSSFSheet sheet, Beside beside, Source source, int number) {
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
            paper.sentences().nameWheels()
                ? paper.say("chart.wheel.named", characteristic.wheel(), name)
                : paper.say("chart.wheel", Beside.capital(name)));
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
    Scale turns = Scale.over(first, last);
    bottom.setMinimum(Math.max(turns.from(), first - turns.step()));
    bottom.setMaximum(last + Math.max(1, (last - first) * ROOM_FOR_WORDS));
    bottom.setMajorUnit(turns.step());
    Scale values = scale(unit, source.chart(), present);
    Picture.scale(left, values);
    Picture.format(chart, left, values.format());
    XDDFScatterChartData data =
        (XDDFScatterChartData) chart.createData(ChartTypes.SCATTER, bottom, left);
    data.setStyle(ScatterStyle.LINE_MARKER);
    data.setVaryColors(false);
    limits(paper, beside, source, unit, data, first, last);
    points(paper, source, unit, data);
    chart.plot(data);
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
      Paper paper,
      Beside beside,
      Source source,
      Unit unit,
      XDDFScatterChartData data,
      double first,
      double last) {
    CharacteristicReport characteristic = source.characteristic();
    Figures figures = new Figures(unit);
    WheelChart chart = source.chart();
    int row = beside.rowIndex();
    for (double turn : new double[] {first, last}) {
      beside
          .next()
          .text(characteristic.wheel())
          .text(paper.words().characteristic(characteristic.name()))
          .text(unit.symbol())
          .number(turn, paper.styles().number(0));
      for (double limit : new double[] {chart.center(), chart.lowerLimit(), chart.upperLimit()}) {
        beside.number(unit.fromCanonical(limit), paper.styles().number(figures.decimals() + 1));
      }
    }
    limit(
        beside,
        data,
        row,
        4,
        first,
        last,
        unit.fromCanonical(chart.center()),
        paper.say("chart.center", text(figures, chart.center())),
        Picture.line(Picture.INK, 0.75, null));
    limit(
        beside,
        data,
        row,
        5,
        first,
        last,
        unit.fromCanonical(chart.lowerLimit()),
        paper.say("chart.lower", text(figures, chart.lowerLimit())),
        Picture.line(Picture.INK, 0.75, PresetLineDash.DASH));
    limit(
        beside,
        data,
        row,
        6,
        first,
        last,
        unit.fromCanonical(chart.upperLimit()),
        paper.say("chart.upper", text(figures, chart.upperLimit())),
        Picture.line(Picture.INK, 0.75, PresetLineDash.DASH));
  }

  private static String text(Figures figures, double limit) {
    return Figures.number(figures.unit().fromCanonical(limit), figures.decimals() + 1);
  }

  /** A line from the first turn to the last, and its name where it ends. */
  private static void limit(
      Beside beside,
      XDDFScatterChartData data,
      int row,
      int column,
      double first,
      double last,
      double value,
      String name,
      XDDFLineProperties line) {
    XDDFScatterChartData.Series series =
        series(
            data,
            beside.numbers(row, 3, new Double[] {first, last}),
            beside.numbers(row, column, new Double[] {value, value}),
            name,
            MarkerStyle.NONE);
    series.setLineProperties(line);
    XDDFScatterChartData.Series end =
        series(
            data,
            beside.numbers(row + 1, 3, new Double[] {last}),
            beside.numbers(row + 1, column, new Double[] {value}),
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

  private static void points(Paper paper, Source source, Unit unit, XDDFScatterChartData data) {
    WheelChart chart = source.chart();
    String name = paper.words().characteristic(source.characteristic().name());
    XDDFNumericalDataSource<Double> turns =
        Picture.numbers(
            source.sheet(),
            source.firstRow(),
            source.turnColumn(),
            values(source, point -> (double) point.turn()));
    Function<TurnPoint, @Nullable Double> shown = point -> unit.fromCanonical(point.value());
    XDDFScatterChartData.Series charted =
        column(
            source,
            data,
            turns,
            0,
            name,
            MarkerStyle.CIRCLE,
            point -> point.startUp() ? null : shown.apply(point));
    charted.setLineProperties(Picture.line(Picture.QUIET, 1, null));
    mark(charted, 3, Picture.QUIET);
    XDDFScatterChartData.Series startUp =
        column(
            source,
            data,
            turns,
            1,
            paper.say("head.turn_start_up"),
            MarkerStyle.X,
            point -> point.startUp() ? shown.apply(point) : null);
    startUp.setLineProperties(Picture.noLine());
    mark(startUp, 5, Picture.QUIET);
    XDDFScatterChartData.Series beyond =
        column(
            source,
            data,
            turns,
            2,
            paper.say("head.turn_beyond"),
            MarkerStyle.DIAMOND,
            point -> TurnsSheet.isBeyond(chart, point) ? shown.apply(point) : null);
    beyond.setLineProperties(Picture.noLine());
    mark(beyond, 8, Picture.HIGH);
  }

  private static XDDFScatterChartData.Series column(
      Source source,
      XDDFScatterChartData data,
      XDDFNumericalDataSource<Double> turns,
      int offset,
      String name,
      MarkerStyle marker,
      Function<TurnPoint, @Nullable Double> value) {
    return series(
        data,
        turns,
        Picture.numbers(
            source.sheet(),
            source.firstRow(),
            source.valueColumn() + offset,
            values(source, value)),
        name,
        marker);
  }

  private static @Nullable Double[] values(
      Source source, Function<TurnPoint, @Nullable Double> value) {
    @Nullable Double[] values = new @Nullable Double[source.points().size()];
    for (int i = 0; i < values.length; i++) {
      TurnPoint point = source.points().get(i);
      values[i] = point == null ? null : value.apply(point);
    }
    return values;
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
