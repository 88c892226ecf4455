package org.mottle.demo.files;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.mottle.demo.random.Decimals;
import org.mottle.demo.site.Build;
import org.mottle.demo.site.Bunker;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Head;
import org.mottle.demo.site.Point;
import org.mottle.demo.site.Ring;

/**
 * The ground as GeoJSON, one feature a line: RFC 7946 in degrees to nine decimals, and the greens
 * also in metres with the older {@code crs} member. Coordinates in metres are those of the outline
 * to the millimetre, and the degrees are theirs.
 */
final class Geography {

  private static final ObjectMapper JSON = new ObjectMapper();

  private Geography() {}

  static String greens() {
    List<String> features = new ArrayList<>();
    for (GreenSite green : CoursePlace.greens()) {
      features.add(feature(properties(green), polygon(green, green.ring(), Geography::degrees)));
    }
    return collection("", features);
  }

  static String greensInMetres() {
    List<String> features = new ArrayList<>();
    for (GreenSite green : CoursePlace.greens()) {
      features.add(feature(properties(green), polygon(green, green.ring(), Geography::metres)));
    }
    String crs =
        "\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:EPSG::32628\"}},\n";
    return collection(crs, features);
  }

  static String collars() {
    List<String> features = new ArrayList<>();
    for (GreenSite green : CoursePlace.greens()) {
      List<Object> rings = new ArrayList<>(rings(green, green.collar(), Geography::degrees));
      List<Object> hole = new ArrayList<>(line(green, green.ring(), Geography::degrees));
      Collections.reverse(hole);
      rings.add(hole);
      Map<String, Object> properties = new LinkedHashMap<>();
      properties.put("green_id", green.id());
      properties.put("width_m", new BigDecimal(Decimals.fixed(GreenSite.COLLAR_M, 1)));
      features.add(feature(properties, geometry("Polygon", rings)));
    }
    return collection("", features);
  }

  static String bunkers() {
    List<String> features = new ArrayList<>();
    for (Bunker bunker : Bunker.all()) {
      Map<String, Object> properties = new LinkedHashMap<>();
      properties.put("bunker_id", bunker.id());
      properties.put("green_id", bunker.greenId());
      GreenSite green = CoursePlace.green(bunker.greenId());
      features.add(feature(properties, polygon(green, bunker.lip(), Geography::degrees)));
    }
    return collection("", features);
  }

  /** As drawn and believed: a dead head looks like any other. */
  static String heads() {
    List<String> features = new ArrayList<>();
    for (GreenSite green : CoursePlace.greens()) {
      for (Head head : Head.of(green)) {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("head_id", head.id());
        properties.put("green_id", green.id());
        properties.put("stn", Integer.parseInt(green.id().substring(1)));
        properties.put("rad_m", (int) Head.RADIUS_M);
        properties.put("arc_from", head.arc().from());
        properties.put("arc_to", head.arc().to());
        properties.put("rate_mmh", (int) Head.RATE_MM_H);
        List<Object> place = degrees(green.world(head.place()));
        features.add(feature(properties, geometry("Point", place)));
      }
    }
    return collection("", features);
  }

  private static Map<String, Object> properties(GreenSite green) {
    Build build = green.build();
    Map<String, Object> properties = new LinkedHashMap<>();
    properties.put("green_id", green.id());
    properties.put("name", green.name());
    properties.put("build", build.label());
    properties.put("grass", build == Build.PUSH_UP_SOIL ? "annual meadow grass" : "creeping bent");
    properties.put("root_mm", build.rootDepthMm());
    properties.put("fc_pct", build.fieldCapacityPct());
    properties.put("wp_pct", build.wiltOnsetPct());
    properties.put("poro_pct", build.porosityPct());
    properties.put("bnd_src", "total station");
    properties.put("acc_m", new BigDecimal("0.05"));
    return properties;
  }

  private static Map<String, Object> polygon(
      GreenSite green, Ring ring, Function<Point, List<Object>> position) {
    return geometry("Polygon", rings(green, ring, position));
  }

  private static List<Object> rings(
      GreenSite green, Ring ring, Function<Point, List<Object>> position) {
    return List.of(line(green, ring, position));
  }

  private static List<Object> line(
      GreenSite green, Ring ring, Function<Point, List<Object>> position) {
    List<Object> line = new ArrayList<>();
    for (int i = 0; i <= ring.size(); i++) {
      line.add(position.apply(green.world(ring.vertex(i))));
    }
    return line;
  }

  static List<Object> degrees(Point metres) {
    Point p = CoursePlace.PROJECTION.degrees(metres);
    return List.of(
        new BigDecimal(Decimals.fixed(p.x(), 9)), new BigDecimal(Decimals.fixed(p.y(), 9)));
  }

  private static List<Object> metres(Point p) {
    return List.of(
        new BigDecimal(Decimals.fixed(p.x(), 3)), new BigDecimal(Decimals.fixed(p.y(), 3)));
  }

  private static Map<String, Object> geometry(String type, List<Object> coordinates) {
    Map<String, Object> geometry = new LinkedHashMap<>();
    geometry.put("type", type);
    geometry.put("coordinates", coordinates);
    return geometry;
  }

  private static String feature(Map<String, Object> properties, Map<String, Object> geometry) {
    Map<String, Object> feature = new LinkedHashMap<>();
    feature.put("type", "Feature");
    feature.put("properties", properties);
    feature.put("geometry", geometry);
    return text(feature);
  }

  private static String collection(String crs, List<String> features) {
    return "{\"type\":\"FeatureCollection\",\n"
        + crs
        + "\"features\":[\n"
        + String.join(",\n", features)
        + "\n]}\n";
  }

  static String text(Object value) {
    try {
      return JSON.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException("cannot write " + value, e);
    }
  }
}
