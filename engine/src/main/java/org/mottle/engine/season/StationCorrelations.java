package org.mottle.engine.season;

import java.util.List;
import org.mottle.engine.observation.CommonError;
import org.mottle.engine.observation.Observations;

/**
 * Correlations of one field between the stations of several surveys of a green, one survey after
 * the other, as the places recorded let expect them: within a survey the jitter of both stations
 * blurs their separation, between two surveys the shifts of both visits besides; a station gone
 * back to is where it was but for a return error. A station with itself keeps 1. Immutable.
 */
final class StationCorrelations {
  private final List<SeenSurvey> surveys;

  /** [n] survey of each station. */
  private final int[] survey;

  /** [n] its place in that survey. */
  private final int[] row;

  /** [n][n], the upper triangle. */
  private final double[][] upper;

  private StationCorrelations(List<SeenSurvey> surveys, Blurred blurred) {
    this.surveys = List.copyOf(surveys);
    int n = surveys.stream().mapToInt(SeenSurvey::size).sum();
    this.survey = new int[n];
    this.row = new int[n];
    this.upper = new double[n][n];
    int at = 0;
    for (int s = 0; s < surveys.size(); s++) {
      for (int i = 0; i < surveys.get(s).size(); i++) {
        survey[at] = s;
        row[at++] = i;
      }
    }
    for (int i = 0; i < n; i++) {
      upper[i][i] = 1;
      for (int j = i + 1; j < n; j++) {
        upper[i][j] = correlation(blurred, i, j);
      }
    }
  }

  static StationCorrelations of(List<SeenSurvey> surveys, Blurred blurred) {
    return new StationCorrelations(surveys, blurred);
  }

  private double correlation(Blurred blurred, int i, int j) {
    SeenSurvey a = surveys.get(survey[i]);
    SeenSurvey b = surveys.get(survey[j]);
    if (survey[i] != survey[j] && a.samePlace(row[i], b, row[j])) {
      return 1 - blurred.at(a.returnVariance(row[i]) + b.returnVariance(row[j])).semivariance(0);
    }
    double variance = a.jitterVariance(row[i]) + b.jitterVariance(row[j]);
    if (survey[i] != survey[j]) {
      variance += a.shiftVariance(row[i]) + b.shiftVariance(row[j]);
    }
    return 1 - blurred.at(variance).semivariance(Math.hypot(x(i) - x(j), y(i) - y(j)));
  }

  Observations of(int i) {
    return surveys.get(survey[i]).observations();
  }

  int size() {
    return survey.length;
  }

  int survey(int i) {
    return survey[i];
  }

  double x(int i) {
    return of(i).x(row[i]);
  }

  double y(int i) {
    return of(i).y(row[i]);
  }

  /** Per axis, m²: jitter of the station and shift of its visit. */
  double varianceToTarget(int i) {
    SeenSurvey seen = surveys.get(survey[i]);
    return seen.jitterVariance(row[i]) + seen.shiftVariance(row[i]);
  }

  double value(int i) {
    return of(i).value(row[i]);
  }

  /**
   * The upper triangle of the covariances of the values: structure, nugget by insertions, and what
   * the values of a visit have wrong in common. A new array.
   */
  double[][] covariances(JointModel model) {
    int n = size();
    double[][] c = new double[n][n];
    for (int i = 0; i < n; i++) {
      double si = model.sd(survey[i]);
      for (int j = i; j < n; j++) {
        boolean same = survey[i] == survey[j];
        c[i][j] = si * model.sd(survey[j]) * (same ? 1 : model.share()) * upper[i][j];
      }
      c[i][i] += model.nugget() / surveys.get(survey[i]).insertions()[row[i]];
    }
    int from = 0;
    for (SeenSurvey seen : surveys) {
      for (CommonError error : seen.observations().commonErrors()) {
        for (int i = 0; i < seen.size(); i++) {
          for (int j = i; j < seen.size(); j++) {
            c[from + i][from + j] += error.share(i) * error.share(j) * error.variance();
          }
        }
      }
      from += seen.size();
    }
    return c;
  }
}
