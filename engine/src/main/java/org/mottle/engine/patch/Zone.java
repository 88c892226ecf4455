package org.mottle.engine.patch;

import org.locationtech.jts.geom.Geometry;

/**
 * All ground of a green in one class of its target band.
 *
 * @param cls what it is
 * @param geometry polygon or multipolygon, m
 * @param areaM2 m²
 * @param mean moisture, % by volume, weighted by covered area
 * @param sd standard error of the mean, % by volume; NaN when not known
 * @param likelihood how far the statement of its class holds
 */
public record Zone(
    ZoneClass cls,
    Geometry geometry,
    double areaM2,
    double mean,
    double sd,
    Likelihood likelihood) {

  /** A zone by values alone. */
  public Zone(ZoneClass cls, Geometry geometry, double areaM2, double mean, double sd) {
    this(cls, geometry, areaM2, mean, sd, Likelihood.UNKNOWN);
  }

  /**
   * How far the statement of a class holds: that the ground is dry for dry and probably dry, wet
   * for wet and probably wet, in band for in band; NaN for the other classes and when not known.
   *
   * @param probability mean over the zone of the probability that the ground is so
   * @param areaLow 5 % of the realisations have less ground in the zone that is so, m²
   * @param areaHigh 5 % of the realisations have more, m²
   */
  public record Likelihood(double probability, double areaLow, double areaHigh) {
    /** Of maps without probabilities. */
    public static final Likelihood UNKNOWN = new Likelihood(Double.NaN, Double.NaN, Double.NaN);
  }

  public double probability() {
    return likelihood.probability;
  }

  public double areaLow() {
    return likelihood.areaLow;
  }

  public double areaHigh() {
    return likelihood.areaHigh;
  }
}
