package org.evenpour.report.workbook;

import java.util.ArrayList;
import java.util.List;
import javax.xml.namespace.QName;
import org.apache.poi.xddf.usermodel.PresetLineDash;
import org.apache.poi.xddf.usermodel.XDDFColor;
import org.apache.poi.xddf.usermodel.XDDFLineProperties;
import org.apache.poi.xddf.usermodel.XDDFNoFillProperties;
import org.apache.poi.xddf.usermodel.XDDFPresetLineDash;
import org.apache.poi.xddf.usermodel.XDDFShapeProperties;
import org.apache.poi.xddf.usermodel.XDDFSolidFillProperties;
import org.apache.poi.xddf.usermodel.chart.AxisCrosses;
import org.apache.poi.xddf.usermodel.chart.AxisTickLabelPosition;
import org.apache.poi.xddf.usermodel.chart.AxisTickMark;
import org.apache.poi.xddf.usermodel.chart.DisplayBlanks;
import org.apache.poi.xddf.usermodel.chart.XDDFChartAxis;
import org.apache.poi.xddf.usermodel.chart.XDDFChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.xmlbeans.XmlCursor;
import org.jspecify.annotations.Nullable;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTCatAx;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTMarker;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTMarkerSize;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTPlotArea;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTTitle;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTValAx;
import org.openxmlformats.schemas.drawingml.x2006.main.CTRegularTextRun;
import org.openxmlformats.schemas.drawingml.x2006.main.CTTextBody;
import org.openxmlformats.schemas.drawingml.x2006.main.CTTextParagraph;

/**
 * How pictures in the workbook are drawn: quiet lines on white, colour only for what departs, from
 * the palette that Okabe and Ito published for every kind of colour vision.
 */
final class Picture {

  /** Index of the first column of the figures that a picture is drawn from. */
  static final int BESIDE = 16;

  /** How many columns of the sheet a picture covers. */
  static final int COLUMNS = 15;

  /** Letters to each of these columns. */
  private static final int WIDTH = 9;

  /** So many pictures share a printed page, one over the other on the same turns. */
  private static final int FEW = 3;

  /** The same where there are more: lower ones. */
  private static final int MANY = 4;

  static final int ROWS = 21;
  private static final int LOW_ROWS = 16;

  /** Text of pictures, in hundredths of a point: as large as that of cells. */
  private static final int TEXT = 1100;

  static final XDDFColor INK = rgb(0x33, 0x33, 0x33);
  static final XDDFColor QUIET = rgb(0x8c, 0x8c, 0x8c);
  static final XDDFColor HAIRLINE = rgb(0xe3, 0xe3, 0xe3);

  /** Okabe–Ito vermillion: heavy, thick. */
  static final XDDFColor HIGH = rgb(0xd5, 0x5e, 0x00);

  /** Okabe–Ito blue: light, thin. */
  static final XDDFColor LOW = rgb(0x00, 0x72, 0xb2);

  private Picture() {}

  private static XDDFColor rgb(int red, int green, int blue) {
    return XDDFColor.from(new byte[] {(byte) red, (byte) green, (byte) blue});
  }

  /**
   * An empty picture on a sheet.
   *
   * @param number from 0, from the top
   * @param of how many there are
   */
  static XSSFChart on(XSSFSheet sheet, int number, int of, String title) {
    int rows = rows(of);
    return over(sheet, number * rows, number * rows + rows - 1, COLUMNS, title);
  }

  /** The same over these rows and the first columns. */
  static XSSFChart over(XSSFSheet sheet, int firstRow, int toRow, int columns, String title) {
    XSSFDrawing drawing = sheet.createDrawingPatriarch();
    XSSFClientAnchor anchor = drawing.createAnchor(0, 0, 0, 0, 0, firstRow, columns, toRow);
    XSSFChart chart = drawing.createChart(anchor);
    chart.setTitleText(title);
    // For those who hear a sheet read out: what the picture shows, whose figures stand in cells.
    chart
        .getGraphicFrame()
        .getCTGraphicalObjectFrame()
        .getNvGraphicFramePr()
        .getCNvPr()
        .setDescr(Texts.cell(title));
    chart.setTitleOverlay(false);
    chart.getFormattedTitle().getParagraph(0).getTextRuns().forEach(run -> run.setFontSize(13.0));
    CTTextBody text = chart.getCTChartSpace().addNewTxPr();
    text.addNewBodyPr();
    text.addNewP().addNewPPr().addNewDefRPr().setSz(TEXT);
    chart.getCTChartSpace().addNewRoundedCorners().setVal(false);
    // A filter on the table must not empty the picture.
    chart.setPlotOnlyVisibleCells(false);
    chart.displayBlanksAs(DisplayBlanks.GAP);
    return chart;
  }

