package org.mottle.engine.position;

import java.util.ArrayList;
import java.util.List;

/**
 * Where to cut a blurred semivariance for interpolation. Blurring leaves it smooth on the scale of
 * the displacement s everywhere, and on that of the distance to the nearest kink (at lag 0, and at
 * the range of a model that ends there): a piece may be as wide as 2 s or as that distance.
 */
final class Pieces {
  private static final double SMOOTH_SDS = 2;

  /** Of the reach of the model: what no piece is wider than, the scale of the model's own bends. */
  private static final double WIDEST = 0.2;

  private Pieces() {}

  /** Ascending lags from 0 to where the blurred model is at its sill. */
  static double[] edges(DisplacedSemivariance exact, double sdM) {
    double kink = exact.ends() ? exact.reach() : Double.POSITIVE_INFINITY;
    double smooth = SMOOTH_SDS * sdM;
    double widest = Math.max(smooth, WIDEST * exact.reach());
    double end = exact.reach(sdM);
    List<Double> edges = new ArrayList<>();
    double at = 0;
    while (at < end) {
      edges.add(at);
      at += Math.min(widest, Math.max(smooth, Math.min(at, shareToKink(kink, at))));
    }
    edges.add(end);
    return edges.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** Half the way to a kink ahead leaves a piece no wider than its distance; past it, all of it. */
  private static double shareToKink(double kink, double at) {
    return at < kink ? (kink - at) / 2 : at - kink;
  }
}
