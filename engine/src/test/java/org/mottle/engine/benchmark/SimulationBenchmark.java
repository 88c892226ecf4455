package org.mottle.engine.benchmark;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.simulation.ConditionalSimulation;
import org.mottle.engine.simulation.Draw;
import org.mottle.engine.simulation.RealisationAccumulator;
import org.mottle.engine.simulation.Simulation;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long does conditional simulation take, on one thread, preparation included? Exponential
 * model, readings uniform and seeded; the sums over the realisations are checked against the exact
 * mean and standard deviation.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 3)
@Measurement(iterations = 5, time = 3)
public class SimulationBenchmark {

  /** Sum and sum of squares of every cell. */
  private static final class Sums implements RealisationAccumulator<Sums> {
    private final double[] sum;
    private final double[] squares;

    Sums(int cells) {
      sum = new double[cells];
      squares = new double[cells];
    }

    @Override
    public void add(int index, double[] values) {
      for (int i = 0; i < sum.length; i++) {
        sum[i] += values[i];
        squares[i] += values[i] * values[i];
      }
    }

    @Override
    public void merge(Sums next) {
      for (int i = 0; i < sum.length; i++) {
        sum[i] += next.sum[i];
        squares[i] += next.squares[i];
      }
    }
  }

  private static GreenCells square(double side, double cell) {
    return GreenCells.of(
        new GeometryFactory().toGeometry(new Envelope(0.01, side - 0.01, 0.01, side - 0.01)), cell);
  }

  private static Observations survey(int readings, double side, double variance) {
    Random random = new Random(readings);
    double[] noise = new double[readings];
    Arrays.fill(noise, variance);
    return Observations.of(
            random.doubles(readings, 0, side).toArray(),
            random.doubles(readings, 0, side).toArray(),
            random.doubles(readings, 15, 35).toArray())
        .withMeasurementVariance(noise);
  }

  private static double[] checked(Simulation settings, List<Draw> draws, GreenCells cells) {
    ConditionalSimulation simulation =
        (ConditionalSimulation) settings.of(draws, cells, 1, Progress.NONE);
    Sums sums = simulation.collect(() -> new Sums(simulation.cells()), 1, Progress.NONE);
    double[] mean = simulation.mean();
    double[] sd = simulation.standardDeviation();
    int n = simulation.realisations();
    double worst = 0;
    double ratio = 0;
    for (int i = 0; i < mean.length; i++) {
      double m = sums.sum[i] / n;
      worst = Math.max(worst, Math.abs(m - mean[i]) / sd[i] * Math.sqrt(n));
      ratio += (sums.squares[i] / n - m * m) / (sd[i] * sd[i]) / mean.length;
    }
    if (!(worst < 6 && Math.abs(ratio - 1) < 0.1)) {
      throw new IllegalStateException("not a conditional simulation: " + worst + " " + ratio);
    }
    double[] wet = simulation.probabilityAbove(28);
    double[] dry = simulation.probabilityBelow(22);
    for (int i = 0; i < wet.length; i++) {
      wet[i] += dry[i];
    }
    return wet;
  }

  /** 1,000 realisations, 50 readings, 100 x 100 cells (98 and a ring round them) of 0.5 m. */
  @State(Scope.Thread)
  public static class Large {
    private final GreenCells cells = square(49, 0.5);
    private final List<Draw> draws =
        List.of(new Draw(NestedModel.of(0, new Exponential(18, 15)), survey(50, 49, 2)));
  }

  @Benchmark
  public double[] thousandOnTenThousandCells(Large s) {
    return checked(Simulation.withDefaults().withRealisations(1000), s.draws, s.cells);
  }

  /** 500 realisations over 25 draws, 20 readings, 50 x 50 cells of 0.5 m. */
  @State(Scope.Thread)
  public static class Green {
    private final GreenCells cells = square(24, 0.5);
    private final List<Draw> exact = new ArrayList<>();
    private final List<Draw> displaced = new ArrayList<>();

    public Green() {
      double[] jitter = new double[20];
      Arrays.fill(jitter, 0.8);
      for (int d = 0; d < 25; d++) {
        NestedModel model = NestedModel.of(0, new Exponential(4 + 0.2 * d, 4 + 0.5 * d));
        Observations readings = survey(20, 24, 1 + 0.02 * d);
        exact.add(new Draw(model, readings));
        displaced.add(new Draw(model, readings.withPositionError(new PositionError(jitter, 0.5))));
      }
    }
  }

  @Benchmark
  public double[] green(Green s) {
    return checked(Simulation.withDefaults(), s.exact, s.cells);
  }

  @Benchmark
  public double[] greenWithErrorsOfPosition(Green s) {
    return checked(Simulation.withDefaults(), s.displaced, s.cells);
  }
}