  /** Names the language of titles; left alone they would carry the machine's, not their own. */
  static void speak(XSSFChart chart, String language) {
    CTPlotArea area = chart.getCTChart().getPlotArea();
    List<CTTitle> titles = new ArrayList<>(List.of(chart.getCTChart().getTitle()));
    for (CTValAx axis : area.getValAxArray()) {
      titles.add(axis.getTitle());
    }
    for (CTCatAx axis : area.getCatAxArray()) {
      titles.add(axis.getTitle());
    }
    for (CTTitle title : titles) {
      for (CTTextParagraph paragraph : title.getTx().getRich().getPArray()) {
        for (CTRegularTextRun run : paragraph.getRArray()) {
          run.getRPr().setLang(language);
          if (!run.getRPr().isSetSz()) {
            run.getRPr().setSz(TEXT);
          }
        }
      }
    }
  }

  /**
   * Draws the series. Not by the chart itself, which would also write all its points into a
   * workbook of its own, as a picture on a slide has one; ours are in the cells that it names.
   */
  static void plot(XDDFChartData data) {
    for (int i = 0; i < data.getSeriesCount(); i++) {
      data.getSeries(i).plot();
    }
  }

  /** An axis as a hairline with its ticks, at the picture's edge. */
  static void quiet(XDDFChartAxis axis) {
    axis.setCrosses(AxisCrosses.MIN);
    axis.setTickLabelPosition(AxisTickLabelPosition.LOW);
    axis.setMajorTickMark(AxisTickMark.OUT);
    axis.setMinorTickMark(AxisTickMark.NONE);
    axis.setVisible(true);
    axis.getOrAddShapeProperties().setLineProperties(line(QUIET, 0.75, null));
  }

  static void scale(XDDFChartAxis axis, Scale scale) {
    axis.setMinimum(scale.from());
    axis.setMaximum(scale.to());
    axis.setMajorUnit(scale.step());
  }

  /** Numbers on the upright axis with the decimals of its steps, whatever the cells show. */
  static void format(XSSFChart chart, XDDFValueAxis axis, String format) {
    axis.setNumberFormat(format);
    for (CTValAx drawn : chart.getCTChart().getPlotArea().getValAxArray()) {
      if (drawn.getAxId().getVal() == axis.getId()) {
        drawn.getNumFmt().setSourceLinked(false);
      }
    }
  }

  static XDDFLineProperties line(
      XDDFColor color, double widthPoints, @Nullable PresetLineDash dash) {
    XDDFLineProperties line = new XDDFLineProperties(new XDDFSolidFillProperties(color));
    line.setWidth(widthPoints);
    if (dash != null) {
      line.setPresetDash(new XDDFPresetLineDash(dash));
    }
    return line;
  }

  /** No line at all, which is not the same as none given. */
  static XDDFLineProperties noLine() {
    return new XDDFLineProperties(new XDDFNoFillProperties());
  }

  /** A marker's filling and outline. */
  private static XDDFShapeProperties filled(XDDFColor color) {
    XDDFShapeProperties shape = new XDDFShapeProperties();
    shape.setFillProperties(new XDDFSolidFillProperties(color));
    shape.setLineProperties(line(color, 0.75, null));
    return shape;
  }

  /** A marker of this size and colour; its shape was set before. */
  static void mark(CTMarker marker, int sizePoints, XDDFColor color) {
    CTMarkerSize size = marker.isSetSize() ? marker.getSize() : marker.addNewSize();
    // By its text, for the small schema library that comes with POI has no type for it.
    try (XmlCursor cursor = size.newCursor()) {
      cursor.setAttributeText(new QName("val"), Integer.toString(sizePoints));
    }
    marker.setSpPr(filled(color).getXmlObject());
  }

  /** How many rows each of so many pictures covers, with the gap to the next. */
  static int rows(int pictures) {
    return pictures <= FEW ? ROWS : LOW_ROWS;
  }

  /** Prints so many pictures of a sheet without the figures beside them. */
  static void finish(Paper paper, SXSSFSheet sheet, int pictures) {
    Printer.forPaper(paper, sheet);
    sheet.getPrintSetup().setLandscape(false);
    for (int i = 0; i < COLUMNS; i++) {
      sheet.setColumnWidth(i, WIDTH * 256);
    }
    int rows = rows(pictures);
    sheet
        .getWorkbook()
        .setPrintArea(
            sheet.getWorkbook().getSheetIndex(sheet),
            0,
            COLUMNS - 1,
            0,
            Math.max(1, pictures) * rows - 1);
    int onAPage = pictures <= FEW ? FEW : MANY;
    for (int picture = onAPage; picture < pictures; picture += onAPage) {
      sheet.setRowBreak(picture * rows - 1);
    }
  }
}
