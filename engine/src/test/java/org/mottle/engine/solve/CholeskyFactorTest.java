package org.mottle.engine.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Factor, solves, inverse diagonal and condition estimate against Commons Math and known cases. */
class CholeskyFactorTest {

  /** B Bᵀ + n/10 on the diagonal: positive definite. */
  private static double[][] matrix(int n, long seed) {
    Random random = new Random(seed);
    double[][] b = new double[n][n];
    for (double[] row : b) {
      for (int j = 0; j < n; j++) {
        row[j] = random.nextGaussian();
      }
    }
    RealMatrix product = new Array2DRowRealMatrix(b, false);
    double[][] a = product.multiply(product.transpose()).getData();
    for (int i = 0; i < n; i++) {
      a[i][i] += 0.1 * n;
    }
    return a;
  }

  private static double[][] copy(double[][] a) {
    double[][] copy = new double[a.length][];
    for (int i = 0; i < a.length; i++) {
      copy[i] = a[i].clone();
    }
    return copy;
  }

  private static CholeskyFactor factor(double[][] a) {
    return ((Factorisation.Factored) CholeskyFactor.factor(copy(a))).factor();
  }

  @ParameterizedTest(name = "n = {0}")
  @ValueSource(ints = {1, 2, 3, 7, 23, 24, 25, 47, 48, 49, 50, 73, 130})
  void solvesAsCommonsMathDoes(int n) {
    double[][] a = matrix(n, 40 + n);
    CholeskyFactor factor = factor(a);
    RealMatrix inverse = new LUDecomposition(new Array2DRowRealMatrix(a)).getSolver().getInverse();
    double[] b = new Random(n).doubles(n, -5, 5).toArray();
    double[] expected = inverse.operate(b);
    double[] x = b.clone();
    factor.solve(x);
    double[] diagonal = factor.inverseDiagonal();
    for (int i = 0; i < n; i++) {
      assertThat(x[i]).as("n %d, x %d", n, i).isCloseTo(expected[i], within(1e-9));
      assertThat(diagonal[i])
          .as("n %d, diagonal %d", n, i)
          .isCloseTo(inverse.getEntry(i, i), within(1e-10));
    }
    double exact = inverse.getNorm() * new Array2DRowRealMatrix(a).getNorm();
    assertThat(factor.conditionEstimate()).isBetween(exact / 3, exact * (1 + 1e-9));
  }

  @ParameterizedTest(name = "n = {0}, {1} sides")
  @CsvSource({"5, 1", "30, 7", "49, 64", "100, 193"})
  void everyColumnOfAPanelHasTheBytesItHasAlone(int n, int sides) {
    CholeskyFactor factor = factor(matrix(n, 9));
    Random random = new Random(10);
    double[][] panel = new double[n][sides + 3];
    for (double[] row : panel) {
      for (int j = 0; j < sides; j++) {
        row[j] = random.nextGaussian();
      }
    }
    double[][] before = copy(panel);
    factor.solveLower(panel, sides);
    for (int j = 0; j < sides; j++) {
      double[][] alone = new double[n][1];
      for (int i = 0; i < n; i++) {
        alone[i][0] = before[i][j];
      }
      factor.solveLower(alone, 1);
      for (int i = 0; i < n; i++) {
        assertThat(panel[i][j]).isEqualTo(alone[i][0]);
      }
    }
    double[] vector = new double[n];
    for (int i = 0; i < n; i++) {
      vector[i] = before[i][0];
      assertThat(panel[i][sides]).as("beyond the panel").isZero();
    }
    factor.solveLower(vector);
    for (int i = 0; i < n; i++) {
      assertThat(vector[i]).isCloseTo(panel[i][0], within(1e-11));
    }
  }

  @Test
  void conditionOfHilbertMatrices() {
    // one-norm condition numbers of Hilbert matrices: 748 for n = 3 exactly (Higham 2002, ch. 28)
    assertThat(factor(hilbert(3)).conditionEstimate()).isCloseTo(748, within(1e-8));
    // 943656 for n = 5 (Higham 2002, ch. 28)
    assertThat(factor(hilbert(5)).conditionEstimate()).isCloseTo(943656, within(1e-3));
  }

  private static double[][] hilbert(int n) {
    double[][] h = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        h[i][j] = 1.0 / (i + j + 1);
      }
    }
    return h;
  }

  @Test
  void aMatrixThatIsNotPositiveDefiniteIsAnOutcome() {
    double[][] a = {{4, 2, 2}, {2, 1, 1}, {2, 1, 9}};
    Factorisation outcome = CholeskyFactor.factor(a);
    assertThat(outcome).isInstanceOf(Factorisation.NotPositiveDefinite.class);
    Factorisation.NotPositiveDefinite lost = (Factorisation.NotPositiveDefinite) outcome;
    assertThat(lost.row()).isEqualTo(1);
    assertThat(lost.pivot()).isLessThanOrEqualTo(lost.limit());
    double[][] nan = {{1, Double.NaN}, {0, 1}};
    assertThat(CholeskyFactor.factor(nan)).isInstanceOf(Factorisation.NotPositiveDefinite.class);
  }

  @ParameterizedTest(name = "n = {0}")
  @ValueSource(ints = {1, 2, 5, 8, 17, 32, 33})
  void borderedFactorSolvesItsSides(int n) {
    double[][] a = matrix(n, 70 + n);
    Random random = new Random(3);
    double[][] rows = new double[n + 3][];
    double[][] sides = new double[3][];
    for (int i = 0; i < n; i++) {
      rows[i] = a[i].clone();
    }
    for (int s = 0; s < 3; s++) {
      sides[s] = random.doubles(n, -1, 1).toArray();
      rows[n + s] = sides[s].clone();
    }
    double smallest = BorderedCholesky.factor(rows, n, 3, 1e-12);
    assertThat(smallest).isBetween(1e-6, 1.0);
    CholeskyFactor factor = factor(a);
    for (int s = 0; s < 3; s++) {
      double[] expected = sides[s].clone();
      factor.solveLower(expected);
      assertThat(rows[n + s]).containsExactly(expected, within(1e-10));
    }
  }

  @Test
  void borderedFactorNamesTheRowThatIsLost() {
    double[][] rows = {{4, 0, 0}, {2, 1, 0}, {2, 1, 9}, {1, 1, 1}};
    assertThat(BorderedCholesky.factor(rows, 3, 1, 1e-12)).isEqualTo(-2);
  }
}
