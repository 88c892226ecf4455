package org.mottle.export.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;
import org.mottle.engine.contour.IsoLine;
import org.mottle.engine.drainage.DrainageFinding;
import org.mottle.engine.drainage.Hypothesis;
import org.mottle.engine.drainage.HypothesisScore;
import org.mottle.engine.drainage.WetPlaces;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.season.Change;
import org.mottle.engine.season.Persistence;
import org.mottle.engine.season.PersistenceOutcome;
import org.mottle.engine.season.PersistentPlace;
import org.mottle.engine.season.TemporalStability;
import org.mottle.engine.season.TemporalStability.StationDifference;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.WaterHistory;
import org.mottle.engine.terrain.Depression;
import org.mottle.engine.terrain.FlowLine;
import org.mottle.engine.terrain.GreenTerrain;
import org.mottle.engine.terrain.GroundCurvature;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.LayerData;
import org.mottle.export.schema.Layers;
import org.mottle.export.season.SeasonWork.GreenSeason;

/** What a season came to, as rows of layers and tables. */
final class SeasonRows {
  /** Ground called fallen or risen. */
  private static final double CALLED = 0.8;

  /** Between points of the layer of the ground, m. */
  private static final double POINTS_M = 1;

  private final SeasonWork work;
  private final Map<String, GreenTerrain> terrain;

  private final List<Repaired> repaired;

  SeasonRows(SeasonWork work, Map<String, GreenTerrain> terrain, List<Repaired> repaired) {
    this.work = work;
    this.terrain = terrain;
    this.repaired = repaired;
  }

  List<LayerData> layers(List<FeatureRow> greens, List<DrainageFinding> findings) {
    List<LayerData> layers = new ArrayList<>();
    layers.add(new LayerData(Layers.GREEN, greens));
    layers.add(new LayerData(Layers.PERSIST, persistent()));
    layers.add(new LayerData(Layers.DEPRESS, hollows()));
    layers.add(new LayerData(Layers.FLOW, flows()));
    layers.add(new LayerData(Layers.CONTOUR, contours()));
    layers.add(new LayerData(Layers.HYPO, hypotheses(findings)));
    layers.add(new LayerData(Layers.CHANGE, changes()));
    layers.add(new LayerData(Layers.STABLE, stable()));
    layers.add(new LayerData(Layers.REPAIR, repaired.stream().map(Repaired::row).toList()));
    layers.add(new LayerData(Layers.TERRAIN, ground()));
    return layers;
  }

  private static Map<String, Object> named(Green green) {
    Map<String, Object> row = new HashMap<>();
    row.put("green_id", green.id());
    return row;
  }

  private List<FeatureRow> changes() {
    List<FeatureRow> rows = new ArrayList<>();
    for (GreenSeason g : work.greens()) {
      for (Pair pair : g.pairs()) {
        Map<String, Object> row = named(g.green());
        row.put("surv_a", pair.before());
        row.put("surv_b", pair.after());
        pair.change().value().ifPresent(c -> put(row, c));
        pair.change().refusal().ifPresent(r -> row.put("why_not", r.toString()));
        pair.dried()
            .ifPresent(
                d -> {
                  row.put("days", d.days());
                  row.put("k_pct_d", d.whole().best());
                  row.put("k_lo", d.whole().low());
                  row.put("k_hi", d.whole().high());
                  row.put("k_et", d.etRate());
                });
        pair.dryDown().flatMap(d -> d.refusal()).ifPresent(r -> row.put("why_no_k", r.toString()));
        rows.add(Layers.CHANGE.row(row));
      }
    }
    return rows;
  }

  private static void put(Map<String, Object> row, Change c) {
    Interval whole = c.whole().interval();
    row.put("dvwc", whole.best());
    row.put("dvwc_lo", whole.low());
    row.put("dvwc_hi", whole.high());
    row.put("limit_pct", c.limitPct());
    row.put("fallen", shareAbove(c.pFall(), CALLED));
    row.put("risen", shareAbove(c.pRise(), CALLED));
  }

