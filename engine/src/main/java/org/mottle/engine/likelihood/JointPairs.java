package org.mottle.engine.likelihood;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.position.BlurredModel;

/**
 * The separations of the stations of several surveys of one green, one after the other. Those of a
 * survey share its shift, those of two do not; the jitter of a survey is taken by its mean square.
 * Immutable.
 */
final class JointPairs {
  private final int n;
  private final List<Group> groups;

  /** Pairs of a station of one survey and one of another, or the same. */
  private record Group(double sdM, int[] row, int[] column, double[] squaredLag) {}

  private JointPairs(int n, List<Group> groups) {
    this.n = n;
    this.groups = groups;
  }

  static JointPairs of(List<Observations> surveys) {
    int[] first = new int[surveys.size() + 1];
    for (int s = 0; s < surveys.size(); s++) {
      first[s + 1] = first[s] + surveys.get(s).size();
    }
    List<Group> groups = new ArrayList<>();
    for (int s = 0; s < surveys.size(); s++) {
      for (int t = 0; t <= s; t++) {
        groups.add(group(surveys.get(s), surveys.get(t), first[s], first[t]));
      }
    }
    return new JointPairs(first[surveys.size()], groups);
  }

  private static Group group(Observations a, Observations b, int fromA, int fromB) {
    int count = a.size() * b.size();
    Group group = new Group(sd(a, b), new int[count], new int[count], new double[count]);
    for (int i = 0; i < a.size(); i++) {
      for (int j = 0; j < b.size(); j++) {
        int at = i * b.size() + j;
        group.row[at] = fromA + i;
        group.column[at] = fromB + j;
        double dx = a.x(i) - b.x(j);
        double dy = a.y(i) - b.y(j);
        group.squaredLag[at] = dx * dx + dy * dy;
      }
    }
    return group;
  }

  /** Of the separation per axis, in centimetres so that greens may share a blurred model. */
  private static double sd(Observations a, Observations b) {
    double variance = meanSquare(a.positionError()) + meanSquare(b.positionError());
    if (a != b) {
      double sa = a.positionError().shiftSdM();
      double sb = b.positionError().shiftSdM();
      variance += sa * sa + sb * sb;
    }
    return Math.round(100 * Math.sqrt(variance)) / 100.0;
  }

  private static double meanSquare(PositionError error) {
    double sum = 0;
    for (double sd : error.jitterSdM()) {
      sum += sd * sd;
    }
    return sum / Math.max(1, error.size());
  }

  /** Correlations [n][n] of one field seen in all surveys, by the places recorded. */
  double[][] correlations(BlurredModels unit) {
    double[][] correlation = new double[n][n];
    for (Group group : groups) {
      BlurredModel model = unit.at(group.sdM);
      double[] semivariance = new double[group.row.length];
      model.addSemivariances(group.squaredLag, semivariance.length, semivariance);
      for (int k = 0; k < semivariance.length; k++) {
        correlation[group.row[k]][group.column[k]] = 1 - semivariance[k];
        correlation[group.column[k]][group.row[k]] = 1 - semivariance[k];
      }
    }
    for (int i = 0; i < n; i++) {
      correlation[i][i] = 1;
    }
    return correlation;
  }
}
