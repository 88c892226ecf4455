package org.mottle.engine.likelihood;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.variogram.NestedModel;

/** Models of single samples, drawn under each shared draw from what their own readings say. */
final class Draws {
  private final List<SharedDraw> shared;

  /** Of each shared draw, kept from sample to sample. */
  private final List<BlurredModels> blurred;

  private final PoolSurface surface;
  private final List<String> surveys;
  private final double[] sill;

  Draws(List<SharedDraw> shared, PoolSurface surface) {
    this.shared = List.copyOf(shared);
    this.blurred =
        shared.stream()
            .map(d -> new BlurredModels(d.candidate().model(1, d.practicalRange())))
            .toList();
    this.surface = surface;
    this.surveys = surface.surveys();
    this.sill = surface.axes().sill();
  }

  List<NestedModel> of(Sample sample) {
    int survey = survey(sample);
    List<Sample> screened = Screening.of(List.of(sample)).samples();
    Contrasts contrasts = screened.isEmpty() ? null : Contrasts.of(screened.get(0));
    double start =
        SharedDraw.fraction(offset(sample.survey()) * Math.sqrt(2) + offset(sample.green()));
    List<NestedModel> models = new ArrayList<>();
    for (int d = 0; d < shared.size(); d++) {
      SharedDraw draw = shared.get(d);
      double[] density =
          ownSill(
              draw,
              survey,
              contrasts == null ? null : contrasts.spectrum(blurred.get(d)),
              surface.effect(sample));
      double share = SharedDraw.fraction(start + (d + 1) * SharedDraw.EVEN[2]);
      models.add(
          NestedModel.of(
              draw.nugget(),
              draw.candidate().model(quantile(density, share), draw.practicalRange())));
    }
    return models;
  }

  /** Under some of the shared draws, evenly taken, what the other samples say of these. */
  List<OthersView> withoutOwn(List<Sample> samples, int most) {
    int count = Math.min(most, shared.size());
    JointPairs pairs = JointPairs.of(samples.stream().map(Sample::observations).toList());
    List<OthersView> views = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      int d = (int) ((k + 0.5) * shared.size() / count);
      double[][] density = new double[samples.size()][];
      for (int s = 0; s < density.length; s++) {
        density[s] = withoutOwn(samples.get(s), d);
      }
      views.add(
          OthersView.of(shared.get(d).nugget(), sill, density, pairs.correlations(blurred.get(d))));
    }
    return views;
  }

  /** Density of a green's sill over the nodes, its own readings left out, to the sum 1. */
  private double[] withoutOwn(Sample sample, int d) {
    int survey = survey(sample);
    SharedDraw draw = shared.get(d);
    List<Sample> screened = Screening.of(List.of(sample)).samples();
    double[] own =
        own(
            draw,
            screened.isEmpty() ? null : Contrasts.of(screened.get(0)).spectrum(blurred.get(d)));
    double[] ofSurvey = ofSurvey(draw, survey, own, surface.effect(sample));
    double[] density = new double[sill.length];
    double total = 0;
    for (int g = 0; g < sill.length; g++) {
      for (int s = 0; s < sill.length; s++) {
        density[g] += ofSurvey[s] * draw.spread().share(s, g);
      }
      total += density[g];
    }
    for (int g = 0; g < sill.length; g++) {
      density[g] /= total;
    }
    return density;
  }

  private int survey(Sample sample) {
    int survey = surveys.indexOf(sample.survey());
    if (survey < 0) {
      throw new IllegalArgumentException(
          "survey '" + sample.survey() + "' is not in the pool of " + surveys);
    }
    return survey;
  }

  /** Spreads samples that would otherwise be drawn alike; any fixed function of names will do. */
  private static double offset(String name) {
    double sum = 0;
    for (int i = 0; i < name.length(); i++) {
      sum = SharedDraw.fraction(sum * 31 + name.charAt(i) * SharedDraw.EVEN[0]);
    }
    return sum;
  }

  /**
   * Density of the green's own sill, not scaled, over the nodes. The density over the survey's sill
   * holds the green already, discounted: that is taken out before the green's readings enter whole.
   *
   * @param spectrum null where the sample has none
   * @param effect by which the green's likelihood is discounted in the pool; 0 when it is not there
   */
  private double[] ownSill(
      SharedDraw draw, int survey, Contrasts.Spectrum spectrum, double effect) {
    int n = sill.length;
    double[] own = own(draw, spectrum);
    double[] weight = ofSurvey(draw, survey, own, effect);
    double topOwn = max(own);
    double[] density = new double[n];
    for (int s = 0; s < n; s++) {
      for (int g = 0; g < n; g++) {
        density[g] += weight[s] * draw.spread().share(s, g) * Math.exp(own[g] - topOwn);
      }
    }
    return density;
  }

  /** Log likelihood of the green's own sill; 0 where it has no spectrum. */
  private double[] own(SharedDraw draw, Contrasts.Spectrum spectrum) {
    double[] own = new double[sill.length];
    if (spectrum != null) {
      for (int g = 0; g < own.length; g++) {
        own[g] = SampleSurface.at(spectrum, draw.nugget(), sill[g]);
      }
    }
    return own;
  }

  /** Density over the survey's sill, not scaled, with the discounted green taken out. */
  private double[] ofSurvey(SharedDraw draw, int survey, double[] own, double effect) {
    int n = sill.length;
    double[] ofSurvey = draw.sills()[survey];
    double topOwn = max(own);
    double topSurvey = max(ofSurvey);
    double[] weight = new double[n];
    for (int s = 0; s < n; s++) {
      double mixed = effect == 0 ? 1 : 0;
      for (int g = 0; g < n && effect > 0; g++) {
        mixed += draw.spread().share(s, g) * Math.exp((own[g] - topOwn) / effect);
      }
      weight[s] = Math.exp(ofSurvey[s] - topSurvey) / Math.max(mixed, Double.MIN_NORMAL);
    }
    return weight;
  }

  private double quantile(double[] density, double share) {
    double total = 0;
    for (double v : density) {
      total += v;
    }
    double wanted = share * total;
    int at = 0;
    while (at < density.length - 1 && wanted > density[at]) {
      wanted -= density[at++];
    }
    return SharedDraw.moved(sill, at, Math.min(1, wanted / density[at]));
  }

  private static double max(double[] values) {
    double most = Double.NEGATIVE_INFINITY;
    for (double v : values) {
      most = Math.max(most, v);
    }
    return most;
  }
}
