package org.mottle.export.plan;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.design.PlanSettings;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.precision.Prediction;
import org.mottle.engine.precision.SampleSize;
import org.mottle.engine.precision.SpotDetection;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.export.model.ModelFile;
import org.mottle.export.problem.InputRefused;

/** What plans could tell: of the mean, of the map, of spots. */
final class Prospects {
  /** Standard deviation of single readings on a green where none is said, % by volume. */
  private static final double USUAL_SD_PCT = 2;

  private static final double CONFIDENCE = 0.95;
  private static final double[] DIAMETERS_M = {2, 3, 5, 8};

  /** Fewer stations make no map. */
  private static final int LEAST_FOR_MAP = 8;

  private final PlanRequest request;
  private final NestedModel model;
  private final boolean given;

  private Prospects(PlanRequest request, NestedModel model, boolean given) {
    this.request = request;
    this.model = model;
    this.given = given;
  }

  /**
   * @throws InputRefused when the model has no sill, of which no prospect can be made
   */
  static Prospects of(PlanRequest request) throws IOException {
    if (request.inputs().model().isPresent()) {
      NestedModel given = ModelFile.read(request.inputs().model().get());
      if (!given.bounded() || !(given.sill() > given.nugget())) {
        throw new InputRefused(
            request.inputs().model().get()
                + ": a model with a structure that levels off is needed to say what a map would be"
                + " worth");
      }
      return new Prospects(request, given, true);
    }
    double sd = request.aim().map(PlanRequest.MeanAim::sdPct).orElse(USUAL_SD_PCT);
    return new Prospects(request, Prediction.borrowed(sd), false);
  }

  /** What all that is said of the plans stands on, in one line. */
  String basis() {
    if (given) {
      return String.format(
          Locale.ROOT,
          "what the plans could tell: with the variogram of %s, SD of single readings %.1f %%",
          request.inputs().model().get().getFileName(),
          Math.sqrt(model.sill()));
    }
    return String.format(
        Locale.ROOT,
        "what the plans could tell: with the variogram that is assumed of putting greens (range"
            + " 12 m, nugget 0.35 of the sill) and an SD of single readings of %.1f %%, %s",
        Math.sqrt(model.sill()),
        request.aim().isPresent() ? "as said" : "assumed; --model or --sd replaces it");
  }

  /** The settings, with as many stations as the aim for the mean asks for. */
  PlanSettings settings(List<String> told) {
    if (request.aim().isEmpty()) {
      return request.settings();
    }
    PlanRequest.MeanAim aim = request.aim().get();
    int n = SampleSize.of(aim.sdPct(), aim.marginPct(), CONFIDENCE);
    told.add(
        String.format(
            Locale.ROOT,
            "%d stations tell a green's mean to %.1f %% either side with an SD of %.1f %% (95 %%,"
                + " stations drawn by chance); close pairs come on top",
            n,
            aim.marginPct(),
            aim.sdPct()));
    return request.settings().withStations(n);
  }

  Prospect of(Green green, StationPlan plan) {
    List<PlannedStation> read =
        plan.stations().stream().filter(s -> s.role() != Reading.Role.CONTROL).toList();
    boolean chosen = read.stream().allMatch(s -> s.role() == Reading.Role.POINT_OF_INTEREST);
    boolean infill = read.stream().allMatch(s -> s.role() == Reading.Role.INFILL);
    if (chosen || infill) {
      return new Prospect(
          Double.NaN,
          "",
          Double.NaN,
          chosen
              ? "stations chosen for what is seen there say nothing of the mean"
              : "to be read with the earlier stations",
          List.of());
    }
    int n = (int) read.stream().filter(s -> s.role() == Reading.Role.PLAN).count();
    double sd = Math.sqrt(model.sill());
    double half = n < 2 ? Double.NaN : SampleSize.halfWidth(sd, n, CONFIDENCE);
    String meanBy = n + " readings as if drawn by chance, pairs not counted";
    if (n < LEAST_FOR_MAP) {
      return new Prospect(
          Double.NaN,
          "",
          half,
          meanBy,
          List.of(n + " stations: a summary, not a map; " + LEAST_FOR_MAP + " or more make one"));
    }
    Prediction prediction = Prediction.of(green, plan.stations(), model);
    return new Prospect(
        prediction.meanSd(), given ? "given" : "borrowed", half, meanBy, found(prediction, green));
  }

  private List<String> found(Prediction prediction, Green green) {
    if (prediction.structuredSd() == 0) {
      return List.of("by this variogram there is no pattern to map");
    }
    double contrast = SpotDetection.usualContrastPct(prediction);
    long seed = request.settings().seed() ^ green.id().hashCode();
    List<SpotDetection> spots = SpotDetection.of(prediction, DIAMETERS_M, contrast, seed);
    List<String> lines = new ArrayList<>(spots.stream().map(SpotDetection::words).toList());
    lines.add(
        String.format(
            Locale.ROOT, "called on %.0f of 100 sound greens", 100 * spots.get(0).wrongly()));
    return lines;
  }
}
