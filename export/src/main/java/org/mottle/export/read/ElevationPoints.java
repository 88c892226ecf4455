package org.mottle.export.read;

import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;

/**
 * Points with heights, in the working CRS; a grid of them is the engine's to make. Immutable: the
 * arrays are copied in and out.
 *
 * @param x east, m
 * @param y north, m
 * @param z height, m
 * @param sources names of the files
 */
public record ElevationPoints(double[] x, double[] y, double[] z, List<String> sources) {
  public ElevationPoints {
    x = x.clone();
    y = y.clone();
    z = z.clone();
    sources = List.copyOf(sources);
    if (x.length != y.length || x.length != z.length) {
      throw new IllegalArgumentException(
          "each point needs x, y and z, were %d, %d, %d".formatted(x.length, y.length, z.length));
    }
  }

  @Override
  public double[] x() {
    return x.clone();
  }

  @Override
  public double[] y() {
    return y.clone();
  }

  @Override
  public double[] z() {
    return z.clone();
  }

  public int size() {
    return x.length;
  }

  Envelope box() {
    Envelope box = new Envelope();
    for (int i = 0; i < x.length; i++) {
      box.expandToInclude(x[i], y[i]);
    }
    return box;
  }

  /** Those in a box, edges included. */
  ElevationPoints within(Envelope box) {
    int[] kept = IntStream.range(0, x.length).filter(i -> box.contains(x[i], y[i])).toArray();
    return new ElevationPoints(
        IntStream.of(kept).mapToDouble(i -> x[i]).toArray(),
        IntStream.of(kept).mapToDouble(i -> y[i]).toArray(),
        IntStream.of(kept).mapToDouble(i -> z[i]).toArray(),
        sources);
  }
}
