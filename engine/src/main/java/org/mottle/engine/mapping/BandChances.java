package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.patch.ClassRule;
import org.mottle.engine.patch.Excursions;
import org.mottle.engine.patch.MarkRule;
import org.mottle.engine.patch.Marks;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.Probabilities;
import org.mottle.engine.patch.Spot;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.patch.Zones;
import org.mottle.engine.survey.TargetBand;

/**
 * How likely the ground of a green is below or above its band. Where a second, drier population was
 * found, classes speak of both, patches of the main population alone: spots that the readings
 * cannot outline must not enter an outline.
 */
final class BandChances {
  /** The map knows no more than the green's mean where its SD is this share of the field's. */
  private static final double KNOWS_LITTLE = 0.9;

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private final Prepared all;
  private final Prepared green;
  private final KrigedGreen kriged;
  private final Probabilities main;
  private final Probabilities whole;
  private final Surface.Chances rasters;
  private final List<Outcome.Low> lowStations;

  /**
   * @param all values of the green
   * @param green those that the surface goes through
   * @param kriged from these
   * @param populations what is known of a second population
   */
  BandChances(
      Prepared all,
      Prepared green,
      KrigedGreen kriged,
      Excursions excursions,
      Optional<GreenPopulation> populations) {
    Optional<GreenPopulation.Low> population = populations.flatMap(GreenPopulation::low);
    TargetBand band = green.subject().band().orElseThrow();
    GreenCells cells = kriged.cells();
    double[] sd = kriged.sd();
    double[] dry = kriged.below(band.lowPct());
    double[] wet = kriged.above(band.highPct());
    this.all = all;
    this.lowStations = populations.map(p -> p.lowStations(all)).orElse(List.of());
    this.green = green;
    this.kriged = kriged;
    this.main = Probabilities.of(cells, dry, wet, sd, excursions);
    Optional<double[]> low = population.map(p -> p.probability(cells));
    if (low.isPresent()) {
      dry = population.get().below(band.lowPct(), low.get(), dry);
      wet = population.get().above(band.highPct(), low.get(), wet);
    }
    // realisations are of the main population: they tell no area of both
    this.whole =
        low.isPresent()
            ? Probabilities.of(cells, dry, wet, sd, Excursions.none(cells.neededCount()))
            : main;
    this.rasters =
        new Surface.Chances(
            cells.map(dry), cells.map(wet), low.map(cells::map), cells.map(classes(dry, wet, sd)));
  }

  private double[] classes(double[] dry, double[] wet, double[] sd) {
    ClassRule rule = rule();
    double[] classes = new double[dry.length];
    Arrays.setAll(classes, i -> rule.of(dry[i], wet[i], sd[i]).number());
    return classes;
  }

  private ClassRule rule() {
    return ClassRule.defaults()
        .withSdLimit(KNOWS_LITTLE * kriged.structuredSd())
        .withLeastPart(cellM2());
  }

  private double cellM2() {
    double cell = kriged.cells().grid().cell();
    return cell * cell;
  }

  private Geometry outline() {
    return green.subject().green().outline();
  }

  /** Of both populations where there are two. */
  Surface.Chances rasters() {
    return rasters;
  }

  List<Zone> zones(Surface surface) {
    return Zones.of(outline(), whole, rule(), surface.interpolable(), kriged.regionMean());
  }

  /**
   * Patches and spots of the main population where the map carries them; what is expected in any
   * case. Spots name their station by its place among all stations of the green.
   */
  Marks marks(Surface surface, GreenRemarks remarks) {
    List<Coordinate> places =
        IntStream.range(0, green.observations().size())
            .mapToObj(green::station)
            .map(s -> new Coordinate(s.x(), s.y()))
            .toList();
    Marks marks =
        Marks.of(
            new Marks.Subject(outline(), main, places),
            MarkRule.defaults()
                .withPositionSd(
                    Math.hypot(
                        green.meanJitterM(), green.observations().positionError().shiftSdM()))
                .withLeastPart(cellM2()),
            surface.interpolable(),
            kriged.regionMean());
    double area = outline().getArea();
    marks.expected().forEach(e -> remarks.onExpected(e, area));
    return remarks.standing() == Standing.PATCHES
        ? new Marks(
            marks.patches(),
            Stream.concat(
                    marks.spots().stream().map(this::amongAll), chosen(marks.patches()).stream())
                .toList(),
            marks.expected(),
            marks.smallest())
        : new Marks(List.of(), List.of(), marks.expected(), marks.smallest());
  }

  /**
   * Stations chosen for what was seen there that lie outside the band and in no patch of its kind.
   * How likely the ground there is so, some decimetres across, follows from the nugget.
   */
  private List<Spot> chosen(List<Patch> patches) {
    TargetBand band = all.subject().band().orElseThrow();
    Set<Integer> through = Arrays.stream(green.members()).boxed().collect(Collectors.toSet());
    Set<Integer> low = lowStations.stream().map(Outcome.Low::station).collect(Collectors.toSet());
    List<Spot> spots = new ArrayList<>();
    for (int i = 0; i < all.observations().size(); i++) {
      int member = all.members()[i];
      double value = all.observations().value(i);
      boolean outside = value < band.lowPct() || value > band.highPct();
      if (all.station(i).chosen()
          && !through.contains(member)
          && !low.contains(member)
          && outside) {
        ZoneClass kind = value < band.lowPct() ? ZoneClass.DRY : ZoneClass.WET;
        Coordinate at = new Coordinate(all.station(i).x(), all.station(i).y());
        boolean inPatch =
            patches.stream()
                .filter(p -> p.kind() == kind)
                .anyMatch(p -> p.geometry().distance(FACTORY.createPoint(at)) == 0);
        if (!inPatch) {
          double beyond = kind == ZoneClass.DRY ? band.lowPct() - value : value - band.highPct();
          double sd = Math.sqrt(kriged.nugget() / all.insertions()[i]);
          spots.add(new Spot(kind, at, member, 0, chance(beyond, sd), Double.NaN));
        }
      }
    }
    return spots;
  }

  private static double chance(double beyond, double sd) {
    return sd == 0 ? 1 : new NormalDistribution(null, 0, sd).cumulativeProbability(beyond);
  }

  private Spot amongAll(Spot spot) {
    return new Spot(
        spot.kind(),
        spot.point(),
        green.members()[spot.station()],
        spot.distanceM(),
        spot.pExist(),
        spot.areaExpectedM2());
  }
}
