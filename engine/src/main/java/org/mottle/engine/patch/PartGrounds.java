package org.mottle.engine.patch;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Polygon;
import org.mottle.engine.grid.CellCoverage;

/**
 * The cells that count for each of several parts of a green: those it covers by at least half, and
 * those within a distance of them that are nearer to it than to another part. Distances run between
 * cell centroids. Immutable.
 */
final class PartGrounds {
  private final GreenGround ground;
  private final List<int[]> covered = new ArrayList<>();
  private final int[] part;
  private final double[] squared;

  PartGrounds(GreenGround ground, List<Polygon> parts) {
    this.ground = ground;
    this.part = new int[ground.size()];
    this.squared = new double[ground.size()];
    Arrays.fill(part, GreenGround.NONE);
    Arrays.fill(squared, Double.POSITIVE_INFINITY);
    for (Polygon polygon : parts) {
      covered.add(covered(polygon));
    }
    for (int p = 0; p < covered.size(); p++) {
      for (int cell : covered.get(p)) {
        squared[cell] = 0;
        part[cell] = part[cell] == GreenGround.NONE ? p : part[cell];
      }
    }
    for (int p = 0; p < covered.size(); p++) {
      claim(p, rim(covered.get(p)));
    }
  }

  /** The cells half covered; for a part without any the one it covers most of. */
  private int[] covered(Polygon polygon) {
    CellCoverage coverage = CellCoverage.of(polygon, ground.coverage().grid());
    int[] found = new int[coverage.size()];
    int n = 0;
    int most = GreenGround.NONE;
    double mostM2 = 0;
    for (int k = 0; k < coverage.size(); k++) {
      int cell = ground.number(coverage.cell(k));
      if (cell != GreenGround.NONE) {
        if (coverage.areaM2(k) >= 0.5 * ground.areaM2(cell)) {
          found[n++] = cell;
        }
        if (coverage.areaM2(k) > mostM2) {
          mostM2 = coverage.areaM2(k);
          most = cell;
        }
      }
    }
    return n == 0 && most != GreenGround.NONE ? new int[] {most} : Arrays.copyOf(found, n);
  }

  /** The cells with a neighbour that is not one of them. */
  private int[] rim(int[] cells) {
    boolean[] in = new boolean[ground.size()];
    for (int cell : cells) {
      in[cell] = true;
    }
    return Arrays.stream(cells).filter(cell -> onRim(cell, in)).toArray();
  }

  private boolean onRim(int cell, boolean[] in) {
    for (int k = 0; k < 8; k++) {
      int other = ground.neighbour(cell, k);
      if (other == GreenGround.NONE || !in[other]) {
        return true;
      }
    }
    return false;
  }

  private void claim(int p, int[] rim) {
    double[] x = new double[rim.length];
    double[] y = new double[rim.length];
    for (int k = 0; k < rim.length; k++) {
      x[k] = ground.x(rim[k]);
      y[k] = ground.y(rim[k]);
    }
    for (int i = 0; i < squared.length; i++) {
      double nearest = squared[i];
      for (int k = 0; k < x.length && nearest > 0; k++) {
        double dx = x[k] - ground.x(i);
        double dy = y[k] - ground.y(i);
        nearest = Math.min(nearest, dx * dx + dy * dy);
      }
      if (nearest < squared[i]) {
        squared[i] = nearest;
        part[i] = p;
      }
    }
  }

  /** The cells a part covers. */
  int[] covered(int p) {
    return covered.get(p);
  }

  /** The cells that count for a part. */
  int[] within(int p, double distanceM) {
    int[] found = new int[part.length];
    int n = 0;
    for (int i = 0; i < part.length; i++) {
      if (part[i] == p && squared[i] <= distanceM * distanceM) {
        found[n++] = i;
      }
    }
    return Arrays.copyOf(found, n);
  }
}
