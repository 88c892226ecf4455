package org.mottle.engine.benchmark;

import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.plan.ModelDraw;
import org.mottle.engine.plan.NextStations;
import org.mottle.engine.plan.Positions;
import org.mottle.engine.plan.StationRanking;
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
 * How long does it take to rank six stations on a green of 625 m² (2,500 cells of 0.5 m, planned on
 * a lattice of 1 m), on one thread, with eight parameter draws, kriging systems and lattice
 * included? Readings random and seeded, values spread over both limits so that no point is settled.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class NextStationsBenchmark {

  /** One survey. */
  @State(Scope.Thread)
  public static class Green {
    @Param({"18", "24"})
    public int readings;

    @Param({"true", "false"})
    public boolean band;

    private Geometry outline;
    private Positions stations;
    private Observations observations;

    @Setup
    public void setUp() {
      outline = new GeometryFactory().createPoint(new Coordinate(50, 50)).buffer(14.11, 32);
      Random random = new Random(readings);
      double[] x = new double[readings];
      double[] y = new double[readings];
      double[] noise = new double[readings];
      for (int i = 0; i < readings; i++) {
        double r = 13 * Math.sqrt(random.nextDouble());
        double azimuth = 2 * Math.PI * random.nextDouble();
        x[i] = 50 + r * Math.sin(azimuth);
        y[i] = 50 + r * Math.cos(azimuth);
        noise[i] = 1.5;
      }
      stations = Positions.of(x, y);
      observations =
          Observations.of(x, y, random.doubles(readings, 18, 26).toArray())
              .withMeasurementVariance(noise);
    }
  }

  @Benchmark
  public StationRanking sixStations(Green s) {
    List<ModelDraw> draws =
        IntStream.range(0, 8)
            .mapToObj(d -> NestedModel.of(0, new Exponential(3 + 0.3 * d, 3 + 0.4 * d)))
            .map(model -> new ModelDraw(Kriging.ordinary(model).system(s.observations), 1.5))
            .toList();
    double[] limits = s.band ? new double[] {20, 24} : new double[0];
    StationRanking ranking = NextStations.withDefaults().rank(s.outline, s.stations, draws, limits);
    if (ranking.stations().size() != 6 || !(ranking.after() < 0.98 * ranking.before())) {
      throw new IllegalStateException("not a ranking of six that gain: " + ranking);
    }
    return ranking;
  }
}
