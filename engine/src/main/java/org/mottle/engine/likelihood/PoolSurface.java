package org.mottle.engine.likelihood;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.progress.Progress;

/**
 * The restricted log likelihood of each survey over form, range, nugget and the survey's sill.
 * Filled node by node in parallel; every sum runs in the order of the samples.
 */
final class PoolSurface {
  private final Axes axes;
  private final List<Form> forms;
  private final List<String> surveys;
  private final List<SillSpread> spreads;

  /** [form][range][survey][nugget x sill] */
  private final double[][][][] logs;

  /**
   * The same for readings that do not depend on their distance, [spread][survey][nugget x sill].
   */
  private final double[][][] unstructured;

  private final Map<String, Double> effects = new HashMap<>();

  private PoolSurface(Axes axes, List<Candidate> candidates, List<String> surveys) {
    this.axes = axes;
    this.forms = Form.of(candidates);
    this.surveys = surveys;
    this.spreads =
        forms.stream()
            .limit(forms.size() / candidates.size())
            .map(form -> new SillSpread(axes.sill(), form.sillSpread()))
            .toList();
    this.logs = new double[forms.size()][axes.range().length][][];
    this.unstructured = empty();
  }

  /**
   * @param effect [sample] by which the log likelihood of each is divided
   */
  static PoolSurface of(
      List<Sample> samples,
      List<Candidate> candidates,
      Axes axes,
      double[] effect,
      int threads,
      Progress progress) {
    List<String> surveys = samples.stream().map(Sample::survey).distinct().toList();
    List<Contrasts> contrasts = samples.stream().map(Contrasts::of).toList();
    int[] survey = samples.stream().mapToInt(s -> surveys.indexOf(s.survey())).toArray();
    PoolSurface surface = new PoolSurface(axes, candidates, surveys);
    for (int i = 0; i < effect.length; i++) {
      surface.effects.put(name(samples.get(i)), effect[i]);
    }
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
                double[][][] sums = surface.empty();
                for (int i = 0; i < survey.length; i++) {
                  surface.add(contrasts.get(i).spectrum(unit), effect[i], survey[i], sums);
                }
                surface.keep(node / ranges, node % ranges, sums);
              }
            });
    for (int i = 0; i < survey.length; i++) {
      surface.add(contrasts.get(i).whiteSpectrum(), effect[i], survey[i], surface.unstructured);
    }
    return surface;
  }

  private double[][][] empty() {
    return new double[spreads.size()][surveys.size()][axes.nugget().length * axes.sill().length];
  }

  private void add(Contrasts.Spectrum spectrum, double effect, int survey, double[][][] sums) {
    double[] own = SampleSurface.of(spectrum, axes);
    for (int i = 0; i < own.length; i++) {
      own[i] /= effect;
    }
    int sills = axes.sill().length;
    for (int i = 0; i < own.length; i += sills) {
      SillSpread.Scaled green = SillSpread.Scaled.of(own, i, sills);
      for (int t = 0; t < sums.length; t++) {
        spreads.get(t).addMixed(green, i, sums[t][survey]);
      }
    }
  }

  private void keep(int candidate, int range, double[][][] sums) {
    for (int t = 0; t < sums.length; t++) {
      logs[candidate * spreads.size() + t][range] = sums[t];
    }
  }

  private static String name(Sample sample) {
    return sample.survey() + "/" + sample.green();
  }

  /** By which the log likelihood of a sample of this name was divided; 0 when there is none. */
  double effect(Sample sample) {
    return effects.getOrDefault(name(sample), 0.0);
  }

  Axes axes() {
    return axes;
  }

  List<Form> forms() {
    return forms;
  }

  /** Distribution of a green's sill about its survey's under a form. */
  SillSpread spread(int form) {
    return spreads.get(form % spreads.size());
  }

  List<String> surveys() {
    return surveys;
  }

  /** Log likelihood of a survey at a node. */
  double log(int form, int range, int survey, int nugget, int sill) {
    return logs[form][range][survey][nugget * axes.sill().length + sill];
  }

  /** Greatest log likelihood without any structure, that of the replicates added. */
  double unstructured(Replicates replicates) {
    double most = Double.NEGATIVE_INFINITY;
    int sills = axes.sill().length;
    for (double[][] surveysOfSpread : unstructured) {
      double[] greatest = new double[axes.nugget().length];
      for (int n = 0; n < greatest.length; n++) {
        greatest[n] = replicates.logLikelihood(axes.nugget()[n]);
        for (double[] survey : surveysOfSpread) {
          greatest[n] += Profile.height(Arrays.copyOfRange(survey, n * sills, (n + 1) * sills));
        }
      }
      most = Math.max(most, Profile.height(greatest));
    }
    return most;
  }
}
