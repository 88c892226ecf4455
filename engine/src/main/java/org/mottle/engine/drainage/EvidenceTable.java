package org.mottle.engine.drainage;

import java.util.EnumMap;
import java.util.Map;
import org.mottle.engine.check.Check;

/**
 * How often each {@link Sign} is seen where each {@link Hypothesis} holds, and how likely each is
 * beforehand. Immutable.
 */
public final class EvidenceTable {
  /** Signs of one family count as if correlated so much. */
  static final double FAMILY_CORRELATION = 0.5;

  private final Map<Sign, double[]> chance;
  private final double[] prior;

  /**
   * @param chance P(sign | hypothesis), in the order of {@link Hypothesis}, between 0.01 and 0.99:
   *     no sign decides alone
   * @param prior in the order of {@link Hypothesis}, above 0; need not sum to 1
   */
  public EvidenceTable(Map<Sign, double[]> chance, double[] prior) {
    int n = Hypothesis.values().length;
    this.chance = new EnumMap<>(Sign.class);
    for (Sign sign : Sign.values()) {
      double[] row = chance.get(sign);
      requireLength("chances of " + sign, row == null ? 0 : row.length, n);
      for (Hypothesis h : Hypothesis.values()) {
        Check.within("chance of " + sign + " given " + h, row[h.ordinal()], 0.01, 0.99, "");
      }
      this.chance.put(sign, row.clone());
    }
    requireLength("prior", prior.length, n);
    double sum = 0;
    for (double p : prior) {
      sum += Check.above("prior probability", p, 0, "");
    }
    this.prior = new double[n];
    for (int i = 0; i < n; i++) {
      this.prior[i] = prior[i] / sum;
    }
  }

  private static void requireLength(String what, int was, int wanted) {
    if (was != wanted) {
      throw new IllegalArgumentException(
          what + " needs " + wanted + " numbers, one a hypothesis, had " + was);
    }
  }

  /**
   * The table of docs/drainage.md: a proposal of this project from the trade's rules of thumb, no
   * published source; three in ten that it is none of these, one in ten for each of the seven.
   */
  public static EvidenceTable proposal() {
    Map<Sign, double[]> t = new EnumMap<>(Sign.class);
    // surface, subsurface, layering, run-on, leak, shade, perched, none
    t.put(Sign.WET_AFTER_RAIN, row(.90, .90, .90, .80, .80, .70, .80, .60));
    t.put(Sign.WET_LATER, row(.35, .90, .50, .80, .80, .50, .30, .20));
    t.put(Sign.WET_IN_HEAT, row(.05, .40, .15, .50, .80, .15, .10, .05));
    t.put(Sign.WET_ALWAYS, row(.05, .40, .10, .40, .80, .10, .10, .05));
    t.put(Sign.ONLY_IRRIGATED, row(.05, .05, .10, .05, .40, .10, .05, .10));
    t.put(Sign.GAP_GROWS, row(.10, .85, .50, .60, .60, .50, .20, .30));
    t.put(Sign.DRIES_SLOWLY, row(.10, .85, .40, .60, .50, .50, .20, .15));
    t.put(Sign.DRIES_WELL, row(.85, .10, .40, .20, .30, .20, .70, .75));
    t.put(Sign.IN_HOLLOW, row(.90, .10, .15, .15, .10, .10, .10, .10));
    t.put(Sign.WATER_GATHERS, row(.85, .40, .40, .60, .30, .30, .50, .35));
    t.put(Sign.UPHILL_EDGE, row(.15, .15, .20, .75, .20, .20, .05, .20));
    t.put(Sign.SURROUNDS_DRAIN_IN, row(.30, .20, .25, .85, .25, .25, .20, .25));
    t.put(Sign.LOW_END, row(.40, .65, .30, .15, .25, .30, .80, .30));
    t.put(Sign.ALONG_DRAIN, row(.25, .75, .25, .25, .25, .25, .30, .25));
    t.put(Sign.NEAR_HEAD, row(.20, .20, .20, .20, .85, .20, .20, .20));
    t.put(Sign.TOP_WETTER, row(.50, .15, .80, .30, .40, .50, .05, .30));
    t.put(Sign.DEEPER_WETTER, row(.30, .70, .15, .60, .40, .30, .90, .40));
    t.put(Sign.SLOW_INFILTRATION, row(.30, .20, .85, .25, .25, .30, .10, .25));
    t.put(Sign.DIFFUSE, row(.30, .30, .75, .40, .30, .70, .50, .50));
    t.put(Sign.SHADED, row(.25, .25, .25, .25, .25, .90, .25, .25));
    return new EvidenceTable(t, row(1, 1, 1, 1, 1, 1, 1, 3));
  }

  private static double[] row(double... chances) {
    return chances;
  }

  /** P(sign | hypothesis). */
  public double chance(Sign sign, Hypothesis hypothesis) {
    return chance.get(sign)[hypothesis.ordinal()];
  }

  /** Probability beforehand. */
  public double prior(Hypothesis hypothesis) {
    return prior[hypothesis.ordinal()];
  }

  /**
   * Logarithm of the evidence ratio of a sign for a hypothesis against none of these: with p the
   * chance that it holds, a = P(sign | H) and b = P(sign | none)
   *
   * <pre>ln [ (p a + (1 − p)(1 − a)) / (p b + (1 − p)(1 − b)) ]
   * </pre>
   *
   * (uncertain evidence: Pearl 1988, Probabilistic Reasoning in Intelligent Systems, ch. 2). It is
   * the mixture of the two ratios a/b and (1 − a)/(1 − b), weighted by the chance that the sign
   * holds where none of the reasons does; 0 at p = ½ for any a and b, which the mixture with p
   * itself would not be.
   */
  public double logRatio(SeenSign seen, Hypothesis hypothesis) {
    double own = likelihood(seen.chance(), chance(seen.sign(), hypothesis));
    return Math.log(own / likelihood(seen.chance(), chance(seen.sign(), Hypothesis.NONE)));
  }

  private static double likelihood(double p, double chance) {
    return p * chance + (1 - p) * (1 - chance);
  }

  /**
   * How well knowing a sign would tell two hypotheses apart: the symmetric divergence (a − b) ln[a
   * (1 − b) / (b (1 − a))], 0 or above.
   */
  double separation(Sign sign, Hypothesis one, Hypothesis other) {
    double a = chance(sign, one);
    double b = chance(sign, other);
    return (a - b) * Math.log(a * (1 - b) / (b * (1 - a)));
  }
}
