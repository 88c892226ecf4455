package org.mottle.engine.patch;

import org.mottle.engine.check.Check;

/**
 * The class of ground by how likely it is dry, wet or in band. Dry or wet from {@code sure} on;
 * probably dry or probably wet from {@code likely} on; in band from {@code inBand} on; else it
 * cannot be told. What is less than sure cannot be told either where the standard deviation of the
 * map is above a limit.
 *
 * <p>{@code inBand} lies a little below {@code likely}: along the border of probably dry ground
 * p_dry is 0.5 and p_band 0.5 less the few per cent of p_wet; with 0.5 for both a hair-thin strip
 * of "cannot tell" would run along every such border.
 *
 * @param sure probability of a plain statement
 * @param likely probability of a "probably"
 * @param inBand probability from which ground counts as in band
 * @param sdLimitPct standard deviation above which only sure statements stand, % by volume; of use
 *     is 0.9 of the root of the structured sill, where the map knows no more than the green's mean;
 *     infinite for none
 * @param leastPartM2 connected parts of a class smaller than this go to the neighbour with which
 *     they share most of their edge, m²; about a cell; 0 keeps all
 */
public record ClassRule(
    double sure, double likely, double inBand, double sdLimitPct, double leastPartM2) {
  private static final double SURE = 0.8;
  private static final double LIKELY = 0.5;
  private static final double IN_BAND = 0.45;

  public ClassRule {
    Check.within("likely", likely, 0.5, 1, "");
    Check.within("sure", sure, likely, 1, "");
    Check.within("inBand", inBand, 0, likely, "");
    if (!(sdLimitPct > 0)) {
      throw new IllegalArgumentException("sdLimitPct must be > 0 %, was " + sdLimitPct);
    }
    Check.atLeast("leastPartM2", leastPartM2, 0, "m²");
  }

  /** 0.8, 0.5 and 0.45; no limit of the standard deviation; every part kept. */
  public static ClassRule defaults() {
    return new ClassRule(SURE, LIKELY, IN_BAND, Double.POSITIVE_INFINITY, 0);
  }

  public ClassRule withSdLimit(double pct) {
    return new ClassRule(sure, likely, inBand, pct, leastPartM2);
  }

  public ClassRule withLeastPart(double m2) {
    return new ClassRule(sure, likely, inBand, sdLimitPct, m2);
  }

  /**
   * Class at a place.
   *
   * @param dry probability that it is dry
   * @param wet probability that it is wet
   * @param sd of the map there, % by volume
   */
  public ZoneClass of(double dry, double wet, double sd) {
    if (Double.isNaN(dry) || Double.isNaN(wet) || Double.isNaN(sd)) {
      return ZoneClass.NO_VALUE;
    }
    double band = 1 - dry - wet;
    return of(steps(dry, likely), steps(wet, likely), steps(band, inBand), sd > sdLimitPct);
  }

  private int steps(double p, double first) {
    return p >= sure ? 2 : p >= first ? 1 : 0;
  }

  /**
   * @param dry 0 below likely, 1 likely, 2 sure
   * @param wet the same
   * @param band 0 below inBand, 1 above, 2 sure
   * @param unknown whether the standard deviation is above its limit
   */
  ZoneClass of(int dry, int wet, int band, boolean unknown) {
    if (dry == 2) {
      return ZoneClass.DRY;
    }
    if (wet == 2) {
      return ZoneClass.WET;
    }
    if (band == 2) {
      return ZoneClass.IN_BAND;
    }
    if (unknown) {
      return ZoneClass.CANNOT_TELL;
    }
    if (dry == 1) {
      return ZoneClass.PROBABLY_DRY;
    }
    if (wet == 1) {
      return ZoneClass.PROBABLY_WET;
    }
    return band == 1 ? ZoneClass.IN_BAND : ZoneClass.CANNOT_TELL;
  }
}