  /** Share of the cells with a value at or above a limit. */
  static double shareAbove(Raster raster, double limit) {
    int all = 0;
    int above = 0;
    for (double v : raster.values()) {
      all += Double.isNaN(v) ? 0 : 1;
      above += v >= limit ? 1 : 0;
    }
    return above / (double) all;
  }

  private List<FeatureRow> persistent() {
    List<FeatureRow> rows = new ArrayList<>();
    for (GreenSeason g : work.greens()) {
      add(rows, g, g.drainage(), WaterHistory.AFTER_RAIN.label());
      add(rows, g, g.coverage(), "other water");
    }
    return rows;
  }

  private static void add(
      List<FeatureRow> rows, GreenSeason g, PersistenceOutcome outcome, String history) {
    if (outcome instanceof Persistence p) {
      for (PersistentPlace place : p.wet().places()) {
        rows.add(row(g, p, place, "wet", history));
      }
      for (PersistentPlace place : p.dry().places()) {
        rows.add(row(g, p, place, "dry", history));
      }
    }
  }

  private static FeatureRow row(
      GreenSeason g, Persistence p, PersistentPlace place, String kind, String history) {
    Map<String, Object> row = named(g.green());
    row.put("kind", kind);
    row.put("history", history);
    row.put("n_surv", p.surveys().size());
    row.put("wet_share", WetPlaces.mean(p.wet().share(), place.outline()));
    row.put("ws_lo", WetPlaces.mean(p.wet().low(), place.outline()));
    row.put("ws_hi", WetPlaces.mean(p.wet().high(), place.outline()));
    row.put("dry_share", WetPlaces.mean(p.dry().share(), place.outline()));
    row.put("ds_lo", WetPlaces.mean(p.dry().low(), place.outline()));
    row.put("ds_hi", WetPlaces.mean(p.dry().high(), place.outline()));
    row.put("area_m2", place.areaM2());
    row.put("sure_m2", place.sureM2());
    return Layers.PERSIST.row(place.outline(), row);
  }

  private List<FeatureRow> hollows() {
    List<FeatureRow> rows = new ArrayList<>();
    for (GreenSeason g : work.greens()) {
      GreenTerrain t = terrain.get(g.green().id());
      int number = 0;
      for (Depression d : t == null ? List.<Depression>of() : t.hollows()) {
        Map<String, Object> row = named(g.green());
        row.put("dep_id", g.green().id() + "-" + ++number);
        row.put("depth_mm", 1000 * d.deepestM());
        row.put("vol_l", d.volumeLitres());
        row.put("area_m2", d.areaM2());
        row.put("spill_z", d.spillM());
        rows.add(Layers.DEPRESS.row(d.outline(), row));
      }
    }
    return rows;
  }

  /** A point every metre on the green. */
  private List<FeatureRow> ground() {
    List<FeatureRow> rows = new ArrayList<>();
    for (GreenSeason g : work.greens()) {
      GreenTerrain t = terrain.get(g.green().id());
      if (t != null) {
        CellGrid grid = t.model().grid();
        int step = (int) Math.max(1, Math.round(POINTS_M / grid.cell()));
        IndexedPointInAreaLocator inside = new IndexedPointInAreaLocator(g.green().outline());
        for (int row = step / 2; row < grid.rows(); row += step) {
          for (int column = step / 2; column < grid.columns(); column += step) {
            Coordinate at = new Coordinate(grid.x(column), grid.y(row));
            int cell = grid.index(row, column);
            if (t.model().has(cell) && inside.locate(at) != Location.EXTERIOR) {
              rows.add(point(g, t, cell, at));
            }
          }
        }
      }
    }
    return rows;
  }

  private static FeatureRow point(GreenSeason g, GreenTerrain t, int cell, Coordinate at) {
    Map<String, Object> row = named(g.green());
    GroundCurvature curvature = GroundCurvature.at(t.model(), cell);
    row.put("z_m", t.model().height(cell));
    row.put("slope_pct", t.slope().percent(cell));
    row.put("aspect", t.slope().aspect(cell));
    row.put("prof_curv", curvature.profile());
    row.put("plan_curv", curvature.plan());
    row.put("fill_mm", 1000 * t.flood().depth(cell));
    row.put("ca_m2", t.area().areaM2(cell));
    row.put("twi", t.wetness().value(cell));
    return Layers.TERRAIN.row(g.green().outline().getFactory().createPoint(at), row);
  }

