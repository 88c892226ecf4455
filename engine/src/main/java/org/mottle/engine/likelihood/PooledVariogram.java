package org.mottle.engine.likelihood;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.VariogramModel;

/**
 * A variogram of many small surveys, with what the readings leave open of it. Range and nugget are
 * common to all, the sill of the structure is a survey's own, and a green's own about that.
 * Immutable.
 */
public final class PooledVariogram implements PooledOutcome {

  /**
   * @param candidate shape
   * @param logLikelihood greatest restricted log likelihood, divided by the design effect
   * @param aicc corrected criterion of Akaike (Hurvich & Tsai 1989); the least is the best
   * @param weight share of the shape in the draws, exp(-Δ/2) to the sum 1
   */
  public record Score(Candidate candidate, double logLikelihood, double aicc, double weight) {}

  /**
   * @param practicalRange of the best shape, m
   * @param nugget variance of a station of one insertion at no distance, value²
   * @param nuggetShare of the mean sill of the surveys
   * @param sills of the structure by survey, mean over its greens, value²
   */
  public record Parameters(
      Interval practicalRange,
      Interval nugget,
      Interval nuggetShare,
      SortedMap<String, Interval> sills) {

    public Parameters {
      sills = Collections.unmodifiableSortedMap(new TreeMap<>(sills));
    }
  }

  /**
   * What the variogram rests on.
   *
   * @param samples green-surveys in the pool
   * @param stations in the pool
   * @param closePairs pairs of stations so near that the structure between them is below 0.15 of
   *     its sill, position error included
   * @param replicates insertions at the same stations
   * @param designEffect by which repeated surveys of the same greens weigh less
   * @param gain AICc of readings without structure, one variance a survey, less that of the best
   *     shape; above 0 the readings show structure
   * @param borrowed whether the pool was too small, so that the prior of the nugget share entered
   */
  public record Evidence(
      int samples,
      int stations,
      int closePairs,
      Replicates replicates,
      double designEffect,
      double gain,
      boolean borrowed) {

    /** Close pairs and degrees of freedom of replicates from which a nugget can be known. */
    static final int ENOUGH = 10;

    /** Whether anything but the model's shape tells nugget and structure apart. */
    public boolean nuggetKnown() {
      return closePairs + (replicates.enough() ? replicates.degrees() : 0) >= ENOUGH;
    }
  }

  private final List<Score> scores;
  private final int best;
  private final Parameters parameters;
  private final Evidence evidence;
  private final List<String> notes;
  private final Draws draws;

  PooledVariogram(
      List<Score> scores,
      int best,
      Parameters parameters,
      Evidence evidence,
      List<String> notes,
      Draws draws) {
    this.scores = List.copyOf(scores);
    this.best = best;
    this.parameters = parameters;
    this.evidence = evidence;
    this.notes = List.copyOf(notes);
    this.draws = draws;
  }

  /** Shapes in the order they were tried. */
  public List<Score> scores() {
    return scores;
  }

  /** The shape of the least AICc. */
  public Candidate shape() {
    return scores.get(best).candidate();
  }

  public Parameters parameters() {
    return parameters;
  }

  public Evidence evidence() {
    return evidence;
  }

  /** What was left out or cannot be known, in words. */
  public List<String> notes() {
    return notes;
  }

  /** Variance of one insertion from the replicates, value²; empty with too few. */
  public Optional<Double> insertionVariance() {
    Replicates r = evidence.replicates();
    return r.enough() ? Optional.of(r.variance()) : Optional.empty();
  }

  /** Surveys in the pool, by name. */
  public List<String> surveys() {
    return new ArrayList<>(parameters.sills().keySet());
  }

  /** The best model of a survey: the nugget, and a structure with the sill of the survey. */
  public NestedModel model(String survey) {
    Interval sill = parameters.sills().get(survey);
    if (sill == null) {
      throw new IllegalArgumentException(
          "survey '" + survey + "' is not in the pool of " + parameters.sills().keySet());
    }
    VariogramModel structure = shape().model(sill.best(), parameters.practicalRange().best());
    return NestedModel.of(parameters.nugget().best(), structure);
  }

  /**
   * Models of one green in one survey, equally likely, that spread over what is left open of shape,
   * range, nugget and the green's own sill. The same sample gives the same models.
   *
   * @param sample a sample of a survey of the pool; the stations screened out of the pool too
   */
  public List<NestedModel> draws(Sample sample) {
    return draws.of(sample);
  }

  /**
   * What all the other greens say of one green in one or more surveys, under equally likely sets of
   * shape, range and nugget: its sills are left as open as the greens of a survey differ, and its
   * own readings do not enter them. For tests of whether those readings hold more than the others
   * show.
   *
   * @param samples of one green, each of a survey of the pool
   * @param most views at most
   */
  public List<OthersView> othersOf(List<Sample> samples, int most) {
    return draws.withoutOwn(samples, most);
  }
}
