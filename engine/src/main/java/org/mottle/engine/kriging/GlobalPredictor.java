package org.mottle.engine.kriging;

import java.util.List;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.solve.RowSums;

/**
 * Kriging with every observation everywhere: one factor, and n² operations a target in panels of
 * targets laid out [observation][target].
 */
final class GlobalPredictor implements Predictor {
  private static final int PANEL = 192;

  private final KrigingSystem system;
  private final BlockSupport support;

  GlobalPredictor(KrigingSystem system, BlockSupport support) {
    this.system = system;
    this.support = support;
  }

  @Override
  public Soundness soundness() {
    return system.soundness();
  }

  @Override
  public List<TrendCoefficient> trendCoefficients() {
    return system.trendCoefficients();
  }

  @Override
  public Estimates estimate(Targets targets, int threads, Progress progress) {
    system.terms.check(targets);
    EstimateArrays into = new EstimateArrays(targets.size());
    if (!soundness().sound()) {
      for (int i = 0; i < targets.size(); i++) {
        into.none(i, soundness().status());
      }
      return into.toEstimates(conditionEstimate());
    }
    SupportCovariance covariance = covariance();
    int width = Math.min(PANEL, Math.max(1, targets.size()));
    Panels.run(
        targets.size(),
        width,
        threads,
        "kriging",
        progress,
        () -> new TargetPanel(system, covariance, targets, width, into));
    return into.toEstimates(conditionEstimate());
  }

  @Override
  public Estimate mean(Targets points, double[] weight) {
    system.terms.check(points);
    if (!soundness().sound()) {
      return Estimate.none(soundness().status());
    }
    WeightedSupport area = WeightedSupport.of(points, weight);
    int n = system.observations.size();
    double[][] panel = new double[n][1];
    double[] c0 = area.meanSemivariances(system.positioned, system.placed, n);
    for (int i = 0; i < n; i++) {
      panel[i][0] = system.solution().structuralSill() - c0[i];
    }
    EstimateArrays into = new EstimateArrays(1);
    double own = system.solution().structuralSill() - area.meanSemivariance(system.covariances);
    finish(panel, 1, new double[][] {area.meanTerms(system.terms)}, own, 0, into);
    return into.toEstimates(conditionEstimate()).get(0);
  }

  /** Solves a panel of covariances and stores the estimates. */
  private void finish(
      double[][] panel,
      int count,
      double[][] targetTerms,
      double own,
      int from,
      EstimateArrays into) {
    new PanelSolve(system, count).solve(panel, count, targetTerms, own, from, into);
  }

  @Override
  public Weights weights(Targets targets, int threads, Progress progress) {
    system.terms.check(targets);
    system.solution();
    int m = targets.size();
    double[][] weight = new double[system.observations.size()][m];
    double[] constant = new double[m];
    EstimateArrays into = new EstimateArrays(m);
    SupportCovariance covariance = covariance();
    int width = Math.min(PANEL, Math.max(1, m));
    Panels.run(
        m,
        width,
        threads,
        "kriging weights",
        progress,
        () -> {
          TargetPanel work = new TargetPanel(system, covariance, targets, width, into);
          WeightPanel weights = new WeightPanel(system);
          return (from, to) -> {
            work.panel(from, to);
            weights.store(work.panel, to - from, work.targetTerms, from, weight, constant);
          };
        });
    return new Weights(into.toEstimates(conditionEstimate()), weight, constant);
  }

  /**
   * Weights of the observations in the estimate of target j, and the Lagrange multipliers of the
   * scaled terms: C w + X m = c0, Xᵀ w = x0.
   */
  Multiplied weights(Targets targets, int j) {
    TargetPanel one = new TargetPanel(system, covariance(), targets, 1, new EstimateArrays(1));
    one.panel(j, j + 1, 0);
    double[] w = new double[one.panel.length];
    for (int i = 0; i < w.length; i++) {
      w[i] = one.panel[i][0];
    }
    double[] multiplier = new WeightPanel(system).solve(w, one.targetTerms[0]);
    for (int t = 0; t < multiplier.length; t++) {
      multiplier[t] = -multiplier[t];
    }
    return new Multiplied(w, multiplier);
  }

