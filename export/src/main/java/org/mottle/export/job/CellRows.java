package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygonal;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Surface;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/** The cells of a green whose centre is inside, clipped to it. */
final class CellRows {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private CellRows() {}

  static List<FeatureRow> of(Outcome.Mapped map) {
    List<FeatureRow> rows = new ArrayList<>();
    Geometry outline = map.subject().green().outline();
    PreparedGeometry fast = PreparedGeometryFactory.prepare(outline);
    CellGrid grid = map.surface().cells().grid();
    Optional<Raster> classes = CellClasses.of(map);
    for (int i = 0; i < grid.size(); i++) {
      if (!map.surface().mean().has(i)) {
        continue;
      }
      Geometry square = square(grid, i / grid.columns(), i % grid.columns());
      Geometry clipped = fast.covers(square) ? square : outline.intersection(square);
      if (clipped instanceof Polygonal && !clipped.isEmpty()) {
        rows.add(row(map, classes, i, clipped));
      }
    }
    return rows;
  }

  private static FeatureRow row(
      Outcome.Mapped map, Optional<Raster> classes, int i, Geometry clipped) {
    CellGrid grid = map.surface().cells().grid();
    Map<String, Object> row = MapLayers.named(map.subject());
    row.put("row_no", i / grid.columns());
    row.put("col_no", i % grid.columns());
    row.put("area_m2", clipped.getArea());
    row.put("vwc", map.surface().mean().value(i));
    row.put("sd", map.surface().sd().value(i));
    map.surface().chances().ifPresent(chances -> put(row, chances, i));
    classes.ifPresent(
        c -> {
          row.put("cls_no", (int) c.value(i));
          row.put("cls", CellClasses.code((int) c.value(i)));
        });
    return Layers.CELL.row(clipped, row);
  }

  private static void put(Map<String, Object> row, Surface.Chances chances, int i) {
    double dry = chances.dry().value(i);
    double wet = chances.wet().value(i);
    row.put("p_dry", dry);
    row.put("p_wet", wet);
    row.put("p_band", Math.max(0, 1 - dry - wet));
    chances.low().ifPresent(low -> row.put("p_low", low.value(i)));
  }

  private static Geometry square(CellGrid grid, int row, int column) {
    double west = grid.west() + column * grid.cell();
    double north = grid.north() - row * grid.cell();
    return FACTORY.toGeometry(new Envelope(west, west + grid.cell(), north - grid.cell(), north));
  }
}
