package org.mottle.engine.fit;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Structure;
import org.mottle.engine.variogram.VariogramModel;

/** Turns the lowest place of a fit problem into a model, with what must be said about it. */
final class Verdict {
  private static final double SAME = 1e-9;
  private static final double LEVEL = 0.8;

  private final WeightedLeastSquares wanted;
  private final ExperimentalVariogram variogram;
  private final FitProblem problem;

  Verdict(WeightedLeastSquares wanted, ExperimentalVariogram variogram, FitProblem problem) {
    this.wanted = wanted;
    this.variogram = variogram;
    this.problem = problem;
  }

  FitOutcome on(double[] place) {
    NestedModel model = problem.model(place);
    double sse = wanted.weighting().sumOfSquares(variogram, model);
    if (!Double.isFinite(sse)) {
      return new NotFitted(
          "the sum of squares is " + sse + ": no model within the bounds is finite");
    }
    List<String> notes = new ArrayList<>();
    if (mayBeNuggetAlone()) {
      NestedModel alone = NestedModel.of(problem.nuggetAlone());
      double aloneSse = wanted.weighting().sumOfSquares(variogram, alone);
      if (aloneSse <= sse * (1 + SAME) + SAME * SAME * scale()) {
        notes.add("no spatial structure found: a nugget alone fits as well" + falling());
        return new Fitted(alone, aloneSse, problem.evaluations(), notes);
      }
    }
    model = withoutEmpty(model, notes);
    if (variogram.lags().size() == wanted.freeParameters()) {
      notes.add(
          "as many free parameters as lags ("
              + variogram.lags().size()
              + "): the fit cannot be judged");
    }
    for (int a = 0; a < place.length; a++) {
      String bound = problem.atBound(a, place[a]);
      if (bound != null) {
        notes.add(bound);
      }
    }
    model.structures().forEach(structure -> judge(structure, notes));
    return new Fitted(model, sse, problem.evaluations(), notes);
  }

  private boolean mayBeNuggetAlone() {
    return !wanted.structures().isEmpty()
        && !wanted.nugget().isFixed()
        && wanted.structures().stream().allMatch(s -> s.partialSill().lower() == 0);
  }

  /** Size of the sum of squares when nothing is explained. */
  private double scale() {
    double mean =
        variogram.lags().stream().mapToDouble(lag -> lag.semivariance()).average().orElse(0);
    return variogram.lags().stream()
        .mapToDouble(lag -> wanted.weighting().weight(lag, mean) * mean * mean)
        .sum();
  }

  private String falling() {
    int n = variogram.lags().size();
    boolean falls = n > 1;
    for (int i = 1; i < n; i++) {
      falls &= variogram.lags().get(i).semivariance() < variogram.lags().get(i - 1).semivariance();
    }
    return falls ? "; the semivariance falls with the lag" : "";
  }

  private NestedModel withoutEmpty(NestedModel model, List<String> notes) {
    List<Structure> kept = new ArrayList<>();
    for (Structure s : model.structures()) {
      if (s.model().partialSill() > 0) {
        kept.add(s);
      } else {
        notes.add("the " + s.model().type() + " structure came out with sill 0 and is left out");
      }
    }
    return new NestedModel(model.nugget(), kept);
  }

  private void judge(Structure structure, List<String> notes) {
    if (!structure.model().bounded()) {
      return;
    }
    double longest = variogram.longestLag();
    double shortest =
        variogram.lags().stream().mapToDouble(lag -> lag.distance()).min().orElse(longest);
    VariogramModel model = structure.model();
    if (model.semivariance(longest) < LEVEL * model.partialSill()) {
      notes.add(
          "the "
              + model.type()
              + " structure does not level off within the longest lag of "
              + Figures.of(longest)
              + " m: its sill of "
              + Figures.of(model.partialSill())
              + " and its range (95 % at "
              + Figures.of(model.practicalRange())
              + " m) are extrapolated");
    } else if (model.semivariance(shortest) > 0.95 * model.partialSill()) {
      notes.add(
          "the "
              + model.type()
              + " structure ends at "
              + Figures.of(model.practicalRange())
              + " m, before the shortest lag of "
              + Figures.of(shortest)
              + " m: it cannot be told from nugget");
    } else if (lagsWithin(structure) == 1) {
      notes.add(
          "only one lag is shorter than the range of the "
              + model.type()
              + " structure (95 % at "
              + Figures.of(model.practicalRange())
              + " m): nugget and range cannot be told apart");
    }
  }

  /** Lags at which the structure is still on its way to its sill. */
  private long lagsWithin(Structure structure) {
    return variogram.lags().stream()
        .mapToDouble(Lag::distance)
        .filter(h -> structure.model().semivariance(h) < 0.95 * structure.model().partialSill())
        .distinct()
        .count();
  }
}
