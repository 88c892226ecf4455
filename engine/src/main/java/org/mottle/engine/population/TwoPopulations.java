package org.mottle.engine.population;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.mottle.engine.interval.Interval;

/**
 * Tells one population of readings from two on one green, in one survey or in several together: a
 * mixture of two normals with a common variance (McLachlan & Peel 2000, "Finite Mixture Models",
 * ch. 2-3) against one normal, each survey with its own mean.
 *
 * <p>With several surveys the difference of the two means is common or the survey's own, whichever
 * has the smaller Bayesian information criterion. All values are in one unit and spread alike: a
 * survey read as fractions among others in per cent is to be kept out. The test asks of the values
 * alone; whether low readings lie scattered or together is asked by {@link SpotPattern}.
 * Milliseconds; one thread; same input, same bytes.
 */
public final class TwoPopulations {

  /** Least sigma as a fraction of the standard deviation about the surveys' means. */
  private static final double FLOOR = 1e-3;

  private final List<StationValues> surveys;
  private final PopulationRules rules;
  private final double[][] value;
  private final int n;

  private TwoPopulations(List<StationValues> surveys, PopulationRules rules) {
    this.surveys = surveys.stream().filter(s -> s.size() > 0).toList();
    this.rules = rules;
    this.value = this.surveys.stream().map(StationValues::values).toArray(double[][]::new);
    this.n = this.surveys.stream().mapToInt(StationValues::size).sum();
  }

  /** Tests with the rules as they stand in {@link PopulationRules#DEFAULT}. */
  public static PopulationOutcome test(List<StationValues> surveys) {
    return test(surveys, PopulationRules.DEFAULT);
  }

  /**
   * @param surveys the stations of one green, one entry a survey; empty ones are passed over
   */
  public static PopulationOutcome test(List<StationValues> surveys, PopulationRules rules) {
    return new TwoPopulations(surveys, rules).outcome();
  }

  private PopulationOutcome outcome() {
    if (n < rules.leastStations()) {
      return refused(
          Evidence.withoutMixture(n), CannotTell.Rule.STATIONS, n, rules.leastStations());
    }
    double spread = Math.sqrt(squaresAboutMeans() / n);
    if (!(spread > 0)) {
      return refused(Evidence.withoutMixture(n), CannotTell.Rule.SPREAD, spread, 0);
    }
    double floor = FLOOR * spread;
    Mixture mixture = best(floor);
    Evidence evidence = evidence(mixture, spread);
    if (mixture.sigma() <= floor) {
      return refused(evidence, CannotTell.Rule.SPREAD, mixture.sigma(), floor);
    }
    List<CannotTell.Failure> failures = failures(evidence);
    return failures.isEmpty()
        ? found(evidence, floor)
        : new CannotTell(evidence, failures, Reasons.why(evidence, failures));
  }

  private double squaresAboutMeans() {
    double sum = 0;
    for (double[] survey : value) {
      double mean = Expectation.mean(survey);
      for (double v : survey) {
        sum += (v - mean) * (v - mean);
      }
    }
    return sum;
  }

  private Mixture best(double floor) {
    MixtureSearch search = new MixtureSearch(value, floor);
    Mixture common = search.best(Mixture.Depth.COMMON);
    if (value.length == 1) {
      return common;
    }
    Mixture own = search.best(Mixture.Depth.BY_SURVEY);
    return bic(own) < bic(common) ? own : common;
  }

  private double bic(Mixture mixture) {
    return mixture.parameters() * Math.log(n) - 2 * mixture.logLikelihood();
  }

  private Evidence evidence(Mixture mixture, double spread) {
    double logOne = -n * (Math.log(spread) + (1 + Math.log(2 * Math.PI)) / 2);
    double bicOne = (value.length + 1) * Math.log(n) - 2 * logOne;
    double separation = 0;
    for (int s = 0; s < value.length; s++) {
      separation += mixture.separation(s) * value[s].length / n;
    }
    double smaller = Math.min(mixture.share(), 1 - mixture.share());
    return new Evidence(n, bicOne - bic(mixture), separation, smaller, Optional.of(mixture));
  }

  private List<CannotTell.Failure> failures(Evidence evidence) {
    List<CannotTell.Failure> failures = new ArrayList<>();
    if (!(evidence.deltaBic() > rules.leastDeltaBic())) {
      failures.add(
          new CannotTell.Failure(
              CannotTell.Rule.DELTA_BIC, evidence.deltaBic(), rules.leastDeltaBic()));
    }
    if (!(evidence.separation() > rules.leastSeparation())) {
      failures.add(
          new CannotTell.Failure(
              CannotTell.Rule.SEPARATION, evidence.separation(), rules.leastSeparation()));
    }
    if (!(evidence.smallerShare() >= rules.leastShare())) {
      failures.add(
          new CannotTell.Failure(
              CannotTell.Rule.SHARE, evidence.smallerShare(), rules.leastShare()));
    }
    return failures;
  }

  private static CannotTell refused(
      Evidence evidence, CannotTell.Rule rule, double figure, double limit) {
    List<CannotTell.Failure> failures = List.of(new CannotTell.Failure(rule, figure, limit));
    return new CannotTell(evidence, failures, Reasons.why(evidence, failures));
  }

  private TwoFound found(Evidence evidence, double floor) {
    Mixture mixture = evidence.mixture().orElseThrow();
    Expectation free = new Expectation(value, mixture.kind(), floor);
    List<Interval> depth = new ArrayList<>();
    for (int s = 0; s < value.length; s++) {
      depth.add(
          s > 0 && mixture.kind() == Mixture.Depth.COMMON
              ? depth.get(0)
              : new DepthProfile(free, mixture, s).interval());
    }
    return new TwoFound(
        evidence, surveys, memberships(mixture), GroundShare.of(mixture, surveys), depth);
  }

  /** Stations chosen for what is seen there have a prior of their own. */
  private double[][] memberships(Mixture mixture) {
    double ofPlan = GroundShare.fixedPoint(mixture, surveys, false);
    double ofChosen = GroundShare.fixedPoint(mixture, surveys, true);
    double[][] membership = new double[value.length][];
    for (int s = 0; s < value.length; s++) {
      membership[s] = new double[value[s].length];
      for (int i = 0; i < value[s].length; i++) {
        double prior = surveys.get(s).chosen(i) ? ofChosen : ofPlan;
        membership[s][i] = mixture.membership(s, value[s][i], prior);
      }
    }
    return membership;
  }
}
