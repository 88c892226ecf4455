package org.mottle.engine.patch;

import java.util.Arrays;

/**
 * Adds cells one by one, in an order, and says when first they have a connected part of some size:
 * a union-find forest (Tarjan 1975) over the eight neighbours. One thread at a time.
 *
 * <p>Cost: the cells looked at until then.
 */
final class ConnectedGrowth {
  private final GreenGround ground;
  private final double leastM2;
  private final int[] parent;
  private final double[] areaM2;
  private final int[] round;
  private int now;

  ConnectedGrowth(GreenGround ground, double leastM2) {
    this.ground = ground;
    this.leastM2 = leastM2;
    this.parent = new int[ground.size()];
    this.areaM2 = new double[ground.size()];
    this.round = new int[ground.size()];
  }

  /**
   * How many cells of an order can be taken before those of them in a set have a connected part of
   * the least size; all when they never have.
   *
   * @param order cells of the green
   * @param words the set, one bit for each cell at which the surface is wanted
   * @param in whether cells in the set count, or those not in it
   */
  int before(int[] order, long[] words, boolean in) {
    now++;
    long wanted = in ? 1 : 0;
    for (int k = 0; k < order.length; k++) {
      int at = ground.position(order[k]);
      if ((words[at >> 6] >>> at & 1) == wanted && add(order[k]) >= leastM2) {
        return k;
      }
    }
    return order.length;
  }

  /** The area of the part a cell is now in. */
  private double add(int cell) {
    round[cell] = now;
    parent[cell] = cell;
    areaM2[cell] = ground.areaM2(cell);
    int root = cell;
    for (int k = 0; k < 8; k++) {
      int other = ground.neighbour(cell, k);
      if (other >= 0 && round[other] == now) {
        root = join(root, root(other));
      }
    }
    return areaM2[root];
  }

  private int join(int one, int other) {
    if (one == other) {
      return one;
    }
    int large = areaM2[one] >= areaM2[other] ? one : other;
    int small = large == one ? other : one;
    parent[small] = large;
    areaM2[large] += areaM2[small];
    return large;
  }

  private int root(int cell) {
    int at = cell;
    while (parent[at] != at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  }

  /** The part of every cell that counts, as the number of one of its cells; -1 for the others. */
  int[] parts(boolean[] counts) {
    now++;
    int[] parts = new int[ground.size()];
    Arrays.fill(parts, GreenGround.NONE);
    for (int i = 0; i < parts.length; i++) {
      if (counts[i]) {
        add(i);
      }
    }
    for (int i = 0; i < parts.length; i++) {
      if (counts[i]) {
        parts[i] = root(i);
      }
    }
    return parts;
  }
}
