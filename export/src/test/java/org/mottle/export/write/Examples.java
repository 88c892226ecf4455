package org.mottle.export.write;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.export.crs.Crs;
import org.mottle.export.record.InputFile;
import org.mottle.export.record.Provenance;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Field;
import org.mottle.export.schema.GeometryKind;
import org.mottle.export.schema.Layer;
import org.mottle.export.schema.LayerData;
import org.mottle.export.schema.Layers;

/**
 * Rows that every format has to survive: letters, quotes, nothing recorded, holes, several parts,
 * no geometry, no rows. Coordinates are those of the invented course, UTM zone 28N.
 */
public final class Examples {
  public static final Crs CRS = Crs.utm(28, true);
  public static final double EAST = 500_120;
  public static final double NORTH = 5_316_380;
  public static final String LETTERS = "Grün \"Ébène\" d'été, 7 < 8 & 9 \\ ñ 緑";

  /** 600 two-byte letters: 1,200 bytes. */
  public static final String LONG_TEXT = "é".repeat(600);

  public static final Layer ODD =
      new Layer(
          "odd",
          "every type of field",
          GeometryKind.AREA,
          List.of(
              Field.text("txt", 254, "text"),
              Field.whole("n", "", "whole number"),
              Field.real("v", 3, "%", "decimal number"),
              Field.date("day", "date")));

  private Examples() {}

  public static Provenance provenance() {
    Map<String, Object> settings = new LinkedHashMap<>();
    settings.put("cell_m", 0.5);
    settings.put("note", LETTERS);
    settings.put("bands", List.of(Map.of("lo_pct", 16), Map.of("hi_pct", 22)));
    settings.put("none", null);
    return new Provenance(
        "run-0001",
        "0.1.0",
        Instant.parse("2031-05-02T06:07:08.912345Z"),
        List.of(new InputFile("greens é.geojson", 1234, "ab".repeat(32))),
        settings,
        20250514,
        "invented data, no licence needed");
  }

  public static Geometry wkt(String wkt) {
    try {
      Geometry local = new WKTReader().read(wkt);
      local.apply(
          (Coordinate c) -> {
            c.x += EAST;
            c.y += NORTH;
          });
      local.geometryChanged();
      return local;
    } catch (ParseException e) {
      throw new IllegalArgumentException(wkt, e);
    }
  }

  /** 30 x 20 m less a hole of 5 x 5 m: 575 m2. Wound clockwise on purpose. */
  public static Geometry withHole() {
    return wkt("POLYGON((0 0, 0 20, 30 20, 30 0, 0 0), (10 5, 15 5, 15 10, 10 10, 10 5))");
  }

  /** Two parts, the second inside the hole of the first: 96 + 1 m2. */
  public static Geometry partInHole() {
    return wkt(
        "MULTIPOLYGON(((40 0, 50 0, 50 10, 40 10, 40 0), (44 4, 44 6, 46 6, 46 4, 44 4)),"
            + " ((44.5 4.5, 45.5 4.5, 45.5 5.5, 44.5 5.5, 44.5 4.5)))");
  }

  public static LayerData odd() {
    Map<String, Object> full = new LinkedHashMap<>();
    full.put("txt", LETTERS);
    full.put("n", 1234567890123L);
    full.put("v", 17.12345);
    full.put("day", LocalDate.of(2031, 2, 28));
    Map<String, Object> missing = new LinkedHashMap<>();
    missing.put("txt", "");
    missing.put("v", Double.NaN);
    return new LayerData(
        ODD,
        List.of(
            ODD.row(withHole(), full),
            ODD.row(partInHole(), missing),
            ODD.row(null, Map.of("txt", LONG_TEXT, "n", -1, "v", -0.0004)),
            ODD.row(wkt("POLYGON EMPTY"), Map.of("v", Double.POSITIVE_INFINITY, "n", 0))));
  }

  public static List<LayerData> layers() {
    List<LayerData> layers = new ArrayList<>();
    layers.add(greens());
    layers.add(readings());
    layers.add(zones());
    layers.add(new LayerData(Layers.PATCH, List.of()));
    layers.add(isolines());
    layers.add(surveys());
    layers.add(new LayerData(Layers.EVEN, List.of()));
    layers.add(odd());
    return layers;
  }

