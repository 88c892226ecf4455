package org.mottle.engine.drainage;

import java.util.Optional;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.simulation.FieldOutcome;
import org.mottle.engine.simulation.GaussianField;
import org.mottle.engine.simulation.NormalStream;
import org.mottle.engine.solve.CholeskyFactor;
import org.mottle.engine.solve.Factorisation;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.variogram.NestedModel;

/** Moisture that has its variogram and knows nothing of the ground, mean 0. */
@FunctionalInterface
interface NullMoisture {

  /** Realisations one after the other; the array is the caller's until the next. */
  interface Draws {
    double[] next();
  }

  /** Either the moisture or why there is none. */
  record Attempt(NullMoisture moisture, Optional<Refusal> refusal) {}

  Draws newDraws(long seed);

  /** At stations, from the Cholesky factor of their covariance, errors of measurement included. */
  static NullMoisture at(Observations stations, NestedModel model) {
    int n = stations.size();
    double sill = model.sill();
    double[][] upper = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        double dx = stations.x(j) - stations.x(i);
        double dy = stations.y(j) - stations.y(i);
        // the nugget is each station's own, in one hole or not
        upper[i][j] =
            dx == 0 && dy == 0 ? sill - model.nugget() : sill - model.semivariance(dx, dy);
      }
      upper[i][i] = sill * (1 + 1e-9) + stations.measurementVariance(i);
    }
    if (!(CholeskyFactor.factor(upper) instanceof Factorisation.Factored factored)) {
      throw new IllegalArgumentException(
          "the variogram gives no valid covariance of the stations: " + model);
    }
    CholeskyFactor factor = factored.factor();
    return seed -> {
      NormalStream normals = new NormalStream(seed, 0);
      double[] z = new double[n];
      return () -> {
        for (int i = 0; i < n; i++) {
          z[i] = normals.next();
        }
        return factor.multiplyLower(z);
      };
    };
  }

  /** At cells of a grid. */
  static Attempt over(CellGrid grid, int[] cells, NestedModel model) {
    double nuggetSd = Math.sqrt(model.nugget());
    if (model.structures().isEmpty()) {
      return new Attempt(seed -> new CellDraws(null, cells, nuggetSd, seed), Optional.empty());
    }
    FieldOutcome outcome = FieldOutcome.of(model, grid, false);
    if (outcome instanceof FieldOutcome.Refused refused) {
      return new Attempt(null, Optional.of(refused.refusal()));
    }
    GaussianField field = (GaussianField) outcome;
    return new Attempt(seed -> new CellDraws(field, cells, nuggetSd, seed), Optional.empty());
  }

  /** Fields come in pairs; the nugget is added cell by cell. */
  final class CellDraws implements Draws {
    private final int[] cells;
    private final double nuggetSd;
    private final NormalStream normals;
    private final GaussianField.Sampler sampler;
    private final double[] one;
    private final double[] other;
    private boolean otherIsNext;

    CellDraws(GaussianField field, int[] cells, double nuggetSd, long seed) {
      this.cells = cells;
      this.nuggetSd = nuggetSd;
      this.normals = new NormalStream(seed, 0);
      this.sampler = field == null ? (n, a, b) -> {} : field.newSampler();
      int size = field == null ? 0 : field.lattice().size();
      this.one = new double[size];
      this.other = new double[size];
    }

    @Override
    public double[] next() {
      if (!otherIsNext) {
        sampler.drawPair(normals, one, other);
      }
      double[] from = otherIsNext ? other : one;
      otherIsNext = !otherIsNext;
      double[] values = new double[cells.length];
      for (int i = 0; i < values.length; i++) {
        values[i] = (from.length == 0 ? 0 : from[cells[i]]) + nuggetSd * normals.next();
      }
      return values;
    }
  }
}
