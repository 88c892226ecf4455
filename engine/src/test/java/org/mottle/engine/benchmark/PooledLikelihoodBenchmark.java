package org.mottle.engine.benchmark;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.mottle.engine.likelihood.LikelihoodSettings;
import org.mottle.engine.likelihood.PooledOutcome;
import org.mottle.engine.likelihood.PooledVariogram;
import org.mottle.engine.likelihood.Replicates;
import org.mottle.engine.likelihood.RestrictedLikelihood;
import org.mottle.engine.likelihood.Sample;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.progress.Progress;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long does a course take: one variogram of nine greens in five surveys of 18 readings each, on
 * one thread, three shapes, with the draws of every sample? Without position errors, with one
 * deviation for all, and with four in every sample. Readings random and seeded: a patch and noise.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class PooledLikelihoodBenchmark {

  /** One course. */
  @State(Scope.Thread)
  public static class Course {
    @Param({"0", "1", "4"})
    public int deviations;

    private List<Sample> samples;

    @Setup
    public void setUp() {
      Random random = new Random(5);
      samples = new ArrayList<>();
      for (int survey = 1; survey <= 5; survey++) {
        for (int green = 1; green <= 9; green++) {
          samples.add(sample("G" + green, "S" + survey, random));
        }
      }
    }

    private Sample sample(String green, String survey, Random random) {
      int n = 18;
      double[] x = new double[n];
      double[] y = new double[n];
      double[] value = new double[n];
      double[] jitter = new double[n];
      for (int i = 0; i < n; i++) {
        double r = 12 * Math.sqrt(random.nextDouble());
        double azimuth = 2 * Math.PI * random.nextDouble();
        x[i] = r * Math.sin(azimuth);
        y[i] = r * Math.cos(azimuth);
        value[i] = 18 - (Math.hypot(x[i] - 5, y[i]) < 5 ? 4 : 0) + 1.3 * random.nextGaussian();
        jitter[i] = deviations == 0 ? 0 : 0.7 * (1 + i % deviations);
      }
      int[] insertions = new int[n];
      Arrays.fill(insertions, 1);
      Observations o = Observations.of(x, y, value).withPositionError(new PositionError(jitter, 0));
      return new Sample(green, survey, o, insertions, Replicates.NONE);
    }
  }

  @Benchmark
  public double pool(Course c) {
    PooledOutcome outcome =
        RestrictedLikelihood.of(c.samples, LikelihoodSettings.defaults(), 1, Progress.NONE);
    if (!(outcome instanceof PooledVariogram v)) {
      throw new IllegalStateException("not a variogram: " + outcome);
    }
    double sum = 0;
    for (Sample s : c.samples) {
      sum += v.draws(s).get(0).nugget();
    }
    return sum;
  }
}
