package org.mottle.engine.kriging;

import java.util.Locale;
import org.mottle.engine.neighbour.BucketGrid;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;

/** The two observations nearest to one another, in words, for reports of near-singular systems. */
final class ClosestPair {

  private ClosestPair() {}

  static String of(Observations observations) {
    if (observations.size() < 2) {
      return "only one";
    }
    BucketGrid grid = new BucketGrid(observations.xs(), observations.ys());
    BucketGrid.Search search = grid.search(Neighbourhood.nearest(1));
    int first = 0;
    int second = 1;
    double closest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < observations.size(); i++) {
      if (search.find(observations.x(i), observations.y(i), i) > 0
          && search.squaredDistance(0) < closest) {
        closest = search.squaredDistance(0);
        first = i;
        second = search.row(0);
      }
    }
    return String.format(
        Locale.ROOT,
        "%d and %d, %.3g m apart at E %.2f N %.2f",
        first + 1,
        second + 1,
        Math.sqrt(closest),
        observations.x(first),
        observations.y(first));
  }
}
