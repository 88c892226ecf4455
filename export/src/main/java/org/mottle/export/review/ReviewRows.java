package org.mottle.export.review;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.mottle.engine.review.Finding;
import org.mottle.engine.review.Reviewed;
import org.mottle.engine.review.ReviewedVisit;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.export.job.MapLayers;
import org.mottle.export.read.Greens;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.LayerData;
import org.mottle.export.schema.Layers;

/** A review as the rows of its layers and tables. */
final class ReviewRows {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private ReviewRows() {}

  static List<LayerData> of(Greens greens, Reviewed reviewed) {
    return List.of(
        new LayerData(Layers.GREEN, greens.greens().stream().map(MapLayers::green).toList()),
        new LayerData(Layers.READING, readings(greens, reviewed)),
        new LayerData(Layers.FINDING, findings(greens, reviewed)),
        new LayerData(Layers.VISIT, reviewed.visits().stream().map(ReviewRows::visit).toList()));
  }

  private static List<FeatureRow> readings(Greens greens, Reviewed reviewed) {
    List<FeatureRow> rows = new ArrayList<>();
    for (ReviewedVisit v : reviewed.visits()) {
      rows.addAll(
          MapLayers.readings(v.visit().readings(), v.visit().green(), v.visit().surveyId()));
    }
    reviewed.elsewhere().forEach(r -> rows.add(MapLayers.reading(r)));
    reviewed.controls().stream()
        .filter(r -> !Double.isNaN(r.x()))
        .forEach(r -> rows.add(MapLayers.reading(r)));
    return rows;
  }

  /** A row for each reading a finding is about; else one in the middle of its green. */
  private static List<FeatureRow> findings(Greens greens, Reviewed reviewed) {
    Map<String, Green> byId = new HashMap<>();
    greens.greens().forEach(g -> byId.put(g.id(), g));
    List<FeatureRow> rows = new ArrayList<>();
    for (Finding f : reviewed.allFindings()) {
      List<Reading> placed = f.readings().stream().filter(r -> !Double.isNaN(r.x())).toList();
      for (Reading r : placed) {
        rows.add(row(f, point(r.x(), r.y()), r.label().stationId()));
      }
      if (placed.isEmpty()) {
        Green green = byId.get(f.greenId());
        Coordinate at =
            green == null
                ? greens.greens().get(0).outline().getInteriorPoint().getCoordinate()
                : green.outline().getInteriorPoint().getCoordinate();
        rows.add(row(f, point(at.x, at.y), ""));
      }
    }
    return rows;
  }

  private static Point point(double x, double y) {
    return FACTORY.createPoint(new Coordinate(x, y));
  }

  private static FeatureRow row(Finding f, Point place, String station) {
    Map<String, Object> row = new HashMap<>();
    row.put("green_id", f.greenId());
    row.put("surv_id", f.surveyId());
    row.put("st_id", station);
    row.put("qa_code", f.rule().code());
    row.put("title", f.rule().title());
    row.put("qa_stat", f.severity().label());
    row.put("n_read", f.readings().size());
    row.put("reason", cut(f.reason()));
    row.put("remedy", cut(f.remedy()));
    return Layers.FINDING.row(place, row);
  }

  private static FeatureRow visit(ReviewedVisit v) {
    Map<String, Object> row = new HashMap<>();
    row.put("green_id", v.visit().green().id());
    row.put("surv_id", v.visit().surveyId());
    row.put("n_read", v.visit().readings().size());
    row.put("n_used", v.visit().readings().stream().filter(r -> r.quality().used()).count());
    row.put("n_warn", count(v, "warn"));
    row.put("n_reject", count(v, "reject"));
    row.put("grade", v.grade().letter().name());
    row.put("means", v.grade().letter().meaning());
    row.put("why", cut(String.join("; ", v.grade().why())));
    row.put("raise", cut(String.join("; ", v.grade().raise())));
    row.put("mappable", v.obstacle().isEmpty() ? 1 : 0);
    return Layers.VISIT.row(row);
  }

  private static long count(ReviewedVisit v, String status) {
    return v.visit().readings().stream().filter(r -> r.quality().status().equals(status)).count();
  }

  /** The shapefile holds 254 bytes; the page has the whole text. */
  private static String cut(String text) {
    return text.length() <= 240 ? text : text.substring(0, 237) + "...";
  }
}
