package org.mottle.export.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.schema.LayerData;
import org.mottle.export.schema.Layers;

/** Read back by data binding, which the writer does not use; rules by section of RFC 7946. */
class GeoJsonWriterTest {
  @TempDir Path folder;

  private JsonNode write(LayerData data, Crs crs) throws IOException {
    Path file = folder.resolve(data.layer().name() + ".geojson");
    new GeoJsonWriter(crs, Examples.provenance()).write(file, data);
    return new ObjectMapper().readTree(Files.readString(file));
  }

  @Test
  void propertiesComeBack() throws IOException {
    JsonNode features = write(Examples.odd(), Examples.CRS).get("features");
    assertThat(features).hasSize(4);
    JsonNode full = features.get(0).get("properties");
    assertThat(full.get("txt").asText()).isEqualTo(Examples.LETTERS);
    assertThat(full.get("n").asLong()).isEqualTo(1234567890123L);
    assertThat(full.get("v").asText()).isEqualTo("17.123");
    assertThat(full.get("day").asText()).isEqualTo("2031-02-28");
    JsonNode missing = features.get(1).get("properties");
    missing.forEach(value -> assertThat(value.isNull()).isTrue());
    assertThat(missing).hasSize(4);
    assertThat(features.get(2).get("properties").get("txt").asText()).isEqualTo(Examples.LONG_TEXT);
  }

  /** Section 3.2: an unlocated feature has a null geometry. */
  @Test
  void geometriesThatAreMissingAreNull() throws IOException {
    JsonNode features = write(Examples.odd(), Examples.CRS).get("features");
    assertThat(features.get(2).get("geometry").isNull()).isTrue();
    assertThat(features.get(3).get("geometry").isNull()).isTrue();
    JsonNode table = write(Examples.layers().get(5), Examples.CRS).get("features");
    assertThat(table).hasSize(2).allMatch(f -> f.has("geometry") && f.get("geometry").isNull());
  }

  /** Section 3.1.6: outer rings counter-clockwise, holes clockwise, ends identical. */
  @Test
  void ringsAreWoundByTheRightHandRule() throws IOException {
    JsonNode features = write(Examples.odd(), Examples.CRS).get("features");
    JsonNode polygon = features.get(0).get("geometry");
    assertThat(polygon.get("type").asText()).isEqualTo("Polygon");
    assertRings(polygon.get("coordinates"));
    JsonNode multi = features.get(1).get("geometry");
    assertThat(multi.get("type").asText()).isEqualTo("MultiPolygon");
    assertThat(multi.get("coordinates")).hasSize(2);
    multi.get("coordinates").forEach(GeoJsonWriterTest::assertRings);
  }

  private static void assertRings(JsonNode rings) {
    for (int i = 0; i < rings.size(); i++) {
      Coordinate[] points = new Coordinate[rings.get(i).size()];
      for (int p = 0; p < points.length; p++) {
        JsonNode position = rings.get(i).get(p);
        assertThat(position).hasSize(2);
        points[p] = new Coordinate(position.get(0).asDouble(), position.get(1).asDouble());
      }
      assertThat(points.length).isGreaterThanOrEqualTo(4);
      assertThat(points[0]).isEqualTo(points[points.length - 1]);
      assertThat(Orientation.isCCW(points)).as("ring %d", i).isEqualTo(i == 0);
    }
  }

  /** UTM values by PROJ 9.1 for 1.5 W 52.2 N: a place that no swap of axes can fake. */
  @Test
  void longitudeComesFirst() throws IOException {
    LayerData data =
        new LayerData(
            Layers.READING,
            List.of(
                Layers.READING.row(
                    new GeometryFactory()
                        .createPoint(new Coordinate(602513.375101, 5784343.574568)),
                    Map.of())));
    JsonNode position = write(data, Crs.utm(30, true)).at("/features/0/geometry/coordinates");
    assertThat(position.get(0).asDouble()).isCloseTo(-1.5, within(2e-9));
    assertThat(position.get(1).asDouble()).isCloseTo(52.2, within(2e-9));
  }

  @Test
  void carriesNameRecordAndDictionaryAndNoCrs() throws IOException {
    JsonNode zone = write(Examples.layers().get(2), Examples.CRS);
    assertThat(zone.get("name").asText()).isEqualTo("zone");
    assertThat(zone.has("crs")).isFalse();
    assertThat(zone.at("/prov/run_id").asText()).isEqualTo("run-0001");
    assertThat(zone.at("/prov/utc").asText()).isEqualTo("2031-05-02T06:07:08.912Z");
    assertThat(zone.at("/prov/inputs/0/name").asText()).isEqualTo("greens é.geojson");
    assertThat(zone.at("/prov/params/bands/1/hi_pct").asInt()).isEqualTo(22);
    assertThat(zone.at("/fields/area_m2/unit").asText()).isEqualTo("m²");
    assertThat(zone.at("/features/0/properties/area_m2").isFloatingPointNumber()).isTrue();
  }

  /** Section 3.1.9 asks for a cut at the 180th meridian. */
  @Test
  void refusesToCrossThe180thMeridian() {
    Crs utm60 = Crs.utm(60, true);
    Coordinate edge = CrsTransform.between(Crs.wgs84(), utm60).apply(new Coordinate(179.9999, 10));
    LayerData data =
        new LayerData(
            Layers.ISO,
            List.of(
                Layers.ISO.row(
                    new GeometryFactory()
                        .createLineString(
                            new Coordinate[] {edge, new Coordinate(edge.x + 50, edge.y)}),
                    Map.of())));
    assertThatThrownBy(() -> write(data, utm60))
        .isInstanceOf(OutputRefused.class)
        .hasMessageContaining("layer iso, feature 1 crosses the 180th meridian");
  }
}
