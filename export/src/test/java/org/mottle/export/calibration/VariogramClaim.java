package org.mottle.export.calibration;

import java.util.Optional;

/**
 * A variogram that a method found.
 *
 * @param pool which greens, as {@link Known#pool} names them
 * @param rangeM practical range, m
 * @param nugget variance of one insertion, %²
 * @param rangeSpan 90 % interval of the range, where there is one
 * @param nuggetSpan 90 % interval of the nugget, where there is one
 */
record VariogramClaim(
    String pool,
    double rangeM,
    double nugget,
    Optional<Span> rangeSpan,
    Optional<Span> nuggetSpan) {}
