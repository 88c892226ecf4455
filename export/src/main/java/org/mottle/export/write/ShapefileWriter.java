package org.mottle.export.write;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.mottle.export.crs.Crs;
import org.mottle.export.record.Provenance;
import org.mottle.export.schema.LayerData;

/**
 * One layer to a shapefile: {@code .shp} and {@code .shx} (ESRI Shapefile Technical Description,
 * 1998), {@code .dbf}, {@code .prj} and {@code .cpg} (UTF-8), in the working CRS. A table has no
 * {@code .shp}, {@code .shx} and {@code .prj}.
 *
 * <p>The format has no missing numbers: {@value DbfWriter#MISSING} stands for them. A missing text
 * is blank, a missing date too. Text beyond its field's width is cut between letters and the cut is
 * told.
 *
 * <p>Stateless but for what it is given.
 */
public final class ShapefileWriter {
  private final Crs crs;
  private final Provenance provenance;

  public ShapefileWriter(Crs crs, Provenance provenance) {
    this.crs = crs;
    this.provenance = provenance;
  }

  /**
   * Writes or replaces the files of a layer in a folder.
   *
   * @return what could not be kept as it was, one line each
   */
  public List<String> write(Path folder, LayerData data) throws IOException {
    String name = data.layer().name();
    if (!data.layer().isTable()) {
      ShpFile.write(folder.resolve(name + ".shp"), folder.resolve(name + ".shx"), data);
      text(folder.resolve(name + ".prj"), crs.prj());
    }
    text(folder.resolve(name + ".cpg"), "UTF-8");
    DbfWriter dbf = new DbfWriter(data, provenance.utc());
    dbf.write(folder.resolve(name + ".dbf"));
    List<String> notes = new ArrayList<>();
    for (String cut : dbf.cuts()) {
      notes.add("shapefile/" + name + ".dbf: " + cut);
    }
    return notes;
  }

  private static void text(Path file, String text) throws IOException {
    Files.writeString(file, text, StandardCharsets.UTF_8);
  }
}
