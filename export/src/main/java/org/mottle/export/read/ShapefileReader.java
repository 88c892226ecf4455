package org.mottle.export.read;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
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
    Optional<Path> dbf = sibling("dbf");
    DbfTable table =
        dbf.isPresent()
            ? DbfTable.read(dbf.get(), sibling("cpg"), notes)
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
    Optional<Path> prj = sibling("prj");
    Optional<Crs> own = Optional.empty();
    if (prj.isPresent()) {
      String text = Files.readString(prj.get(), StandardCharsets.ISO_8859_1).strip();
      String file = prj.get().getFileName().toString();
      if (options.crs().isPresent()) {
        own = matched(file, text);
      } else if (!text.isEmpty()) {
        own = Optional.of(GivenCrs.described(file, text));
      }
    }
    return GivenCrs.choose(name, own, options, notes)
        .orElseThrow(() -> GivenCrs.missing(name, "comes without a .prj"));
  }

  /** A description that cannot be matched gives way to the system the user gave. */
  private Optional<Crs> matched(String file, String text) {
    try {
      return Optional.of(Crs.parse(text));
    } catch (InputRefused e) {
      notes.add(
          "%s is not understood (%s); --crs is used".formatted(file, String.join(" ", e.lines())));
      return Optional.empty();
    }
  }

  private Optional<Path> sibling(String ending) throws IOException {
    String stem = name.substring(0, name.length() - 3);
    Path folder = path.toAbsolutePath().getParent();
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(f -> f.getFileName().toString().equalsIgnoreCase(stem + ending))
          .filter(f -> f.getFileName().toString().startsWith(stem))
          .findFirst();
    }
  }
}
