package org.mottle.export.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.likelihood.LikelihoodSettings;
import org.mottle.engine.likelihood.NotPooled;
import org.mottle.engine.likelihood.PooledOutcome;
import org.mottle.engine.likelihood.PooledVariogram;
import org.mottle.engine.likelihood.Replicates;
import org.mottle.engine.likelihood.RestrictedLikelihood;
import org.mottle.engine.likelihood.Sample;
import org.mottle.engine.mapping.MapVariogram;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.export.report.Words;

/** Variograms and areas in plain words. */
class LinesTest {

  private static String line(PooledOutcome outcome, List<String> surveys, String... greens) {
    MapVariogram variogram =
        new MapVariogram(
            surveys,
            List.of(greens),
            20,
            new ExperimentalVariogram(List.of(new Lag(70, 1, 1), new Lag(80, 2, 2))),
            outcome);
    return VariogramLine.of(
        variogram, new SurveyMap(MappingSettings.defaults(), List.of(variogram), List.of()));
  }

  /** A slope with some scatter on two greens: what is fitted does not matter here. */
  private static PooledVariogram pooled() {
    Random random = new Random(7);
    List<Sample> samples = new ArrayList<>();
    for (String green : List.of("G1", "G2")) {
      double[] x = random.doubles(20, 0, 20).toArray();
      double[] y = random.doubles(20, 0, 20).toArray();
      double[] z = new double[20];
      int[] insertions = new int[20];
      for (int i = 0; i < 20; i++) {
        z[i] = 20 + 0.3 * x[i] + random.nextGaussian();
        insertions[i] = 1;
      }
      samples.add(new Sample(green, "S1", Observations.of(x, y, z), insertions, Replicates.NONE));
    }
    return (PooledVariogram)
        RestrictedLikelihood.of(samples, LikelihoodSettings.defaults(), 1, Progress.NONE);
  }

  @Test
  void shapeRangeNuggetAndSillComeWithTheirIntervals() {
    PooledVariogram p = pooled();
    String range =
        String.format(Locale.ROOT, "range %.1f m (", p.parameters().practicalRange().best());
    assertThat(line(p, List.of("S1"), "G1", "G2"))
        .startsWith("variogram of S1 (2 greens, 20 stations): " + p.shape().label() + ", " + range)
        .containsPattern("nugget \\d+\\.\\d\\d %² \\(\\S+ to \\S+\\)")
        .containsPattern("sill S1 \\d+\\.\\d %² \\(\\S+ to \\S+\\)")
        .contains("; borrowed variogram: 40 stations where 60 are needed");
    p.notes().forEach(note -> assertThat(line(p, List.of("S1"), "G1")).contains("; " + note));
  }

  @Test
  void severalSurveysAndOneGreen() {
    assertThat(line(pooled(), List.of("S1", "S3"), "G7"))
        .startsWith("variogram of S1, S3 (green G7, 20 stations): ");
    assertThat(line(pooled(), List.of(""), "G7")).startsWith("variogram (green G7, 20 stations): ");
  }

  @Test
  void withoutAModelTheReasonAndTheRemedyStand() {
    assertThat(line(new NotPooled("too few pairs", "read more"), List.of("S1"), "G1", "G2"))
        .isEqualTo("variogram of S1 (2 greens, 20 stations): none: too few pairs; read more");
  }

  /** To 1 m² from 20 m² on, below to half a square metre. */
  @Test
  void areasAreSpokenAsFarAsTheyAreKnown() {
    assertThat(Words.area(40.4, 19.9, 70.6)).isEqualTo("40 m² (20 to 71)");
    assertThat(Words.area(7.3, 0.1, 19.7)).isEqualTo("7.5 m² (0 to 19.5)");
  }
}
