package org.mottle.engine.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.mottle.engine.kriging.JointEstimates;
import org.mottle.engine.kriging.Targets;

/**
 * What one draw of the parameters knows of the green as stations are added to the survey: error
 * covariances between the points of the green and the candidates, and the variance explained so far
 * at each point. Taking candidate c is an update of rank one: with q(a) = cov(a, c) / √(var(c) +
 * variance of a reading), cov(a, b) falls by q(a) q(b). Means stay, being unchanged in expectation:
 * what the readings taken so far will explain is carried in full by {@link LimitLoss}.
 *
 * <p>Keeps points x candidates numbers; a gain of every candidate costs as many evaluations. Serves
 * one thread.
 */
final class DrawField {
  /** Points whose loss is below this are settled; leaving them out costs less than this share. */
  private static final double SETTLED = 1e-7;

  /** Error variances below this share of the largest are rounding: the place is known. */
  private static final double KNOWN = 1e-9;

  private final AreaPoints points;
  private final double[] limits;
  private final JointEstimates joint;
  private final double readingVariance;

  /** [point][candidate]. */
  private final double[][] covariance;

  /** [candidate] of the error now. */
  private final double[] candidateVariance;

  /** [point] before any station was added. */
  private final double[] variance;

  /** [point] variance explained by the stations added. */
  private final double[] explained;

  /** [point] null where settled. */
  private final LimitLoss[] loss;

  /** q at the candidates of every station added. */
  private final List<double[]> taken = new ArrayList<>();

  DrawField(ModelDraw draw, AreaPoints points, Positions candidates, double[] limits) {
    this.points = points;
    this.limits = limits;
    this.readingVariance = draw.readingVariance();
    int m = candidates.size();
    this.joint = JointEstimates.of(draw.system(), targets(candidates, points.positions()));
    this.candidateVariance = new double[m];
    for (int c = 0; c < m; c++) {
      candidateVariance[c] = joint.variance(c);
    }
    this.covariance = new double[points.size()][m];
    this.variance = new double[points.size()];
    this.explained = new double[points.size()];
    this.loss = new LimitLoss[points.size()];
    double largest = 0;
    for (int i = 0; i < variance.length; i++) {
      variance[i] = joint.variance(m + i);
      largest = Math.max(largest, variance[i]);
      joint.covariances(m + i, m, covariance[i]);
    }
    for (int i = 0; i < variance.length; i++) {
      loss[i] = variance[i] > KNOWN * largest ? lossOf(joint.value(m + i), variance[i]) : null;
    }
  }

  private static Targets targets(Positions candidates, Positions points) {
    int m = candidates.size();
    double[] x = Arrays.copyOf(candidates.xs(), m + points.size());
    double[] y = Arrays.copyOf(candidates.ys(), x.length);
    System.arraycopy(points.xs(), 0, x, m, points.size());
    System.arraycopy(points.ys(), 0, y, m, points.size());
    return Targets.of(x, y);
  }

  private LimitLoss lossOf(double value, double errorVariance) {
    LimitLoss made = new LimitLoss(value, errorVariance, limits);
    return made.atPresent() > SETTLED ? made : null;
  }

  /** Adds the gain of every candidate, by the criterion, to {@code gain}. */
  void addGains(Criterion criterion, double[] gain) {
    double[] inverse = new double[gain.length];
    double[] scratch = new double[gain.length];
    double area = points.areaM2();
    for (int c = 0; c < gain.length; c++) {
      double of = candidateVariance[c] + readingVariance;
      inverse[c] = of > 0 ? 1 / of : 0;
    }
    for (int i = 0; i < variance.length; i++) {
      if (criterion == Criterion.MEAN_VARIANCE) {
        addVarianceDrops(covariance[i], inverse, points.areaM2(i) / area, gain);
      } else if (loss[i] != null) {
        loss[i].addGains(
            covariance[i], inverse, explained[i], variance[i], points.areaM2(i), scratch, gain);
      }
    }
  }

  private static void addVarianceDrops(
      double[] covariance, double[] inverse, double share, double[] gain) {
    for (int c = 0; c < gain.length; c++) {
      gain[c] += share * covariance[c] * covariance[c] * inverse[c];
    }
  }

  /** As if a candidate were read. */
  void take(int candidate) {
    int m = candidateVariance.length;
    double deviation = Math.sqrt(candidateVariance[candidate] + readingVariance);
    if (deviation == 0) {
      return;
    }
    double[] q = new double[m];
    joint.covariances(candidate, m, q);
    for (double[] earlier : taken) {
      double own = earlier[candidate];
      for (int c = 0; c < m; c++) {
        q[c] -= own * earlier[c];
      }
    }
    for (int c = 0; c < m; c++) {
      q[c] /= deviation;
      candidateVariance[c] = Math.max(0, candidateVariance[c] - q[c] * q[c]);
    }
    taken.add(q);
    for (int i = 0; i < variance.length; i++) {
      double own = covariance[i][candidate] / deviation;
      explained[i] = Math.min(variance[i], explained[i] + own * own);
      double[] row = covariance[i];
      for (int c = 0; c < m; c++) {
        row[c] -= own * q[c];
      }
    }
  }

  /** Expected loss over the green, m². */
  double lossM2() {
    double sum = 0;
    for (int i = 0; i < loss.length; i++) {
      if (loss[i] != null) {
        sum += points.areaM2(i) * loss[i].expected(explained[i] / variance[i]);
      }
    }
    return sum;
  }

  /** Mean error variance over the green, value². */
  double meanVariance() {
    double sum = 0;
    for (int i = 0; i < variance.length; i++) {
      sum += points.areaM2(i) * (variance[i] - explained[i]);
    }
    return sum / points.areaM2();
  }

  /** Error variance at a candidate, value². */
  double candidateVariance(int candidate) {
    return candidateVariance[candidate];
  }

  /** Expected loss at a candidate, in probability. */
  double candidateLoss(int candidate) {
    double before = joint.variance(candidate);
    LimitLoss made = before > 0 ? lossOf(joint.value(candidate), before) : null;
    return made == null ? 0 : made.expected(1 - candidateVariance[candidate] / before);
  }
}
