package org.mottle.engine.season;

import java.util.List;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.solve.CholeskyFactor;
import org.mottle.engine.solve.Factorisation;

/**
 * Restricted log likelihood of the share that persists, from the surveys of one green together,
 *
 * <pre>−½ [ ln|K| + ln|XᵀK⁻¹X| + zᵀ(K⁻¹ − K⁻¹X(XᵀK⁻¹X)⁻¹XᵀK⁻¹)z ]
 * </pre>
 *
 * (Patterson & Thompson 1971). X takes a mean out of every survey and, from {@value #PLANE}
 * stations, a plane, as the sills were found: neither the level nor the slope of a green passes for
 * a pattern that persists.
 */
final class ShareLikelihood {
  private static final int PLANE = 8;

  private ShareLikelihood() {}

  /**
   * @param share [.] nodes
   * @return [.] log likelihood at the nodes, to a constant; all 0 where it cannot be worked out
   */
  static double[] of(List<SeenSurvey> surveys, JointModel model, Blurred blurred, double[] share) {
    StationCorrelations stations = StationCorrelations.of(surveys, blurred);
    double[][] terms = terms(surveys, stations.size());
    double[] log = new double[share.length];
    for (int k = 0; k < share.length; k++) {
      Double at = at(stations, terms, stations.covariances(model.withShare(share[k])));
      if (at == null) {
        return new double[share.length];
      }
      log[k] = at;
    }
    return log;
  }

  /** [p][n] terms of the drift. */
  private static double[][] terms(List<SeenSurvey> surveys, int n) {
    int p = surveys.stream().mapToInt(s -> s.size() >= PLANE ? 3 : 1).sum();
    double[][] terms = new double[p][n];
    int at = 0;
    int from = 0;
    for (SeenSurvey survey : surveys) {
      Observations o = survey.observations();
      double mx = java.util.Arrays.stream(o.xs()).average().orElse(0);
      double my = java.util.Arrays.stream(o.ys()).average().orElse(0);
      for (int i = 0; i < o.size(); i++) {
        terms[at][from + i] = 1;
        if (o.size() >= PLANE) {
          terms[at + 1][from + i] = (o.x(i) - mx) / 10;
          terms[at + 2][from + i] = (o.y(i) - my) / 10;
        }
      }
      at += o.size() >= PLANE ? 3 : 1;
      from += o.size();
    }
    return terms;
  }

  /** Null where a matrix is not positive definite. */
  private static Double at(StationCorrelations stations, double[][] terms, double[][] covariance) {
    if (!(CholeskyFactor.factor(covariance) instanceof Factorisation.Factored k)) {
      return null;
    }
    int n = stations.size();
    int p = terms.length;
    double[] z = new double[n];
    for (int i = 0; i < n; i++) {
      z[i] = stations.value(i);
    }
    k.factor().solveLower(z);
    double[][] panel = new double[n][p];
    for (int t = 0; t < p; t++) {
      for (int i = 0; i < n; i++) {
        panel[i][t] = terms[t][i];
      }
    }
    k.factor().solveLower(panel, p);
    double[][] g = new double[p][p];
    double[] b = new double[p];
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double[] row = panel[i];
      squares += z[i] * z[i];
      for (int s = 0; s < p; s++) {
        b[s] += row[s] * z[i];
        for (int t = s; t < p; t++) {
          g[s][t] += row[s] * row[t];
        }
      }
    }
    if (!(CholeskyFactor.factor(g) instanceof Factorisation.Factored x)) {
      return null;
    }
    x.factor().solveLower(b);
    for (double v : b) {
      squares -= v * v;
    }
    return -0.5 * (k.factor().logDeterminant() + x.factor().logDeterminant() + squares);
  }
}
