package org.mottle.engine.kriging;

/**
 * Semivariances between observations and targets of a support: of the point itself, or averaged
 * over the discretising points of a block. Immutable; each thread has its own scratch.
 */
final class SupportCovariance {
  private final Covariances covariances;
  private final BlockSupport support;
  private final double ownSemivariance;

  private SupportCovariance(Covariances covariances, BlockSupport support, double ownSemivariance) {
    this.covariances = covariances;
    this.support = support;
    this.ownSemivariance = ownSemivariance;
  }

  static SupportCovariance of(Covariances covariances, BlockSupport support) {
    int points = support.points();
    double[] x = new double[points];
    double[] y = new double[points];
    double[] weight = new double[points];
    for (int p = 0; p < points; p++) {
      x[p] = support.dx(p);
      y[p] = support.dy(p);
      weight[p] = support.weight(p);
    }
    Covariances.Placed block = covariances.placeSeparations(x, y);
    double own = support.isPoint() ? 0 : covariances.meanSemivariance(block, weight, block, weight);
    return new SupportCovariance(covariances, support, own);
  }

  /** Variance of the target itself. */
  double ownCovariance(double structuralSill) {
    return support.isPoint()
        ? structuralSill + covariances.nugget()
        : structuralSill - ownSemivariance;
  }

  /** What is added to the covariance with an observation exactly at the target. */
  double nuggetAtCoincidence() {
    return support.isPoint() ? covariances.nugget() : 0;
  }

  /** Scratch memory of one thread for panels of some width. */
  static final class Scratch {
    private final Covariances.Placed[] placed;
    private final double[] squaredLag;
    private final double[] gamma;

    private Scratch(Covariances.Placed[] placed, int width) {
      this.placed = placed;
      this.squaredLag = new double[width];
      this.gamma = new double[width];
    }
  }

  Scratch newScratch(int width) {
    Covariances.Placed[] placed = new Covariances.Placed[support.points()];
    for (int p = 0; p < placed.length; p++) {
      int frames = covariances.frames();
      placed[p] = new Covariances.Placed(new double[frames][width], new double[frames][width]);
    }
    return new Scratch(placed, width);
  }

  /** Places targets [from, from + count), so that semivariances to them can be had. */
  void place(Targets targets, int from, int count, Scratch scratch) {
    for (int p = 0; p < scratch.placed.length; p++) {
      covariances.place(
          targets.xArray(),
          targets.yArray(),
          from,
          count,
          support.dx(p),
          support.dy(p),
          scratch.placed[p]);
    }
  }

  /**
   * Semivariances between one observation and the targets placed, into {@code out}.
   *
   * @param between what holds between that observation and exact places
   */
  void semivariances(
      Covariances between,
      Covariances.Placed observations,
      int i,
      int count,
      Scratch scratch,
      double[] out) {
    if (support.isPoint()) {
      between.semivariances(observations, i, scratch.placed[0], 0, count, scratch.squaredLag, out);
      return;
    }
    java.util.Arrays.fill(out, 0, count, 0);
    for (int p = 0; p < scratch.placed.length; p++) {
      between.semivariances(
          observations, i, scratch.placed[p], 0, count, scratch.squaredLag, scratch.gamma);
      double weight = support.weight(p);
      for (int j = 0; j < count; j++) {
        out[j] += weight * scratch.gamma[j];
      }
    }
  }
}
