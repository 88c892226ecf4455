package org.mottle.export.season;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mottle.engine.drainage.AssociationOutcome;
import org.mottle.engine.drainage.DrainageFinding;
import org.mottle.engine.drainage.TerrainAssociation;
import org.mottle.engine.drainage.WetPlaces;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.mapping.GreenReadings;
import org.mottle.engine.mapping.MapVariogram;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.review.Finding;
import org.mottle.engine.review.Severity;
import org.mottle.engine.season.GroundTrend;
import org.mottle.engine.season.Persistence;
import org.mottle.engine.season.SurveyedMap;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.WaterHistory;
import org.mottle.engine.terrain.GreenTerrain;
import org.mottle.engine.terrain.SurveyedPoints;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.export.crs.Crs;
import org.mottle.export.field.FieldWork;
import org.mottle.export.job.MapFigures;
import org.mottle.export.job.MapLayers;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.Elevation;
import org.mottle.export.read.ElevationOptions;
import org.mottle.export.read.ElevationPoints;
import org.mottle.export.read.ElevationReader;
import org.mottle.export.read.ElevationSource;
import org.mottle.export.read.Greens;
import org.mottle.export.read.GreensReader;
import org.mottle.export.read.Heads;
import org.mottle.export.read.HeadsReader;
import org.mottle.export.read.InputOptions;
import org.mottle.export.schema.LayerData;
import org.mottle.export.season.SeasonWork.GreenSeason;
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

  /** Cell of surveyed points, and the longest side of a triangle between them that is filled, m. */
  private static final double POINT_CELL_M = 0.5;

  private static final double WIDEST_M = 10;
  private static final int ASSOCIATION_REALISATIONS = 999;

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
        GreensReader.read(inputs.greens(), options, request.site().workingCrs().map(Crs::parse));
    List<String> told = new ArrayList<>(greens.notes());
    Optional<ElevationSource> elevation =
        inputs.elevation().isEmpty()
            ? Optional.empty()
            : Optional.of(
                ElevationReader.read(
                    inputs.elevation(),
                    options,
                    ElevationOptions.DEFAULT
                        .withMargin(SURROUNDS_M)
                        .withUnit(inputs.elevationUnit()),
                    greens));
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
        SeasonWork.of(field, request.site(), request.changeLimitPct(), request.threads(), progress);
    told.add(work.season().share().words());
    Map<String, GreenTerrain> terrain = terrain(greens, elevation, told, progress);
    Optional<GroundTrend> trend =
        terrain.isEmpty()
            ? Optional.empty()
            : Optional.of(
                GroundTrend.of(work.map().maps(), heights(terrain), work.map().settings()));
    trend.ifPresent(t -> told.add(t.words()));
    Optional<Heads> heads = inputs.heads().map(file -> HeadsReader.read(file, options, greens));
    heads.ifPresent(h -> told.addAll(h.notes()));
    List<DrainageFinding> findings =
        drainage(work, terrain, heads, request.site().mapping().uncertainty().seed());
    List<Repaired> repaired = repaired(greens, work, told, progress);
    List<LayerData> layers =
        new SeasonRows(work, terrain, repaired)
            .layers(
                SeasonRows.greens(work.map()).stream().map(MapLayers::green).toList(), findings);
    List<String> lines = new ArrayList<>();
    work.greens().forEach(g -> g.pairs().forEach(p -> lines.add(SeasonReport.line(p))));
    findings.forEach(f -> lines.add(SeasonReport.line(f)));
    repaired.forEach(r -> lines.add(r.line()));
    Map<String, Object> figures = figures(work, trend, layers, told);
    progress.check();
    Delivered delivered =
        delivery.write(
            layers,
            rasters(work, terrain),
            List.of(Document.text(PAGE, SeasonPage.of(work, terrain, trend, findings, repaired))),
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
      Optional<Raster> heights = heights(source.get(), green, told);
      if (heights.isPresent()) {
        GreenTerrain t = GreenTerrain.of(heights.get(), green.outline(), progress);
        terrain.put(green.id(), t);
        if (!t.surrounds().words().isEmpty()) {
          told.add("green " + green.id() + ": " + t.surrounds().words());
        }
      }
    }
    return terrain;
  }

  /**
   * Before and after on each green that was repaired; the rest of the green is the control area.
   */
  private List<Repaired> repaired(
      Greens greens, SeasonWork work, List<String> told, Progress progress) {
    List<Repaired> repaired = new ArrayList<>();
    if (request.repair().isEmpty()) {
      return repaired;
    }
    SeasonRequest.Repair asked = request.repair().get();
    RepairAreas areas = RepairAreas.read(asked.areas(), request.site().inputOptions(), greens);
    told.addAll(areas.notes());
    Problems problems = new Problems();
    List<String> known =
        work.map().outcomes().stream().map(o -> o.subject().surveyId()).distinct().toList();
    for (String survey : List.of(asked.before(), asked.after())) {
      problems.require(
          known.contains(survey),
          "there is no survey '%s'; there are %s",
          survey,
          Problems.listed(known));
    }
    problems.throwIfAny();
    areas
        .byGreen()
        .forEach(
            (green, area) ->
                repaired.add(
                    Repaired.of(
                        work.season(),
                        green,
                        area,
                        asked,
                        request.changeLimitPct(),
                        request.threads(),
                        progress)));
    return repaired;
  }

  private static Map<String, Raster> heights(Map<String, GreenTerrain> terrain) {
    Map<String, Raster> heights = new LinkedHashMap<>();
    terrain.forEach((green, t) -> heights.put(green, t.model().raster()));
    return heights;
  }

  /** Cells, or points laid out as cells; what stands in the way is told. */
  private static Optional<Raster> heights(ElevationSource source, Green green, List<String> told) {
    Optional<Elevation> cells = source.near(green);
    if (cells.isPresent()) {
      cells.get().notes().forEach(n -> told.add("green " + green.id() + ": " + n));
      return Optional.of(cells.get().raster());
    }
    Optional<ElevationPoints> points = source.pointsNear(green);
    if (points.isEmpty()) {
      told.add("green " + green.id() + ": the elevation does not reach it");
      return Optional.empty();
    }
    SurveyedPoints.Outcome outcome =
        SurveyedPoints.grid(
            points.get().x(), points.get().y(), points.get().z(), POINT_CELL_M, WIDEST_M);
    if (outcome instanceof SurveyedPoints.NotGridded not) {
      told.add("green " + green.id() + ": " + not.reason() + "; " + not.remedy());
      return Optional.empty();
    }
    return Optional.of(((SurveyedPoints.Gridded) outcome).model().raster());
  }

  /** What the green is said of the places that stay wet. */
  private static List<DrainageFinding> drainage(
      SeasonWork work, Map<String, GreenTerrain> terrain, Optional<Heads> heads, long seed) {
    List<DrainageFinding> findings = new ArrayList<>();
    for (GreenSeason g : work.greens()) {
      if (g.drainage() instanceof Persistence rain) {
        Optional<GreenTerrain> t = Optional.ofNullable(terrain.get(g.green().id()));
        findings.addAll(
            WetPlaces.of(
                new WetPlaces.Seen(
                    g.green(),
                    g.visits(),
                    g.pairs().stream().flatMap(p -> p.dried().stream()).toList(),
                    t,
                    t.map(x -> association(work, g, x, seed)).orElse(Double.NaN),
                    heads.map(h -> h.of(g.green().id())).orElse(List.of())),
                rain));
      }
    }
    return findings;
  }

  /** Whether the green is wetter where water gathers, at the stations of its first rain survey. */
  private static double association(
      SeasonWork work, GreenSeason g, GreenTerrain terrain, long seed) {
    Optional<SurveyedMap> rain =
        g.maps().stream().filter(m -> m.history() == WaterHistory.AFTER_RAIN).findFirst();
    if (rain.isEmpty()) {
      return Double.NaN;
    }
    GreenReadings readings = GreenReadings.of(rain.get().map(), work.map().settings());
    NestedModel model =
        rain.get()
            .map()
            .basis()
            .variogram()
            .flatMap(MapVariogram::pooled)
            .orElseThrow()
            .model(rain.get().surveyId());
    double[] variance =
        Arrays.stream(readings.insertions()).mapToDouble(k -> model.nugget() / k).toArray();
    AssociationOutcome outcome =
        TerrainAssociation.of(
            readings.observations().withMeasurementVariance(variance),
            terrain.wetness(),
            model.withNugget(0),
            ASSOCIATION_REALISATIONS,
            seed,
            Progress.NONE);
    return outcome instanceof TerrainAssociation tested ? tested.pWetterWhereHigher() : Double.NaN;
  }

  private List<NamedRaster> rasters(SeasonWork work, Map<String, GreenTerrain> terrain) {
    return request.formats().contains(Format.RASTER) ? SeasonRasters.of(work, terrain) : List.of();
  }

  private static Map<String, Object> figures(
      SeasonWork work, Optional<GroundTrend> trend, List<LayerData> layers, List<String> told) {
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("told", told);
    Map<String, Object> share = new LinkedHashMap<>();
    share.put("best", work.season().share().share().best());
    share.put("low", work.season().share().share().low());
    share.put("high", work.season().share().share().high());
    share.put("assumed", work.season().share().assumed());
    figures.put("share_that_persists", share);
    trend.ifPresent(
        t -> {
          Map<String, Object> height = new LinkedHashMap<>();
          height.put("pct_per_m", t.coefficient());
          height.put("standard_error", t.standardError());
          height.put("greens", t.greens());
          height.put("aicc_gain", t.aiccGain());
          height.put("asked", t.asked());
          figures.put("trend_on_height", height);
        });
    for (LayerData layer : layers) {
      if (!layer.layer().name().equals("contour") && !layer.layer().name().equals("flow")) {
        figures.put(layer.layer().name(), MapFigures.rows(layer));
      }
    }
    return figures;
  }
}
