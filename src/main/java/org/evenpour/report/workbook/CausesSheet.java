package org.evenpour.report.workbook;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
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
import org.evenpour.audit.AuditReport.Signal;
import org.evenpour.audit.CausesReport;
import org.evenpour.audit.CausesReport.Counted;
import org.evenpour.casting.CauseMark;
import org.evenpour.casting.CauseMark.Kind;
import org.evenpour.casting.CauseMark.Verdict;
import org.jspecify.annotations.Nullable;

/** Which causes people confirmed, the most frequent first; and their columns in other sheets. */
final class CausesSheet {
  private static final int BESIDE = Picture.COLUMNS + 1;

  /** A choice: more columns than this cannot be told apart; the table beside has all. */
  private static final int MOST_COLUMNS = 16;

  private CausesSheet() {}

  /** Nothing where no mark is about a signal of this audit. */
  static void write(Paper paper) {
    CausesReport causes = paper.report().causes();
    if (causes.causes().isEmpty()) {
      return;
    }
    SXSSFSheet sheet = paper.book().createSheet(paper.say("sheet.causes"));
    Beside beside =
        new Beside(
            paper,
            sheet,
            BESIDE,
            List.of(
                paper.say("head.cause"),
                paper.say("head.kind"),
                paper.say("head.group"),
                paper.say("head.right"),
                paper.say("head.wrong"),
                paper.say("head.turns_lasted"),
                paper.say("head.share_right"),
                paper.say("head.cumulative")));
    sheet.setColumnWidth(BESIDE, 34 * 256);
    int row = beside.rowIndex();
    var whole = paper.styles().number(0);
    for (Counted one : causes.causes()) {
      beside
          .next()
          .text(name(paper, one.cause()))
          .text(kind(paper, one.cause()))
          .text(one.group())
          .number((double) one.right(), whole)
          .number((double) one.wrong(), whole)
          .number((double) one.turns(), whole)
          .number(one.share(), paper.styles().wholePercent())
          .number(one.cumulative(), paper.styles().wholePercent());
    }
    List<Counted> drawn =
        causes.causes().stream().filter(one -> one.right() > 0).limit(MOST_COLUMNS).toList();
    if (!drawn.isEmpty()) {
      draw(paper, sheet, beside, row, drawn);
    }
    beside.finish(1);
  }

  private static void draw(
      Paper paper, SXSSFSheet sheet, Beside beside, int row, List<Counted> drawn) {
    XSSFChart chart =
        Picture.on(
            paper.book().getXSSFWorkbook().getSheet(sheet.getSheetName()),
            0,
            paper.say("chart.causes"));
    XDDFCategoryAxis bottom = chart.createCategoryAxis(AxisPosition.BOTTOM);
    XDDFValueAxis left = chart.createValueAxis(AxisPosition.LEFT);
    Picture.quiet(bottom);
    Picture.quiet(left);
    bottom.setMajorTickMark(AxisTickMark.NONE);
    bottom.setTitle(paper.say("head.cause"));
    left.setTitle(paper.say("chart.causes.count"));
    left.setCrossBetween(AxisCrossBetween.BETWEEN);
    // Counts: from nothing, in whole steps.
    double step = Math.max(1, Scale.over(0, drawn.get(0).right()).step());
    left.setMinimum(0);
    left.setMaximum(Math.ceil(drawn.get(0).right() / step) * step);
    left.setMajorUnit(step);
    Picture.format(chart, left, "0");
    XDDFBarChartData data = (XDDFBarChartData) chart.createData(ChartTypes.BAR, bottom, left);
    data.setVaryColors(false);
    data.setBarDirection(BarDirection.COL);
    data.setGapWidth(40);
    String[] names =
        drawn.stream().map(one -> Texts.cell(name(paper, one.cause()))).toArray(String[]::new);
    @Nullable Double[] counts = new @Nullable Double[drawn.size()];
    for (int i = 0; i < counts.length; i++) {
      counts[i] = (double) drawn.get(i).right();
    }
    var series =
        data.addSeries(
            XDDFDataSourcesFactory.fromArray(names, beside.range(row, names.length, 0), 0),
            beside.numbers(row, 3, counts));
    series.setTitle(paper.say("head.right"), null);
    XDDFShapeProperties shape = new XDDFShapeProperties();
    shape.setFillProperties(new XDDFSolidFillProperties(Picture.INK));
    series.setShapeProperties(shape);
    chart.plot(data);
    Picture.speak(chart, paper.say("language"));
  }

  /** What people call a cause, with a capital; words are whole. */
  static String name(Paper paper, CauseMark.Cause cause) {
    return Beside.capital(
        cause.kind() == Kind.OTHER ? cause.name() : paper.sentences().cause(cause));
  }

  /** Setting, event or words. */
  static String kind(Paper paper, CauseMark.Cause cause) {
    return paper.say("kind." + cause.kind().name().toLowerCase(Locale.ROOT));
  }

  /** Whether signals and links carry what was said of them. */
  static boolean isMarked(Paper paper) {
    return !paper.report().causes().marks().isEmpty();
  }

  /** The causes of a signal that were marked right. */
  static String confirmed(Paper paper, Signal signal) {
    return paper.report().causes().of(signal).stream()
        .filter(one -> one.verdict() == Verdict.RIGHT)
        .map(one -> name(paper, one.cause()))
        .collect(Collectors.joining(", "));
  }

  /** The columns of {@link #said}. */
  static List<Column> columns(Paper paper) {
    return List.of(
        Column.words(paper.say("head.marked")),
        Column.words(paper.say("head.marked_by")),
        Column.words(paper.say("head.marked_why")),
        Column.figures(paper.zoned("head.marked_at")));
  }

  /** What was said; nothing where nothing was. */
  static void said(Paper paper, Table table, @Nullable CauseMark mark) {
    if (mark != null) {
      table
          .text(paper.say("mark.verdict." + mark.verdict().name().toLowerCase(Locale.ROOT)))
          .text(mark.who())
          .prose(mark.why(), 44)
          .date(mark.at());
    }
  }
}
