package org.mottle.export.plan;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
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
 * Areas and points that somebody wants read, in the working CRS. Those that meet no green are told;
 * where none meets any, the file is refused.
 *
 * @param shapes that meet a green
 * @param greens that meet a shape
 * @param notes what was left out, one line each
 */
record InterestAreas(List<Geometry> shapes, List<Green> greens, List<String> notes) {

  static InterestAreas read(String file, InputOptions options, Greens greens) {
    FeatureTable table = FeatureFile.read(file, options);
    Crs source =
        table
            .crs()
            .orElseThrow(
                () ->
                    new InputRefused(
                        table.name() + " names no CRS; name it with --crs, like --crs EPSG:32630"));
    CrsTransform toWorking = CrsTransform.between(source, greens.working());
    List<String> notes = new ArrayList<>(table.notes());
    List<Geometry> kept = new ArrayList<>();
    List<Integer> missed = new ArrayList<>();
    Problems problems = new Problems();
    for (FeatureTable.Row row : table.rows()) {
      Geometry shape = row.geometry();
      if (shape == null || shape.isEmpty() || !shape.isValid()) {
        problems.add(
            "%s: no area or point that can be used; draw it again or delete the row",
            table.at(row));
        continue;
      }
      Geometry moved = toWorking.apply(shape);
      boolean meets = greens.greens().stream().anyMatch(g -> g.outline().intersects(moved));
      if (meets) {
        kept.add(moved);
      } else {
        missed.add(row.number());
      }
    }
    problems.require(
        !kept.isEmpty() || !problems.isEmpty(),
        "%s: none of its %d areas meets a green of %s; check its CRS, or take the file of this course",
        table.name(),
        table.rows().size(),
        greens.source());
    problems.throwIfAny();
    if (!missed.isEmpty()) {
      notes.add(
          "%s: %s %s meets no green and is left out"
              .formatted(table.name(), table.unit(missed.size()), Problems.listed(missed)));
    }
    List<Green> met =
        greens.greens().stream()
            .filter(g -> kept.stream().anyMatch(s -> g.outline().intersects(s)))
            .toList();
    if (met.size() < greens.greens().size()) {
      notes.add(
          "%s: nothing in green %s, which gets no stations"
              .formatted(
                  table.name(),
                  Problems.listed(
                      greens.greens().stream()
                          .filter(g -> !met.contains(g))
                          .map(Green::id)
                          .toList())));
    }
    return new InterestAreas(kept, met, notes);
  }
}
