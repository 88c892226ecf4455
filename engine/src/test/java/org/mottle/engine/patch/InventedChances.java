package org.mottle.engine.patch;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.InventedGround;
import org.mottle.engine.grid.GreenCells;

/**
 * A green whose moisture is a smooth trend plus smooth error, drawn many times from a seed; the
 * probabilities are the shares of the draws, so they and the realisations agree exactly.
 */
final class InventedChances {
  private static final double SPACING = 4.5;
  private static final int WAVES = 10;

  final Geometry outline;
  final GreenCells cells;
  final double[] mean;
  final double[] sd;
  final double[] dry;
  final double[] wet;
  final Excursions excursions;
  final List<Coordinate> stations = new ArrayList<>();

  InventedChances(
      Geometry outline, double cell, int realisations, Random random, double spread, double range) {
    this.outline = outline;
    this.cells = GreenCells.of(outline, cell);
    DoubleBinaryOperator trend = InventedGround.smooth(random, 4 * range);
    double[] x = cells.neededX();
    double[] y = cells.neededY();
    int n = x.length;
    this.mean = new double[n];
    this.sd = new double[n];
    this.dry = new double[n];
    this.wet = new double[n];
    Excursions.Builder builder = Excursions.builder(realisations, n);
    for (int i = 0; i < n; i++) {
      mean[i] = trend.applyAsDouble(x[i], y[i]);
      sd[i] = 3 * spread;
    }
    double[][] waves = waves(x, y, random, range);
    for (int r = 0; r < realisations; r++) {
      double[] values = mean.clone();
      for (double[] wave : waves) {
        double amplitude = 3 * spread / Math.sqrt(WAVES) * random.nextGaussian();
        for (int i = 0; i < n; i++) {
          values[i] += amplitude * wave[i];
        }
      }
      for (int i = 0; i < n; i++) {
        dry[i] += values[i] < 16 ? 1.0 / realisations : 0;
        wet[i] += values[i] > 20 ? 1.0 / realisations : 0;
      }
      builder.set(r, values, 16, 20);
    }
    this.excursions = builder.build();
    Envelope extent = outline.getEnvelopeInternal();
    for (double px = extent.getMinX() + 2; px < extent.getMaxX(); px += SPACING) {
      for (double py = extent.getMinY() + 2; py < extent.getMaxY(); py += SPACING) {
        Coordinate place =
            new Coordinate(px + random.nextDouble() - 0.5, py + random.nextDouble() - 0.5);
        if (outline.contains(outline.getFactory().createPoint(place))) {
          stations.add(place);
        }
      }
    }
  }

  /** Cosines and sines, so that sums with normal amplitudes are a Gaussian field. */
  private static double[][] waves(double[] x, double[] y, Random random, double range) {
    double[][] waves = new double[2 * WAVES][x.length];
    for (int k = 0; k < WAVES; k++) {
      double bearing = 2 * Math.PI * random.nextDouble();
      double number = 2 * Math.PI / (range * (0.5 + random.nextDouble()));
      for (int i = 0; i < x.length; i++) {
        double along = number * ((x[i] - 5e5) * Math.cos(bearing) + y[i] * Math.sin(bearing));
        waves[2 * k][i] = Math.cos(along);
        waves[2 * k + 1][i] = Math.sin(along);
      }
    }
    return waves;
  }

  Probabilities probabilities() {
    return Probabilities.of(cells, dry, wet, sd, excursions);
  }

  Marks.Subject subject() {
    return new Marks.Subject(outline, probabilities(), stations);
  }
}
