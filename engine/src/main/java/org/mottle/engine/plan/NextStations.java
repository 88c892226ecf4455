package org.mottle.engine.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.check.Check;

/**
 * Where to read next: new stations on one green, ranked by the expected drop in misclassified area.
 *
 * <p>The loss is the integral over the green of p (1 - p) for each limit of the band, p the
 * probability of lying above it ({@link LimitLoss}); what a reading not yet taken is expected to
 * take off it is known in closed form from the share of the error variance it explains at every
 * point. Stations are picked greedily, each as if those before it had been read (Krause, Singh &
 * Guestrin 2008 on greedy placement); neither the loss nor the kriging variance is submodular for
 * certain, so the set of k need not be the best set of k (on small greens searched in full its gain
 * is 0.96 of the best or more). The gain is the mean over parameter draws, evenly spread over those
 * given; uncertainty between the draws is not counted as something a reading can take away. Without
 * limits stations are ranked by the drop of the mean kriging variance.
 *
 * <p>Ties go to the larger kriging variance, then from north to south, then from west to east. A
 * ranking ends early when the next station would gain less than {@link #withLeastGainM2 the least
 * gain}. Cost for n readings, m points, c candidates, d draws and k stations: d m c (n + k) sums
 * and d m c k evaluations of 4 ns. Immutable, shared by threads; one ranking takes one thread.
 */
public final class NextStations {
  /** Gains that differ by less than this share are equal. */
  private static final double TIE = 1e-9;

  private final int count;
  private final Spacing spacing;
  private final double leastGainM2;
  private final int mostDraws;

  /** Side of the cells of the green, least distance to its boundary and between stations, m. */
  private record Spacing(double cell, double inset, double clear) {}

  private NextStations(int count, Spacing spacing, double leastGainM2, int mostDraws) {
    this.count = count;
    this.spacing = spacing;
    this.leastGainM2 = leastGainM2;
    this.mostDraws = mostDraws;
  }

  /**
   * Six stations on a lattice of 1 m, 1 m inside the boundary and 1.5 m from any other, each worth
   * 0.1 m² at least; eight draws.
   */
  public static NextStations withDefaults() {
    return new NextStations(6, new Spacing(1, 1, 1.5), 0.1, 8);
  }

  /** At most this many stations, at least 1. */
  public NextStations withCount(int stations) {
    Check.atLeast("number of new stations", stations, 1, "");
    return new NextStations(stations, spacing, leastGainM2, mostDraws);
  }

  /** Side of the cells that stand for the green and hold the candidates, m. */
  public NextStations withCell(double metres) {
    Check.above("cell of the planning lattice", metres, 0, "m");
    Spacing other = new Spacing(metres, spacing.inset, spacing.clear);
    return new NextStations(count, other, leastGainM2, mostDraws);
  }

  /** Least distance of a new station to the boundary, m. */
  public NextStations withInset(double metres) {
    Check.atLeast("inset of new stations", metres, 0, "m");
    Spacing other = new Spacing(spacing.cell, metres, spacing.clear);
    return new NextStations(count, other, leastGainM2, mostDraws);
  }

  /** Least distance of a new station to any other, m. */
  public NextStations withClearance(double metres) {
    Check.atLeast("distance between stations", metres, 0, "m");
    Spacing other = new Spacing(spacing.cell, spacing.inset, metres);
    return new NextStations(count, other, leastGainM2, mostDraws);
  }

  /** Least gain worth a walk, m² of expected misclassified area. */
  public NextStations withLeastGainM2(double squareMetres) {
    Check.atLeast("least gain of a new station", squareMetres, 0, "m²");
    return new NextStations(count, spacing, squareMetres, mostDraws);
  }

  /** The gain is averaged over at most this many of the draws, at least 1. */
  public NextStations withMostDraws(int draws) {
    Check.atLeast("number of parameter draws", draws, 1, "");
    return new NextStations(count, spacing, leastGainM2, draws);
  }

