package org.mottle.export.schema;

import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Lineal;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygonal;

/** The one kind of geometry that a layer holds; a table holds none. */
public enum GeometryKind {
  NONE,
  POINT,
  /** One or more lines a feature. */
  LINE,
  /** One or more polygons a feature, holes allowed. */
  AREA;

  /** Whether a layer of this kind can hold the geometry; any layer can hold none at all. */
  public boolean holds(Geometry geometry) {
    if (geometry == null) {
      return true;
    }
    return switch (this) {
      case NONE -> false;
      case POINT -> geometry instanceof Point;
      case LINE -> geometry instanceof Lineal;
      case AREA -> geometry instanceof Polygonal;
    };
  }
}
