package org.mottle.engine.patch;

import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * A connected part of the dry or the wet ground of a green.
 *
 * @param number from 1, dry before wet, large before small
 * @param kind dry or wet
 * @param geometry m
 * @param size how large
 * @param readings number of readings inside or on its edge
 * @param mean moisture, % by volume, weighted by covered area
 * @param sd standard error of the mean, % by volume; NaN when not known
 * @param likelihood how sure it is; empty for maps without probabilities
 */
public record Patch(
    int number,
    ZoneClass kind,
    Polygon geometry,
    Size size,
    int readings,
    double mean,
    double sd,
    Optional<Likelihood> likelihood) {

  /**
   * @param areaM2 m²
   * @param widthM diameter of the largest circle that fits in, to within a centimetre, m
   */
  public record Size(double areaM2, double widthM) {}

  /**
   * How sure a patch is. Areas count the dry (or wet) ground of the realisations in the patch and
   * one spacing of stations round it, ground nearer to another patch left out.
   *
   * @param pMean mean over the patch of the probability that the ground is so
   * @param pExist share of realisations with such a place of at least a square metre here
   * @param areaExpected m²
   * @param areaLow 5 % of the realisations have less, m²
   * @param areaHigh 5 % of the realisations have more, m²
   * @param bounds where it surely is and where it surely ends
   */
  public record Likelihood(
      double pMean,
      double pExist,
      double areaExpected,
      double areaLow,
      double areaHigh,
      Bounds bounds) {}

  /**
   * @param core polygon or multipolygon inside the patch that lies inside the true extent; empty
   *     where nothing is that sure
   * @param envelope polygon round the patch within which the true extent ends
   */
  public record Bounds(Geometry core, Geometry envelope) {}

  public double areaM2() {
    return size.areaM2;
  }

  public double widthM() {
    return size.widthM;
  }

  Patch numbered(int newNumber) {
    return new Patch(newNumber, kind, geometry, size, readings, mean, sd, likelihood);
  }
}
