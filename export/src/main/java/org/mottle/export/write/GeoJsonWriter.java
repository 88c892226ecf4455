package org.mottle.export.write;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.schema.DataDictionary;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Field;
import org.mottle.export.schema.FieldType;
import org.mottle.export.schema.GeometryKind;
import org.mottle.export.schema.LayerData;

/**
 * One layer to one file of GeoJSON as RFC 7946 has it: WGS 84, longitude before latitude, outer
 * rings counter-clockwise and holes clockwise (section 3.1.6), no {@code crs} member, a feature
 * without a place with a null geometry (section 3.2).
 *
 * <p>Coordinates have nine decimals, 0.1 mm on the ground: areas re-read within 0.05 m². Foreign
 * members (section 6.1) before the features carry the layer's name, its fields with unit and
 * meaning, and the record of the run. A layer that crosses the 180th meridian is refused, since the
 * features would have to be cut there (section 3.1.9).
 *
 * <p>Streaming, memory of one feature. Stateless but for what it is given; one writer may be shared
 * by threads that write different files.
 */
public final class GeoJsonWriter {
  /** 1e-9 degrees of latitude are 0.11 mm. */
  private static final int COORDINATE_DECIMALS = 9;

  private final Crs crs;
  private final Provenance provenance;
  private final CrsTransform toWgs84;

  public GeoJsonWriter(Crs crs, Provenance provenance) {
    this.crs = crs;
    this.provenance = provenance;
    this.toWgs84 = CrsTransform.between(crs, Crs.wgs84());
  }

  /** Writes or replaces the file. */
  public void write(Path file, LayerData data) throws IOException {
    try (JsonGenerator json = Json.factory().createGenerator(file.toFile(), JsonEncoding.UTF8)) {
      json.writeStartObject();
      json.writeStringField("type", "FeatureCollection");
      json.writeStringField("name", data.layer().name());
      json.writeStringField("meaning", data.layer().meaning());
      json.writeFieldName("fields");
      Json.write(json, DataDictionary.fields(data.layer()));
      json.writeFieldName("prov");
      Json.write(json, provenance.asMap(crs));
      json.writeFieldName("features");
      json.writeStartArray();
      for (int row = 0; row < data.rows().size(); row++) {
        feature(json, data, row);
      }
      json.writeRaw('\n');
      json.writeEndArray();
      json.writeEndObject();
      json.writeRaw('\n');
    }
  }

  private void feature(JsonGenerator json, LayerData data, int number) throws IOException {
    FeatureRow row = data.rows().get(number);
    // a line a feature: the file stays readable, and comparable by line
    json.writeRaw('\n');
    json.writeStartObject();
    json.writeStringField("type", "Feature");
    json.writeFieldName("properties");
    json.writeStartObject();
    List<Field> fields = data.layer().fields();
    for (int i = 0; i < fields.size(); i++) {
      property(json, fields.get(i), row.value(i));
    }
    json.writeEndObject();
    json.writeFieldName("geometry");
    if (row.geometry() == null) {
      json.writeNull();
    } else {
      geometry(json, inDegrees(row.geometry(), data, number), data.layer().kind());
    }
    json.writeEndObject();
  }

  private Geometry inDegrees(Geometry metres, LayerData data, int number) {
    Geometry degrees = toWgs84.apply(metres);
    if (degrees.getEnvelopeInternal().getWidth() > 180) {
      throw new OutputRefused(
          List.of(
              "layer "
                  + data.layer().name()
                  + ", feature "
                  + (number + 1)
                  + " crosses the 180th meridian, where GeoJSON has to be cut;"
                  + " leave geojson out of the formats"));
    }
    return degrees;
  }

  private static void property(JsonGenerator json, Field field, Object value) throws IOException {
    json.writeFieldName(field.name());
    if (value == null) {
      json.writeNull();
    } else if (field.type() == FieldType.REAL) {
      String number = FixedDecimals.text((Double) value, field.decimals());
      // readers take the type of a column from its numbers
      json.writeNumber(number.indexOf('.') < 0 ? number + ".0" : number);
    } else if (field.type() == FieldType.INTEGER) {
      json.writeNumber((Long) value);
    } else {
      json.writeString(value.toString());
    }
  }

  private static void geometry(JsonGenerator json, Geometry g, GeometryKind kind)
      throws IOException {
    json.writeStartObject();
    boolean single = g.getNumGeometries() == 1;
    String one =
        switch (kind) {
          case POINT -> "Point";
          case LINE -> "LineString";
          case AREA -> "Polygon";
          case NONE -> throw new IllegalArgumentException("a table has no geometry, was " + g);
        };
    json.writeStringField("type", single ? one : "Multi" + one);
    json.writeFieldName("coordinates");
    if (!single) {
      json.writeStartArray();
    }
    for (int i = 0; i < g.getNumGeometries(); i++) {
      part(json, g.getGeometryN(i));
    }
    if (!single) {
      json.writeEndArray();
    }
    json.writeEndObject();
  }

  private static void part(JsonGenerator json, Geometry part) throws IOException {
    if (part instanceof Polygon polygon) {
      json.writeStartArray();
      ring(json, polygon.getExteriorRing(), true);
      for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
        ring(json, polygon.getInteriorRingN(i), false);
      }
      json.writeEndArray();
    } else if (part instanceof LineString line) {
      positions(json, line.getCoordinateSequence(), false);
    } else {
      position(json, ((Point) part).getCoordinateSequence(), 0);
    }
  }

  private static void ring(JsonGenerator json, LinearRing ring, boolean counterClockwise)
      throws IOException {
    CoordinateSequence points = ring.getCoordinateSequence();
    positions(json, points, Orientation.isCCW(points) != counterClockwise);
  }

  private static void positions(JsonGenerator json, CoordinateSequence points, boolean reversed)
      throws IOException {
    json.writeStartArray();
    int n = points.size();
    for (int i = 0; i < n; i++) {
      position(json, points, reversed ? n - 1 - i : i);
    }
    json.writeEndArray();
  }

  private static void position(JsonGenerator json, CoordinateSequence points, int i)
      throws IOException {
    json.writeStartArray();
    json.writeNumber(FixedDecimals.text(points.getX(i), COORDINATE_DECIMALS));
    json.writeNumber(FixedDecimals.text(points.getY(i), COORDINATE_DECIMALS));
    json.writeEndArray();
  }
}
