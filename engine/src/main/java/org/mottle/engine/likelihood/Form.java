package org.mottle.engine.likelihood;

import java.util.ArrayList;
import java.util.List;

/**
 * What is tried as a whole: a shape of the correlation, and how much the greens of one survey
 * differ in their sills.
 *
 * @param candidate shape
 * @param sillSpread standard deviation of the logarithm of a green's sill about its survey's
 */
record Form(Candidate candidate, double sillSpread) {
  /** From greens as alike as they come to some that vary three times as much as others. */
  private static final double[] SPREADS = {0.1, 0.3, 0.55, 0.9};

  /** Spread that is taken for likely before any reading, half-normal. */
  private static final double USUAL = 0.5;

  /** All spreads of each candidate, those of one candidate together. */
  static List<Form> of(List<Candidate> candidates) {
    List<Form> forms = new ArrayList<>();
    for (Candidate candidate : candidates) {
      for (double spread : SPREADS) {
        forms.add(new Form(candidate, spread));
      }
    }
    return forms;
  }

  /** Logarithm of the prior density of the spread, but for a constant. */
  double logPrior() {
    double z = sillSpread / USUAL;
    return -0.5 * z * z;
  }
}
