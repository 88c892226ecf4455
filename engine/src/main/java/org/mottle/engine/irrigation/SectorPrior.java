package org.mottle.engine.irrigation;

import org.mottle.engine.check.Check;

/**
 * What the sector test takes for likely before a reading is looked at. The figures are proposals of
 * this project (no source), set by trials on invented courses.
 *
 * @param head probability that one head gives too little in a survey, each
 * @param ground probability that the ground under one head is dry in its own right, each: soil,
 *     slope, roots
 * @param spot probability of one dry or wet place of another cause anywhere on the green
 * @param headSdPct of the shortfall where a head gives all the water, half-normal, % by volume
 * @param spotSdPct of a dry or wet place, normal, % by volume
 * @param planeSdPctM of the slope of moisture across the green per axis, normal, % a metre
 * @param edgeSdPct of what the edge is drier or wetter than the middle, normal, % by volume
 */
public record SectorPrior(
    double head,
    double ground,
    double spot,
    double headSdPct,
    double spotSdPct,
    double planeSdPctM,
    double edgeSdPct) {

  public static final SectorPrior DEFAULT = new SectorPrior(0.05, 0.03, 0.2, 7, 5, 0.07, 1);

  public SectorPrior {
    Check.within("probability of a head that gives too little", head, 1e-6, 0.5, "");
    Check.within("probability of dry ground", ground, 1e-6, 0.5, "");
    Check.within("probability of a spot", spot, 0, 0.9, "");
    Check.above("shortfall of a head", headSdPct, 0, "% by volume");
    Check.above("size of a spot", spotSdPct, 0, "% by volume");
    Check.atLeast("slope of moisture", planeSdPctM, 0, "% a metre");
    Check.atLeast("moisture of the edge", edgeSdPct, 0, "% by volume");
  }
}
