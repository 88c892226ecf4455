package org.mottle.engine.benchmark;

import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.mottle.engine.kriging.Estimates;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.validation.LeaveOneOut;
import org.mottle.engine.validation.Scores;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;
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
 * How long does ordinary kriging of mean and variance take, on one thread, fit included?
 * Exponential model, sill 18, range 15 m, nugget 2, readings uniform and seeded; every result is
 * checked against laws that garbage does not obey.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 5, time = 2)
public class KrigingBenchmark {
  private static final NestedModel MODEL = NestedModel.of(2, new Exponential(18, 15));

  /** A survey of {@code readings} on a square of {@code side} metres and a square grid of cells. */
  private static Observations survey(int readings, double side) {
    Random random = new Random(readings);
    return Observations.of(
        random.doubles(readings, 0, side).toArray(),
        random.doubles(readings, 0, side).toArray(),
        random.doubles(readings, 15, 35).toArray());
  }

  private static Targets grid(int cells, double side) {
    int k = (int) Math.round(Math.sqrt(cells));
    double[] x = new double[k * k];
    double[] y = new double[k * k];
    for (int i = 0; i < k * k; i++) {
      x[i] = (i % k + 0.5) * side / k;
      y[i] = (i / k + 0.5) * side / k;
    }
    return Targets.of(x, y);
  }

  private static Estimates checked(Estimates estimates) {
    double mean = Arrays.stream(estimates.values()).average().orElseThrow();
    double least = Arrays.stream(estimates.variances()).min().orElseThrow();
    double most = Arrays.stream(estimates.variances()).max().orElseThrow();
    if (!(mean > 20 && mean < 30 && least > 2 && most < 40)) {
      throw new IllegalStateException("not kriging: " + mean + " " + least + " " + most);
    }
    return estimates;
  }

  /** All readings at every cell: readings x cells as in docs/benchmarks. */
  @State(Scope.Thread)
  public static class AllReadings {
    @Param({"50x100000", "200x10000", "1000x100000", "3000x10000"})
    public String size;

    private Observations observations;
    private Targets targets;

    @Setup
    public void setUp() {
      int readings = Integer.parseInt(size.split("x")[0]);
      double side = readings <= 200 ? 50 : readings <= 1000 ? 100 : 200;
      observations = survey(readings, side);
      targets = grid(Integer.parseInt(size.split("x")[1]), side);
    }
  }

  @Benchmark
  public Estimates allReadings(AllReadings s) {
    return checked(
        Kriging.ordinary(MODEL).fit(s.observations).estimate(s.targets, 1, Progress.NONE));
  }

  /** The largest of them on two threads. */
  @State(Scope.Thread)
  public static class TwoThreads {
    private final Observations observations = survey(1000, 100);
    private final Targets targets = grid(100_000, 100);
  }

  @Benchmark
  public Estimates thousandOnTwoThreads(TwoThreads s) {
    return checked(
        Kriging.ordinary(MODEL).fit(s.observations).estimate(s.targets, 2, Progress.NONE));
  }

  /** The nearest 32 of 10,000 readings at 100,000 cells. */
  @State(Scope.Thread)
  public static class Nearest {
    private final Observations observations = survey(10_000, 1000);
    private final Targets targets = grid(100_000, 1000);
  }

  @Benchmark
  public Estimates nearest32(Nearest s) {
    return checked(
        Kriging.ordinary(MODEL)
            .with(Neighbourhood.nearest(32))
            .fit(s.observations)
            .estimate(s.targets, 1, Progress.NONE));
  }

  /** Every one of the readings from the others. */
  @State(Scope.Thread)
  public static class Validation {
    @Param({"200", "1000"})
    public int readings;

    private Observations observations;

    @Setup
    public void setUp() {
      observations = survey(readings, 100);
    }
  }

  @Benchmark
  public Scores leaveOneOut(Validation s) {
    Scores scores =
        LeaveOneOut.of(Kriging.ordinary(MODEL), s.observations, 1, Progress.NONE).scores(0.9);
    if (scores.missing() > 0 || !(Math.abs(scores.meanError()) < 1)) {
      throw new IllegalStateException("not leave-one-out: " + scores);
    }
    return scores;
  }
}
