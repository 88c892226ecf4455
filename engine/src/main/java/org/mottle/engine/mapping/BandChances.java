package org.mottle.engine.mapping;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.patch.ClassRule;
import org.mottle.engine.patch.Excursions;
import org.mottle.engine.patch.MarkRule;
import org.mottle.engine.patch.Marks;
import org.mottle.engine.patch.Probabilities;
import org.mottle.engine.patch.Spot;
import org.mottle.engine.patch.Zone;
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

  private final Prepared green;
  private final KrigedGreen kriged;
  private final Probabilities main;
  private final Probabilities whole;
  private final Surface.Chances rasters;

  /**
   * @param green the values of the main population
   * @param kriged from these
   * @param population the other, where there are two
   */
  BandChances(
      Prepared green,
      KrigedGreen kriged,
      Excursions excursions,
      Optional<GreenPopulation.Low> population) {
    TargetBand band = green.subject().band().orElseThrow();
    GreenCells cells = kriged.cells();
    double[] sd = kriged.sd();
    double[] dry = kriged.below(band.lowPct());
    double[] wet = kriged.above(band.highPct());
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
            marks.spots().stream().map(this::amongAll).toList(),
            marks.expected(),
            marks.smallest())
        : new Marks(List.of(), List.of(), marks.expected(), marks.smallest());
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
