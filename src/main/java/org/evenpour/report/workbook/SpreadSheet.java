package org.evenpour.report.workbook;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
import org.evenpour.audit.AuditReport.CharacteristicReport;
import org.evenpour.audit.CapabilityInFull.Part;
import org.evenpour.audit.CapabilityInFull.Source;
import org.evenpour.audit.CapabilityInFull.WhatIf;
import org.evenpour.report.VerdictSentences;
import org.jspecify.annotations.Nullable;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTBarChart;

/** Where the spread comes from, one bar a characteristic, and what would be left without a part. */
final class SpreadSheet {
  private static final int BESIDE = Picture.COLUMNS + 1;
  private static final int FIRST_SHARE = 3;

  /** From dark to light, so that print without colour tells them apart. */
  private static final int[] GRAYS = {0x40, 0x78, 0xa8, 0xd4};

  private SpreadSheet() {}

  static void write(Paper paper) {
    List<CharacteristicReport> known =
        paper.report().characteristics().stream()
            .filter(one -> !one.inFull().parts().isEmpty())
            .toList();
    if (known.isEmpty()) {
      return;
    }
    picture(paper, known);
    whatIfs(paper, known);
  }

  private static void picture(Paper paper, List<CharacteristicReport> known) {
    SXSSFSheet sheet = paper.book().createSheet(paper.say("sheet.spread"));
    List<String> headings =
        new ArrayList<>(
            List.of(
                paper.say("head.wheel"), paper.say("head.characteristic"), paper.say("head.unit")));
    for (Source source : Source.values()) {
      headings.add(name(paper, source));
    }
    for (Source source : Source.values()) {
      headings.add(paper.say("head.sd_of", name(paper, source)));
    }
    Beside beside = new Beside(paper, sheet, BESIDE, headings);
    int row = beside.rowIndex();
    for (CharacteristicReport one : known) {
      var unit = paper.unit(one);
      beside
          .next()
          .text(one.wheel())
          .text(Beside.capital(paper.words().characteristic(one.name())))
          .text(unit.symbol());
      for (Source source : Source.values()) {
        beside.number(share(one, source), paper.styles().share());
      }
      for (Source source : Source.values()) {
        Part part = part(one, source);
        beside.number(
            part == null ? null : Paper.difference(unit, part.sd()),
            paper.styles().number(paper.decimals(one) + 1));
      }
    }
    XSSFChart chart =
        Picture.on(
            paper.book().getXSSFWorkbook().getSheet(sheet.getSheetName()),
            0,
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
    String[] names = known.stream().map(one -> label(paper, one)).toArray(String[]::new);
    for (Source source : Source.values()) {
      @Nullable Double[] shares = new @Nullable Double[known.size()];
      for (int i = 0; i < shares.length; i++) {
        shares[i] = share(known.get(i), source);
      }
      var series =
          data.addSeries(
              XDDFDataSourcesFactory.fromArray(names, beside.range(row, names.length, 1), 1),
              beside.numbers(row, FIRST_SHARE + source.ordinal(), shares));
      series.setTitle(name(paper, source), null);
      series.setShapeProperties(gray(GRAYS[source.ordinal()]));
    }
    chart.plot(data);
    stack(chart.getCTChart().getPlotArea().getBarChartArray(0));
    XDDFChartLegend legend = chart.getOrAddLegend();
    legend.setPosition(LegendPosition.TOP);
    Picture.speak(chart, paper.say("language"));
    beside.finish(1);
  }

  /** By its text, for the small schema library that comes with POI has no type for it. */
  private static void stack(CTBarChart bars) {
    try (XmlCursor cursor = bars.addNewOverlap().newCursor()) {
      cursor.setAttributeText(new QName("val"), "100");
    }
  }

  private static String label(Paper paper, CharacteristicReport one) {
    String name = Beside.capital(paper.words().characteristic(one.name()));
    return Texts.cell(paper.sentences().nameWheels() ? one.wheel() + ": " + name : name);
  }

  private static XDDFShapeProperties gray(int level) {
    XDDFShapeProperties shape = new XDDFShapeProperties();
    byte each = (byte) level;
    shape.setFillProperties(
        new XDDFSolidFillProperties(XDDFColor.from(new byte[] {each, each, each})));
    return shape;
  }

  private static @Nullable Part part(CharacteristicReport one, Source source) {
    return one.inFull().parts().stream()
        .filter(part -> part.source() == source)
        .findFirst()
        .orElse(null);
  }

  private static @Nullable Double share(CharacteristicReport one, Source source) {
    Part part = part(one, source);
    return part == null ? null : (Double) part.share();
  }

  private static String name(Paper paper, Source source) {
    return Beside.capital(paper.say("source." + source.name().toLowerCase(Locale.ROOT)));
  }

  private static void whatIfs(Paper paper, List<CharacteristicReport> known) {
    if (known.stream().allMatch(one -> one.inFull().whatIfs().isEmpty())) {
      return;
    }
    Table table =
        new Table(
            paper,
            paper.say("sheet.what_if"),
            List.of(
                Column.words(paper.say("head.wheel")),
                Column.words(paper.say("head.characteristic")),
                Column.words(paper.say("head.unit")),
                Column.words(paper.say("head.without")),
                Column.figures(paper.say("head.mean")),
                Column.figures(paper.say("head.sd")),
                Column.figures(paper.say("head.ppk")),
                Column.figures(paper.say("head.ppk_now")),
                Column.figures(paper.say("head.expected_outside")),
                Column.words(paper.say("head.words"))));
    var said = new VerdictSentences(paper.report(), paper.sentences());
    for (CharacteristicReport one : known) {
      var unit = paper.unit(one);
      var digits = paper.styles().number(paper.decimals(one) + 1);
      for (WhatIf each : one.inFull().whatIfs()) {
        table
            .next()
            .text(one.wheel())
            .text(paper.words().characteristic(one.name()))
            .text(unit.symbol())
            .text(name(paper, each.without()))
            .number(unit.fromCanonical(each.mean()), digits)
            .number(unit.differenceFromCanonical(each.sd()), digits)
            .number(each.ppk(), paper.styles().number(2))
            .number(each.ppkNow(), paper.styles().number(2))
            .number(each.fractionOutside(), paper.styles().share())
            .prose(said.whatIf(one, each));
      }
    }
    table.finish();
  }
}
