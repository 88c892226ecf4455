package org.mottle.engine.simulation;

import java.util.List;
import org.mottle.engine.check.Check;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.kriging.Drift;
import org.mottle.engine.progress.Progress;

/**
 * A specification of conditional simulation, to be prepared for observations and cells.
 *
 * @param drift what is assumed of the mean; without covariates
 * @param realisations number of realisations, split evenly over the draws of the parameters
 * @param seed of all randomness
 */
public record Simulation(Drift drift, int realisations, long seed) {

  public Simulation {
    Check.atLeast("realisations", realisations, 1, "");
    if (drift.usesCovariates()) {
      throw new IllegalArgumentException(
          "simulation knows no covariates, drift was " + drift + "; use a constant drift");
    }
  }

  /** An unknown mean, 500 realisations. */
  public static Simulation withDefaults() {
    return new Simulation(Drift.constant(), 500, 0);
  }

  public Simulation with(Drift newDrift) {
    return new Simulation(newDrift, realisations, seed);
  }

  public Simulation withRealisations(int number) {
    return new Simulation(drift, number, seed);
  }

  public Simulation withSeed(long newSeed) {
    return new Simulation(drift, realisations, newSeed);
  }

  /**
   * Does all that is done once a draw: its field and its kriging weights.
   *
   * @param draws at least one and no more than realisations
   * @param cells whose needed centres the realisations are wanted at
   */
  public SimulationOutcome of(List<Draw> draws, GreenCells cells, int threads, Progress progress) {
    Check.within("number of draws", draws.size(), 1, realisations, "");
    return ConditionalSimulation.prepare(this, draws, cells, threads, progress);
  }
}
