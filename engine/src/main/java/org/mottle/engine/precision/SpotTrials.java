package org.mottle.engine.precision;

import java.util.Arrays;
import org.mottle.engine.kriging.Weights;
import org.mottle.engine.plan.AreaPoints;
import org.mottle.engine.simulation.NormalStream;

/**
 * Simulated greens, each mapped without and with spots of several sizes, and the count of what was
 * called. The map of a green with a spot is that without, plus the weights of the stations inside
 * times the contrast: n m operations a green of m pieces, few more a spot. Scratch memory; not for
 * several threads.
 */
final class SpotTrials {
  private static final double PER_53_BITS = 0x1p-53;

  private final AreaPoints ground;
  private final double[] x;
  private final double[] y;
  private final double[] areaUpTo;
  private final double[][] weight;
  private final SimulatedVisit visit;

  private final double[] diameter;
  private final double[] squaredRadius;
  private final double largest;

  /** Size of the contrast, and +1 for drier, -1 for wetter. */
  private final double contrast;

  private final double sign;

  /** Estimate at every piece of the sound green, turned so that a spot is always low. */
  private final double[] map;

  private final Stations[] inside;
  private final boolean[] seen;
  private final int[] found;
  private int wrongly;

  SpotTrials(Prediction prediction, double[] diametersM, double contrastPct) {
    Weights weights = prediction.weights();
    this.ground = prediction.pieces();
    this.x = ground.positions().xs();
    this.y = ground.positions().ys();
    this.areaUpTo = new double[ground.size()];
    double sum = 0;
    for (int p = 0; p < areaUpTo.length; p++) {
      sum += ground.areaM2(p);
      areaUpTo[p] = sum;
    }
    this.weight = weights.toArray();
    this.visit = new SimulatedVisit(prediction.stations(), prediction.model());
    this.diameter = diametersM.clone();
    this.squaredRadius = Arrays.stream(diameter).map(d -> d * d / 4).toArray();
    this.largest = Arrays.stream(squaredRadius).max().orElse(0);
    this.contrast = Math.abs(contrastPct);
    this.sign = Math.signum(contrastPct);
    this.map = new double[ground.size()];
    this.inside = new Stations[diameter.length];
    Arrays.setAll(inside, d -> new Stations(weight.length));
    this.seen = new boolean[diameter.length];
    this.found = new int[diameter.length];
  }

  /** How many sound greens were called. */
  int wrongly() {
    return wrongly;
  }

  /** How many spots of the d-th diameter were found. */
  int found(int d) {
    return found[d];
  }

  /** One green more, from a stream of its own. */
  void next(long seed, int simulation) {
    NormalStream stream = new NormalStream(seed, simulation);
    visit.draw(stream);
    Arrays.fill(map, 0);
    for (int i = 0; i < weight.length; i++) {
      add(weight[i], sign * visit.value(i));
    }
    double limit = -contrast / 2;
    wrongly += anyBelow(limit) ? 1 : 0;
    int piece = piece(stream);
    double centreX = within(piece, x[piece], stream);
    double centreY = within(piece, y[piece], stream);
    look(piece, centreX, centreY, limit);
    for (int d = 0; d < diameter.length; d++) {
      found[d] += seen[d] ? 1 : 0;
    }
  }

  private boolean anyBelow(double limit) {
    for (double value : map) {
      if (value < limit) {
        return true;
      }
    }
    return false;
  }

  private void add(double[] row, double value) {
    for (int p = 0; p < map.length; p++) {
      map[p] += value * row[p];
    }
  }

  /** A piece of ground, as likely as its area is large. */
  private int piece(NormalStream stream) {
    double at = uniform(stream) * areaUpTo[areaUpTo.length - 1];
    int found = Arrays.binarySearch(areaUpTo, at);
    return Math.min(found >= 0 ? found + 1 : -found - 1, areaUpTo.length - 1);
  }

  /** Anywhere on a whole piece; in the middle of one that the edge of the green cuts. */
  private double within(int piece, double middle, NormalStream stream) {
    double side = Prediction.PIECE_M;
    double off = (uniform(stream) - 0.5) * side;
    return ground.areaM2(piece) < side * side * (1 - 1e-9) ? middle : middle + off;
  }

  private static double uniform(NormalStream stream) {
    return (stream.bits() >>> 11) * PER_53_BITS;
  }

  /** Which spots round a centre have some ground mapped below the limit; the centre's piece too. */
  private void look(int centre, double cx, double cy, double limit) {
    for (int d = 0; d < diameter.length; d++) {
      inside[d].clear();
      for (int i = 0; i < weight.length; i++) {
        if (visit.within(i, cx, cy, squaredRadius[d])) {
          inside[d].add(i);
        }
      }
      seen[d] = below(centre, inside[d], limit);
    }
    for (int p = 0; p < map.length; p++) {
      double dx = x[p] - cx;
      double dy = y[p] - cy;
      double squared = dx * dx + dy * dy;
      for (int d = 0; squared <= largest && d < diameter.length; d++) {
        seen[d] |= squared <= squaredRadius[d] && !seen[d] && below(p, inside[d], limit);
      }
    }
  }

  private boolean below(int piece, Stations within, double limit) {
    double share = 0;
    for (int k = 0; k < within.count; k++) {
      share += weight[within.index[k]][piece];
    }
    return map[piece] - contrast * share < limit;
  }

  /** Those that were read inside a spot. */
  private static final class Stations {
    private final int[] index;
    private int count;

    Stations(int most) {
      this.index = new int[most];
    }

    void clear() {
      count = 0;
    }

    void add(int station) {
      index[count++] = station;
    }
  }
}
