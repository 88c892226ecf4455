package org.mottle.export.calibration;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.RealVector;
import org.mottle.engine.mapping.Stations.Station;

/**
 * Ordinary kriging of the local mean with a covariance that is given, errors of position included
 * as Cressie and Kornak (2003) have it: with jitter of standard deviation s and a shared shift b
 * per axis, the covariance between two readings is smoothed by 2 s², that between a reading and a
 * cell by s² + b². Written for the study apart from the engine, O(n³ + cells n²).
 */
final class PositionKriging {
  private final List<Station> stations;
  private final double sill;
  private final SmoothedCovariance toCell;
  private final DecompositionSolver solver;
  private final RealVector ones;
  private final RealVector weighted;
  private final RealVector inverseOnes;
  private final double trendVariance;
  private final double trend;

  /**
   * @param known structure and nugget
   * @param jitterSd of a position, m; 0: positions are taken as right
   * @param shiftSd shared by the positions, m
   */
  PositionKriging(List<Station> stations, Known known, double jitterSd, double shiftSd) {
    this.stations = stations;
    this.sill = known.structure().sill();
    this.toCell = new SmoothedCovariance(known.structure(), Math.hypot(jitterSd, shiftSd));
    SmoothedCovariance among = new SmoothedCovariance(known.structure(), Math.sqrt(2) * jitterSd);
    int n = stations.size();
    double[][] k = new double[n][n];
    for (int i = 0; i < n; i++) {
      Station a = stations.get(i);
      for (int j = 0; j < i; j++) {
        Station b = stations.get(j);
        k[i][j] = among.at(Math.hypot(a.x() - b.x(), a.y() - b.y()));
        k[j][i] = k[i][j];
      }
      k[i][i] = sill + known.nugget() / a.insertions().size();
    }
    solver = new CholeskyDecomposition(new Array2DRowRealMatrix(k, false)).getSolver();
    ones = new ArrayRealVector(n, 1.0);
    inverseOnes = solver.solve(ones);
    trendVariance = 1 / ones.dotProduct(inverseOnes);
    RealVector z = new ArrayRealVector(stations.stream().mapToDouble(Station::value).toArray());
    trend = z.dotProduct(inverseOnes) * trendVariance;
    weighted = solver.solve(z.mapSubtract(trend));
  }

  /** Mean and standard deviation of every cell. */
  CellDistribution predict(Cells cells) {
    double[] mean = new double[cells.size()];
    double[] sd = new double[mean.length];
    for (int c = 0; c < mean.length; c++) {
      double[] k = new double[stations.size()];
      for (int i = 0; i < k.length; i++) {
        Station s = stations.get(i);
        k[i] = toCell.at(Math.hypot(s.x() - cells.x()[c], s.y() - cells.y()[c]));
      }
      RealVector covariance = new ArrayRealVector(k, false);
      double rest = 1 - covariance.dotProduct(inverseOnes);
      mean[c] = trend + covariance.dotProduct(weighted);
      double variance =
          sill - covariance.dotProduct(solver.solve(covariance)) + rest * rest * trendVariance;
      sd[c] = Math.sqrt(Math.max(variance, 1e-9));
    }
    return CellDistribution.normal(mean, sd);
  }
}
