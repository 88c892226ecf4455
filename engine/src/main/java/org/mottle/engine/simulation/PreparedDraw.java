package org.mottle.engine.simulation;

import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.kriging.Drift;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.Predictor;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.kriging.Weights;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Refusal;

/**
 * All that is done once a draw of the parameters: the field, the kriging mean and standard
 * deviation of the cells, and the weights of the readings there. Immutable, shared by threads.
 *
 * @param weight [readings][cells]
 * @param mean [cells] value
 * @param sd [cells] value
 */
record PreparedDraw(
    Observations observations,
    GaussianField field,
    NodeStencil stencil,
    double[][] weight,
    double[] mean,
    double[] sd) {

  /** A draw prepared, or why not. */
  record Attempt(PreparedDraw prepared, Refusal refusal) {}

  static Attempt of(Draw draw, Drift drift, CellGrid lattice, Targets cells, Progress progress) {
    Predictor predictor = Kriging.ordinary(draw.model()).with(drift).fit(draw.observations());
    if (!predictor.soundness().sound()) {
      return new Attempt(null, new Refusal(predictor.soundness().reason(), ""));
    }
    FieldOutcome outcome = FieldOutcome.of(draw.model(), lattice, drift.unbiased());
    if (!(outcome instanceof GaussianField field)) {
      return new Attempt(null, ((FieldOutcome.Refused) outcome).refusal());
    }
    Weights weights = predictor.weights(cells, 1, progress);
    double[] sd = weights.estimates().variances();
    for (int i = 0; i < sd.length; i++) {
      sd[i] = Math.sqrt(sd[i]);
    }
    return new Attempt(
        new PreparedDraw(
            draw.observations(),
            field,
            new NodeStencil(
                new StructuralCovariance(draw.model()), lattice.cell(), drift.unbiased()),
            weights.toArray(),
            weights.estimates().values(),
            sd),
        null);
  }
}
