package org.mottle.export.calibration;

/**
 * How often what was said with a probability was so: area, area times probability and area that was
 * so, in a hundred classes of the probability. Not for several threads.
 */
final class Histogram {
  static final int CLASSES = 100;

  /** Class of probability 0.8. */
  private static final int CALLED = 80;

  /** Bins that hold less of the area than this tell nothing. */
  private static final double LEAST_SHARE = 0.01;

  /** Below it a probability at a class boundary is rounding. */
  private static final double ROUNDING = 1e-9;

  private final double[] area = new double[CLASSES];
  private final double[] claimed = new double[CLASSES];
  private final double[] so = new double[CLASSES];

  void add(double p, boolean isSo, double m2) {
    int c = Math.min(CLASSES - 1, (int) (p * CLASSES + ROUNDING));
    area[c] += m2;
    claimed[c] += p * m2;
    so[c] += isSo ? m2 : 0;
  }

  void add(Histogram other) {
    for (int c = 0; c < CLASSES; c++) {
      area[c] += other.area[c];
      claimed[c] += other.claimed[c];
      so[c] += other.so[c];
    }
  }

  /**
   * One of the ten bins.
   *
   * @param share of all the area
   * @param said mean probability; NaN in an empty bin
   * @param found share of the bin that was so; NaN in an empty bin
   */
  record Bin(double share, double said, double found) {
    boolean tells() {
      return share >= LEAST_SHARE;
    }

    double gap() {
      return Math.abs(said - found);
    }
  }

  Bin bin(int tenth) {
    int from = tenth * CLASSES / 10;
    int to = from + CLASSES / 10;
    double here = sum(area, from, to);
    return new Bin(
        here / sum(area, 0, CLASSES), sum(claimed, from, to) / here, sum(so, from, to) / here);
  }

  /** The worst gap between what was said and what was found, among the bins that tell. */
  double worstGap() {
    double worst = Double.NaN;
    for (int tenth = 0; tenth < 10; tenth++) {
      Bin bin = bin(tenth);
      if (bin.tells()) {
        worst = Double.isNaN(worst) ? bin.gap() : Math.max(worst, bin.gap());
      }
    }
    return worst;
  }

  double areaM2() {
    return sum(area, 0, CLASSES);
  }

  /** Area at P ≥ 0.8. */
  double calledM2() {
    return sum(area, CALLED, CLASSES);
  }

  /** Area at P ≥ 0.8 that was so. */
  double calledSoM2() {
    return sum(so, CALLED, CLASSES);
  }

  /**
   * The most area that can be called, by whatever threshold of the probability, while this share of
   * it is so.
   */
  double callableM2(double precision) {
    double most = 0;
    for (int from = 0; from < CLASSES; from++) {
      double called = sum(area, from, CLASSES);
      if (called > 0 && sum(so, from, CLASSES) >= precision * called) {
        most = Math.max(most, called);
      }
    }
    return most;
  }

  private static double sum(double[] of, int from, int to) {
    double sum = 0;
    for (int c = from; c < to; c++) {
      sum += of[c];
    }
    return sum;
  }
}
