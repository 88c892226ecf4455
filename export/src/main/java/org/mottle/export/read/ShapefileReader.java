package org.mottle.export.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * A shapefile: shapes from {@code .shp}, attributes from {@code .dbf} in the encoding of {@code
 * .cpg}, the reference system from {@code .prj}, matched to its EPSG code. The siblings may be
 * spelled in capitals.
 */
final class ShapefileReader {
  private final Path path;
  private final String name;
  private final InputOptions options;
  private final Problems problems = new Problems();
  private final List<String> notes = new ArrayList<>();

  ShapefileReader(Path path, InputOptions options) {
    this.path = path;
    this.name = path.getFileName().toString();
    this.options = options;
  }

  FeatureTable read() throws IOException {
    List<Geometry> shapes = new ShpGeometries(name, Files.readAllBytes(path), problems).read();
    Optional<Path> dbf = PrjFile.sibling(path, "dbf");
    DbfTable table =
        dbf.isPresent()
            ? DbfTable.read(dbf.get(), PrjFile.sibling(path, "cpg"), notes)
            : new DbfTable(List.of(), List.of());
    if (dbf.isEmpty()) {
      notes.add("%s comes without a .dbf: its features have no attributes".formatted(name));
    } else if (table.rows().size() != shapes.size()) {
      throw new InputRefused(
          "%s holds %d shapes but its .dbf %d rows; export it again"
              .formatted(name, shapes.size(), table.rows().size()));
    }
    problems.require(!shapes.isEmpty(), "%s holds no features", name);
    problems.throwIfAny();
    List<FeatureTable.Row> rows = new ArrayList<>();
    for (int i = 0; i < shapes.size(); i++) {
      List<Object> values = dbf.isEmpty() ? List.of() : table.rows().get(i);
      if (values != null) {
        rows.add(new FeatureTable.Row(i + 1, shapes.get(i), values));
      }
    }
    FeatureTable.Origin origin = new FeatureTable.Origin(name, "feature", false);
    return new FeatureTable(origin, table.columns(), rows, Optional.of(crs()), notes);
  }

  private Crs crs() throws IOException {
    return PrjFile.crs(path, options, notes)
        .orElseThrow(() -> GivenCrs.missing(name, "comes without a .prj"));
  }
}
