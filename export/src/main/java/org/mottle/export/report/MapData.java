package org.mottle.export.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.course.GreenLook;
import org.mottle.engine.course.Stop;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Stations;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.Spot;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.plan.NextStation;
import org.mottle.engine.plan.StationRanking;
import org.mottle.export.read.AerialImage;
import org.mottle.export.record.Json;
import org.mottle.export.style.Ramp;

/**
 * What the map of the page draws, as JSON. Metres of the working CRS, north and east of a corner of
 * the course, to the centimetre. The text is safe inside a script element whatever the names hold.
 */
final class MapData {
  private static final String[] HEADS = {
    "Area, m²", "Chance that it is there", "Water, one pass", "Check next"
  };

  private final ReportMatter matter;
  private final GreenSheet.Scales scales;
  private final double west;
  private final double south;

  private MapData(ReportMatter matter, GreenSheet.Scales scales) {
    this.matter = matter;
    this.scales = scales;
    Envelope all = new Envelope();
    matter
        .visits()
        .forEach(
            v ->
                all.expandToInclude(v.outcome().subject().green().outline().getEnvelopeInternal()));
    this.west = Math.floor(all.getMinX());
    this.south = Math.floor(all.getMinY());
  }

  static String of(ReportMatter matter, GreenSheet.Scales scales) {
    return safe(Json.text(new MapData(matter, scales).structure()));
  }

  /** JSON in which nothing can end the element it stands in. */
  static String safe(String json) {
    return json.replace("<", "\\u003c")
        .replace(">", "\\u003e")
        .replace("&", "\\u0026")
        .replace("\u2028", "\\u2028")
        .replace("\u2029", "\\u2029");
  }

  private Map<String, Object> structure() {
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("west", west);
    all.put("south", south);
    List<Object> greens = new ArrayList<>();
    for (int i = 0; i < matter.visits().size(); i++) {
      greens.add(green(matter.visits().get(i), i));
    }
    all.put("greens", greens);
    all.put("looks", looks());
    all.put("images", matter.imagery().stream().map(this::image).toList());
    all.put("moisture", scale(scales.moisture()));
    all.put("doubt", scale(scales.doubt()));
    return all;
  }

  private static List<Object> looks() {
    List<Object> looks = new ArrayList<>();
    for (ClassLook look : ClassLook.values()) {
      looks.add(
          Map.of(
              "n", look.cls().number(),
              "code", look.code(),
              "letter", look.letter(),
              "paint", look.paint()));
    }
    return looks;
  }

  private static Map<String, Object> scale(Ramp ramp) {
    List<String> colours = new ArrayList<>();
    for (int c = 0; c < ramp.classes(); c++) {
      colours.add(String.format(Locale.ROOT, "#%06x", ramp.colour(c)));
    }
    return Map.of("low", ramp.low(), "high", ramp.high(), "colours", colours);
  }

  private Map<String, Object> green(GreenLook look, int index) {
    Outcome outcome = look.outcome();
    Map<String, Object> one = new LinkedHashMap<>();
    one.put("id", outcome.subject().green().id());
    one.put("name", outcome.subject().green().name());
    one.put("survey", outcome.subject().surveyId());
    one.put("date", look.lastRead().map(t -> t.toLocalDate().toString()).orElse(""));
    one.put("sheet", GreenSheet.id(index));
    one.put("outline", polygons(outcome.subject().green().outline()));
    one.put("stations", outcome.stations().stations().stream().map(this::station).toList());
    look.mapped().ifPresent(map -> put(one, map));
    if (outcome instanceof Outcome.NoMap none) {
      one.put("noMap", none.why().toString());
    }
    return one;
  }

  private void put(Map<String, Object> one, Outcome.Mapped map) {
    one.put("classes", map.parts().zones().stream().map(this::zone).toList());
    one.put("mean", raster(map.surface().mean(), scales.moisture()));
    if (!Double.isNaN(map.surface().medianSd())) {
      one.put("sd", raster(map.surface().sd(), scales.doubt()));
      one.put("medianSd", String.format(Locale.ROOT, "%.1f", map.surface().medianSd()));
    }
    one.put("patches", map.parts().patches().stream().map(p -> patch(map, p)).toList());
    one.put("spots", map.parts().spots().stream().map(s -> spot(map, s)).toList());
    one.put(
        "next",
        map.parts().next().map(StationRanking::stations).orElse(List.of()).stream()
            .map(this::next)
            .toList());
    one.put(
        "stops",
        matter.watering().stops().stream()
            .filter(s -> s.place().greenId().equals(map.subject().green().id()))
            .filter(s -> s.place().surveyId().equals(map.subject().surveyId()))
            .map(this::stop)
            .toList());
  }