  private static LayerData greens() {
    return new LayerData(
        Layers.GREEN,
        List.of(
            Layers.GREEN.row(
                withHole(),
                Map.of("green_id", "1/../é", "name", LETTERS, "area_m2", 575.0, "acc_m", 0.05)),
            Layers.GREEN.row(partInHole(), Map.of("green_id", "con", "area_m2", 97.0))));
  }

  private static LayerData readings() {
    List<FeatureRow> rows = new ArrayList<>();
    GeometryFactory points = new GeometryFactory();
    for (int i = 0; i < 7; i++) {
      Map<String, Object> values = new LinkedHashMap<>();
      values.put("green_id", "1/../é");
      values.put("surv_id", "S1");
      values.put("st_id", "ü" + i);
      values.put("seq", i + 1);
      values.put("t_local", i == 3 ? "" : "2031-05-02T07:3" + i + ":00+01:00");
      values.put("vwc_raw", 15.05 + 0.1 * i);
      values.put("vwc_adj", i == 4 ? Double.NaN : 15.0 + i / 3.0);
      values.put("adj_note", i == 5 ? LONG_TEXT : "");
      values.put("used", i == 4 ? 0 : 1);
      Coordinate place = new Coordinate(EAST + 1 + 4 * i, NORTH + 2 + i);
      rows.add(Layers.READING.row(i == 6 ? null : points.createPoint(place), values));
    }
    return new LayerData(Layers.READING, rows);
  }

  private static LayerData zones() {
    Geometry west = wkt("POLYGON((0 0, 10 0, 10 5, 10 10, 10 20, 0 20, 0 0))");
    Geometry east = wkt("POLYGON((10 0, 30 0, 30 20, 10 20, 10 10, 15 10, 15 5, 10 5, 10 0))");
    return new LayerData(
        Layers.ZONE,
        List.of(
            Layers.ZONE.row(west, zone("dry", 1, 200)),
            Layers.ZONE.row(east, zone("in band", 2, 375))));
  }

  private static Map<String, Object> zone(String cls, int number, double area) {
    return Map.of(
        "green_id",
        "1/../é",
        "surv_id",
        "S1",
        "cls",
        cls,
        "cls_no",
        number,
        "area_m2",
        area,
        "lo_pct",
        16,
        "hi_pct",
        22.5);
  }

  private static LayerData isolines() {
    return new LayerData(
        Layers.ISO,
        List.of(
            Layers.ISO.row(wkt("LINESTRING(0 0, 3 4, 3 10)"), Map.of("level_pct", 16.0)),
            Layers.ISO.row(
                wkt("MULTILINESTRING((0 0, 0 1), (5 5, 5 7))"), Map.of("level_pct", 17.0))));
  }

  private static LayerData surveys() {
    return new LayerData(
        Layers.SURVEY,
        List.of(
            Layers.SURVEY.row(Map.of("green_id", "1/../é", "n_read", 7, "method", "kriging")),
            Layers.SURVEY.row(Map.of("green_id", "con", "reason", "9 readings: indicative"))));
  }

  /** Six different values and no symmetry: a turned, mirrored or shifted raster shows. */
  static List<Double> cells(RasterKind kind) {
    return kind == RasterKind.CLS
        ? List.of(1.0, 2.0, 3.0, Double.NaN, 0.0, 254.0)
        : List.of(11.5, 12.25, 13.125, Double.NaN, 15.0625, -16.75);
  }

  /** Two rows of three cells of 0.75 m. */
  public static NamedRaster raster(String green, String survey, RasterKind kind) {
    double[] values = cells(kind).stream().mapToDouble(Double::doubleValue).toArray();
    CellGrid grid = new CellGrid(EAST, NORTH + 1.5, 0.75, 3, 2);
    return new NamedRaster(green, survey, kind, new Raster(grid, values));
  }

  public static List<NamedRaster> rasters() {
    return List.of(
        raster("1/../é", "S1", RasterKind.VWC),
        raster("1/../é", "S1", RasterKind.SD),
        raster("1/../é", "S1", RasterKind.CLS),
        raster("con", "", RasterKind.VWC),
        raster("CON", "", RasterKind.VWC));
  }

  public static Delivered deliver(Path out) {
    return Delivery.of(out, false, EnumSet.allOf(Format.class))
        .write(layers(), rasters(), CRS, provenance(), Map.of("greens", 2));
  }
}