  /**
   * Ranks the cells of a lattice over the green.
   *
   * @param outline polygon or multipolygon, holes allowed, m
   * @param existing stations of the survey in the order they were read
   * @param draws parameter draws, each with the readings kriged
   * @param limits of the band, value; none to rank by kriging variance
   */
  public StationRanking rank(
      Geometry outline, Positions existing, List<ModelDraw> draws, double... limits) {
    AreaPoints points = AreaPoints.of(outline, spacing.cell);
    return rank(outline, points.positions(), existing, draws, limits);
  }

  /** Ranks places of the caller's own; those too near the boundary or a station are left out. */
  public StationRanking rank(
      Geometry outline,
      Positions candidates,
      Positions existing,
      List<ModelDraw> draws,
      double... limits) {
    for (double limit : limits) {
      Check.finite("limit of the band", limit, "");
    }
    Criterion criterion =
        limits.length > 0 ? Criterion.MISCLASSIFIED_AREA : Criterion.MEAN_VARIANCE;
    List<Integer> used = spread(draws);
    if (used.isEmpty()) {
      return new StationRanking(
          criterion, List.of(), StopReason.NO_SOUND_DRAW, Double.NaN, Double.NaN, used, 0);
    }
    AreaPoints points = AreaPoints.of(outline, spacing.cell);
    Positions sites =
        new StationSites(outline, spacing.inset).among(candidates, existing, spacing.clear);
    List<DrawField> fields =
        used.stream().map(d -> new DrawField(draws.get(d), points, sites, limits)).toList();
    GreedyChoice choice = new GreedyChoice(criterion, points, sites, fields);
    double before = choice.total();
    StopReason stop = choose(choice, sites);
    return new StationRanking(
        criterion,
        choice.stations(before, existing),
        stop,
        before,
        choice.total(),
        used,
        choice.walk(existing).lengthM());
  }

  /** Evenly spread over the draws that could be solved. */
  private List<Integer> spread(List<ModelDraw> draws) {
    List<Integer> sound = new ArrayList<>();
    for (int d = 0; d < draws.size(); d++) {
      if (draws.get(d).system().soundness().sound()) {
        sound.add(d);
      }
    }
    int n = Math.min(mostDraws, sound.size());
    List<Integer> spread = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      spread.add(sound.get((int) ((2L * i + 1) * sound.size() / (2L * n))));
    }
    return spread;
  }

  private StopReason choose(GreedyChoice choice, Positions sites) {
    boolean[] open = new boolean[sites.size()];
    Arrays.fill(open, true);
    double least = choice.criterion() == Criterion.MISCLASSIFIED_AREA ? leastGainM2 : 0;
    for (int rank = 0; rank < count; rank++) {
      double[] gain = choice.gains();
      int best = best(gain, open, choice, sites);
      if (best < 0) {
        return StopReason.NO_PLACE_LEFT;
      }
      if (!(gain[best] > 0 && gain[best] >= least)) {
        return StopReason.GAIN_TOO_SMALL;
      }
      choice.take(best, gain[best]);
      for (int c = 0; c < open.length; c++) {
        open[c] &= sites.distance(c, sites.x(best), sites.y(best)) >= spacing.clear && c != best;
      }
    }
    return StopReason.ENOUGH;
  }

  /** -1 if no candidate is open. */
  private static int best(double[] gain, boolean[] open, GreedyChoice choice, Positions sites) {
    double most = Double.NEGATIVE_INFINITY;
    for (int c = 0; c < gain.length; c++) {
      most = open[c] ? Math.max(most, gain[c]) : most;
    }
    double mostVariance = Double.NEGATIVE_INFINITY;
    for (int c = 0; c < gain.length; c++) {
      if (open[c] && gain[c] >= most - TIE * Math.abs(most)) {
        mostVariance = Math.max(mostVariance, choice.variance(c));
      }
    }
    int best = -1;
    for (int c = 0; c < gain.length; c++) {
      boolean ties =
          open[c]
              && gain[c] >= most - TIE * Math.abs(most)
              && choice.variance(c) >= mostVariance * (1 - TIE);
      if (ties && (best < 0 || before(sites, c, best))) {
        best = c;
      }
    }
    return best;
  }

  private static boolean before(Positions sites, int a, int b) {
    return sites.y(a) != sites.y(b) ? sites.y(a) > sites.y(b) : sites.x(a) < sites.x(b);
  }
}
