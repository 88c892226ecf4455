package org.mottle.engine.mapping;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.patch.ClassRule;
import org.mottle.engine.patch.Excursions;
import org.mottle.engine.patch.MarkRule;
import org.mottle.engine.patch.Marks;
import org.mottle.engine.patch.Probabilities;
import org.mottle.engine.patch.RegionMean;
import org.mottle.engine.patch.Spot;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.patch.Zones;
import org.mottle.engine.population.LowProbability;
import org.mottle.engine.population.Mixture;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.TargetBand;

/**
 * How likely the ground of a green is below or above its band. Where a second, drier population was
 * found, classes speak of both, patches of the main population alone: spots that the readings
 * cannot outline must not enter an outline.
 */
final class BandChances {
  /** The map knows no more than the green's mean where its SD is this share of the field's. */
  private static final double KNOWS_LITTLE = 0.9;

  /** With more of the green than this in no class, the band is finer than the readings tell. */
  private static final double MOST_UNTOLD = 0.5;

  private final Prepared green;
  private final GreenCells cells;
  private final KrigedGreen kriged;
  private final Probabilities main;
  private final Probabilities whole;
  private final Optional<double[]> low;

  private BandChances(
      Prepared green,
      GreenCells cells,
      KrigedGreen kriged,
      Probabilities main,
      Probabilities whole,
      Optional<double[]> low) {
    this.green = green;
    this.cells = cells;
    this.kriged = kriged;
    this.main = main;
    this.whole = whole;
    this.low = low;
  }

  static BandChances of(
      Prepared green,
      KrigedGreen kriged,
      GreenCells cells,
      TargetBand band,
      Optional<GreenPopulation> population,
      int threads,
      Progress progress) {
    double[] dry = kriged.below(band.lowPct());
    double[] wet = kriged.above(band.highPct());
    Excursions excursions = kriged.excursions(band, threads, progress);
    Probabilities main = Probabilities.of(cells, dry, wet, kriged.sd(), excursions);
    Optional<GreenPopulation> two = population.filter(p -> p.found().isPresent());
    if (two.isEmpty()) {
      return new BandChances(green, cells, kriged, main, main, Optional.empty());
    }
    LowProbability probability = two.get().low().orElseThrow();
    Mixture mixture = two.get().found().orElseThrow().mixture();
    double lowMean = mixture.lowerMean(two.get().survey());
    double[] x = cells.neededX();
    double[] y = cells.neededY();
    double[] low = new double[x.length];
    double[] bothDry = new double[x.length];
    double[] bothWet = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      low[i] = probability.at(x[i], y[i]);
      bothDry[i] = LowProbability.dry(low[i], dry[i], lowMean, mixture.sigma(), band.lowPct());
      double lowAbove = 1 - LowProbability.dry(1, 0, lowMean, mixture.sigma(), band.highPct());
      bothWet[i] = low[i] * lowAbove + (1 - low[i]) * wet[i];
    }
    return new BandChances(
        green,
        cells,
        kriged,
        main,
        Probabilities.of(cells, bothDry, bothWet, kriged.sd(), excursions),
        Optional.of(low));
  }

  Surface.Chances rasters() {
    double[] dry = inOrder(whole.dry().values());
    double[] wet = inOrder(whole.wet().values());
    double[] sd = inOrder(whole.sd().values());
    ClassRule rule = rule();
    double[] classes = new double[dry.length];
    Arrays.setAll(classes, i -> rule.of(dry[i], wet[i], sd[i]).number());
    return new Surface.Chances(
        cells.map(dry), cells.map(wet), low.map(cells::map), cells.map(classes));
  }

  private ClassRule rule() {
    double cell = cells.grid().cell();
    return ClassRule.defaults()
        .withSdLimit(KNOWS_LITTLE * kriged.structuredSd())
        .withLeastPart(cell * cell);
  }

  /** From the surface grid back to the needed centres. */
  private double[] inOrder(double[] surface) {
    double[] values = new double[cells.neededCount()];
    for (int i = 0; i < values.length; i++) {
      values[i] = surface[cells.neededCell(i)];
    }
    return values;
  }

  List<Zone> zones(Surface surface) {
    return Zones.of(outline(), whole, rule(), surface.interpolable(), kriged.regionMean());
  }

  private Geometry outline() {
    return green.subject().green().outline();
  }

  /** Says so when the readings cannot resolve the band. */
  void judge(List<Zone> zones, GreenRemarks remarks) {
    double untold =
        zones.stream()
            .filter(z -> z.cls() == ZoneClass.CANNOT_TELL)
            .mapToDouble(Zone::areaM2)
            .sum();
    double area = outline().getArea();
    if (untold > MOST_UNTOLD * area) {
      remarks.atMost(
          Standing.PROBABILITIES,
          String.format(
              Locale.ROOT,
              "%.0f %% of the green cannot be told: the readings do not resolve the band",
              100 * untold / area));
    }
  }

  /** Patches and spots where the map carries them; what is expected in any case. */
  Marks marks(Surface surface, RegionMean regionMean, GreenRemarks remarks) {
    double cell = cells.grid().cell();
    List<Coordinate> places =
        java.util.stream.IntStream.range(0, green.observations().size())
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
                .withLeastPart(cell * cell),
            surface.interpolable(),
            regionMean);
    marks.expected().stream()
        .filter(e -> !e.placeKnown() && e.areaM2() >= 1)
        .forEach(
            e ->
                remarks.add(
                    String.format(
                        Locale.ROOT,
                        "about %.0f m² %s ground is to be expected, but its place is not known",
                        e.areaM2(),
                        e.kind().code())));
    boolean carried = remarks.standing() == Standing.PATCHES;
    return new Marks(
        carried ? marks.patches() : List.of(),
        carried ? marks.spots().stream().map(this::byStation).toList() : List.of(),
        marks.expected(),
        marks.smallest());
  }

  /** The station of a spot by its place among the stations of the outcome. */
  private Spot byStation(Spot s) {
    return new Spot(
        s.kind(),
        s.point(),
        green.members()[s.station()],
        s.distanceM(),
        s.pExist(),
        s.areaExpectedM2());
  }
}
