package org.mottle.engine.patch;

import org.locationtech.jts.geom.Coordinate;

/**
 * A dry or wet place that the survey saw but cannot outline: a symbol, never a polygon. What helps
 * is to read again round the station named, a metre apart.
 *
 * @param kind dry or wet
 * @param point where it is likeliest, m
 * @param station index of the nearest station among those given
 * @param distanceM from the point to that station, m
 * @param pExist share of realisations with such a place of at least a square metre within one
 *     spacing of stations
 * @param areaExpectedM2 expected area within one spacing, m²
 */
public record Spot(
    ZoneClass kind,
    Coordinate point,
    int station,
    double distanceM,
    double pExist,
    double areaExpectedM2) {}
