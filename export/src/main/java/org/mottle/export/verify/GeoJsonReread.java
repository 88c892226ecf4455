package org.mottle.export.verify;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.record.Json;

/**
 * Reads a GeoJSON layer back, turns it to the working CRS and measures it. The area is the signed
 * sum over the rings, counter-clockwise positive, so that a ring of the wrong direction shows. One
 * feature in memory at a time.
 */
final class GeoJsonReread {
  private static final GeometryFactory GEOMETRIES = new GeometryFactory();

  private final CrsTransform toMetres;
  private String layer = "";
  private List<String> fields = List.of();
  private long rows;
  private long placed;
  private double measure;

  private GeoJsonReread(CrsTransform toMetres) {
    this.toMetres = toMetres;
  }

  static Reread of(Path file, CrsTransform toMetres) throws IOException {
    GeoJsonReread reread = new GeoJsonReread(toMetres);
    try (JsonParser json = Json.factory().createParser(file.toFile())) {
      reread.collection(json);
    } catch (ClassCastException | NullPointerException | IllegalArgumentException e) {
      throw new IOException("feature " + (reread.rows + 1) + " is no GeoJSON", e);
    }
    return new Reread(reread.layer, reread.rows, reread.placed, reread.measure, reread.fields);
  }

  private void collection(JsonParser json) throws IOException {
    json.nextToken();
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      String name = json.currentName();
      json.nextToken();
      if (name.equals("features")) {
        while (json.nextToken() == JsonToken.START_OBJECT) {
          feature((Map<?, ?>) Json.value(json));
        }
      } else if (name.equals("name")) {
        layer = json.getText();
      } else if (name.equals("fields")) {
        fields = names(Json.value(json));
      } else {
        json.skipChildren();
      }
    }
    if (json.currentToken() != JsonToken.END_OBJECT) {
      throw new IOException("ends before the collection does");
    }
  }

  private static List<String> names(Object object) {
    return ((Map<?, ?>) object).keySet().stream().map(String::valueOf).toList();
  }

  private void feature(Map<?, ?> feature) throws IOException {
    List<String> properties = names(feature.get("properties"));
    if (!properties.equals(fields)) {
      throw new IOException("feature " + (rows + 1) + " has the fields " + properties);
    }
    if (feature.get("geometry") instanceof Map<?, ?> geometry) {
      List<?> coordinates = (List<?>) geometry.get("coordinates");
      switch ((String) geometry.get("type")) {
        case "Point" -> line(List.of(coordinates, coordinates));
        case "LineString" -> measure += line(coordinates).getLength();
        case "MultiLineString" ->
            coordinates.forEach(l -> measure += line((List<?>) l).getLength());
        case "Polygon" -> measure += area(coordinates);
        case "MultiPolygon" -> coordinates.forEach(p -> measure += area((List<?>) p));
        default -> throw new IOException("unexpected geometry " + geometry.get("type"));
      }
      placed++;
    }
    rows++;
  }

  private double area(List<?> rings) {
    double area = 0;
    for (Object ring : rings) {
      area -= Area.ofRingSigned(line((List<?>) ring).getCoordinateSequence());
    }
    return area;
  }

  private LineString line(List<?> positions) {
    List<Coordinate> points = new ArrayList<>();
    for (Object position : positions) {
      List<?> xy = (List<?>) position;
      points.add(new Coordinate(number(xy.get(0)), number(xy.get(1))));
    }
    Geometry degrees = GEOMETRIES.createLineString(points.toArray(new Coordinate[0]));
    return (LineString) toMetres.apply(degrees);
  }

  private static double number(Object value) {
    return ((Number) value).doubleValue();
  }
}
