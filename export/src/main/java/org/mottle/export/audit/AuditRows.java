package org.mottle.export.audit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.mottle.engine.irrigation.AreaAudit;
import org.mottle.engine.irrigation.CatchCan;
import org.mottle.engine.irrigation.Caution;
import org.mottle.engine.irrigation.Head;
import org.mottle.engine.irrigation.HeadCoverage;
import org.mottle.engine.irrigation.HeadSpacing;
import org.mottle.engine.irrigation.Scheduling;
import org.mottle.export.job.MapLayers;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.LayerData;
import org.mottle.export.schema.Layers;

/** An audit as the rows of its layers and as the figures of its summary, under the same names. */
final class AuditRows {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private AuditRows() {}

  static List<LayerData> of(Audited audited) {
    List<FeatureRow> cans = new ArrayList<>();
    audited.areas().forEach(a -> cans.addAll(cans(a, audited)));
    List<FeatureRow> cover = new ArrayList<>();
    audited.coverage().forEach(c -> cover.addAll(cover(c)));
    return List.of(
        new LayerData(
            Layers.GREEN,
            audited.greens().stream()
                .flatMap(g -> g.greens().stream())
                .map(MapLayers::green)
                .toList()),
        new LayerData(Layers.CATCH, cans),
        new LayerData(Layers.HEAD, heads(audited)),
        new LayerData(Layers.COVER, cover),
        new LayerData(
            Layers.IRR, audited.areas().stream().map(a -> irrigation(a, audited)).toList()));
  }

  /** Whether each can counts to the lowest quarter, by the rule in force. */
  static boolean[] lowest(AreaAudit a, Audited audited) {
    double[] values = a.values().values();
    boolean[] low = new boolean[a.area().cans().size()];
    if (values.length == 0) {
      return low;
    }
    Integer[] order = IntStream.range(0, values.length).boxed().toArray(Integer[]::new);
    Arrays.sort(order, (i, j) -> Double.compare(values[i], values[j]));
    double count = Math.ceil(audited.settings().rule().count(values.length, 0.25));
    for (int i = 0; i < count; i++) {
      low[order[i]] = true;
    }
    return low;
  }

  private static List<FeatureRow> cans(AreaAudit a, Audited audited) {
    double[] values = a.values().values();
    double mean = Arrays.stream(values).average().orElse(Double.NaN);
    boolean[] low = lowest(a, audited);
    List<FeatureRow> rows = new ArrayList<>();
    for (int i = 0; i < low.length; i++) {
      CatchCan can = a.area().cans().get(i);
      Map<String, Object> row = new HashMap<>();
      row.put("green_id", can.greenId());
      row.put("audit_on", can.run());
      row.put("can_id", can.id());
      row.put("ml", can.measure().ml());
      row.put("mouth_cm2", can.measure().mouthCm2());
      row.put("min_run", can.measure().minutes());
      row.put("mm", can.measure().depthMm());
      row.put("mm_h", can.measure().rateMmH());
      row.put("wind_ms", can.windMs());
      row.put("rel", values.length == 0 ? Double.NaN : values[i] / mean);
      row.put("low_q", values.length == 0 ? null : low[i] ? 1 : 0);
      rows.add(Layers.CATCH.row(can.hasPlace() ? point(can.x(), can.y()) : null, row));
    }
    return rows;
  }

  private static List<FeatureRow> heads(Audited audited) {
    if (audited.heads().isEmpty()) {
      return List.of();
    }
    Map<String, HeadSpacing> spacing = new HashMap<>();
    audited.coverage().forEach(c -> c.spacing().forEach(s -> spacing.put(s.head().id(), s)));
    List<FeatureRow> rows = new ArrayList<>();
    for (Head head : audited.heads().get().heads()) {
      Map<String, Object> row = new HashMap<>();
      row.put("green_id", head.greenId());
      row.put("head_id", head.id());
      row.put("stn", head.station());
      row.put("rad_m", head.radiusM());
      row.put("arc_from", head.arcFrom());
      row.put("arc_to", head.arcTo());
      row.put("rate_mmh", head.rateMmH());
      row.put("kpa", head.pressureKpa());
      row.put("state", audited.heads().get().state(head).orElse(""));
      HeadSpacing s = spacing.get(head.id());
      if (s != null) {
        row.put("near_m", s.nearestM());
        row.put("near_rad", s.perRadius());
        row.put("head_head", s.reachesHead() ? 1 : 0);
        row.put("reached_n", s.reachedBy());
      }
      rows.add(Layers.HEAD.row(point(head.x(), head.y()), row));
    }
    return rows;
  }

  private static List<FeatureRow> cover(HeadCoverage coverage) {
    List<FeatureRow> rows = new ArrayList<>();
    for (HeadCoverage.Part part : coverage.parts()) {
      Map<String, Object> row = new HashMap<>();
      row.put("green_id", coverage.green().id());
      row.put("head_id", cut(part.heads().stream().map(Head::id).collect(Collectors.joining(" "))));
      row.put("overlap_n", part.count());
      row.put("theo_mmh", part.rateMmH());
      row.put("area_m2", part.area().getArea());
      rows.add(Layers.COVER.row(part.area(), row));
    }
    return rows;
  }

  private static FeatureRow irrigation(AreaAudit a, Audited audited) {
    Map<String, Object> row = figures(a, audited);
    row.put("missing", cut(String.join("; ", AuditReport.missing(a))));
    row.put(
        "caution",
        cut(a.told().cautions().stream().map(Caution::text).collect(Collectors.joining("; "))));
    return Layers.IRR.row(row);
  }

  /** The figures of one area, by the names of the table {@code irr}. */
  static Map<String, Object> figures(AreaAudit a, Audited audited) {
    Map<String, Object> row = new LinkedHashMap<>();
    row.put("green_id", a.area().greenId());
    row.put("audit_on", a.area().run());
    row.put("n_cans", a.area().cans().size());
    row.put("basis", a.values().unit());
    row.put("lq_rule", audited.settings().rule().label());
    a.uniformity()
        .ifPresent(
            u -> {
              row.put("du_lq", u.figures().duLowQuarter());
              row.put("du_lo", u.duLowQuarter().low());
              row.put("du_hi", u.duLowQuarter().high());
              row.put("du_lh", u.figures().duLowHalf());
              row.put("cu", u.figures().cuPct());
              row.put("cu_lo", u.cuPct().low());
              row.put("cu_hi", u.cuPct().high());
              row.put("cv_pct", u.figures().cvPct());
              row.put("reading", u.figures().reading());
            });
    for (Scheduling s : a.scheduling()) {
      row.put("sc" + Math.round(100 * s.share()), s.value());
    }
    row.put("rtm", a.runTime().multiplier());
    row.put("rtm_alt", a.runTime().alternative());
    row.put("mm", a.applied().depthMm());
    row.put("mm_h", a.applied().rateMmH());
    row.put("min_run", a.applied().minutes());
    row.put("run_min", a.runTime().minutes());
    row.put("wind_ms", a.applied().windMs());
    return row;
  }

  private static Point point(double x, double y) {
    return FACTORY.createPoint(new Coordinate(x, y));
  }

  /** The shapefile holds 254 bytes; the page has the whole text. */
  private static String cut(String text) {
    return text.length() <= 240 ? text : text.substring(0, 237) + "...";
  }
}
