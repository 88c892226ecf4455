package org.mottle.engine.irrigation;

/**
 * How many of n values are their lowest quarter (or half) when n does not divide. The published
 * figures differ by this rule, so it goes with every result.
 */
public enum LowQuarter {
  /** Rounded up to whole cans; the default. */
  UP("rounded up"),
  /** Rounded down to whole cans, at least one. */
  DOWN("rounded down"),
  /** The next can counts by the remaining fraction. */
  FRACTION("by fraction");

  private final String label;

  LowQuarter(String label) {
    this.label = label;
  }

  /** In words. */
  public String label() {
    return label;
  }

  /** Number of values that a share of n is; whole but for {@link #FRACTION}. */
  public double count(int n, double share) {
    double exact = n * share;
    return switch (this) {
      case UP -> Math.ceil(exact);
      case DOWN -> Math.max(1, Math.floor(exact));
      case FRACTION -> Math.max(1, exact);
    };
  }

  /** Mean of the lowest share of ascending values. */
  double mean(double[] ascending, double share) {
    double count = count(ascending.length, share);
    int whole = (int) count;
    double sum = 0;
    for (int i = 0; i < whole; i++) {
      sum += ascending[i];
    }
    return (count > whole ? sum + (count - whole) * ascending[whole] : sum) / count;
  }
}
