package org.mottle.export.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;

/**
 * A GeoJSON geometry object as a JTS geometry. Rings may wind either way, as RFC 7946 asks of
 * parsers; they must be closed, since an open ring may have lost more than its last position.
 */
final class GeoJsonGeometry {
  static final Set<String> TYPES =
      Set.of(
          "Point",
          "MultiPoint",
          "LineString",
          "MultiLineString",
          "Polygon",
          "MultiPolygon",
          "GeometryCollection");
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private GeoJsonGeometry() {}

  static Geometry of(Object value) {
    if (!(value instanceof Map<?, ?> object) || !(object.get("type") instanceof String type)) {
      throw new IllegalArgumentException("its geometry has no \"type\"");
    }
    if (!TYPES.contains(type)) {
      throw new IllegalArgumentException("'" + type + "' is no GeoJSON geometry");
    }
    if (type.equals("GeometryCollection")) {
      List<Geometry> parts = each(object.get("geometries"), GeoJsonGeometry::of);
      return FACTORY.createGeometryCollection(parts.toArray(Geometry[]::new));
    }
    Object coordinates = object.get("coordinates");
    return switch (type) {
      case "Point" -> point(coordinates);
      case "MultiPoint" ->
          FACTORY.createMultiPoint(each(coordinates, GeoJsonGeometry::point).toArray(Point[]::new));
      case "LineString" -> line(coordinates);
      case "MultiLineString" ->
          FACTORY.createMultiLineString(
              each(coordinates, GeoJsonGeometry::line).toArray(LineString[]::new));
      case "Polygon" -> polygon(coordinates);
      default ->
          FACTORY.createMultiPolygon(
              each(coordinates, GeoJsonGeometry::polygon).toArray(Polygon[]::new));
    };
  }

  private static Point point(Object value) {
    return value instanceof List<?> list && list.isEmpty()
        ? FACTORY.createPoint()
        : FACTORY.createPoint(position(value));
  }

  private static LineString line(Object value) {
    return FACTORY.createLineString(positions(value));
  }

  private static Polygon polygon(Object value) {
    List<Coordinate[]> rings = each(value, GeoJsonGeometry::positions);
    if (rings.isEmpty()) {
      return FACTORY.createPolygon();
    }
    List<LinearRing> closed = new ArrayList<>();
    for (int i = 0; i < rings.size(); i++) {
      closed.add(Rings.closed(FACTORY, rings.get(i), i + 1));
    }
    return FACTORY.createPolygon(
        closed.get(0), closed.subList(1, closed.size()).toArray(LinearRing[]::new));
  }

  private static Coordinate[] positions(Object value) {
    return each(value, GeoJsonGeometry::position).toArray(Coordinate[]::new);
  }

  private static Coordinate position(Object value) {
    if (value instanceof List<?> list
        && list.size() >= 2
        && list.stream().limit(3).allMatch(Number.class::isInstance)) {
      double x = ((Number) list.get(0)).doubleValue();
      double y = ((Number) list.get(1)).doubleValue();
      return list.size() == 2
          ? new Coordinate(x, y)
          : new Coordinate(x, y, ((Number) list.get(2)).doubleValue());
    }
    throw new IllegalArgumentException("'" + value + "' is no position; give [x, y] in numbers");
  }

  private static <T> List<T> each(Object value, Function<Object, T> maker) {
    if (!(value instanceof List<?> list)) {
      throw new IllegalArgumentException("its coordinates are '" + value + "', not a list");
    }
    List<T> made = new ArrayList<>();
    for (Object item : list) {
      made.add(maker.apply(item));
    }
    return made;
  }
}