  /** From the places that stay wet after rain, and from the hollows on the green. */
  private List<FeatureRow> flows() {
    List<FeatureRow> rows = new ArrayList<>();
    for (GreenSeason g : work.greens()) {
      GreenTerrain t = terrain.get(g.green().id());
      if (t != null && g.drainage() instanceof Persistence p) {
        for (PersistentPlace place : p.wet().places()) {
          var from = place.outline().getInteriorPoint().getCoordinate();
          FlowLine way =
              FlowLine.from(t.flow(), from.x, from.y, 0.01, place.outline().getFactory());
          Map<String, Object> row = named(g.green());
          row.put("length_m", way.line().getLength());
          row.put("drop_m", way.dropM());
          if (way.line().getLength() > 0) {
            rows.add(Layers.FLOW.row(way.line(), row));
          }
        }
      }
    }
    return rows;
  }

  private static List<FeatureRow> hypotheses(List<DrainageFinding> findings) {
    List<FeatureRow> rows = new ArrayList<>();
    for (DrainageFinding f : findings) {
      int rank = 0;
      for (HypothesisScore h : f.hypotheses()) {
        Map<String, Object> row = new HashMap<>();
        row.put("green_id", f.place().greenId());
        row.put("place_id", f.place().greenId() + "-" + f.place().placeId());
        row.put("rank", h.hypothesis() == Hypothesis.NONE ? null : ++rank);
        row.put("kind", h.hypothesis().label());
        row.put("verdict", f.suggested().isPresent() ? "suggested" : "insufficient evidence");
        row.put("for_txt", lines(h.speaksFor()));
        row.put("against", lines(h.against()));
        row.put("score", h.score());
        row.put("p_hypo", h.probability());
        row.put("next_test", f.next().text());
        row.put("not_known", String.join("; ", f.notKnown()));
        rows.add(Layers.HYPO.row(f.place().outline(), row));
      }
    }
    return rows;
  }

  static String lines(List<HypothesisScore.EvidenceLine> lines) {
    return lines.stream()
        .map(l -> String.format(Locale.ROOT, "%s: %+.2f", l.text(), l.logRatio()))
        .collect(Collectors.joining("; "));
  }

  private List<FeatureRow> contours() {
    List<FeatureRow> rows = new ArrayList<>();
    for (GreenSeason g : work.greens()) {
      GreenTerrain t = terrain.get(g.green().id());
      for (IsoLine line : t == null ? List.<IsoLine>of() : t.contours()) {
        Map<String, Object> row = named(g.green());
        row.put("z_m", line.level());
        rows.add(Layers.CONTOUR.row(line.geometry(), row));
      }
    }
    return rows;
  }

  private List<FeatureRow> stable() {
    List<FeatureRow> rows = new ArrayList<>();
    for (GreenSeason g : work.greens()) {
      if (g.stability() instanceof TemporalStability stability) {
        List<StationDifference> byMean =
            stability.stations().stream()
                .sorted(Comparator.comparingDouble(StationDifference::mean))
                .toList();
        for (StationDifference s : stability.stations()) {
          Map<String, Object> row = named(g.green());
          row.put("st_id", s.station());
          row.put("n_surv", s.times());
          row.put("mrd", s.mean());
          row.put("sdrd", s.sd());
          row.put("its", s.index());
          row.put("rank", byMean.indexOf(s) + 1);
          row.put("represent", s == stability.representativeStation() ? 1 : 0);
          rows.add(Layers.STABLE.row(row));
        }
      }
    }
    return rows;
  }

  /** Greens of the maps, each once. */
  static List<Green> greens(SurveyMap map) {
    return map.outcomes().stream().map(o -> o.subject().green()).distinct().toList();
  }
}
