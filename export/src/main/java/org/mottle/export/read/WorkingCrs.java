package org.mottle.export.read;

import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.problem.InputRefused;

/** The CRS to work in where no greens say it. */
final class WorkingCrs {
  private WorkingCrs() {}

  /** The table's own, if it will do; else the UTM zone of its first place; empty without places. */
  static Optional<Crs> of(FeatureTable table) {
    Optional<Geometry> first =
        table.rows().stream()
            .map(FeatureTable.Row::geometry)
            .filter(g -> g != null && !g.isEmpty())
            .findFirst();
    if (first.isEmpty()) {
      return Optional.empty();
    }
    Crs own = table.crs().orElseThrow(() -> GivenCrs.missing(table.name(), "names no CRS"));
    if (own.isProjected()) {
      try {
        return Optional.of(own.requireWorking());
      } catch (InputRefused e) {
        // measured in the UTM zone instead
      }
    }
    Coordinate degrees = CrsTransform.between(own, Crs.wgs84()).apply(first.get().getCoordinate());
    return Optional.of(Crs.utmFor(degrees.x, degrees.y));
  }
}
