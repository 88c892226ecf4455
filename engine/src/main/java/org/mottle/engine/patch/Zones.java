package org.mottle.engine.patch;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.Band;
import org.mottle.engine.contour.Bands;
import org.mottle.engine.contour.Contours;
import org.mottle.engine.contour.Layer;
import org.mottle.engine.contour.LinearSurface;
import org.mottle.engine.contour.Tiling;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.survey.TargetBand;

/**
 * Zones of a green: a {@link Tiling} by the probabilities of being dry, wet and in band, or, when
 * there are none, {@link Bands} of the surface between the limits of the target band; so they tile
 * the green without gap or overlap and share their edges. The mean of a zone is that of the
 * interpolated surface, cell by cell at the centroid of the covered part, weighted by covered area.
 */
public final class Zones {
  private static final ZoneClass[] BY_VALUE = {ZoneClass.DRY, ZoneClass.IN_BAND, ZoneClass.WET};

  private Zones() {}

  /**
   * @param outline of the green, m
   * @param surface moisture at cell centres, % by volume; wide enough for every point of the
   *     outline, as {@link org.mottle.engine.grid.GreenCells#surface} makes it
   * @param band the limits
   * @param regionMean gives the standard error of a zone's mean
   * @return the zones that exist: ground without values, dry, in band, wet
   */
  public static List<Zone> of(
      Geometry outline, Raster surface, TargetBand band, RegionMean regionMean) {
    return of(Contours.of(outline, surface), surface, band, regionMean);
  }

  /** The same from contours that exist already, made from the outline and the surface. */
  public static List<Zone> of(
      Contours contours, Raster surface, TargetBand band, RegionMean regionMean) {
    Moisture moisture = new Moisture(surface, contours.surface(), regionMean);
    List<Zone> zones = new ArrayList<>();
    for (Band part : contours.bands(band.lowPct(), band.highPct())) {
      boolean none = part.index() == Band.NO_VALUE;
      ZoneClass cls = none ? ZoneClass.NO_VALUE : BY_VALUE[part.index()];
      zones.add(zone(cls, part.geometry(), moisture, Zone.Likelihood.UNKNOWN));
    }
    return zones;
  }

  /**
   * Zones by probability.
   *
   * @param outline of the green, m
   * @param probabilities of being dry and wet
   * @param rule what class ground has by its probabilities
   * @param surface moisture, % by volume
   * @param regionMean gives the standard error of a zone's mean
   * @return the zones that exist: ground without values first, then in the order of the classes
   */
  public static List<Zone> of(
      Geometry outline,
      Probabilities probabilities,
      ClassRule rule,
      Raster surface,
      RegionMean regionMean) {
    Moisture moisture = Moisture.of(surface, regionMean);
    List<Zone> zones = new ArrayList<>();
    for (Band part : tiles(outline, probabilities, rule)) {
      boolean none = part.index() == Band.NO_VALUE;
      ZoneClass cls = none ? ZoneClass.NO_VALUE : ZoneClass.values()[part.index()];
      zones.add(
          zone(cls, part.geometry(), moisture, likelihood(cls, part.geometry(), probabilities)));
    }
    return zones;
  }

  /** The line where being in band becomes sure matters only where the sd is above its limit. */
  private static List<Band> tiles(Geometry outline, Probabilities p, ClassRule rule) {
    boolean sdMatters = p.anySdAbove(rule.sdLimitPct());
    double[] steps = steps(rule.likely(), rule.sure());
    double[] bandSteps =
        sdMatters ? steps(rule.inBand(), rule.sure()) : new double[] {rule.inBand()};
    double[] sdSteps = sdMatters ? new double[] {rule.sdLimitPct()} : new double[0];
    return Tiling.of(
            outline,
            List.of(
                p.layer(ZoneClass.DRY, steps),
                p.layer(ZoneClass.WET, steps),
                p.layer(ZoneClass.IN_BAND, bandSteps),
                Layer.above(p.sd(), sdSteps)))
        .by(
            passed ->
                rule.of(
                        level(passed[0], steps),
                        level(passed[1], steps),
                        sdMatters ? level(passed[2], bandSteps) : passed[2],
                        passed[3] > 0)
                    .ordinal(),
            rule.leastPartM2());
  }

  private static double[] steps(double first, double sure) {
    return first < sure ? new double[] {first, sure} : new double[] {sure};
  }

  /** 2 where the last step, that of a sure statement, is passed. */
  private static int level(int passed, double[] steps) {
    return passed == steps.length ? 2 : passed;
  }

  private static Zone.Likelihood likelihood(ZoneClass cls, Geometry part, Probabilities p) {
    if (cls == ZoneClass.CANNOT_TELL || cls == ZoneClass.NO_VALUE) {
      return Zone.Likelihood.UNKNOWN;
    }
    Raster stated = p.of(cls);
    double probability = Ground.of(part, stated).mean(new LinearSurface(stated));
    Interval area = Interval.of(p.excursions().areas(plain(cls), CellWeights.of(p.cells(), part)));
    return new Zone.Likelihood(probability, area.low(), area.high());
  }

  private static ZoneClass plain(ZoneClass cls) {
    return switch (cls) {
      case PROBABLY_DRY -> ZoneClass.DRY;
      case PROBABLY_WET -> ZoneClass.WET;
      default -> cls;
    };
  }

  private static Zone zone(
      ZoneClass cls, Geometry geometry, Moisture moisture, Zone.Likelihood likelihood) {
    if (cls == ZoneClass.NO_VALUE) {
      return new Zone(cls, geometry, geometry.getArea(), Double.NaN, Double.NaN);
    }
    RegionMean.MeanAndSd mean = moisture.of(geometry);
    return new Zone(cls, geometry, geometry.getArea(), mean.mean(), mean.sd(), likelihood);
  }
}
