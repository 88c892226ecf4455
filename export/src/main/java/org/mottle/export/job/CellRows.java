package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygonal;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.patch.ZoneClass;
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
    for (int i = 0; i < grid.size(); i++) {
      if (!map.surface().mean().has(i)) {
        continue;
      }
      Geometry square = square(grid, i / grid.columns(), i % grid.columns());
      Geometry clipped = fast.covers(square) ? square : outline.intersection(square);
      if (clipped instanceof Polygonal && !clipped.isEmpty()) {
        rows.add(row(map, i, clipped));
      }
    }
    return rows;
  }

  private static FeatureRow row(Outcome.Mapped map, int i, Geometry clipped) {
    CellGrid grid = map.surface().cells().grid();
    Map<String, Object> row = MapLayers.named(map.subject());
    row.put("row_no", i / grid.columns());
    row.put("col_no", i % grid.columns());
    row.put("area_m2", clipped.getArea());
    double mean = map.surface().mean().value(i);
    row.put("vwc", mean);
    row.put("sd", map.surface().sd().value(i));
    map.subject()
        .band()
        .ifPresent(
            band -> {
              ZoneClass cls = ZoneClass.of(band, mean);
              row.put("cls_no", cls.number());
              row.put("cls", cls.code());
            });
    return Layers.CELL.row(clipped, row);
  }

  private static Geometry square(CellGrid grid, int row, int column) {
    double west = grid.west() + column * grid.cell();
    double north = grid.north() - row * grid.cell();
    return FACTORY.toGeometry(new Envelope(west, west + grid.cell(), north - grid.cell(), north));
  }
}
