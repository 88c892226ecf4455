package org.mottle.engine.kriging;

/**
 * Estimates at many targets, in their order. Immutable; arrays are handed out as copies.
 *
 * <p>{@code conditionEstimate} is the largest of all the systems solved; {@code clamped} counts the
 * variances that rounding had left a hair below zero and that were set to zero.
 */
public final class Estimates {
  private final double[] value;
  private final double[] variance;
  private final byte[] status;
  private final int clamped;
  private final double conditionEstimate;

  /** Takes the arrays over: the caller lets go of them. */
  private Estimates(
      double[] value, double[] variance, byte[] status, int clamped, double conditionEstimate) {
    this.value = value;
    this.variance = variance;
    this.status = status;
    this.clamped = clamped;
    this.conditionEstimate = conditionEstimate;
  }

  static Estimates of(
      double[] value, double[] variance, byte[] status, int clamped, double conditionEstimate) {
    return new Estimates(value, variance, status, clamped, conditionEstimate);
  }

  /**
   * Values without a variance; NaN stands for too few neighbours.
   *
   * @param value [n], copied
   */
  public static Estimates withoutVariance(double[] value) {
    double[] variance = new double[value.length];
    java.util.Arrays.fill(variance, Double.NaN);
    byte[] status = new byte[value.length];
    for (int i = 0; i < value.length; i++) {
      status[i] =
          (byte)
              (Double.isNaN(value[i]) ? CellStatus.TOO_FEW_NEIGHBOURS : CellStatus.ESTIMATED)
                  .ordinal();
    }
    return new Estimates(value.clone(), variance, status, 0, 1);
  }

  /**
   * Values with a variance each, all of them estimated.
   *
   * @param value [n], copied
   * @param variance [n], copied
   */
  public static Estimates of(double[] value, double[] variance) {
    byte[] status = new byte[value.length];
    java.util.Arrays.fill(status, (byte) CellStatus.ESTIMATED.ordinal());
    return new Estimates(value.clone(), variance.clone(), status, 0, 1);
  }

  public int size() {
    return value.length;
  }

  public Estimate get(int i) {
    return new Estimate(value[i], variance[i], status(i));
  }

  public double value(int i) {
    return value[i];
  }

  public double variance(int i) {
    return variance[i];
  }

  public CellStatus status(int i) {
    return STATUSES[status[i]];
  }

  public double[] values() {
    return value.clone();
  }

  public double[] variances() {
    return variance.clone();
  }

  /** How many targets ended with this status. */
  public int count(CellStatus wanted) {
    int count = 0;
    for (byte s : status) {
      count += s == wanted.ordinal() ? 1 : 0;
    }
    return count;
  }

  /** How many variances were set to zero from a rounding error below it. */
  public int clamped() {
    return clamped;
  }

  /** The largest condition estimate among the systems solved; infinite if one was not solvable. */
  public double conditionEstimate() {
    return conditionEstimate;
  }

  private static final CellStatus[] STATUSES = CellStatus.values();
}
