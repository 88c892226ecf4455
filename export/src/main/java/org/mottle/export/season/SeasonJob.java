package org.mottle.export.season;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.review.Finding;
import org.mottle.engine.review.Severity;
import org.mottle.engine.survey.Green;
import org.mottle.engine.terrain.GreenTerrain;
import org.mottle.export.crs.Crs;
import org.mottle.export.field.FieldWork;
import org.mottle.export.job.MapFigures;
import org.mottle.export.job.MapLayers;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.read.ElevationReader;
import org.mottle.export.read.ElevationSource;
import org.mottle.export.read.Greens;
import org.mottle.export.read.GreensReader;
import org.mottle.export.read.InputOptions;
import org.mottle.export.schema.LayerData;
import org.mottle.export.write.Delivered;
import org.mottle.export.write.Delivery;
import org.mottle.export.write.Document;
import org.mottle.export.write.Format;
import org.mottle.export.write.NamedRaster;

/** The season from files to files. Nothing is written before the end. */
public final class SeasonJob {
  private static final String PAGE = "season.html";

  /** Ground round a green that its water may come from, m; more is wanted than the least. */
  private static final double SURROUNDS_M = 40;

  private final SeasonRequest request;

  public SeasonJob(SeasonRequest request) {
    this.request = request;
  }

  /**
   * @throws InputRefused when the input cannot be used; nothing has been written then
   * @throws IOException when a file cannot be read
   */
  public SeasonReport run(Progress progress) throws IOException {
    Delivery delivery =
        Delivery.of(request.folder(), request.overwrite(), request.formats())
            .withDocumentsAt(Set.of(PAGE))
            .withThreads(request.threads());
    delivery.check();
    InputOptions options = request.site().inputOptions();
    SeasonRequest.Inputs inputs = request.inputs();
    Greens greens =
        GreensReader.read(
            inputs.greens(), options, request.site().workingCrs().map(Crs::parse));
    List<String> told = new ArrayList<>(greens.notes());
    Optional<ElevationSource> elevation =
        inputs.elevation().isEmpty()
            ? Optional.empty()
            : Optional.of(ElevationReader.read(inputs.elevation(), options, greens));
    elevation.ifPresent(e -> told.addAll(e.notes()));
    FieldWork field =
        FieldWork.of(
            greens, inputs.readings(), inputs.files(), options, Optional.empty(), progress);
    told.addAll(field.notes());
    for (Finding finding : field.reviewed().allFindings()) {
      if (finding.severity() == Severity.REJECT) {
        told.add(finding.line());
      }
    }
    SeasonWork work =
        SeasonWork.of(
            field, request.site(), request.changeLimitPct(), request.threads(), progress);
    told.add(work.season().share().words());
    Map<String, GreenTerrain> terrain = terrain(greens, elevation, told, progress);
    List<LayerData> layers =
        new SeasonRows(work, terrain)
            .layers(
                SeasonRows.greens(work.map()).stream().map(MapLayers::green).toList(), List.of());
    List<String> lines = new ArrayList<>();
    work.greens().forEach(g -> g.pairs().forEach(p -> lines.add(SeasonReport.line(p))));
    Map<String, Object> figures = figures(work, layers, told);
    progress.check();
    Delivered delivered =
        delivery.write(
            layers,
            rasters(work, terrain),
            List.of(Document.text(PAGE, SeasonPage.of(work, terrain))),
            greens.working(),
            SeasonRecord.of(request, greens, work.map()),
            figures);
    return new SeasonReport(work.map(), told, lines, figures, delivered);
  }

  private Map<String, GreenTerrain> terrain(
      Greens greens, Optional<ElevationSource> source, List<String> told, Progress progress) {
    Map<String, GreenTerrain> terrain = new LinkedHashMap<>();
    if (source.isEmpty()) {
      told.add(
          "no elevation was given (--elevation): nothing is said of slope, hollows and where water"
              + " runs");
      return terrain;
    }
    for (Green green : greens.greens()) {
      Optional<Raster> heights = source.get().near(green, SURROUNDS_M);
      if (heights.isEmpty()) {
        told.add("green " + green.id() + ": the elevation does not reach it");
      } else {
        GreenTerrain t = GreenTerrain.of(heights.get(), green.outline(), progress);
        terrain.put(green.id(), t);
        if (!t.surrounds().words().isEmpty()) {
          told.add("green " + green.id() + ": " + t.surrounds().words());
        }
      }
    }
    return terrain;
  }

  private List<NamedRaster> rasters(SeasonWork work, Map<String, GreenTerrain> terrain) {
    return request.formats().contains(Format.RASTER)
        ? SeasonRasters.of(work, terrain)
        : List.of();
  }

  private static Map<String, Object> figures(
      SeasonWork work, List<LayerData> layers, List<String> told) {
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("told", told);
    Map<String, Object> share = new LinkedHashMap<>();
    share.put("best", work.season().share().share().best());
    share.put("low", work.season().share().share().low());
    share.put("high", work.season().share().share().high());
    share.put("assumed", work.season().share().assumed());
    figures.put("share_that_persists", share);
    for (LayerData layer : layers) {
      if (!layer.layer().name().equals("contour") && !layer.layer().name().equals("flow")) {
        figures.put(layer.layer().name(), MapFigures.rows(layer));
      }
    }
    return figures;
  }
}
