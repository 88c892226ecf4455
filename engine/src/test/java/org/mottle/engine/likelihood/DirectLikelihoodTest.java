package org.mottle.engine.likelihood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.position.DisplacedSemivariance;

/**
 * The spectral form against the textbook's: -½ [ln |V| + ln |XᵀV⁻¹X| + (z - Xb)ᵀV⁻¹(z - Xb)] with V
 * dense (Diggle & Ribeiro 2007, sec. 5.4), for unequal insertions and position errors.
 */
class DirectLikelihoodTest {

  @ParameterizedTest
  @CsvSource({"5,0,1", "7,1.2,3", "8,0,1", "18,0,1", "18,0,4", "18,0.7,1", "18,2,4", "24,9,3"})
  void agreesWithTheDenseForm(int stations, double jitter, int mostInsertions) {
    for (Candidate shape : Candidate.DEFAULTS) {
      Sample sample = sample(stations, jitter, mostInsertions, 31L * stations + mostInsertions);
      double[][] points = {{0.5, 3, 4}, {1.5, 3, 12}, {0.1, 8, 30}, {4, 0.2, 12}};
      double first = ours(sample, shape, points[0]) - dense(sample, shape, points[0]);
      for (double[] p : points) {
        assertThat(ours(sample, shape, p) - dense(sample, shape, p))
            .as("%s, nugget, sill and range %s", shape.label(), Arrays.toString(p))
            .isCloseTo(first, within(jitter == 0 ? 1e-8 : 1e-5));
      }
    }
  }

  private static double ours(Sample sample, Candidate shape, double[] p) {
    BlurredModels unit = new BlurredModels(shape.model(1, p[2]));
    return SampleSurface.at(Contrasts.of(sample).spectrum(unit), p[0], p[1]);
  }

  private static double dense(Sample sample, Candidate shape, double[] p) {
    Observations o = sample.observations();
    int n = o.size();
    DisplacedSemivariance structure = DisplacedSemivariance.of(shape.model(p[1], p[2]));
    double[][] v = new double[n][n];
    double[][] x = new double[n][n < 8 ? 1 : 3];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double sd = Math.hypot(o.positionError().jitterSdM(i), o.positionError().jitterSdM(j));
        double lag = Math.hypot(o.x(i) - o.x(j), o.y(i) - o.y(j));
        v[i][j] = i == j ? p[1] : p[1] - structure.semivariance(sd, lag);
      }
      v[i][i] += p[0] / sample.insertions()[i];
      double[] row = {1, o.x(i), o.y(i)};
      x[i] = Arrays.copyOf(row, x[i].length);
    }
    CholeskyDecomposition factor = new CholeskyDecomposition(new Array2DRowRealMatrix(v));
    RealMatrix design = new Array2DRowRealMatrix(x);
    RealVector z = MatrixUtils.createRealVector(o.values());
    CholeskyDecomposition information =
        new CholeskyDecomposition(
            symmetric(design.transpose().multiply(factor.getSolver().solve(design))));
    RealVector b =
        information.getSolver().solve(design.transpose().operate(factor.getSolver().solve(z)));
    RealVector rest = z.subtract(design.operate(b));
    return -0.5
        * (Math.log(factor.getDeterminant())
            + Math.log(information.getDeterminant())
            + rest.dotProduct(factor.getSolver().solve(rest)));
  }

  private static RealMatrix symmetric(RealMatrix m) {
    return m.add(m.transpose()).scalarMultiply(0.5);
  }

  private static Sample sample(int n, double jitter, int mostInsertions, long seed) {
    Random random = new Random(seed);
    double[] sd = random.doubles(n).map(u -> u < 0.5 ? jitter : jitter / 2).toArray();
    Observations o =
        Observations.of(
                random.doubles(n, -12, 12).toArray(),
                random.doubles(n, -9, 9).toArray(),
                random.doubles(n, 14, 22).toArray())
            .withPositionError(new PositionError(sd, 0));
    int[] insertions = random.ints(n, 1, mostInsertions + 1).toArray();
    return new Sample("G1", "S1", o, insertions, Replicates.NONE);
  }
}
