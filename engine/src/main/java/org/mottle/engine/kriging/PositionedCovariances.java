package org.mottle.engine.kriging;

import java.util.HashMap;
import java.util.Map;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Structure;

/**
 * The covariances of observations whose places are in error, as the best linear prediction needs
 * them (Cressie & Kornak 2003, Statistical Science 18, 436-456): among observations i and j blurred
 * by the jitter of both, s_i² + s_j² an axis, between observation i and a target by its jitter and
 * the shift in common, s_i² + b². The shift moves all observations alike and does not enter among
 * them; an observation with itself keeps the variance of the soil. The nugget is shared only by
 * observations that are exactly at one place. Immutable.
 *
 * <p>A drift on coordinates is taken at the recorded places. Being off by an error of s along a
 * slope b adds b² s² to the variance of a reading, and as much of the shift to an error in common;
 * who knows the slope gives them to the observations.
 *
 * <p>One table for each pair of different jitters that at least {@link #WORTH_A_TABLE} pairs of
 * observations have, and for each jitter to the targets, under 0.1 ms each and structure.
 */
final class PositionedCovariances {
  private static final int WORTH_A_TABLE = 128;

  private final NestedModel model;
  private final double originX;
  private final double originY;
  private final Covariances exact;
  private final PositionError error;

  /** Number of observations with each jitter. */
  private final Map<Double, Integer> count = new HashMap<>();

  private final Covariances[] toTarget;

  PositionedCovariances(
      NestedModel model, Drift drift, Observations observations, double originX, double originY) {
    this.model = model;
    this.originX = originX;
    this.originY = originY;
    this.exact = new Covariances(model, originX, originY);
    this.error = observations.positionError();
    if (!error.exact()) {
      refuseWhatIsNotCovered(model, drift);
    }
    Map<Double, Covariances> bySd = new HashMap<>();
    this.toTarget = new Covariances[observations.size()];
    for (int i = 0; i < toTarget.length; i++) {
      count.merge(error.jitterSdM(i), 1, Integer::sum);
      double sd = together(error.jitterSdM(i), error.shiftSdM());
      toTarget[i] =
          bySd.computeIfAbsent(
              sd, s -> s == 0 ? exact : Covariances.displaced(model, originX, originY, s));
    }
  }

  private static void refuseWhatIsNotCovered(NestedModel model, Drift drift) {
    if (!model.bounded()) {
      throw new IllegalArgumentException(
          "position error needs a variogram that levels off, was "
              + model
              + "; use a bounded model, or leave the position error out");
    }
    for (Structure structure : model.structures()) {
      if (!structure.anisotropy().isotropic()) {
        throw new IllegalArgumentException(
            "position error needs a variogram that is the same in all directions, was "
                + structure
                + "; use isotropic structures, or leave the position error out");
      }
    }
    if (drift.usesCovariates()) {
      throw new IllegalArgumentException(
          "position error needs covariates that are known where the readings were, the drift was "
              + drift
              + "; use a drift without covariates, or leave the position error out");
    }
  }

  /** Without position error, and of the targets among themselves. */
  Covariances exact() {
    return exact;
  }

  /** Between observation {@code i} and exact places. */
  Covariances toTarget(int i) {
    return toTarget[i];
  }

  /** Whether observation {@code i} is exactly where a target can be. */
  boolean exactAtTarget(int i) {
    return toTarget[i] == exact;
  }

  /** Whether observations i and j can be exactly at one place: neither has jitter. */
  boolean exactAmong(int i, int j) {
    return error.jitterSdM(i) == 0 && error.jitterSdM(j) == 0;
  }

  /** The upper triangle of the semivariances among the observations, 0 on the diagonal. */
  double[][] upper(Covariances.Placed placed) {
    int n = toTarget.length;
    double[][] upper = new double[n][n];
    double[] squaredLag = new double[n];
    double[] gamma = new double[n];
    Map<Double, Covariances> among = new HashMap<>();
    for (int i = 0; i < n; i++) {
      for (int from = i; from < n; ) {
        int to = from + 1;
        while (to < n && error.jitterSdM(to) == error.jitterSdM(from)) {
          to++;
        }
        among(among, i, from).semivariances(placed, i, placed, from, to - from, squaredLag, gamma);
        System.arraycopy(gamma, 0, upper[i], from, to - from);
        from = to;
      }
      upper[i][i] = 0;
    }
    return upper;
  }

  private Covariances among(Map<Double, Covariances> made, int i, int j) {
    double a = error.jitterSdM(i);
    double b = error.jitterSdM(j);
    if (a == 0 && b == 0) {
      return exact;
    }
    return made.computeIfAbsent(
        together(a, b),
        sd ->
            (long) count.get(a) * count.get(b) < WORTH_A_TABLE
                ? Covariances.displacedOnce(model, originX, originY, sd)
                : Covariances.displaced(model, originX, originY, sd));
  }

  private static double together(double a, double b) {
    return Math.sqrt(a * a + b * b);
  }
}
