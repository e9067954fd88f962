package org.evenpour.stats;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The chain's equations against the LU decomposition of Hipparchus. */
class SignalChainTest {

  /** To the last bit: every element is the same differences and quotients in the same order. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 17, 80, 200})
  void solvesAsHipparchusDoes(int n) {
    Random random = new Random(n);
    double[][] next = new double[n][n];
    double[][] matrix = new double[n][n];
    double[] b = random.doubles(n).toArray();
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        // Far from a chain's, so that rows must be brought up; the diagonal is often small.
        next[i][j] = (i == j ? 1 : 0) + random.nextGaussian();
        matrix[i][j] = (i == j ? 1 : 0) - next[i][j];
      }
    }
    double[] expected =
        new LUDecomposition(new Array2DRowRealMatrix(matrix), 0)
            .getSolver()
            .solve(new ArrayRealVector(b))
            .toArray();
    assertThat(SignalChain.solve(next, b)).isEqualTo(expected);
  }
}
