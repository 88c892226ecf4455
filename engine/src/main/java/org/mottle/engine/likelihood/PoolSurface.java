package org.mottle.engine.likelihood;

import java.util.Arrays;
import java.util.List;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.progress.Progress;

/**
 * The restricted log likelihood of each survey over shape, range, nugget and the survey's sill,
 * divided by the design effect. Filled node by node in parallel; every sum runs in the order of the
 * samples.
 */
final class PoolSurface {
  private final Axes axes;
  private final List<Candidate> candidates;
  private final List<String> surveys;

  /** [candidate][range][survey][nugget x sill] */
  private final double[][][][] logs;

  /** The same for readings that do not depend on their distance, [survey][nugget x sill]. */
  private final double[][] unstructured;

  private PoolSurface(Axes axes, List<Candidate> candidates, List<String> surveys) {
    this.axes = axes;
    this.candidates = candidates;
    this.surveys = surveys;
    this.logs = new double[candidates.size()][axes.range().length][][];
    this.unstructured = new double[surveys.size()][axes.nugget().length * axes.sill().length];
  }

  static PoolSurface of(
      List<Sample> samples,
      List<Candidate> candidates,
      Axes axes,
      double designEffect,
      int threads,
      Progress progress) {
    List<String> surveys = samples.stream().map(Sample::survey).distinct().toList();
    List<Contrasts> contrasts = samples.stream().map(Contrasts::of).toList();
    int[] survey = samples.stream().mapToInt(s -> surveys.indexOf(s.survey())).toArray();
    SillSpread spread = new SillSpread(axes.sill());
    PoolSurface surface = new PoolSurface(axes, candidates, surveys);
    int ranges = axes.range().length;
    Panels.run(
        candidates.size() * ranges,
        1,
        threads,
        "variogram",
        progress,
        () ->
            (from, to) -> {
              for (int node = from; node < to; node++) {
                BlurredModels unit =
                    new BlurredModels(
                        candidates.get(node / ranges).model(1, axes.range()[node % ranges]));
                double[][] sums = surface.empty();
                for (int i = 0; i < survey.length; i++) {
                  surface.add(contrasts.get(i).spectrum(unit), spread, sums[survey[i]]);
                }
                surface.logs[node / ranges][node % ranges] = divided(sums, designEffect);
              }
            });
    for (int i = 0; i < survey.length; i++) {
      surface.add(contrasts.get(i).whiteSpectrum(), spread, surface.unstructured[survey[i]]);
    }
    divided(surface.unstructured, designEffect);
    return surface;
  }

  private double[][] empty() {
    return new double[surveys.size()][axes.nugget().length * axes.sill().length];
  }

  private void add(Contrasts.Spectrum spectrum, SillSpread spread, double[] sum) {
    double[] own = SampleSurface.of(spectrum, axes);
    for (int i = 0; i < own.length; i += axes.sill().length) {
      spread.addMixed(own, i, sum);
    }
  }

  private static double[][] divided(double[][] sums, double by) {
    for (double[] sum : sums) {
      for (int i = 0; i < sum.length; i++) {
        sum[i] /= by;
      }
    }
    return sums;
  }

  Axes axes() {
    return axes;
  }

  List<Candidate> candidates() {
    return candidates;
  }

  List<String> surveys() {
    return surveys;
  }

  /** Log likelihood of a survey at a node. */
  double log(int candidate, int range, int survey, int nugget, int sill) {
    return logs[candidate][range][survey][nugget * axes.sill().length + sill];
  }

  /** Greatest log likelihood without any structure, that of the replicates added. */
  double unstructured(Replicates replicates) {
    double[] greatest = new double[axes.nugget().length];
    int sills = axes.sill().length;
    for (int n = 0; n < greatest.length; n++) {
      greatest[n] = replicates.logLikelihood(axes.nugget()[n]);
      for (double[] survey : unstructured) {
        greatest[n] += Profile.height(Arrays.copyOfRange(survey, n * sills, (n + 1) * sills));
      }
    }
    return Profile.height(greatest);
  }
}
