package org.mottle.engine.irrigation;

/**
 * What the readings of one green in one survey say of each head, those of the surveys it is seen
 * beside given, before any prior probability. Immutable; arrays are copied in and out.
 *
 * @param logHead [heads] logarithm of the likelihood with a shortfall of that head in this survey
 *     over that without any
 * @param logGround [heads] the same for ground under that head that is dry in all the surveys
 * @param logSpot the same for one dry or wet place of another cause in this survey
 * @param effectPct [heads] shortfall to expect if there is one, at the station where the head's
 *     share is greatest, % by volume, below 0
 * @param effectSd [heads] its standard deviation
 * @param shown [heads] prior standard deviation of the shortfall over its standard error: below
 *     about 1 the stations cannot show it
 * @param beside surveys seen beside this one
 */
record SectorEvidence(
    double[] logHead,
    double[] logGround,
    double logSpot,
    double[] effectPct,
    double[] effectSd,
    double[] shown,
    int beside) {
  SectorEvidence {
    logHead = logHead.clone();
    logGround = logGround.clone();
    effectPct = effectPct.clone();
    effectSd = effectSd.clone();
    shown = shown.clone();
  }
}
