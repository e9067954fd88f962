package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class TwoWayTest {

  /** Davies and Goldsmith's penicillin; REML as published with lme4: sd 0.8467, 1.9316, 0.5499. */
  @Test
  void agreesWithThePenicillin() {
    TwoWay fit = penicillin(i -> true);
    assertThat(Math.sqrt(fit.componentRows())).isCloseTo(0.8467, within(0.00005));
    assertThat(Math.sqrt(fit.componentColumns())).isCloseTo(1.9316, within(0.00005));
    assertThat(Math.sqrt(fit.componentResidual())).isCloseTo(0.5499, within(0.00005));
    // closed form of the balanced table, computed independently
    assertThat(fit.componentRows()).isCloseTo(0.71690821, within(5e-9));
    assertThat(fit.componentColumns()).isCloseTo(3.73091787, within(5e-9));
    assertThat(fit.componentResidual()).isCloseTo(0.30241546, within(5e-9));
    assertThat(fit.ssRows() / 23).isCloseTo(4.60386473, within(5e-9));
    assertThat(fit.ssColumns() / 5).isCloseTo(89.84444444, within(5e-9));
    assertThat(fit.residualDf()).isEqualTo(23L * 5);
    assertThat(fit.count()).isEqualTo(144);
  }

  /** With holes: against dense least squares of the same model, computed with NumPy. */
  @Test
  void agreesWithDenseLeastSquaresWhereCellsAreEmpty() {
    TwoWay fit = penicillin(i -> i % 7 != 3 && i % 11 != 5);
    assertThat(fit.count()).isEqualTo(112);
    assertThat(fit.residualDf()).isEqualTo(83);
    assertThat(fit.ssResidual()).isCloseTo(22.98929916613438, within(1e-11));
    assertThat(fit.ssRows()).isCloseTo(87.71107923083844, within(1e-10));
    assertThat(fit.ssColumns()).isCloseTo(324.29403416719896, within(1e-10));
    assertThat(fit.center()).isCloseTo(22.993919841349104, within(1e-12));
    assertThat(fit.columnEffects())
        .containsExactly(
            new double[] {
              2.241187664176536,
              -1.0958832953766056,
              1.9485031275998814,
              0.0025558317869034397,
              -0.12835565633251633,
              -2.9680076718541795
            },
            within(1e-12));
    assertThat(Arrays.copyOf(fit.rowEffects(), 3))
        .containsExactly(
            new double[] {1.0147171986340675, 0.9804090273843569, -0.01801067339581497},
            within(1e-12));
    assertThat(fit.rawComponentRows()).isCloseTo(0.7673636843985565, within(1e-12));
    assertThat(fit.rawComponentColumns()).isCloseTo(3.6694220071258, within(1e-12));
  }

  private static TwoWay penicillin(IntPredicate kept) {
    List<Reference.Row> all = Reference.rows("penicillin.csv");
    List<Reference.Row> rows =
        IntStream.range(0, all.size()).filter(kept).mapToObj(all::get).toList();
    int[] plate = rows.stream().mapToInt(r -> r.text("plate").charAt(0) - 'a').toArray();
    int[] sample = rows.stream().mapToInt(r -> r.text("sample").charAt(0) - 'A').toArray();
    double[] x = rows.stream().mapToDouble(r -> r.number("diameter")).toArray();
    return TwoWay.fit(plate, sample, x, x.length);
  }

  /**
   * Davies and Goldsmith's pastes, nested, by two one-way steps; REML as published with lme4: sd
   * 2.9041 (cask), 1.2874 (batch), 0.8234.
   */
  @Test
  void nestedComponentsFollowFromOneWaySteps() {
    OneWayAnova byCask = new OneWayAnova(30);
    OneWayAnova byBatch = new OneWayAnova(10);
    for (Reference.Row row : Reference.rows("pastes.csv")) {
      int batch = row.text("batch").charAt(0) - 'A';
      int cask = row.text("cask").charAt(2) - 'a';
      byCask.add(3 * batch + cask, row.number("strength"));
      byBatch.add(batch, row.number("strength"));
    }
    OneWayAnova.Result cask = byCask.result();
    OneWayAnova.Result batch = byBatch.result();
    double msResidual = cask.ssWithin() / 30;
    double msCask = (cask.ssBetween() - batch.ssBetween()) / 20;
    double msBatch = batch.ssBetween() / 9;
    assertThat(msBatch).isCloseTo(27.48918519, within(5e-9));
    assertThat(msCask).isCloseTo(17.54533333, within(5e-9));
    assertThat(Math.sqrt(msResidual)).isCloseTo(0.8234, within(0.00005));
    assertThat(Math.sqrt((msCask - msResidual) / 2)).isCloseTo(2.9041, within(0.00005));
    assertThat(Math.sqrt((msBatch - msCask) / 6)).isCloseTo(1.2874, within(0.00005));
  }

  @Test
  void anExactTableIsRecoveredWhateverTheOrder() {
    int[] row = {2, 0, 1, 2, 0, 1, 2};
    int[] column = {0, 0, 0, 1, 1, 3, 3};
    double[] rowPart = {1, 4, -5};
    double[] columnPart = {3, -1, 0, -2};
    double[] x = new double[8];
    for (int i = 0; i < 7; i++) {
      x[i] = 388 + rowPart[row[i]] + columnPart[column[i]];
    }
    TwoWay fit = TwoWay.fit(row, column, x, 7);
    assertThat(fit.center()).isCloseTo(388, within(1e-10));
    assertThat(fit.rowEffects()).containsExactly(rowPart, within(1e-10));
    assertThat(fit.columnEffects()[0]).isCloseTo(3, within(1e-10));
    assertThat(fit.columnEffects()[2]).isNaN();
    assertThat(fit.ssResidual()).isCloseTo(0, within(1e-18));
    assertThat(fit.residualDf()).isEqualTo(7 - 3 - 3 + 1);
    assertThat(fit.columnsUsed()).isEqualTo(3);
    assertThat(fit.rowsUsed()).isEqualTo(3);
  }

  @Test
  void missingValuesAreEmptyCells() {
    int[] row = {0, 0, 1, 1, 1, 2, 2};
    int[] column = {0, 1, 0, 1, 1, 0, 1};
    double[] x = {1, 2, 3, Double.NaN, 4.5, 4, 6};
    TwoWay fit = TwoWay.fit(row, column, x, 7);
    TwoWay without =
        TwoWay.fit(
            new int[] {0, 0, 1, 1, 2, 2},
            new int[] {0, 1, 0, 1, 0, 1},
            new double[] {1, 2, 3, 4.5, 4, 6},
            6);
    assertThat(fit.ssRows()).isEqualTo(without.ssRows());
    assertThat(fit.rowEffects()).containsExactly(without.rowEffects());
  }

  @Test
  void tablesThatFallApartAreUndefinedAndSaySo() {
    TwoWay apart =
        TwoWay.fit(new int[] {0, 0, 1, 1}, new int[] {0, 1, 2, 3}, new double[] {1, 2, 3, 4}, 4);
    assertThat(apart.isConnected()).isFalse();
    assertThat(apart.isDefined()).isFalse();
    assertThat(apart.componentRows()).isNaN();
    assertThat(apart.columnEffects()).containsOnly(Double.NaN);
    assertThat(apart.center()).isNaN();
    TwoWay none = TwoWay.fit(new int[0], new int[0], new double[0], 0);
    assertThat(none.isConnected()).isFalse();
    TwoWay tight = TwoWay.fit(new int[] {0, 0}, new int[] {0, 1}, new double[] {1, 2}, 2);
    assertThat(tight.isConnected()).isTrue();
    assertThat(tight.isDefined()).isFalse();
    assertThat(tight.componentResidual()).isNaN();
    TwoWay oneColumn =
        TwoWay.fit(new int[] {0, 0, 1}, new int[] {0, 0, 0}, new double[] {1, 2, 5}, 3);
    assertThat(oneColumn.rawComponentColumns()).isNaN();
    assertThat(oneColumn.componentResidual()).isCloseTo(0.5, within(1e-12));
  }

  @Test
  void negativeComponentsAreZeroBesideTheirRawValue() {
    // rows that differ less than chance lets them
    int[] row = {0, 0, 1, 1};
    int[] column = {0, 1, 0, 1};
    TwoWay fit = TwoWay.fit(row, column, new double[] {1, -1, -1, 1}, 4);
    assertThat(fit.componentRows()).isZero();
    assertThat(fit.rawComponentRows()).isCloseTo(-2, within(1e-12));
    assertThat(fit.componentColumns()).isZero();
  }

  @Test
  void componentsAreUnbiasedWhereATenthIsMissing() {
    Random random = new Random(24);
    Moments turns = new Moments();
    Moments molds = new Moments();
    Moments pours = new Moments();
    for (int trial = 0; trial < 400; trial++) {
      int[] row = new int[600];
      int[] column = new int[600];
      double[] x = new double[600];
      double[] mold = random.doubles(12).map(u -> 2 * Normal.quantile(u)).toArray();
      int n = 0;
      for (int t = 0; t < 40; t++) {
        double turn = 1.5 * random.nextGaussian();
        for (int m = 0; m < 12; m++) {
          if (random.nextDouble() < 0.9) {
            row[n] = t;
            column[n] = m;
            x[n++] = 388 + turn + mold[m] + random.nextGaussian();
          }
        }
      }
      TwoWay fit = TwoWay.fit(row, column, x, n);
      turns.add(fit.rawComponentRows());
      molds.add(fit.rawComponentColumns());
      pours.add(fit.componentResidual());
    }
    assertThat(turns.mean()).isCloseTo(2.25, within(3 * turns.sd() / 20));
    assertThat(molds.mean()).isCloseTo(4, within(3 * molds.sd() / 20));
    assertThat(pours.mean()).isCloseTo(1, within(3 * pours.sd() / 20));
  }
}
