package org.mottle.export.job;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layer;
import org.mottle.export.schema.LayerData;
import org.mottle.export.schema.Layers;

/** What was mapped, as the rows of the layers and tables that are delivered. */
public final class MapLayers {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private MapLayers() {}

  /**
   * @param decided what the engine found
   * @param outside readings outside every green, delivered as not used
   * @param withCells whether the layer {@code cell} is wanted
   */
  static List<LayerData> of(Decided decided, List<Reading> outside, boolean withCells) {
    SurveyMap map = decided.map();
    List<LayerData> layers = new ArrayList<>();
    layers.add(new LayerData(Layers.GREEN, greens(map)));
    layers.add(new LayerData(Layers.READING, readings(map, outside)));
    layers.add(rows(Layers.ZONE, map, ZoneRows::zones));
    layers.add(rows(Layers.PATCH, map, m -> PatchRows.patches(m, map.settings().watering())));
    layers.add(rows(Layers.CORE, map, PatchRows::cores));
    layers.add(rows(Layers.ENVEL, map, PatchRows::envelopes));
    layers.add(rows(Layers.SPOT, map, SpotRows::of));
    layers.add(new LayerData(Layers.WATER, WaterRows.of(decided.watering())));
    layers.add(new LayerData(Layers.SECTOR, SectorRows.of(decided.heads())));
    layers.add(rows(Layers.NEXTST, map, NextRows::of));
    layers.add(rows(Layers.ISO, map, ZoneRows::isoLines));
    if (withCells) {
      layers.add(rows(Layers.CELL, map, CellRows::of));
    }
    layers.add(new LayerData(Layers.SURVEY, map.outcomes().stream().map(SurveyRows::of).toList()));
    layers.add(new LayerData(Layers.EVEN, decided.visits().stream().map(EvenRows::of).toList()));
    layers.add(
        new LayerData(Layers.COURSE, CourseRows.of(decided.course(), map.settings().watering())));
    layers.add(new LayerData(Layers.VGM, VariogramRows.of(map)));
    return layers;
  }

  private static LayerData rows(
      Layer layer, SurveyMap map, Function<Outcome.Mapped, List<FeatureRow>> make) {
    return new LayerData(layer, map.maps().stream().flatMap(m -> make.apply(m).stream()).toList());
  }

  /** Fields every row of a green and survey begins with. */
  static Map<String, Object> named(GreenSurvey subject) {
    Map<String, Object> row = new HashMap<>();
    row.put("green_id", subject.green().id());
    row.put("surv_id", subject.surveyId());
    return row;
  }

  static void putBand(Map<String, Object> row, Optional<TargetBand> band) {
    band.ifPresent(
        b -> {
          row.put("purpose", b.purpose());
          row.put("lo_pct", b.lowPct());
          row.put("hi_pct", b.highPct());
        });
  }

  private static List<FeatureRow> greens(SurveyMap map) {
    Map<String, Green> once = new LinkedHashMap<>();
    map.outcomes().forEach(o -> once.putIfAbsent(o.subject().green().id(), o.subject().green()));
    return once.values().stream().map(MapLayers::green).toList();
  }

  /** The row of a green. */
  public static FeatureRow green(Green green) {
    Map<String, Object> row = new HashMap<>();
    row.put("green_id", green.id());
    row.put("name", green.name());
    row.put("area_m2", green.areaM2());
    row.put("perim_m", green.perimeterM());
    row.put("build", green.rootZone().build());
    row.put("grass", green.rootZone().grass());
    row.put("root_mm", green.rootZone().rootDepthMm());
    row.put("fc_pct", green.rootZone().fieldCapacityPct());
    row.put("wp_pct", green.rootZone().wiltOnsetPct());
    row.put("poro_pct", green.rootZone().porosityPct());
    row.put("bnd_src", green.boundary().source());
    row.put("acc_m", green.boundary().accuracyM());
    return Layers.GREEN.row(green.outline(), row);
  }

  private static List<FeatureRow> readings(SurveyMap map, List<Reading> outside) {
    List<FeatureRow> rows = new ArrayList<>();
    for (Outcome outcome : map.outcomes()) {
      Green green = outcome.subject().green();
      EdgeDistance edge = new EdgeDistance(green.outline());
      Set<Reading> mapped = mapped(outcome);
      for (Reading r : outcome.subject().readings()) {
        rows.add(
            reading(
                r,
                green.id(),
                outcome.subject().surveyId(),
                edge.at(r.x(), r.y()),
                mapped.contains(r)));
      }
    }
    outside.forEach(
        r -> rows.add(reading(r, r.label().greenId(), r.label().surveyId(), Double.NaN, false)));
    return rows;
  }

  /** The readings behind the map: by identity, since two may be alike to the last word. */
  private static Set<Reading> mapped(Outcome outcome) {
    Set<Reading> mapped = Collections.newSetFromMap(new IdentityHashMap<>());
    if (outcome instanceof Outcome.Mapped map) {
      map.stations().stations().forEach(station -> mapped.addAll(station.insertions()));
    }
    return mapped;
  }

  /** Readings of a green, used or not as their review says. */
  public static List<FeatureRow> readings(List<Reading> readings, Green green, String survey) {
    EdgeDistance edge = new EdgeDistance(green.outline());
    return readings.stream()
        .map(r -> reading(r, green.id(), survey, edge.at(r.x(), r.y()), r.quality().used()))
        .toList();
  }

  /** A reading that lies on no green of the record. */
  public static FeatureRow reading(Reading r) {
    return reading(r, r.label().greenId(), r.label().surveyId(), Double.NaN, r.quality().used());
  }

  private static FeatureRow reading(
      Reading r, String green, String survey, double edgeM, boolean used) {
    Map<String, Object> row = new HashMap<>();
    row.put("green_id", green);
    row.put("surv_id", survey);
    row.put("st_id", r.label().stationId());
    row.put("seq", r.label().sequence() == 0 ? null : r.label().sequence());
    row.put("rep", r.label().replicate());
    row.put("t_local", r.protocol().time());
    row.put("vwc_raw", r.moisture().rawPct());
    row.put("vwc_adj", r.moisture().adjustedPct());
    row.put("adj_note", r.moisture().note());
    row.put("rod_mm", r.protocol().rodMm());
    row.put("probe", r.protocol().probe());
    row.put("oper", r.protocol().operator());
    row.put("calib", r.protocol().calibration());
    row.put("soil_c", r.protocol().soilC());
    row.put("ec_dsm", r.protocol().conductivityDsM());
    row.put("x", r.x());
    row.put("y", r.y());
    row.put("z_m", r.position().z());
    row.put("pos_src", r.position().source());
    row.put("pos_sd_m", r.position().sdM());
    row.put("edge_m", edgeM);
    row.put("role", r.role().code());
    row.put("qa_code", r.quality().code());
    row.put("qa_stat", r.quality().status());
    row.put("used", used ? 1 : 0);
    return Layers.READING.row(FACTORY.createPoint(new Coordinate(r.x(), r.y())), row);
  }
}
