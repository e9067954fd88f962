package org.evenpour.view.model;

import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import org.evenpour.casting.Characteristic;
import org.evenpour.casting.Setting;
import org.evenpour.column.DoubleColumn;
import org.evenpour.column.IntColumn;
import org.evenpour.findings.AuditReport.CharacteristicReport;
import org.evenpour.findings.AuditReport.Effect;
import org.evenpour.picture.Points;
import org.evenpour.picture.ScatterPicture;
import org.evenpour.picture.SeriesPicture.Axis;
import org.evenpour.report.Figures;
import org.evenpour.words.Digits;
import org.evenpour.words.Words;
import org.jspecify.annotations.Nullable;

/** A setting against a characteristic, of the anodes of the chosen turns and mold. */
public final class ScatterView {
  private ScatterView() {}

  /**
   * The scatter; null where the setting is no number or nothing is known of both.
   *
   * <p>A setting that acts later stands at the anode that it acts on: the same mold's, so many
   * turns on.
   *
   * @param row the setting with its effect, which the line shows
   */
  public static @Nullable ScatterPicture of(
      Desk desk, SettingRows.Row row, CharacteristicReport report) {
    WheelRows wheel = desk.wheel();
    Setting setting =
        wheel.record().settings().stream()
            .filter(one -> one.name().equals(row.report().name()))
            .findFirst()
            .orElse(null);
    Characteristic characteristic = wheel.characteristic(report.name());
    DoubleColumn numbers = setting == null ? null : setting.numbers();
    if (setting == null || numbers == null || characteristic == null) {
      return null;
    }
    Dots dots = new Dots(wheel.record().rows());
    String mold = desk.selection().mold();
    Figures figures = desk.figures(report);
    for (String one : wheel.record().molds().names()) {
      if (mold == null || mold.equals(one)) {
        int lag = setting.profile().lagTurns();
        dots.add(desk, wheel.rows(one), lag, numbers, characteristic.values(), figures);
      }
    }
    return dots.size == 0 ? null : dots.picture(desk, row, report, setting, characteristic);
  }

  /** Collects the dots. Owned by one call. */
  private static final class Dots {
    private final double[] x;
    private final double[] y;
    private final int[] rowOf;
    private int size;

    Dots(int most) {
      x = new double[most];
      y = new double[most];
      rowOf = new int[most];
    }

    void add(
        Desk desk,
        int[] rows,
        int lag,
        DoubleColumn setting,
        DoubleColumn values,
        Figures figures) {
      Stretch turns = desk.turns();
      WheelRows wheel = desk.wheel();
      IntColumn turn = wheel.record().turn();
      for (int i = 0, then = 0; i < rows.length; i++) {
        while (then < i && turn.get(rows[then]) < turn.get(rows[i]) - lag) {
          then++;
        }
        boolean isPair = turn.get(rows[then]) == turn.get(rows[i]) - lag;
        double moved = isPair ? setting.get(lag == 0 ? rows[i] : rows[then]) : Double.NaN;
        double value = values.get(rows[i]);
        if (!Double.isNaN(moved) && !Double.isNaN(value) && turns.holds(wheel.at()[rows[i]])) {
          x[size] = moved;
          rowOf[size] = rows[i];
          y[size++] = figures.unit().fromCanonical(value);
        }
      }
    }

    ScatterPicture picture(
        Desk desk,
        SettingRows.Row row,
        CharacteristicReport report,
        Setting setting,
        Characteristic of) {
      Figures figures = desk.figures(report);
      double[] moved = Arrays.copyOf(x, size);
      int[] rows = Arrays.copyOf(rowOf, size);
      Points dots =
          new Points(moved, Arrays.copyOf(y, size), new int[0])
              .saying(
                  Charts.anodes(
                      desk,
                      rows,
                      i ->
                          EvidenceView.written(setting, moved[i])
                              + ", "
                              + figures.value(of.values().get(rows[i]))));
      DoubleSummaryStatistics across = Arrays.stream(moved).summaryStatistics();
      double low = across.getMin();
      double high = across.getMax();
      double air = high > low ? (high - low) * 0.04 : 1;
      String symbol = setting.unit().symbol();
      String name = Words.capital(desk.sentences().setting(setting.name()));
      return new ScatterPicture(
          dots,
          new Axis(symbol.isEmpty() ? name : name + ", " + symbol, low - air, high + air),
          Charts.scale(desk, report),
          slope(across, dots, figures, row.effect(), symbol),
          desk.look().say("settings.scatter.tip"));
    }
  }

  private static ScatterPicture.@Nullable Slope slope(
      DoubleSummaryStatistics across,
      Points dots,
      Figures figures,
      @Nullable Effect effect,
      String symbol) {
    Double low = effect == null ? null : effect.low();
    Double middle = effect == null ? null : effect.perUnit();
    Double high = effect == null ? null : effect.high();
    if (low == null || middle == null || high == null) {
      return null;
    }
    double shown = figures.unit().differenceFromCanonical(middle);
    String unit = figures.unit().symbol();
    String number = (shown > 0 ? "+" : "") + Digits.number(shown, Digits.two(shown));
    return new ScatterPicture.Slope(
        across.getAverage(),
        Arrays.stream(dots.y()).average().orElse(0),
        figures.unit().differenceFromCanonical(low),
        shown,
        figures.unit().differenceFromCanonical(high),
        number + (unit.isEmpty() ? "" : " " + unit) + (symbol.isEmpty() ? "" : " / " + symbol));
  }
}
