package org.mottle.engine.kriging;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.neighbour.BucketGrid;
import org.mottle.engine.observation.Observations;

/** What all local systems of one fit share. Immutable. */
final class LocalSetting {
  final Kriging specification;
  final Observations observations;
  final Covariances covariances;
  final Covariances.Placed placed;
  final SupportCovariance support;
  final Coincidence coincidence;
  final DriftTerms terms;
  final BucketGrid grid;

  /** [p][n] scaled terms of the drift at the observations. */
  final double[][] columns;

  /** [n] values less the known mean. */
  final double[] values;

  /** [n] variance of each observation that is not shared with others: nugget and measurement. */
  final double[] ownVariance;

  LocalSetting(Kriging specification, Observations observations) {
    refuseErrors(specification, observations);
    double[] x = observations.xs();
    double[] y = observations.ys();
    this.specification = specification;
    this.observations = observations;
    this.covariances = new Covariances(specification.model(), Middle.of(x), Middle.of(y));
    this.placed = covariances.place(x, y, 0, x.length, 0, 0);
    this.support = SupportCovariance.of(covariances, specification.support());
    this.coincidence = new Coincidence(observations);
    this.terms = DriftTerms.of(specification.drift(), observations);
    this.grid = new BucketGrid(x, y);
    this.columns = new double[terms.count()][x.length];
    this.values = new double[x.length];
    this.ownVariance = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      for (int t = 0; t < columns.length; t++) {
        columns[t][i] = terms.of(observations, t, i);
      }
      values[i] = observations.value(i) - terms.knownMean();
      ownVariance[i] = covariances.nugget() + observations.measurementVariance(i);
    }
  }

  /** Errors of places and errors in common tie observations together that are not neighbours. */
  private static void refuseErrors(Kriging specification, Observations observations) {
    boolean exact = observations.positionError().exact();
    if (!exact || !observations.commonErrors().isEmpty()) {
      throw new IllegalArgumentException(
          (exact ? "errors in common need" : "position error needs")
              + " kriging from all "
              + observations.size()
              + " observations, the neighbourhood was "
              + specification.neighbourhood()
              + "; use all of them, or leave these errors out");
    }
  }

  /** The observations as targets, with their covariates. */
  Targets targetsAtObservations() {
    List<double[]> columns = new ArrayList<>();
    for (int c = 0; c < observations.covariateCount(); c++) {
      double[] column = new double[observations.size()];
      for (int i = 0; i < column.length; i++) {
        column[i] = observations.covariate(c, i);
      }
      columns.add(column);
    }
    return Targets.of(observations.xs(), observations.ys()).withCovariates(columns);
  }
}
