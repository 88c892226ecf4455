package org.mottle.engine.benchmark;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.likelihood.LikelihoodSettings;
import org.mottle.engine.likelihood.PooledVariogram;
import org.mottle.engine.likelihood.Replicates;
import org.mottle.engine.likelihood.RestrictedLikelihood;
import org.mottle.engine.likelihood.Sample;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.PositionSettings;
import org.mottle.engine.mapping.Standing;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long does a green of 500 m² take from its readings to probabilities, zones, patches and
 * areas, on one thread: 20 readings on a grid of 5 m with a jitter of 0.7 m, cells of 0.5 m, 500
 * realisations over 25 draws of the variogram; next stations apart? How much of that is the
 * variogram of its own readings alone, which a pool replaces? And how long does the pool of nine
 * greens in five surveys take? Readings seeded: a wet place and noise.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
public class GreenMapBenchmark {
  private static final double JITTER_M = 0.7;
  private static final double NOISE_PCT = 0.8;

  /** One survey of one green. */
  @State(Scope.Thread)
  public static class OneGreen {
    private GreenSurvey survey;
    private Sample sample;
    private SurveyMapper plain;
    private SurveyMapper withNext;

    @Setup
    public void setUp() {
      survey = survey(0, 0);
      sample = sample(survey);
      MappingSettings settings =
          MappingSettings.defaults().withPositions(new PositionSettings(JITTER_M, 0));
      UncertaintySettings draws = UncertaintySettings.defaults();
      plain = new SurveyMapper(settings.withUncertainty(draws.withNextStations(0)));
      withNext = new SurveyMapper(settings.withUncertainty(draws.withNextStations(6)));
    }
  }

  /** Nine greens in five surveys. */
  @State(Scope.Thread)
  public static class Season {
    private final List<Sample> samples = new ArrayList<>();

    @Setup
    public void setUp() {
      for (int s = 0; s < 5; s++) {
        for (int g = 0; g < 9; g++) {
          samples.add(sample(survey(g, s)));
        }
      }
    }
  }

  private static GreenSurvey survey(int g, int s) {
    double cx = 500_000 + 100.0 * g;
    double cy = 5_316_300;
    GeometryFactory factory = new GeometryFactory();
    Geometry outline = factory.createPoint(new Coordinate(cx, cy)).buffer(12.62, 18);
    Random random = new Random(100L * s + g);
    List<Reading> readings = new ArrayList<>();
    for (double y = cy - 10; y <= cy + 10; y += 5) {
      for (double x = cx - 10; x <= cx + 10; x += 5) {
        double value = moisture(x - cx, y - cy) + NOISE_PCT * random.nextGaussian();
        if (outline.contains(factory.createPoint(new Coordinate(x, y)))) {
          readings.add(Reading.of("G" + g, "" + readings.size(), x, y, value));
        }
      }
    }
    return new GreenSurvey(
        Green.of("G" + g, outline), "S" + s, readings, Optional.of(TargetBand.of(18, 22)));
  }

  private static double moisture(double x, double y) {
    double d2 = (x - 4) * (x - 4) + (y - 2) * (y - 2);
    return 19 + 8 * Math.exp(-d2 / 40) + 0.05 * x;
  }

  private static Sample sample(GreenSurvey survey) {
    List<Reading> readings = survey.readings();
    int n = readings.size();
    double[] jitter = new double[n];
    int[] insertions = new int[n];
    Arrays.fill(jitter, JITTER_M);
    Arrays.fill(insertions, 1);
    Observations observations =
        Observations.of(
                readings.stream().mapToDouble(Reading::x).toArray(),
                readings.stream().mapToDouble(Reading::y).toArray(),
                readings.stream().mapToDouble(Reading::pct).toArray())
            .withPositionError(new PositionError(jitter, 0));
    return new Sample(
        survey.green().id(), survey.surveyId(), observations, insertions, Replicates.NONE);
  }

  private static Outcome.Mapped checked(SurveyMapper mapper, GreenSurvey survey) {
    Outcome.Mapped map = mapper.map(List.of(survey), 1, Progress.NONE).maps().get(0);
    double area = map.parts().zones().stream().mapToDouble(z -> z.areaM2()).sum();
    boolean wetPlace = map.parts().patches().stream().anyMatch(p -> p.readings() >= 4);
    if (map.standing() != Standing.PATCHES
        || !wetPlace
        || Math.abs(area - survey.green().areaM2()) > 0.01) {
      throw new IllegalStateException(
          "not a map with its wet place: " + map.standing() + ", " + area + " m²");
    }
    return map;
  }

  private static PooledVariogram checked(List<Sample> samples) {
    PooledVariogram pooled =
        (PooledVariogram)
            RestrictedLikelihood.of(samples, LikelihoodSettings.defaults(), 1, Progress.NONE);
    if (!(pooled.evidence().gain() > 0) || pooled.evidence().samples() != samples.size()) {
      throw new IllegalStateException("not a pool with structure: " + pooled.evidence());
    }
    return pooled;
  }

  @Benchmark
  public Outcome.Mapped green(OneGreen s) {
    return checked(s.plain, s.survey);
  }

  @Benchmark
  public Outcome.Mapped greenWithNextStations(OneGreen s) {
    Outcome.Mapped map = checked(s.withNext, s.survey);
    if (map.parts().next().orElseThrow().stations().isEmpty()) {
      throw new IllegalStateException("no next stations: " + map.parts().next());
    }
    return map;
  }

  @Benchmark
  public PooledVariogram variogramOfItsOwn(OneGreen s) {
    return checked(List.of(s.sample));
  }

  @Benchmark
  public PooledVariogram poolOfNineGreensInFiveSurveys(Season s) {
    return checked(s.samples);
  }
}
