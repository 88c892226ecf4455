package org.mottle.engine.terrain;

import org.locationtech.jts.geom.Geometry;

/**
 * Ground from which surface water cannot run off before it is filled.
 *
 * @param outline the cells of it, polygon or multipolygon, m
 * @param spillM height at which it spills, m
 * @param deepestM greatest depth below that, m
 * @param areaM2 area of its cells, m²
 * @param volumeLitres water over its cells when it spills, l
 * @param deepestCell index of the deepest cell
 */
public record Depression(
    Geometry outline,
    double spillM,
    double deepestM,
    double areaM2,
    double volumeLitres,
    int deepestCell) {}
