package org.mottle.engine.season;

import java.util.List;
import org.mottle.engine.observation.CommonError;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.position.BlurredModel;

/**
 * Correlations of one field between the stations of several surveys of a green, one survey after
 * the other, as the places recorded let expect them: within a survey the jitter of both stations
 * blurs their separation, between two surveys the shifts of both visits besides. A station with
 * itself keeps 1. Immutable.
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
    Observations a = of(i);
    Observations b = of(j);
    double variance = square(jitter(i)) + square(jitter(j));
    if (survey[i] != survey[j]) {
      variance += square(a.positionError().shiftSdM()) + square(b.positionError().shiftSdM());
    }
    BlurredModel model = blurred.at(variance);
    return 1 - model.semivariance(Math.hypot(a.x(row[i]) - b.x(row[j]), a.y(row[i]) - b.y(row[j])));
  }

  private double jitter(int i) {
    PositionError error = of(i).positionError();
    return error.jitterSdM(row[i]);
  }

  private static double square(double v) {
    return v * v;
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
    return square(jitter(i)) + square(of(i).positionError().shiftSdM());
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
