package org.mottle.engine.patch;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.mottle.engine.contour.LinearSurface;
import org.mottle.engine.grid.CellCoverage;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.interval.Interval;

/** The patches and spots of one kind, dry or wet; see {@link Marks}. */
final class KindMarks {
  private static final double LIKELY = 0.5;

  private final Marks.Subject subject;
  private final MarkRule rule;
  private final GreenGround ground;
  private final SmallestPatch smallest;
  private final ZoneClass kind;
  private final Raster raster;
  private final LinearSurface linear;
  private final double[] p;
  private final SeenGround seen;
  private final List<Patch> patches = new ArrayList<>();
  private final List<Spot> spots = new ArrayList<>();
  private ExpectedGround expected;

  KindMarks(
      Marks.Subject subject,
      MarkRule rule,
      GreenGround ground,
      SmallestPatch smallest,
      ZoneClass kind) {
    this.subject = subject;
    this.rule = rule;
    this.ground = ground;
    this.smallest = smallest;
    this.kind = kind;
    this.raster = subject.probabilities().of(kind);
    this.linear = new LinearSurface(raster);
    this.p = new double[ground.size()];
    for (int i = 0; i < p.length; i++) {
      p[i] = raster.value(ground.cell(i));
    }
    this.seen = new SeenGround(ground, p, kind, excursions(), rule.speckM2());
  }

  List<Patch> patches() {
    return patches;
  }

  List<Spot> spots() {
    return spots;
  }

  ExpectedGround expected() {
    return expected;
  }

  void mark(Moisture moisture) {
    int[] all = new int[p.length];
    Arrays.setAll(all, i -> i);
    double areaM2 = seen.expectedM2(all);
    Interval area = seen.area(all);
    double level = areaM2 > 0 ? new VorobevLevel(ground, raster).of(areaM2) : 0;
    boolean known = areaM2 > 0 && (level >= rule.leastLevel() || mostIsLikely(areaM2));
    expected = new ExpectedGround(kind, areaM2, area.low(), area.high(), level, known);
    List<Polygon> parts = known ? markParts(level, moisture) : List.of();
    markStations(parts);
  }

  /**
   * Whether most of the expected area lies where the ground is more likely so than not: a sure
   * patch with a wide fringe has a low level too, but no unknown place.
   */
  private boolean mostIsLikely(double areaM2) {
    int[] likely = IntStream.range(0, p.length).filter(i -> p[i] >= LIKELY).toArray();
    return seen.expectedM2(likely) > areaM2 / 2;
  }

  /** Marks the parts of the outline; returns them. */
  private List<Polygon> markParts(double level, Moisture moisture) {
    JointLevels joint = JointLevels.of(ground, p, kind, excursions(), rule);
    ExcursionSets sets = ExcursionSets.of(subject.outline(), raster, level, joint, rule);
    PartGrounds grounds = new PartGrounds(ground, sets.outline());
    double envelope = Math.min(level, joint.envelope());
    for (int k = 0; k < sets.outline().size(); k++) {
      Polygon part = sets.outline().get(k);
      int[] near = grounds.within(k, smallest.spacingM());
      double exists = seen.existence(seen.atLeast(near, envelope));
      Patch.Size size = Patches.size(part);
      int readings = Patches.readingsIn(part, subject.stations());
      if (readings > 0 && exists >= rule.leastExistence() && outlinable(part, size)) {
        patches.add(patch(part, size, readings, moisture, likelihood(part, sets, near, exists)));
      } else {
        spots.add(spot(likeliest(part, grounds.covered(k)), exists, seen.expectedM2(near)));
      }
    }
    return sets.outline();
  }

  /** By the stations where the part lies: infill there outlines what elsewhere is a spot. */
  private boolean outlinable(Polygon part, Patch.Size size) {
    CellCoverage own = CellCoverage.of(part, ground.coverage().grid());
    return SmallestPatch.of(own, subject.stations(), rule.positionSdM()).reachedBy(size);
  }

  private Patch patch(
      Polygon part, Patch.Size size, int readings, Moisture moisture, Patch.Likelihood likelihood) {
    RegionMean.MeanAndSd mean = moisture.of(part);
    return new Patch(
        0, kind, part, size, readings, mean.mean(), mean.sd(), Optional.of(likelihood));
  }

  private Patch.Likelihood likelihood(Polygon part, ExcursionSets sets, int[] near, double exists) {
    Interval area = seen.area(near);
    return new Patch.Likelihood(
        Ground.of(part, raster).mean(linear),
        exists,
        seen.expectedM2(near),
        area.low(),
        area.high(),
        sets.bounds(part));
  }

  private Coordinate likeliest(Polygon part, int[] covered) {
    int best = GreenGround.NONE;
    for (int cell : covered) {
      best = best == GreenGround.NONE || p[cell] > p[best] ? cell : best;
    }
    return best == GreenGround.NONE
        ? part.getInteriorPoint().getCoordinate()
        : new Coordinate(ground.x(best), ground.y(best));
  }

  private Spot spot(Coordinate point, double exists, double expectedM2) {
    int nearest = 0;
    List<Coordinate> stations = subject.stations();
    for (int s = 1; s < stations.size(); s++) {
      if (point.distance(stations.get(s)) < point.distance(stations.get(nearest))) {
        nearest = s;
      }
    }
    double distance = point.distance(stations.get(nearest));
    return new Spot(kind, point, nearest, distance, exists, expectedM2);
  }

  /** Stations that are likely so but lie in no part: the likeliest of each connected place. */
  private void markStations(List<Polygon> parts) {
    int[] places = seen.places(LIKELY);
    int[] best = new int[ground.size()];
    Arrays.fill(best, GreenGround.NONE);
    for (int s = 0; s < subject.stations().size(); s++) {
      Coordinate station = subject.stations().get(s);
      double there = linear.value(station.x, station.y);
      if (there >= LIKELY && !near(parts, station)) {
        int cell = seen.nearest(station);
        int place = places[cell] == GreenGround.NONE ? cell : places[cell];
        if (best[place] == GreenGround.NONE || there > probabilityAt(best[place])) {
          best[place] = s;
        }
      }
    }
    boolean[] outlined = outlined();
    Arrays.stream(best)
        .filter(s -> s != GreenGround.NONE)
        .sorted()
        .mapToObj(s -> stationSpot(subject.stations().get(s), outlined))
        .forEach(spots::add);
  }

  /** Whether a station is in a part or in its fringe: what is seen there has a mark already. */
  private boolean near(List<Polygon> parts, Coordinate station) {
    Point point = subject.outline().getFactory().createPoint(station);
    return parts.stream().anyMatch(part -> part.distance(point) <= smallest.spacingM() / 2);
  }

  private double probabilityAt(int station) {
    Coordinate place = subject.stations().get(station);
    return linear.value(place.x, place.y);
  }

  /** The cells in patches: their ground belongs to no spot. */
  private boolean[] outlined() {
    boolean[] outlined = new boolean[ground.size()];
    PartGrounds grounds = new PartGrounds(ground, patches.stream().map(Patch::geometry).toList());
    for (int k = 0; k < patches.size(); k++) {
      for (int cell : grounds.covered(k)) {
        outlined[cell] = true;
      }
    }
    return outlined;
  }

  private Spot stationSpot(Coordinate station, boolean[] outlined) {
    int[] near =
        Arrays.stream(seen.within(station, smallest.spacingM()))
            .filter(cell -> !outlined[cell])
            .toArray();
    return spot(station, seen.existence(near), seen.expectedM2(near));
  }

  private Excursions excursions() {
    return subject.probabilities().excursions();
  }
}
