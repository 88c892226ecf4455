package org.mottle.engine.likelihood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.mottle.engine.fit.Shape;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;

/**
 * Pools of invented surveys from a known field: greens of 24 m across, stations spread by best
 * candidate, some of them in pairs half a metre apart, values by the Cholesky factor of the
 * covariance at the true places.
 */
record SimulatedPool(
    Candidate shape,
    double range,
    double sill,
    double nugget,
    double jitterSdM,
    int greens,
    int surveys,
    int stations,
    int closePairs,
    int insertions) {

  static final SimulatedPool STANDARD =
      new SimulatedPool(Candidate.of(Shape.SPHERICAL), 12, 3, 1.5, 0, 9, 1, 18, 2, 1);

  SimulatedPool field(Candidate newShape, double newRange, double newSill, double newNugget) {
    return new SimulatedPool(
        newShape,
        newRange,
        newSill,
        newNugget,
        jitterSdM,
        greens,
        surveys,
        stations,
        closePairs,
        insertions);
  }

  SimulatedPool jitter(double sdM) {
    return new SimulatedPool(
        shape, range, sill, nugget, sdM, greens, surveys, stations, closePairs, insertions);
  }

  SimulatedPool size(int newGreens, int newSurveys, int newStations, int newClosePairs) {
    return new SimulatedPool(
        shape,
        range,
        sill,
        nugget,
        jitterSdM,
        newGreens,
        newSurveys,
        newStations,
        newClosePairs,
        insertions);
  }

  SimulatedPool insertions(int k) {
    return new SimulatedPool(
        shape, range, sill, nugget, jitterSdM, greens, surveys, stations, closePairs, k);
  }

  /** Surveys independent of one another, each at stations of its own; jitter is declared. */
  List<Sample> draw(long seed) {
    Random random = new Random(seed);
    List<Sample> samples = new ArrayList<>();
    for (int s = 0; s < surveys; s++) {
      for (int g = 0; g < greens; g++) {
        samples.add(sample("G" + (g + 1), "S" + (s + 1), random));
      }
    }
    return samples;
  }

  private Sample sample(String green, String survey, Random random) {
    double[][] place = places(random);
    double[] x = new double[stations];
    double[] y = new double[stations];
    for (int i = 0; i < stations; i++) {
      x[i] = place[i][0] + jitterSdM * random.nextGaussian();
      y[i] = place[i][1] + jitterSdM * random.nextGaussian();
    }
    double[] value = field(x, y, random);
    double sumOfSquares = 0;
    for (int i = 0; i < stations; i++) {
      double[] noise = new double[insertions];
      Arrays.setAll(noise, k -> Math.sqrt(nugget) * random.nextGaussian());
      double mean = Arrays.stream(noise).average().orElseThrow();
      sumOfSquares += Arrays.stream(noise).map(v -> (v - mean) * (v - mean)).sum();
      value[i] += mean;
    }
    double[] jitter = new double[stations];
    Arrays.fill(jitter, jitterSdM);
    double[] recordedX = Arrays.stream(place).mapToDouble(p -> p[0]).toArray();
    double[] recordedY = Arrays.stream(place).mapToDouble(p -> p[1]).toArray();
    int[] counts = new int[stations];
    Arrays.fill(counts, insertions);
    return new Sample(
        green,
        survey,
        Observations.of(recordedX, recordedY, value)
            .withPositionError(new PositionError(jitter, 0)),
        counts,
        insertions == 1
            ? Replicates.NONE
            : new Replicates(sumOfSquares, stations * (insertions - 1)));
  }

  private double[][] places(Random random) {
    double[][] place = new double[stations][];
    for (int i = 0; i < stations - closePairs; i++) {
      double farthest = -1;
      for (int t = 0; t < 12; t++) {
        double[] tried = inCircle(12, random);
        double nearest = Double.POSITIVE_INFINITY;
        for (int j = 0; j < i; j++) {
          nearest = Math.min(nearest, Math.hypot(tried[0] - place[j][0], tried[1] - place[j][1]));
        }
        if (nearest > farthest) {
          farthest = nearest;
          place[i] = tried;
        }
      }
    }
    for (int k = 0; k < closePairs; k++) {
      double azimuth = 2 * Math.PI * random.nextDouble();
      place[stations - 1 - k] =
          new double[] {
            place[k][0] + 0.5 * Math.sin(azimuth), place[k][1] + 0.5 * Math.cos(azimuth)
          };
    }
    return place;
  }

  private static double[] inCircle(double radius, Random random) {
    double r = radius * Math.sqrt(random.nextDouble());
    double azimuth = 2 * Math.PI * random.nextDouble();
    return new double[] {r * Math.sin(azimuth), r * Math.cos(azimuth)};
  }

  private double[] field(double[] x, double[] y, Random random) {
    double mean = 18 + 3 * random.nextGaussian();
    double[] value = new double[stations];
    Arrays.fill(value, mean);
    if (sill == 0) {
      return value;
    }
    double[][] covariance = new double[stations][stations];
    for (int i = 0; i < stations; i++) {
      for (int j = 0; j < stations; j++) {
        double lag = Math.hypot(x[i] - x[j], y[i] - y[j]);
        covariance[i][j] = sill - shape.model(sill, range).semivariance(lag);
      }
      covariance[i][i] += 1e-9;
    }
    double[] white = new double[stations];
    Arrays.setAll(white, i -> random.nextGaussian());
    double[] drawn =
        new CholeskyDecomposition(new Array2DRowRealMatrix(covariance, false), 1e-6, 1e-14)
            .getL()
            .operate(white);
    Arrays.setAll(value, i -> mean + drawn[i]);
    return value;
  }
}
