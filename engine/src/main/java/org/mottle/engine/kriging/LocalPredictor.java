package org.mottle.engine.kriging;

import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.atomic.DoubleAccumulator;
import org.mottle.engine.neighbour.BucketGrid;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.progress.Progress;

/**
 * Kriging with the neighbours of each target: one small system a target, k³/3 operations. The mean
 * over an area is kriged from the union of the neighbours of its points.
 */
final class LocalPredictor implements Predictor {
  private static final int PANEL = 64;
  private static final Soundness OPEN = new Soundness(CellStatus.ESTIMATED, 1, "");

  private final Kriging specification;
  private final Observations observations;
  private final LocalSetting setting;

  LocalPredictor(Kriging specification, Observations observations) {
    this.specification = specification;
    this.observations = observations;
    this.setting = new LocalSetting(specification, observations);
  }

  @Override
  public Soundness soundness() {
    return OPEN;
  }

  @Override
  public List<TrendCoefficient> trendCoefficients() {
    return List.of();
  }

  @Override
  public Estimates estimate(Targets targets, int threads, Progress progress) {
    setting.terms.check(targets);
    EstimateArrays into = new EstimateArrays(targets.size());
    DoubleAccumulator worst = new DoubleAccumulator(Math::max, 1);
    Panels.run(
        targets.size(),
        PANEL,
        threads,
        "kriging",
        progress,
        () -> {
          LocalSystem system = new LocalSystem(setting);
          return (from, to) -> {
            for (int j = from; j < to; j++) {
              worst.accumulate(system.estimate(targets, j, -1, into, j));
            }
          };
        });
    return into.toEstimates(worst.get());
  }

  /**
   * Leave-one-out: every observation estimated from the others around it, its measurement variance
   * added.
   */
  Estimates estimateWithout(int threads, Progress progress) {
    int n = observations.size();
    Targets targets = setting.targetsAtObservations();
    EstimateArrays into = new EstimateArrays(n);
    DoubleAccumulator worst = new DoubleAccumulator(Math::max, 1);
    Panels.run(
        n,
        PANEL,
        threads,
        "leave-one-out",
        progress,
        () -> {
          LocalSystem system = new LocalSystem(setting);
          return (from, to) -> {
            for (int j = from; j < to; j++) {
              worst.accumulate(system.estimate(targets, j, j, into, j));
              into.addVariance(j, observations.measurementVariance(j));
            }
          };
        });
    return into.toEstimates(worst.get());
  }

  @Override
  public Weights weights(Targets targets, int threads, Progress progress) {
    throw new UnsupportedOperationException(
        "weights of all "
            + observations.size()
            + " observations need kriging from all of them, the neighbourhood was "
            + specification.neighbourhood());
  }

  @Override
  public Estimate mean(Targets points, double[] weight) {
    setting.terms.check(points);
    WeightedSupport.of(points, weight);
    BucketGrid.Search search = setting.grid.search(specification.neighbourhood());
    TreeSet<Integer> rows = new TreeSet<>();
    for (int k = 0; k < points.size(); k++) {
      int count = search.find(points.x(k), points.y(k));
      for (int m = 0; m < count; m++) {
        rows.add(search.row(m));
      }
    }
    Observations near = observations.rows(rows.stream().mapToInt(Integer::intValue).toArray());
    KrigingSystem system =
        new KrigingSystem(
            specification.model(), specification.drift(), near, KrigingSystem.PSEUDO_SILL);
    return new GlobalPredictor(system, specification.support()).mean(points, weight);
  }
}
