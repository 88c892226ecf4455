package org.mottle.export.read;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.io.JsonEOFException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * GeoJSON of RFC 7946, which is WGS 84, and of its 2008 forerunner, whose {@code crs} member much
 * software still writes. Coordinates that cannot be degrees in a file that names no CRS are refused
 * until one is given.
 */
final class GeoJsonReader {
  private final Path path;
  private final String name;
  private final InputOptions options;
  private final Problems problems = new Problems();
  private final List<String> notes = new ArrayList<>();

  GeoJsonReader(Path path, InputOptions options) {
    this.path = path;
    this.name = path.getFileName().toString();
    this.options = options;
  }

  FeatureTable read() throws IOException {
    Object root = tree();
    if (!(root instanceof Map<?, ?> object) || !(object.get("type") instanceof String)) {
      throw new InputRefused(
          "%s is JSON but not GeoJSON: it has no \"type\"; give a FeatureCollection"
              .formatted(name));
    }
    List<?> features = features(object);
    Set<String> columns = new LinkedHashSet<>();
    features.forEach(f -> properties(f).keySet().forEach(k -> columns.add(k.toString())));
    List<FeatureTable.Row> rows = new ArrayList<>();
    for (int i = 0; i < features.size(); i++) {
      rows.add(row(i + 1, features.get(i), columns));
    }
    problems.require(!features.isEmpty(), "%s holds no features", name);
    problems.throwIfAny();
    Optional<Crs> crs = Optional.of(crs(object.get("crs"), rows));
    return new FeatureTable(
        new FeatureTable.Origin(name, "feature", false), List.copyOf(columns), rows, crs, notes);
  }

  private List<?> features(Map<?, ?> object) {
    String type = (String) object.get("type");
    if (type.equals("FeatureCollection")) {
      if (object.get("features") instanceof List<?> list) {
        return list;
      }
      throw new InputRefused("%s: the FeatureCollection has no \"features\"".formatted(name));
    }
    if (type.equals("Feature")) {
      return List.of(object);
    }
    if (GeoJsonGeometry.TYPES.contains(type)) {
      return List.of(Map.of("type", "Feature", "geometry", object));
    }
    throw new InputRefused(
        "%s: '%s' is no GeoJSON type; give a FeatureCollection".formatted(name, type));
  }

  private static Map<?, ?> properties(Object feature) {
    return feature instanceof Map<?, ?> f && f.get("properties") instanceof Map<?, ?> p
        ? p
        : Map.of();
  }

  private FeatureTable.Row row(int number, Object feature, Set<String> columns) {
    Geometry geometry = null;
    if (!(feature instanceof Map<?, ?> f) || !"Feature".equals(f.get("type"))) {
      problems.add("%s, feature %d is not a Feature", name, number);
    } else if (f.get("geometry") != null) {
      try {
        geometry = GeoJsonGeometry.of(f.get("geometry"));
      } catch (IllegalArgumentException e) {
        problems.add("%s, feature %d: %s", name, number, e.getMessage());
      }
    }
    Map<?, ?> own = properties(feature);
    List<Object> values = new ArrayList<>();
    for (String column : columns) {
      Object value = own.get(column);
      values.add(value instanceof Map || value instanceof List ? value.toString() : value);
    }
    return new FeatureTable.Row(number, geometry, values);
  }

  private Crs crs(Object member, List<FeatureTable.Row> rows) {
    if (member instanceof Map<?, ?> m && m.get("properties") instanceof Map<?, ?> p) {
      if (p.get("name") instanceof String text) {
        Crs own = GivenCrs.described(name, text);
        return GivenCrs.choose(name, Optional.of(own), options, notes).orElse(own);
      }
      throw new InputRefused(
          "%s: its crs member links to a description elsewhere; name the CRS there by its EPSG code"
              .formatted(name));
    }
    boolean degrees = rows.stream().allMatch(GeoJsonReader::couldBeDegrees);
    if (!degrees) {
      return options
          .crs()
          .orElseThrow(
              () ->
                  GivenCrs.missing(
                      name,
                      "holds coordinates that are not degrees (%s) and names no crs"
                          .formatted(firstPlace(rows))));
    }
    if (options.crs().isPresent() && !options.crs().get().isProjected()) {
      return options.crs().get();
    }
    options
        .crs()
        .ifPresent(
            c ->
                notes.add(
                    "%s is in WGS 84 (EPSG:4326), as GeoJSON without a crs member is; --crs is for files that are not"
                        .formatted(name)));
    return Crs.wgs84();
  }

  private static boolean couldBeDegrees(FeatureTable.Row row) {
    if (row.geometry() == null || row.geometry().isEmpty()) {
      return true;
    }
    var box = row.geometry().getEnvelopeInternal();
    return box.getMinX() >= -360
        && box.getMaxX() <= 360
        && box.getMinY() >= -90
        && box.getMaxY() <= 90;
  }

  private static String firstPlace(List<FeatureTable.Row> rows) {
    FeatureTable.Row first =
        rows.stream().filter(r -> !couldBeDegrees(r)).findFirst().orElseThrow();
    Coordinate c = first.geometry().getCoordinate();
    return "feature %d: %s, %s".formatted(first.number(), c.x, c.y);
  }

  private Object tree() throws IOException {
    byte[] bytes = Files.readAllBytes(path);
    String text = TextEncoding.detect(bytes).text();
    try (JsonParser parser = JsonFactory.builder().build().createParser(text)) {
      parser.nextToken();
      Object root = value(parser);
      if (parser.nextToken() != null) {
        throw new InputRefused("%s: JSON goes on after its end".formatted(name));
      }
      return root;
    } catch (JsonEOFException e) {
      throw new InputRefused(
          "%s ends before its JSON does (%s): the file is cut off".formatted(name, at(e)));
    } catch (JsonProcessingException e) {
      throw new InputRefused(
          "%s is not sound JSON at %s: %s".formatted(name, at(e), e.getOriginalMessage()));
    }
  }

  private static String at(JsonProcessingException e) {
    JsonLocation place = e.getLocation();
    return place == null
        ? "an unknown place"
        : "line " + place.getLineNr() + ", column " + place.getColumnNr();
  }

  /** The value the parser stands on: Map, List, String, Number, Boolean or null. */
  private static Object value(JsonParser parser) throws IOException {
    JsonToken token = parser.currentToken();
    if (token == null) {
      throw new JsonParseException(parser, "no value");
    }
    return switch (token) {
      case START_OBJECT -> {
        Map<String, Object> object = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
          String key = parser.currentName();
          parser.nextToken();
          object.put(key, value(parser));
        }
        yield object;
      }
      case START_ARRAY -> {
        List<Object> list = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
          list.add(value(parser));
        }
        yield list;
      }
      case VALUE_STRING -> parser.getText();
      case VALUE_NUMBER_INT -> whole(parser);
      case VALUE_NUMBER_FLOAT -> parser.getDoubleValue();
      case VALUE_TRUE -> true;
      case VALUE_FALSE -> false;
      default -> null;
    };
  }

  private static Object whole(JsonParser parser) throws IOException {
    return parser.getNumberType() == JsonParser.NumberType.BIG_INTEGER
        ? (Object) parser.getDoubleValue()
        : (Object) parser.getLongValue();
  }
}
