package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** Against NIST StRD, against the matrix formula of Aitken (1936), and on made-up series. */
class SeriesRegressionTest {

  /** Longley's data, certified by NIST StRD; without autocorrelation it is least squares. */
  @Test
  void reachesNistWithLongleyWhereErrorsAreIndependent() {
    List<Reference.Row> rows = Reference.rows("strd-regression.csv", "dataset", "Longley");
    int n = rows.size();
    double[][] columns = new double[7][n];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      columns[0][i] = 1;
      for (int j = 1; j < 7; j++) {
        columns[j][i] = rows.get(i).number("x" + j);
      }
      y[i] = rows.get(i).number("y");
    }
    int[] time = IntStream.range(0, n).toArray();

    SeriesRegression fit = SeriesRegression.with(columns, y, time, new int[n], 0, 0);

    // certified: B1 and its standard deviation
    assertThat(fit.coefficient(1) / 15.0618722713733).isCloseTo(1, within(1e-9));
    assertThat(fit.error(1) / 84.9149257747669).isCloseTo(1, within(1e-9));
    assertThat(fit.degreesOfFreedom()).isEqualTo(9);
  }

  /** The t of B1 as certified, from a fit without that column. */
  @Test
  void tellsOfAColumnThatIsNotInTheFitWhatFittingItWould() {
    List<Reference.Row> rows = Reference.rows("strd-regression.csv", "dataset", "Longley");
    int n = rows.size();
    double[][] columns = new double[6][n];
    double[] added = new double[n];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      columns[0][i] = 1;
      for (int j = 2; j < 7; j++) {
        columns[j - 1][i] = rows.get(i).number("x" + j);
      }
      added[i] = rows.get(i).number("x1");
      y[i] = rows.get(i).number("y");
    }
    int[] time = IntStream.range(0, n).toArray();
    SeriesRegression fit = SeriesRegression.with(columns, y, time, new int[n], 0, 0);
    double t = 15.0618722713733 / 84.9149257747669;
    assertThat(fit.addedColumn(added, time, new int[n]))
        .isCloseTo(StudentT.twoSided(t, 9), within(1e-5));
    assertThat(fit.addedColumn(columns[3], time, new int[n])).isEqualTo(1);
  }

  /** b = (XᵀV⁻¹X)⁻¹XᵀV⁻¹y with V written out: gaps, two stretches, white noise. */
  @Test
  void agreesWithTheMatrixFormula() {
    double phi = 0.8;
    double noise = 0.3;
    int[] time = {0, 1, 2, 5, 6, 7, 8, 0, 1, 3, 4, 5};
    int[] stretch = {0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1};
    int n = time.length;
    SplittableRandom random = new SplittableRandom(4);
    double[][] columns = {new double[n], new double[n]};
    double[] y = new double[n];
    RealMatrix v = new Array2DRowRealMatrix(n, n);
    RealMatrix x = new Array2DRowRealMatrix(n, 2);
    for (int i = 0; i < n; i++) {
      columns[0][i] = 1;
      columns[1][i] = random.nextGaussian();
      y[i] = random.nextGaussian();
      x.setRow(i, new double[] {1, columns[1][i]});
      for (int j = 0; j < n; j++) {
        double apart = Math.abs(time[i] - time[j]);
        double shared = stretch[i] == stretch[j] ? (1 - noise) * Math.pow(phi, apart) : 0;
        v.setEntry(i, j, shared + (i == j ? noise : 0));
      }
    }
    RealMatrix inverse = new LUDecomposition(v).getSolver().getInverse();
    RealMatrix information = x.transpose().multiply(inverse).multiply(x);
    RealMatrix right = x.transpose().multiply(inverse).multiply(new Array2DRowRealMatrix(y));
    double expected = new LUDecomposition(information).getSolver().solve(right).getEntry(1, 0);

    SeriesRegression fit = SeriesRegression.with(columns, y, time, stretch, phi, noise);

    assertThat(fit.coefficient(1)).isCloseTo(expected, within(1e-12));
  }

  /** Two wandering series that have nothing to do with each other look related; not here. */
  @Test
  void isNotFooledByTwoSeriesThatWander() {
    int covered = 0;
    int runs = 200;
    int n = 200;
    int[] time = IntStream.range(0, n).toArray();
    for (int seed = 0; seed < runs; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double[] x = wandering(random, n, 0.95);
      double[] y = wandering(random, n, 0.8);
      double[] one = new double[n];
      Arrays.fill(one, 1);
      SeriesRegression fit = SeriesRegression.of(new double[][] {x, one}, y, time, new int[n]);
      if (Math.abs(fit.coefficient(0)) < 1.97 * fit.error(0)) {
        covered++;
      }
    }
    // 95 % of 200 are 190, give or take three standard errors of 3.
    assertThat(covered).isBetween(181, 199);
  }

  private static double[] wandering(SplittableRandom random, int n, double phi) {
    double[] x = new double[n];
    x[0] = random.nextGaussian() / Math.sqrt(1 - phi * phi);
    for (int i = 1; i < n; i++) {
      x[i] = phi * x[i - 1] + random.nextGaussian();
    }
    return x;
  }

  /** Errors that come in runs make plain standard errors too small; these grow. */
  @Test
  void allowsForRunsThatTheModelLeavesOut() {
    int n = 400;
    SplittableRandom random = new SplittableRandom(9);
    double[] x = wandering(random, n, 0.9);
    double[] y = wandering(random, n, 0.9);
    int[] time = IntStream.range(0, n).toArray();

    SeriesRegression fit = SeriesRegression.with(new double[][] {x}, y, time, new int[n], 0, 0);

    assertThat(fit.robustErrors(new int[n], 20)[0]).isGreaterThan(1.5 * fit.error(0));
  }

  /**
   * A column plus a large constant, beside a column of ones, asks the same: its coefficient and
   * that coefficient's errors are those of the column itself, however near to each other the two
   * are.
   */
  @Test
  void standsColumnsThatLieCloseTogether() {
    SplittableRandom random = new SplittableRandom(7);
    int n = 120;
    double[] ones = new double[n];
    double[] x = new double[n];
    double[] shifted = new double[n];
    double[] y = new double[n];
    int[] stretch = new int[n];
    double run = 0;
    for (int i = 0; i < n; i++) {
      ones[i] = 1;
      x[i] = random.nextInt(64) / 8.0;
      run = 0.7 * run + random.nextDouble() - 0.5;
      y[i] = 3 * x[i] + run;
      stretch[i] = i / 40;
    }
    int[] time = IntStream.range(0, n).toArray();
    double[] own =
        SeriesRegression.with(new double[][] {ones, x}, y, time, stretch, 0, 0)
            .robustErrors(stretch, 10);
    for (double far : new double[] {1 << 10, 1 << 20, 1L << 27, 1L << 32, 1L << 36}) {
      for (int i = 0; i < n; i++) {
        shifted[i] = x[i] + far; // exact: both are whole eighths
      }
      double[] errors =
          SeriesRegression.with(new double[][] {ones, shifted}, y, time, stretch, 0, 0)
              .robustErrors(stretch, 10);
      assertThat(errors[1] / own[1]).as("by %s", far).isCloseTo(1, within(1e-6));
    }
  }

  /**
   * What wanders as slowly as the errors do rests on few of them; what changes from turn to turn,
   * on nearly all.
   */
  @Test
  void whatMovesAsSlowlyAsTheErrorsHasFewDegreesOfFreedom() {
    int n = 120;
    double slow = 0;
    double quick = 0;
    for (int seed = 0; seed < 10; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double[][] columns = new double[3][n];
      double[] y = new double[n];
      double error = 0;
      for (int t = 0; t < n; t++) {
        columns[0][t] = 1;
        columns[1][t] = (t == 0 ? 0 : columns[1][t - 1]) + random.nextGaussian();
        columns[2][t] = random.nextGaussian();
        error = 0.95 * error + random.nextGaussian();
        y[t] = error + 2 * random.nextGaussian();
      }
      SeriesRegression fit =
          SeriesRegression.of(columns, y, IntStream.range(0, n).toArray(), new int[n]);
      slow += fit.freedom(1) / 10;
      quick += fit.freedom(2) / 10;
      assertThat(fit.freedom(2)).isLessThanOrEqualTo(n - 3);
    }
    assertThat(quick).isBetween(0.7 * (n - 3), n - 3.0);
    assertThat(slow).isLessThan(0.75 * quick);
    double[][] level = {SeriesRegression.between(n, 0, n)};
    SeriesRegression known =
        SeriesRegression.with(
            level, new double[n], IntStream.range(0, n).toArray(), new int[n], 0, 0);
    assertThat(known.freedom(0)).isEqualTo(n - 1);
  }
}
