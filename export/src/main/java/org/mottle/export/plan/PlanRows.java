package org.mottle.export.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.design.PlanOutcome.NotPlanned;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.survey.Green;
import org.mottle.export.job.EdgeDistance;
import org.mottle.export.job.MapLayers;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.LayerData;
import org.mottle.export.schema.Layers;

/** Plans as the rows of the layers and tables that are delivered. */
final class PlanRows {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private PlanRows() {}

  /** The layers {@code green}, {@code station}, {@code walk} and the table {@code plan}. */
  static List<LayerData> of(
      List<Green> greens, List<GreenPlan> plans, List<NotPlanned> without, String design) {
    List<FeatureRow> table = new ArrayList<>(plans.stream().map(PlanRows::row).toList());
    without.forEach(w -> table.add(row(w, design)));
    return List.of(
        new LayerData(Layers.GREEN, greens.stream().map(MapLayers::green).toList()),
        stations(plans),
        new LayerData(
            Layers.WALK,
            plans.stream()
                .filter(p -> p.plan().stations().size() > 1)
                .map(PlanRows::walk)
                .toList()),
        new LayerData(Layers.PLAN, table));
  }

  /** The layer {@code station}. */
  static LayerData stations(List<GreenPlan> plans) {
    return new LayerData(
        Layers.STATION, plans.stream().flatMap(p -> stations(p).stream()).toList());
  }

  private static List<FeatureRow> stations(GreenPlan plan) {
    EdgeDistance edge = new EdgeDistance(plan.green().outline());
    List<GreenPlan.Step> steps = plan.steps();
    List<FeatureRow> rows = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      PlannedStation s = plan.plan().stations().get(i);
      Map<String, Object> row = named(plan);
      row.put("st_id", s.id());
      row.put("seq", i + 1);
      row.put("role", s.role().code());
      row.put("insertions", s.insertions());
      row.put("step_m", steps.get(i).lengthM());
      row.put("step_deg", steps.get(i).degrees());
      row.put("edge_m", edge.at(s.x(), s.y()));
      row.put("x", s.x());
      row.put("y", s.y());
      rows.add(Layers.STATION.row(FACTORY.createPoint(new Coordinate(s.x(), s.y())), row));
    }
    return rows;
  }

  private static FeatureRow walk(GreenPlan plan) {
    Map<String, Object> row = named(plan);
    row.put("n_st", plan.plan().stations().size());
    row.put("n_ins", plan.plan().insertions());
    row.put("length_m", plan.plan().walkM());
    row.put("minutes", plan.plan().minutes());
    Coordinate[] line =
        plan.plan().stations().stream()
            .map(s -> new Coordinate(s.x(), s.y()))
            .toArray(Coordinate[]::new);
    return Layers.WALK.row(FACTORY.createLineString(line), row);
  }

  private static FeatureRow row(GreenPlan plan) {
    Map<String, Object> row = named(plan);
    row.put("design", plan.design());
    row.put("n_st", plan.stations());
    row.put("n_pair", plan.closePairs());
    row.put("n_twice", plan.readTwice());
    row.put("n_ctrl", plan.controls());
    row.put("n_ins", plan.plan().insertions());
    row.put("inset_m", plan.insetM());
    row.put("spacing_m", plan.spacingM());
    row.put("walk_m", plan.plan().walkM());
    row.put("minutes", plan.plan().minutes());
    Prospect prospect = plan.prospect();
    row.put("map_sd", prospect.mapSdPct());
    row.put("map_by", prospect.mapBy());
    row.put("mean_pm", prospect.meanHalfPct());
    row.put("mean_by", prospect.meanBy());
    row.put("found", String.join("; ", prospect.found()));
    row.put("note", plan.note());
    return Layers.PLAN.row(row);
  }

  private static FeatureRow row(NotPlanned without, String design) {
    Map<String, Object> row = new LinkedHashMap<>();
    row.put("green_id", without.green().id());
    row.put("design", design);
    row.put("n_st", 0);
    row.put("reason", without.why().reason());
    row.put("remedy", without.why().remedy());
    return Layers.PLAN.row(row);
  }

  private static Map<String, Object> named(GreenPlan plan) {
    Map<String, Object> row = new LinkedHashMap<>();
    row.put("green_id", plan.green().id());
    row.put("plan_id", plan.plan().planId());
    return row;
  }
}
