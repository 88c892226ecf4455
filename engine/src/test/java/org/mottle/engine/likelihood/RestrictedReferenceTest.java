package org.mottle.engine.likelihood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.engine.fit.Shape;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.reference.ReferenceTable;

/** Cadmium of the Swiss Jura by land use: nlme 3.1.162 (gls, REML) in R 4.2.2 (reml.R). */
class RestrictedReferenceTest {
  private static final ReferenceTable POINTS = ReferenceTable.of("reml_points");
  private static final ReferenceTable REFERENCE = ReferenceTable.of("reml");

  @ParameterizedTest
  @CsvSource({
    "spherical,1,mean", "spherical,1,plane", "spherical,3,mean", "spherical,3,plane",
    "exponential,1,mean", "exponential,1,plane", "exponential,3,mean", "exponential,3,plane"
  })
  void differencesOfLogLikelihoodAgree(String model, int groups, String trend) {
    List<Contrasts> contrasts = contrasts(samples(groups, trend));
    List<Integer> rows = rows("at", model, groups, trend);
    assertThat(rows).hasSize(4);
    double ours = logLikelihood(contrasts, rows.get(0));
    double theirs = REFERENCE.number(rows.get(0), "loglik");
    for (int row : rows) {
      assertThat(logLikelihood(contrasts, row) - ours)
          .as("row %d of reml.csv", row)
          .isCloseTo(REFERENCE.number(row, "loglik") - theirs, within(1e-8));
    }
  }

  @ParameterizedTest
  @CsvSource({"spherical,3", "exponential,3"})
  void theGreatestNodeOfTheGridIsNextToTheOptimum(String model, int groups) {
    List<Sample> samples = samples(groups, "plane");
    List<Contrasts> contrasts = contrasts(samples);
    double variance =
        contrasts.stream().mapToDouble(Contrasts::sumOfSquares).sum()
            / contrasts.stream().mapToInt(Contrasts::count).sum();
    Axes axes = Axes.of(samples, variance);
    Greatest found = Greatest.of(contrasts, axes, Candidate.of(Shape.valueOf(model.toUpperCase())));
    int row = rows("best", model, groups, "plane").get(0);
    near(axes.range(), found.range(), REFERENCE.number(row, "range"));
    near(axes.nugget(), found.nugget(), REFERENCE.number(row, "nugget"));
    near(axes.sill(), found.sill(), REFERENCE.number(row, "sill"));
    double first = logLikelihood(contrasts, rows("at", model, groups, "plane").get(0));
    double theirFirst = REFERENCE.number(rows("at", model, groups, "plane").get(0), "loglik");
    assertThat(found.value() - first)
        .as("rise of the log likelihood to its greatest")
        .isBetween(
            REFERENCE.number(row, "loglik") - theirFirst - 0.05,
            REFERENCE.number(row, "loglik") - theirFirst + 0.05);
  }

  /** The greatest node of the plain sum over groups: one sill, no prior. */
  private record Greatest(int range, int nugget, int sill, double value) {

    static Greatest of(List<Contrasts> contrasts, Axes axes, Candidate shape) {
      Greatest best = new Greatest(0, 0, 0, Double.NEGATIVE_INFINITY);
      double[] profile = new double[axes.range().length];
      for (int r = 0; r < axes.range().length; r++) {
        BlurredModels unit = new BlurredModels(shape.model(1, axes.range()[r]));
        double[] sum = new double[axes.nugget().length * axes.sill().length];
        for (Contrasts c : contrasts) {
          double[] own = SampleSurface.of(c.spectrum(unit), axes);
          for (int i = 0; i < own.length; i++) {
            sum[i] += own[i];
          }
        }
        profile[r] = height(sum, axes);
        for (int i = 0; i < sum.length; i++) {
          if (sum[i] > best.value) {
            best = new Greatest(r, i / axes.sill().length, i % axes.sill().length, sum[i]);
          }
        }
      }
      return new Greatest(best.range, best.nugget, best.sill, Profile.height(profile));
    }

    private static double height(double[] sum, Axes axes) {
      int sills = axes.sill().length;
      return Profile.height(
          IntStream.range(0, axes.nugget().length)
              .mapToDouble(n -> Profile.height(Arrays.copyOfRange(sum, n * sills, (n + 1) * sills)))
              .toArray());
    }
  }

  private static void near(double[] axis, int node, double value) {
    assertThat(value).isBetween(axis[node - 1], axis[node + 1]);
  }

  private static double logLikelihood(List<Contrasts> contrasts, int row) {
    BlurredModels unit =
        new BlurredModels(
            Candidate.of(Shape.valueOf(REFERENCE.text(row, "model").toUpperCase()))
                .model(1, REFERENCE.number(row, "range")));
    return contrasts.stream()
        .mapToDouble(
            c ->
                SampleSurface.at(
                    c.spectrum(unit),
                    REFERENCE.number(row, "nugget"),
                    REFERENCE.number(row, "sill")))
        .sum();
  }

  private static List<Integer> rows(String kind, String model, int groups, String trend) {
    return IntStream.range(0, REFERENCE.rows())
        .filter(
            i ->
                REFERENCE.text(i, "kind").equals(kind)
                    && REFERENCE.text(i, "model").equals(model)
                    && REFERENCE.number(i, "groups") == groups
                    && REFERENCE.text(i, "trend").equals(trend))
        .boxed()
        .toList();
  }

  private static List<Contrasts> contrasts(List<Sample> samples) {
    return samples.stream().map(Contrasts::of).toList();
  }

  private static List<Sample> samples(int groups, String trend) {
    int most = trend.equals("mean") ? 7 : Integer.MAX_VALUE;
    return (groups == 1 ? Stream.of("Meadow") : Stream.of("Forest", "Pasture", "Meadow"))
        .map(g -> sample(g, most))
        .toList();
  }

  private static Sample sample(String group, int most) {
    int[] rows =
        IntStream.range(0, POINTS.rows())
            .filter(i -> POINTS.text(i, "g").equals(group))
            .limit(most)
            .toArray();
    Observations o =
        Observations.of(POINTS.numbers("x"), POINTS.numbers("y"), POINTS.numbers("z")).rows(rows);
    return new Sample(
        group, "1990", o, IntStream.range(0, rows.length).map(i -> 1).toArray(), Replicates.NONE);
  }
}
