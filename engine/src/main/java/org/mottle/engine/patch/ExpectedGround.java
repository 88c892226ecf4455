package org.mottle.engine.patch;

/**
 * How much dry or wet ground a green is expected to have, wherever it lies.
 *
 * @param kind dry or wet
 * @param areaM2 the integral of the probability over the green, m²
 * @param areaLow 5 % of the realisations have less, m²
 * @param areaHigh 5 % of the realisations have more, m²
 * @param level the Vorob'ev level: the ground at least this likely has the expected area
 * @param placeKnown whether the level is high enough for an outline to be honest
 */
public record ExpectedGround(
    ZoneClass kind,
    double areaM2,
    double areaLow,
    double areaHigh,
    double level,
    boolean placeKnown) {}
