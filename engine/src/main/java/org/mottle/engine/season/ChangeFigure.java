package org.mottle.engine.season;

import org.mottle.engine.interval.Interval;

/**
 * One change, as far as it is known: a mixture of Gaussians, one a draw of the model. Immutable.
 */
public final class ChangeFigure {
  private final Drawn drawn;

  ChangeFigure(Drawn drawn) {
    this.drawn = drawn;
  }

  /** % by volume, later minus earlier. */
  public double mean() {
    return drawn.mean()[0];
  }

  /** Standard deviation of its error, % by volume. */
  public double sd() {
    return drawn.sd()[0];
  }

  /** With its 90 % interval, % by volume. */
  public Interval interval() {
    return drawn.interval(0);
  }

  /** Probability that the change is above {@code pct}. */
  public double above(double pct) {
    return drawn.above(pct)[0];
  }

  /** Probability that the change is below {@code pct}. */
  public double below(double pct) {
    return drawn.below(pct)[0];
  }
}
