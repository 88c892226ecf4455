package org.mottle.samples.picture;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Geometry;
import org.mottle.export.read.FeatureTable.Row;

/**
 * What was delivered of one green in one survey.
 *
 * @param title which green and survey, when, with which band and how
 * @param outline m
 * @param zones that tile the outline
 * @param lines of equal moisture
 * @param stations places read, with the mean of their insertions
 * @param medianSd of the cells: half of the green is known better, half less well; % by volume
 */
public record GreenMap(
    Title title,
    Geometry outline,
    List<Zone> zones,
    List<Line> lines,
    List<Station> stations,
    double medianSd) {

  public record Title(
      String green, String survey, String date, String purpose, double lowPct, double highPct) {}

  public record Zone(ZoneStyle style, Geometry geometry, double areaM2, double mean, double sd) {}

  public record Line(double pct, Geometry geometry) {}

  public record Station(double x, double y, double pct) {}

  /**
   * @param delivered folder written by {@code map --cells}
   */
  public static GreenMap read(Path delivered, String green, String survey) {
    return new GreenMap(
        title(delivered, green, survey),
        DeliveredLayer.of(delivered, "green").rows(green, survey).get(0).geometry(),
        zones(DeliveredLayer.of(delivered, "zone"), green, survey),
        lines(DeliveredLayer.of(delivered, "iso"), green, survey),
        stations(DeliveredLayer.of(delivered, "reading"), green, survey),
        medianSd(DeliveredLayer.of(delivered, "cell"), green, survey));
  }

  private static Title title(Path delivered, String green, String survey) {
    DeliveredLayer surveys = DeliveredLayer.of(delivered, "survey");
    Row row = surveys.rows(green, survey).get(0);
    String start = surveys.text(row, "t_start");
    return new Title(
        green,
        survey,
        start.substring(0, Math.min(10, start.length())),
        surveys.text(row, "purpose"),
        surveys.number(row, "lo_pct"),
        surveys.number(row, "hi_pct"));
  }

  private static List<Zone> zones(DeliveredLayer layer, String green, String survey) {
    return layer.rows(green, survey).stream()
        .map(
            row ->
                new Zone(
                    ZoneStyle.ofCode(layer.text(row, "cls")),
                    row.geometry(),
                    layer.number(row, "area_m2"),
                    layer.number(row, "vwc_mean"),
                    layer.number(row, "vwc_sd")))
        .toList();
  }

  private static List<Line> lines(DeliveredLayer layer, String green, String survey) {
    return layer.rows(green, survey).stream()
        .map(row -> new Line(layer.number(row, "level_pct"), row.geometry()))
        .toList();
  }

  /** The insertions at one station make one dot. */
  private static List<Station> stations(DeliveredLayer layer, String green, String survey) {
    Map<String, List<Row>> byStation = new LinkedHashMap<>();
    for (Row row : layer.rows(green, survey)) {
      if (layer.number(row, "used") == 1) {
        byStation.computeIfAbsent(layer.text(row, "st_id"), k -> new ArrayList<>()).add(row);
      }
    }
    return byStation.values().stream()
        .map(
            rows ->
                new Station(
                    rows.stream().mapToDouble(r -> layer.number(r, "x")).average().orElseThrow(),
                    rows.stream().mapToDouble(r -> layer.number(r, "y")).average().orElseThrow(),
                    rows.stream()
                        .mapToDouble(r -> layer.number(r, "vwc_adj"))
                        .average()
                        .orElseThrow()))
        .toList();
  }

  private static double medianSd(DeliveredLayer layer, String green, String survey) {
    double[] sd =
        layer.rows(green, survey).stream().mapToDouble(row -> layer.number(row, "sd")).toArray();
    Arrays.sort(sd);
    return sd[sd.length / 2];
  }
}
