package org.mottle.engine.kriging;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.mottle.engine.position.BlurredModel;
import org.mottle.engine.position.DisplacedSemivariance;
import org.mottle.engine.variogram.Anisotropy;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Structure;
import org.mottle.engine.variogram.VariogramModel;

/**
 * Semivariances of many separations at once, without the nugget. Places are first put into frames,
 * one for each anisotropy of the model: centred, turned along the major axis and stretched across
 * it, so that in its frame every structure is isotropic. Immutable.
 */
final class Covariances {

  /** Places in every frame: u and v are [frames][count], m. */
  record Placed(double[][] u, double[][] v) {}

  private final double originX;
  private final double originY;
  private final double[] sin;
  private final double[] cos;
  private final double[] ratio;
  private final List<List<Sums>> models;
  private final double nugget;

  /** Adds the semivariances of one structure at squared lags: a model, or one that is blurred. */
  @FunctionalInterface
  private interface Sums {
    void addSemivariances(double[] squaredLag, int count, double[] sum);
  }

  /** Frames are centred on the origin given, somewhere amid the observations. */
  Covariances(NestedModel model, double originX, double originY) {
    this(model, originX, originY, m -> m::addSemivariances);
  }

  private Covariances(
      NestedModel model, double originX, double originY, Function<VariogramModel, Sums> sums) {
    this.originX = originX;
    this.originY = originY;
    this.nugget = model.nugget();
    List<Anisotropy> found = new ArrayList<>();
    List<List<Sums>> grouped = new ArrayList<>();
    for (Structure s : model.structures()) {
      Anisotropy frame = s.anisotropy().isotropic() ? Anisotropy.NONE : s.anisotropy();
      if (!found.contains(frame)) {
        found.add(frame);
        grouped.add(new ArrayList<>());
      }
      grouped.get(found.indexOf(frame)).add(sums.apply(s.model()));
    }
    this.sin = new double[found.size()];
    this.cos = new double[found.size()];
    this.ratio = new double[found.size()];
    for (int f = 0; f < sin.length; f++) {
      Anisotropy frame = found.get(f);
      // an isotropic frame is not turned: u is east, v is north, to the last bit
      sin[f] = frame.isotropic() ? 1 : Math.sin(frame.major().radians());
      cos[f] = frame.isotropic() ? 0 : Math.cos(frame.major().radians());
      ratio[f] = frame.ratio();
    }
    this.models = grouped.stream().map(List::copyOf).toList();
  }

  /**
   * The same frames for separations that are wrong by a Gaussian displacement, for isotropic
   * models.
   *
   * @param sdM standard deviation of the displacement per axis, m
   */
  static Covariances displaced(NestedModel model, double originX, double originY, double sdM) {
    return new Covariances(model, originX, originY, m -> BlurredModel.of(m, sdM)::addSemivariances);
  }

  /** As above without a table, for few separations. */
  static Covariances displacedOnce(NestedModel model, double originX, double originY, double sdM) {
    return new Covariances(
        model,
        originX,
        originY,
        m -> {
          DisplacedSemivariance exact = DisplacedSemivariance.of(m);
          return (squaredLag, count, sum) -> {
            for (int i = 0; i < count; i++) {
              sum[i] += exact.semivariance(sdM, Math.sqrt(squaredLag[i]));
            }
          };
        });
  }

  double nugget() {
    return nugget;
  }

  int frames() {
    return sin.length;
  }

  /** Puts {@code count} places from {@code from} on, moved by (dx, dy), into the frames. */
  Placed place(double[] x, double[] y, int from, int count, double dx, double dy) {
    Placed placed = new Placed(new double[sin.length][count], new double[sin.length][count]);
    place(x, y, from, count, dx, dy, placed);
    return placed;
  }

  void place(double[] x, double[] y, int from, int count, double dx, double dy, Placed into) {
    for (int i = 0; i < count; i++) {
      placeOne(x[from + i], y[from + i], dx, dy, into, i);
    }
  }

  /** Puts one place, moved by (dx, dy), into the frames at index {@code at}. */
  void placeOne(double x, double y, double dx, double dy, Placed into, int at) {
    putSeparation(x - originX + dx, y - originY + dy, into, at);
  }

  private void putSeparation(double east, double north, Placed into, int at) {
    for (int f = 0; f < sin.length; f++) {
      into.u()[f][at] = east * sin[f] + north * cos[f];
      into.v()[f][at] = (north * sin[f] - east * cos[f]) / ratio[f];
    }
  }

  /** Puts points given by their separation from one another into the frames, uncentred. */
  Placed placeSeparations(double[] dx, double[] dy) {
    Placed placed =
        new Placed(new double[sin.length][dx.length], new double[sin.length][dx.length]);
    for (int i = 0; i < dx.length; i++) {
      putSeparation(dx[i], dy[i], placed, i);
    }
    return placed;
  }

  /**
   * Semivariances between the points of a small set, packed: row i < n holds its semivariances to
   * the points j < i; rows n to n + extra - 1 those to the first n points.
   *
   * @param squaredLag scratch, as long as {@code out}
   * @param out [n (n - 1) / 2 + extra n] overwritten
   */
  void packedSemivariances(Placed points, int n, int extra, double[] squaredLag, double[] out) {
    int total = n * (n - 1) / 2 + extra * n;
    Arrays.fill(out, 0, total, 0);
    for (int f = 0; f < sin.length; f++) {
      packedLags(points.u()[f], points.v()[f], n, extra, squaredLag);
      for (Sums model : models.get(f)) {
        model.addSemivariances(squaredLag, total, out);
      }
    }
  }

  private static void packedLags(double[] u, double[] v, int n, int extra, double[] squaredLag) {
    int at = 0;
    for (int i = 1; i < n + extra; i++) {
      double ui = u[i];
      double vi = v[i];
      int last = Math.min(i, n);
      for (int j = 0; j < last; j++) {
        double du = u[j] - ui;
        double dv = v[j] - vi;
        squaredLag[at + j] = du * du + dv * dv;
      }
      at += last;
    }
  }

  /**
   * Semivariances between one place and many.
   *
   * @param squaredLag [count] scratch
   * @param out [count] overwritten: sum over the structures, value²
   */
  void semivariances(
      Placed one, int i, Placed many, int from, int count, double[] squaredLag, double[] out) {
    Arrays.fill(out, 0, count, 0);
    for (int f = 0; f < sin.length; f++) {
      squaredLags(one.u()[f][i], one.v()[f][i], many.u()[f], many.v()[f], from, count, squaredLag);
      for (Sums model : models.get(f)) {
        model.addSemivariances(squaredLag, count, out);
      }
    }
  }

  private static void squaredLags(
      double u, double v, double[] us, double[] vs, int from, int count, double[] squaredLag) {
    for (int j = 0; j < count; j++) {
      double du = us[from + j] - u;
      double dv = vs[from + j] - v;
      squaredLag[j] = du * du + dv * dv;
    }
  }

  /** Mean semivariance between the points of two weighted sets, without the nugget. */
  double meanSemivariance(Placed a, double[] weightA, Placed b, double[] weightB) {
    double[] squaredLag = new double[weightB.length];
    double[] gamma = new double[weightB.length];
    double sum = 0;
    for (int i = 0; i < weightA.length; i++) {
      semivariances(a, i, b, 0, weightB.length, squaredLag, gamma);
      double row = 0;
      for (int j = 0; j < weightB.length; j++) {
        row += weightB[j] * gamma[j];
      }
      sum += weightA[i] * row;
    }
    return sum;
  }
}