  record Multiplied(double[] weight, double[] multiplier) {}

  private SupportCovariance covariance() {
    return SupportCovariance.of(system.covariances, support);
  }

  /** The work of one thread on panels of targets. */
  private static final class TargetPanel implements Panels.Work {
    private final KrigingSystem system;
    private final SupportCovariance covariance;
    private final Targets targets;
    private final EstimateArrays into;
    private final double[][] panel;
    private final double[][] targetTerms;
    private final SupportCovariance.Scratch scratch;
    private final PanelSolve solve;

    TargetPanel(
        KrigingSystem system,
        SupportCovariance covariance,
        Targets targets,
        int width,
        EstimateArrays into) {
      this.system = system;
      this.covariance = covariance;
      this.targets = targets;
      this.into = into;
      this.panel = new double[system.observations.size()][width];
      this.targetTerms = new double[width][system.terms.count()];
      this.scratch = covariance.newScratch(width);
      this.solve = new PanelSolve(system, width);
    }

    @Override
    public void panel(int from, int to) {
      panel(from, to, from);
    }

    /** Leaves L⁻¹c₀ in the panel and stores the estimates from place {@code at} on. */
    void panel(int from, int to, int at) {
      int count = to - from;
      fill(from, count);
      double own = covariance.ownCovariance(system.solution().structuralSill());
      solve.solve(panel, count, targetTerms, own, at, into);
    }

    /** Covariances and terms of targets [from, from + count). */
    private void fill(int from, int count) {
      double sill = system.solution().structuralSill();
      covariance.place(targets, from, count, scratch);
      for (int i = 0; i < panel.length; i++) {
        double[] row = panel[i];
        covariance.semivariances(
            system.positioned.toTarget(i), system.placed, i, count, scratch, row);
        for (int j = 0; j < count; j++) {
          row[j] = sill - row[j];
        }
      }
      addNuggetAtObservations(from, count);
      for (int j = 0; j < count; j++) {
        for (int t = 0; t < targetTerms[j].length; t++) {
          targetTerms[j][t] = system.terms.of(targets, t, from + j);
        }
      }
    }

    private void addNuggetAtObservations(int from, int count) {
      double nugget = covariance.nuggetAtCoincidence();
      if (nugget == 0) {
        return;
      }
      for (int j = 0; j < count; j++) {
        for (int i : system.coincidence.at(targets.x(from + j), targets.y(from + j))) {
          panel[i][j] += system.positioned.exactAtTarget(i) ? nugget : 0;
        }
      }
    }
  }

  /** From covariances to estimates; scratch memory of one thread. */
  private static final class PanelSolve {
    private final KrigingSystem system;
    private final double[] squares;
    private final double[] values;
    private final double[][] drifts;
    private final double[] t;

    PanelSolve(KrigingSystem system, int width) {
      this.system = system;
      this.squares = new double[width];
      this.values = new double[width];
      this.drifts = new double[system.terms.count()][width];
      this.t = new double[system.terms.count()];
    }

    void solve(
        double[][] panel,
        int count,
        double[][] targetTerms,
        double own,
        int from,
        EstimateArrays into) {
      Solution solution = system.solution();
      int n = panel.length;
      solution.factor().solveLower(panel, count);
      java.util.Arrays.fill(squares, 0);
      java.util.Arrays.fill(values, 0);
      RowSums.addSquares(panel, n, count, squares);
      RowSums.addProducts(solution.whitenedResidual(), panel, n, count, values);
      for (int d = 0; d < drifts.length; d++) {
        java.util.Arrays.fill(drifts[d], 0);
        RowSums.addProducts(solution.whitenedTerms()[d], panel, n, count, drifts[d]);
      }
      for (int j = 0; j < count; j++) {
        double value = system.terms.knownMean() + values[j];
        for (int d = 0; d < drifts.length; d++) {
          value += solution.trend().coefficient(d) * targetTerms[j][d];
          t[d] = targetTerms[j][d] - drifts[d][j];
        }
        double variance = own - squares[j] + solution.trend().solveLower(t);
        into.put(from + j, value, variance, own);
      }
    }
  }
}