  private Map<String, Object> zone(Zone zone) {
    List<Object> letters = new ArrayList<>();
    for (int i = 0; i < zone.geometry().getNumGeometries(); i++) {
      Geometry part = zone.geometry().getGeometryN(i);
      if (part.getArea() > 4) {
        letters.add(place(SheetMap.inside(part)));
      }
    }
    return Map.of(
        "n", zone.cls().number(),
        "area", Words.area(zone.areaM2()),
        "letters", letters,
        "shape", polygons(zone.geometry()));
  }

  private Map<String, Object> patch(Outcome.Mapped map, Patch patch) {
    List<String> cells = GreenSheet.cells(map, patch, matter);
    List<Object> rows = new ArrayList<>();
    for (int i = 0; i < HEADS.length; i++) {
      rows.add(List.of(HEADS[i], cells.get(i + 1)));
    }
    return Map.of(
        "title", "Patch " + cells.get(0),
        "number", patch.number(),
        "at", place(SheetMap.inside(patch.geometry())),
        "rows", rows,
        "shape", polygons(patch.geometry()));
  }

  private Map<String, Object> spot(Outcome.Mapped map, Spot spot) {
    return Map.of(
        "at", place(spot.point()),
        "kind", spot.kind().code(),
        "words",
            "Seen "
                + spot.kind().code()
                + " by station "
                + map.stations().stations().get(spot.station()).name()
                + ", size unknown; re-read round it at 1 m");
  }

  private Map<String, Object> station(Stations.Station s) {
    return Map.of(
        "at",
        place(new Coordinate(s.x(), s.y())),
        "words",
        String.format(Locale.ROOT, "station %s: %.1f %%", s.name(), s.value()));
  }

  private Map<String, Object> next(NextStation s) {
    return Map.of(
        "at", place(new Coordinate(s.x(), s.y())),
        "n", s.rank(),
        "words",
            String.format(
                Locale.ROOT,
                "Read here next, rank %d: expected to settle %.0f %% of the doubt",
                s.rank(),
                100 * s.gainShare()));
  }

  private Map<String, Object> stop(Stop stop) {
    return Map.of(
        "at",
        place(new Coordinate(stop.place().x(), stop.place().y())),
        "n",
        stop.order(),
        "words",
        "Watering stop "
            + stop.order()
            + stop.water().map(w -> ": " + Words.litres(w.litres())).orElse(": look first")
            + "; probe before watering");
  }

  private Map<String, Object> raster(Raster raster, Ramp ramp) {
    CellGrid g = raster.grid();
    Map<String, Object> one = new LinkedHashMap<>();
    one.put("uri", RasterPicture.uri(raster, ramp));
    one.put("box", box(g.west(), g.south(), g.east(), g.north()));
    return one;
  }

  private Map<String, Object> image(AerialImage image) {
    Envelope e = image.extent();
    return Map.of(
        "uri", image.dataUri(),
        "name", image.name(),
        "box", box(e.getMinX(), e.getMinY(), e.getMaxX(), e.getMaxY()));
  }

  private List<List<Double>> box(double w, double s, double e, double n) {
    return List.of(place(new Coordinate(w, s)), place(new Coordinate(e, n)));
  }

  /** North, east: the order of the map library. */
  private List<Double> place(Coordinate c) {
    return List.of(cm(c.y - south), cm(c.x - west));
  }

  private static double cm(double m) {
    return Math.rint(100 * m) / 100;
  }

  private List<Object> polygons(Geometry area) {
    List<Object> polygons = new ArrayList<>();
    for (int g = 0; g < area.getNumGeometries(); g++) {
      Geometry boundary = area.getGeometryN(g).getBoundary();
      List<Object> rings = new ArrayList<>();
      for (int k = 0; k < boundary.getNumGeometries(); k++) {
        List<Object> ring = new ArrayList<>();
        for (Coordinate c : boundary.getGeometryN(k).getCoordinates()) {
          ring.add(place(c));
        }
        rings.add(ring);
      }
      polygons.add(rings);
    }
    return polygons;
  }
}
