package org.mottle.export.plan;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.mottle.export.crs.Crs;
import org.mottle.export.record.Provenance;
import org.mottle.export.record.SideBySide;
import org.mottle.export.schema.LayerData;
import org.mottle.export.write.Document;
import org.mottle.export.write.FileNames;
import org.mottle.export.write.GeoJsonWriter;

/** The files of plans beside the GeoPackage. */
final class PlanFiles {
  private static final String GPX = "stations.gpx";
  private static final String GEOJSON = "stations.geojson";
  private static final String CSV = "stations.csv";
  private static final String ALL_CARDS = "cards.html";
  private static final String CARDS = "cards";

  /** Files and folders at the top of the delivery. */
  static final Set<String> PLACES = Set.of(GPX, GEOJSON, CSV, ALL_CARDS, CARDS);

  private PlanFiles() {}

  static List<Document> of(List<GreenPlan> plans, Crs working, Provenance provenance, int threads)
      throws IOException {
    Degrees degrees = new Degrees(working);
    LayerData stations =
        PlanRows.stations(plans)
            .stamped(
                Map.of(
                    "run_id",
                    provenance.runId(),
                    "crs_note",
                    working.code() + " " + working.name()));
    List<Callable<String>> drawing = new ArrayList<>();
    plans.forEach(plan -> drawing.add(() -> Card.section(plan, working)));
    List<String> pages = SideBySide.run(drawing, threads);
    List<Document> documents = new ArrayList<>();
    documents.add(new Document(GPX, file -> StationGpx.write(file, plans, degrees)));
    documents.add(
        new Document(
            GEOJSON, file -> new GeoJsonWriter(working, provenance).write(file, stations)));
    documents.add(text(CSV, () -> StationTable.csv(plans, degrees)));
    documents.add(text(ALL_CARDS, () -> Card.page(plans, pages)));
    List<String> names = FileNames.ofIds(plans.stream().map(p -> p.green().id()).toList());
    for (int i = 0; i < plans.size(); i++) {
      List<GreenPlan> plan = List.of(plans.get(i));
      List<String> page = List.of(pages.get(i));
      documents.add(text(CARDS + "/" + names.get(i) + ".html", () -> Card.page(plan, page)));
    }
    return documents;
  }

  private static Document text(String path, Supplier<String> text) {
    return new Document(path, file -> Files.writeString(file, text.get(), StandardCharsets.UTF_8));
  }
}
