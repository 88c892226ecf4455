package org.mottle.export.season;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygonal;
import org.mottle.engine.survey.Green;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.FeatureFile;
import org.mottle.export.read.FeatureTable;
import org.mottle.export.read.Greens;
import org.mottle.export.read.InputOptions;

/**
 * The ground that was repaired, in the working CRS, by the green it lies on.
 *
 * @param byGreen id of the green to its repaired ground
 * @param notes what was detected, one line each
 */
record RepairAreas(Map<String, Geometry> byGreen, List<String> notes) {

  /**
   * @throws InputRefused with every problem of the file, and when none of it lies on a green
   */
  static RepairAreas read(String file, InputOptions options, Greens greens) {
    FeatureTable table = FeatureFile.read(file, options);
    Crs source =
        table
            .crs()
            .orElseThrow(
                () ->
                    new InputRefused(
                        table.name() + " names no CRS; name it with --crs, like --crs EPSG:32630"));
    CrsTransform toWorking = CrsTransform.between(source, greens.working());
    Map<String, Geometry> byGreen = new LinkedHashMap<>();
    List<String> notes = new ArrayList<>(table.notes());
    Problems problems = new Problems();
    for (FeatureTable.Row row : table.rows()) {
      Geometry shape = row.geometry();
      if (!(shape instanceof Polygonal) || shape.isEmpty() || !shape.isValid()) {
        problems.add("%s: no valid polygon; draw it again or delete the row", table.at(row));
        continue;
      }
      Geometry moved = toWorking.apply(shape);
      boolean on = false;
      for (Green green : greens.greens()) {
        Geometry part = moved.intersection(green.outline());
        if (part.getArea() > 0) {
          byGreen.merge(green.id(), part, Geometry::union);
          on = true;
        }
      }
      if (!on) {
        notes.add(table.at(row) + ": lies on no green and is left out");
      }
    }
    problems.require(
        !byGreen.isEmpty() || !problems.isEmpty(),
        "%s: none of its areas lies on a green of %s; check its CRS",
        table.name(),
        greens.source());
    problems.throwIfAny();
    return new RepairAreas(byGreen, notes);
  }
}
