package org.mottle.engine.order;

import java.util.Arrays;
import java.util.List;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.order.Alignment.Pace;

/**
 * Pace and time of an insertion from a visit itself: a weighted line of gap against distance, each
 * step weighed by its posterior chance and, with the weights of Huber (1964, Annals of Mathematical
 * Statistics 35, 73-101), by how far it lies off, with priors of 20 % about the usual values. The
 * scatter is the weighted median residual.
 */
final class PaceFit {
  static final double START_SD = 0.18;

  private static final double PRIOR_SD = 0.2;
  private static final double LEAST_SD = 0.03;
  private static final double MOST_SD = 0.35;
  private static final double HUBER = 1.5;
  private static final double MEDIAN_SDS = 0.6745;

  /** Gaps that the usual scatter counts for beside those of the visit. */
  private static final double PRIOR_GAPS = 3;

  private PaceFit() {}

  static Pace of(
      List<PlannedStation> stations,
      OrderedVisit visit,
      StationChain.Posterior posterior,
      OrderSettings settings,
      Pace before) {
    GapModel model = GapModel.of(before);
    double usualLeg = 1 / settings.paceMS();
    double a = 1 / square(PRIOR_SD * settings.insertionS());
    double b = 0;
    double c = 1 / square(PRIOR_SD * usualLeg);
    double p = settings.insertionS() * a;
    double q = usualLeg * c;
    int gaps = 0;
    double[] off = new double[visit.size()];
    double[] likely = new double[visit.size()];
    for (int k = 1; k < visit.size(); k++) {
      double gap = visit.gap(k);
      if (Double.isNaN(gap) || visit.readings().get(k - 1).replicate() > 1) {
        continue;
      }
      gaps++;
      double[][] step = posterior.step()[k];
      double moved = 0;
      double residual = 0;
      for (int i = 0; i < stations.size(); i++) {
        for (int j = i + 1; j < stations.size(); j++) {
          double chance = step[i][j];
          if (chance < 1e-6) {
            continue;
          }
          double d =
              Math.hypot(
                  stations.get(j).x() - stations.get(i).x(),
                  stations.get(j).y() - stations.get(i).y());
          double leg = d / before.paceMS();
          double variance = model.variance(before.insertionS(), leg);
          double z = (gap - before.insertionS() - leg) / Math.sqrt(variance);
          double w = chance * Math.min(1, HUBER / Math.max(1e-9, Math.abs(z))) / variance;
          a += w;
          b += w * d;
          c += w * d * d;
          p += w * gap;
          q += w * d * gap;
          moved += chance;
          residual += chance * Math.abs(z);
        }
      }
      off[k] = moved > 0 ? residual / moved : 0;
      likely[k] = moved;
    }
    double determinant = a * c - b * b;
    double insertion = (c * p - b * q) / determinant;
    double perMetre = (a * q - b * p) / determinant;
    insertion = clamp(insertion, settings.insertionS() / 3, settings.insertionS() * 3);
    perMetre = clamp(perMetre, usualLeg / 3, usualLeg * 3);
    double sd = scatter(off, likely, before.relativeSd());
    return new Pace(1 / perMetre, insertion, sd, gaps);
  }

  private static double scatter(double[] off, double[] likely, double before) {
    double[] sure = new double[off.length];
    int n = 0;
    for (int k = 0; k < off.length; k++) {
      if (likely[k] > 0.5) {
        sure[n++] = off[k];
      }
    }
    if (n == 0) {
      return START_SD;
    }
    double[] sorted = Arrays.copyOf(sure, n);
    Arrays.sort(sorted);
    double own = before * sorted[n / 2] / MEDIAN_SDS;
    double log = n * Math.log(Math.max(own, LEAST_SD)) + PRIOR_GAPS * Math.log(START_SD);
    return clamp(Math.exp(log / (n + PRIOR_GAPS)), LEAST_SD, MOST_SD);
  }

  private static double clamp(double value, double low, double high) {
    return Math.max(low, Math.min(high, value));
  }

  private static double square(double v) {
    return v * v;
  }
}
