package org.mottle.engine.patch;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.mottle.engine.contour.Band;
import org.mottle.engine.contour.Layer;
import org.mottle.engine.contour.Tiling;
import org.mottle.engine.grid.Raster;

/**
 * Core, outline and envelope of dry or wet ground, cut from one arrangement of lines: the core lies
 * inside the outline and the outline inside the envelope, exactly.
 *
 * @param core polygons, may be none
 * @param outline polygons, may be none
 * @param envelope polygons, may be none
 */
record ExcursionSets(List<Polygon> core, List<Polygon> outline, List<Polygon> envelope) {
  private static final double APART = 1e-8;

  /**
   * @param outline of the green
   * @param p probability
   * @param vorobev level of the outline
   * @param joint levels of core and envelope
   * @param rule what is too small to draw, and to be a core: a speck always holds, so says nothing
   */
  static ExcursionSets of(
      Geometry outline, Raster p, double vorobev, JointLevels joint, MarkRule rule) {
    List<Double> limits = new ArrayList<>();
    int ofEnvelope = 0;
    if (joint.envelope() > 0 && joint.envelope() < vorobev - APART) {
      limits.add(joint.envelope());
      ofEnvelope = 1;
    }
    limits.add(vorobev);
    int ofOutline = limits.size();
    if (joint.envelope() >= vorobev - APART) {
      ofEnvelope = ofOutline;
    }
    if (joint.core() > vorobev + APART && joint.core() <= 1) {
      limits.add(joint.core());
    }
    int ofCore = joint.core() > 1 ? limits.size() + 1 : limits.size();
    Layer layer = Layer.atLeast(p, limits.stream().mapToDouble(v -> v).toArray());
    Tiling tiling = Tiling.of(outline, List.of(layer));
    double least = rule.leastPartM2();
    return new ExcursionSets(
        above(tiling, ofCore, least).stream().filter(c -> c.getArea() >= rule.speckM2()).toList(),
        above(tiling, ofOutline, least),
        above(tiling, ofEnvelope, least));
  }

  private static List<Polygon> above(Tiling tiling, int level, double leastPartM2) {
    List<Polygon> polygons = new ArrayList<>();
    for (Band band : tiling.by(passed -> passed[0] >= level ? 1 : 0, leastPartM2)) {
      if (band.index() == 1) {
        for (int i = 0; i < band.geometry().getNumGeometries(); i++) {
          polygons.add((Polygon) band.geometry().getGeometryN(i));
        }
      }
    }
    return polygons;
  }

  /** What belongs to one polygon of the outline: the cores in it and the envelope round it. */
  Patch.Bounds bounds(Polygon part) {
    Coordinate inside = part.getInteriorPoint().getCoordinate();
    Polygon around =
        envelope.stream().filter(e -> Patches.holds(e, inside)).findFirst().orElse(part);
    Polygon[] cores =
        core.stream()
            .filter(c -> Patches.holds(part, c.getInteriorPoint().getCoordinate()))
            .toArray(Polygon[]::new);
    Geometry sure = cores.length == 1 ? cores[0] : part.getFactory().createMultiPolygon(cores);
    return new Patch.Bounds(sure, around);
  }
}
