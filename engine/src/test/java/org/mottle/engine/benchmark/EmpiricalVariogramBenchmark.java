package org.mottle.engine.benchmark;

import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.mottle.engine.empirical.Direction;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.LagBins;
import org.mottle.engine.observation.Observations;
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
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * How long is an experimental variogram of n readings uniform in a square of 1000 m? Pairs of n =
 * 10,000 on default lags: 22 million. {@code default} is a cutoff of a third of the diagonal;
 * {@code near} one that leaves each reading some twenty neighbours. A heap of 256 MB bounds the
 * memory.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 3, time = 3)
@Fork(value = 1, jvmArgsAppend = "-Xmx256m")
@State(Scope.Benchmark)
public class EmpiricalVariogramBenchmark {
  private static final long SEED = 1;
  private static final double SIDE = 1000;

  @Param({"10000", "100000"})
  int readings;

  @Param({"near", "default"})
  String cutoff;

  @Param({"1", "2"})
  int threads;

  private Observations observations;
  private LagBins bins;

  @Setup
  public void scatter() {
    Random random = new Random(SEED);
    double[] x = new double[readings];
    double[] y = new double[readings];
    double[] value = new double[readings];
    for (int i = 0; i < readings; i++) {
      x[i] = SIDE * random.nextDouble();
      y[i] = SIDE * random.nextDouble();
      value[i] = random.nextGaussian();
    }
    observations = Observations.of(x, y, value);
    double near = SIDE * Math.sqrt(20 / (Math.PI * readings));
    bins = cutoff.equals("near") ? new LagBins(near, near / 15) : LagBins.defaultsFor(observations);
  }

  @Benchmark
  public ExperimentalVariogram matheron() {
    ExperimentalVariogram variogram =
        ExperimentalVariogram.of(
            List.of(observations), bins, Estimator.MATHERON, Direction.ALL, threads);
    double share = Math.PI * Math.pow(bins.cutoff() / SIDE, 2);
    double most = share * readings * (readings - 1.0) / 2;
    double last = variogram.lags().get(variogram.lags().size() - 1).semivariance();
    // white noise of variance 1; the edges of the square cost pairs
    if (variogram.pairs() > 1.05 * most
        || variogram.pairs() < 0.6 * most
        || Math.abs(last - 1) > 0.1) {
      throw new IllegalStateException(
          "wrong variogram: " + variogram.pairs() + " pairs, last semivariance " + last);
    }
    return variogram;
  }

  public static void main(String[] arguments) throws RunnerException {
    new Runner(
            new OptionsBuilder().include(EmpiricalVariogramBenchmark.class.getSimpleName()).build())
        .run();
  }
}
