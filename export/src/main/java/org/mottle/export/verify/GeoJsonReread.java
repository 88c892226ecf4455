package org.mottle.export.verify;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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

  /** Of the feature being read. */
  private final List<LineString> lines = new ArrayList<>();

  private GeoJsonReread(CrsTransform toMetres) {
    this.toMetres = toMetres;
  }

  static Reread of(Path file, CrsTransform toMetres) throws IOException {
    GeoJsonReread reread = new GeoJsonReread(toMetres);
    try (JsonParser json = Json.factory().createParser(file.toFile())) {
      reread.collection(json);
    } catch (IllegalArgumentException e) {
      throw new IOException("feature " + (reread.rows + 1) + " " + e.getMessage(), e);
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
          feature(json);
          rows++;
        }
      } else if (name.equals("name")) {
        layer = json.getText();
      } else if (name.equals("fields")) {
        fields = names(json);
      } else {
        json.skipChildren();
      }
    }
    if (json.currentToken() != JsonToken.END_OBJECT) {
      throw new IOException("ends before the collection does");
    }
  }

  /** Member names of the object at the parser's place, which ends up behind it. */
  private static List<String> names(JsonParser json) throws IOException {
    List<String> names = new ArrayList<>();
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      names.add(json.currentName());
      json.nextToken();
      json.skipChildren();
    }
    return names;
  }

  private void feature(JsonParser json) throws IOException {
    List<String> properties = List.of();
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      String name = json.currentName();
      json.nextToken();
      if (name.equals("properties")) {
        properties = names(json);
      } else if (name.equals("geometry") && json.currentToken() == JsonToken.START_OBJECT) {
        geometry(json);
        placed++;
      } else {
        json.skipChildren();
      }
    }
    if (!properties.equals(fields)) {
      throw new IOException("feature " + (rows + 1) + " has the fields " + properties);
    }
  }

  private void geometry(JsonParser json) throws IOException {
    String type = "";
    lines.clear();
    while (json.nextToken() == JsonToken.FIELD_NAME) {
      String name = json.currentName();
      json.nextToken();
      if (name.equals("type")) {
        type = json.getText();
      } else if (name.equals("coordinates")) {
        coordinates(json);
      } else {
        json.skipChildren();
      }
    }
    for (LineString line : lines) {
      if (type.endsWith("Polygon")) {
        measure -= Area.ofRingSigned(line.getCoordinateSequence());
      } else {
        measure += line.getLength();
      }
    }
  }

  /** Collects every list of positions, however deep. Gives the place if the array is a position. */
  private Coordinate coordinates(JsonParser json) throws IOException {
    JsonToken token = json.nextToken();
    if (token != null && token.isNumeric()) {
      return position(json);
    }
    List<Coordinate> points = new ArrayList<>();
    while (token == JsonToken.START_ARRAY) {
      Coordinate point = coordinates(json);
      if (point != null) {
        points.add(point);
      }
      token = json.nextToken();
    }
    if (token != JsonToken.END_ARRAY) {
      throw new IOException("feature " + (rows + 1) + ": coordinates hold " + token);
    }
    if (points.size() > 1) {
      Geometry degrees = GEOMETRIES.createLineString(points.toArray(new Coordinate[0]));
      lines.add((LineString) toMetres.apply(degrees));
    }
    return null;
  }

  private Coordinate position(JsonParser json) throws IOException {
    double lon = json.getDoubleValue();
    json.nextToken();
    double lat = json.getDoubleValue();
    if (json.nextToken() != JsonToken.END_ARRAY) {
      throw new IOException("feature " + (rows + 1) + " has a position of other than two numbers");
    }
    return new Coordinate(lon, lat);
  }
}
