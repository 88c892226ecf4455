package org.mottle.engine.mapping;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.Contours;
import org.mottle.engine.fit.NotFitted;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.inversedistance.InverseDistance;
import org.mottle.engine.kriging.CellStatus;
import org.mottle.engine.kriging.Estimate;
import org.mottle.engine.kriging.Estimates;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.Predictor;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.patch.Ground;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.Patches;
import org.mottle.engine.patch.RegionMean;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.Zones;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.validation.LeaveOneOut;
import org.mottle.engine.variogram.NestedModel;

/**
 * Maps one green. What is mapped is the local mean, some decimetres across: the variogram's nugget,
 * be it the probe's or the soil's within a hand's breadth, is filtered by giving it to the readings
 * as variance of their measurement (a station read k times has 1/k of it).
 */
final class GreenMapper {
  private static final double POWER = 2;

  /** More cells than this on one green, some 2 GB, are a slip of the keyboard, not a map. */
  private static final double MOST_CELLS = 1e7;

  /** Cells wider than this share of the root of the area do not draw a green. */
  private static final double COARSEST = 0.2;

  private final MappingSettings settings;
  private final int threads;
  private final Progress progress;

  GreenMapper(MappingSettings settings, int threads, Progress progress) {
    this.settings = settings;
    this.threads = threads;
    this.progress = progress;
  }

  Outcome map(Prepared green, SurveyVariogram variogram) {
    List<String> remarks = remarks(green);
    Optional<Refusal> obstacle = green.obstacle().or(() -> tooManyCells(green));
    if (obstacle.isPresent()) {
      return noMap(green, remarks, obstacle.get());
    }
    if (settings.method() == Method.INVERSE_DISTANCE) {
      remarks.add("inverse distance by choice: no standard deviation");
      return inverseDistance(green, remarks);
    }
    if (variogram.model().isEmpty()) {
      String reason = ((NotFitted) variogram.outcome()).reason();
      if (settings.method() == Method.KRIGING) {
        return noMap(green, remarks, new Refusal("no variogram: " + reason, "read more places"));
      }
      remarks.add("inverse distance, indicative, without standard deviation: " + reason);
      return inverseDistance(green, remarks);
    }
    if (!variogram.structured()) {
      return noMap(green, remarks, noStructure(variogram));
    }
    return kriging(green, variogram, remarks);
  }

  private List<String> remarks(Prepared green) {
    List<String> remarks = new ArrayList<>();
    int n = green.observations().size();
    if (n >= settings.needed().map() && n < settings.needed().full()) {
      remarks.add(n + " readings: indicative");
    }
    int controls = green.stations().controls().size();
    if (controls > 0) {
      remarks.add(counted(controls, "reading") + " of control stations not mapped");
    }
    if (green.merged() > 0) {
      boolean averaged = settings.duplicates() != DuplicatePolicy.KEEP_FIRST;
      remarks.add(
          counted(green.merged(), "station")
              + " at the place of another "
              + (averaged ? "averaged with it" : "left out"));
    }
    double area = green.subject().green().areaM2();
    double most = COARSEST * Math.sqrt(area);
    if (settings.cellM() > most) {
      remarks.add(
          String.format(
              Locale.ROOT,
              "cells of %s m are coarse for %.0f m²: %.2g m or less shows the green's shape",
              settings.cellM(),
              area,
              most));
    }
    return remarks;
  }

  private static String counted(long count, String noun) {
    String ending = count == 1 ? "" : noun.endsWith("ch") ? "es" : "s";
    return count + " " + noun + ending;
  }

  private Optional<Refusal> tooManyCells(Prepared green) {
    double box = green.subject().green().outline().getEnvelopeInternal().getArea();
    double cells = box / (settings.cellM() * settings.cellM());
    return cells > MOST_CELLS
        ? Optional.of(
            new Refusal(
                String.format(
                    Locale.ROOT,
                    "%.3g cells of %s m are more than a map can hold",
                    cells,
                    settings.cellM()),
                "a cell of " + roundedUp(Math.sqrt(box / MOST_CELLS)) + " m or more can be held"))
        : Optional.empty();
  }

  /** To one significant digit. */
  private static String roundedUp(double metres) {
    return new BigDecimal(metres).round(new MathContext(1, RoundingMode.UP)).toPlainString();
  }

  private static Refusal noStructure(SurveyVariogram variogram) {
    double share = variogram.model().map(NestedModel::nuggetShare).orElse(1.0);
    return new Refusal(
        String.format(
            Locale.ROOT,
            "no spatial structure found: the nugget is %.0f %% of the sill in %s",
            100 * share,
            variogram.source()),
        "the green's mean stands; read more places, with close pairs, for a map");
  }

  private Outcome kriging(Prepared green, SurveyVariogram variogram, List<String> remarks) {
    NestedModel model = variogram.model().orElseThrow();
    Observations observations = filtered(green, model.nugget());
    Predictor predictor = Kriging.ordinary(model.withNugget(0)).fit(observations);
    GreenCells cells = cells(green);
    Estimates estimates =
        predictor.estimate(Targets.of(cells.neededX(), cells.neededY()), threads, progress);
    int failed = estimates.size() - estimates.count(CellStatus.ESTIMATED);
    if (failed > 0) {
      return noMap(
          green,
          remarks,
          new Refusal(
              String.format(
                  Locale.ROOT,
                  "the kriging system is ill-conditioned (condition estimate %.1e)",
                  estimates.conditionEstimate()),
              "look for readings at nearly the same place, or use --method inverse-distance"));
    }
    double[] sd = estimates.variances();
    for (int i = 0; i < sd.length; i++) {
      sd[i] = Math.sqrt(sd[i]);
    }
    Surface surface = Surface.of(cells, estimates.values(), sd, estimates.conditionEstimate());
    Outcome.Basis basis =
        new Outcome.Basis(
            Method.KRIGING,
            Optional.of(variogram),
            Optional.of(
                LeaveOneOut.of(Kriging.ordinary(model), green.observations(), 1, progress)));
    return mapped(green, remarks, basis, surface, (x, y, w) -> meanAndSd(predictor, x, y, w));
  }

  private static Observations filtered(Prepared green, double nugget) {
    double[] variance = new double[green.observations().size()];
    for (int i = 0; i < variance.length; i++) {
      variance[i] = nugget / green.insertions()[i];
    }
    return green.observations().withMeasurementVariance(variance);
  }

  private Outcome inverseDistance(Prepared green, List<String> remarks) {
    GreenCells cells = cells(green);
    double[] values =
        InverseDistance.ofPower(POWER)
            .estimate(
                green.observations(),
                Targets.of(cells.neededX(), cells.neededY()),
                threads,
                progress)
            .values();
    double[] none = new double[values.length];
    Arrays.fill(none, Double.NaN);
    Surface surface = Surface.of(cells, values, none, 1);
    Outcome.Basis basis =
        new Outcome.Basis(Method.INVERSE_DISTANCE, Optional.empty(), Optional.empty());
    return mapped(green, remarks, basis, surface, RegionMean.UNKNOWN);
  }

  private static RegionMean.MeanAndSd meanAndSd(
      Predictor predictor, double[] x, double[] y, double[] weight) {
    Estimate mean = predictor.mean(x, y, weight);
    return new RegionMean.MeanAndSd(mean.value(), mean.standardDeviation());
  }

  /** Cuts the surface into zones, patches and lines. */
  private Outcome mapped(
      Prepared green,
      List<String> remarks,
      Outcome.Basis basis,
      Surface surface,
      RegionMean regionMean) {
    Geometry outline = green.subject().green().outline();
    Raster field = surface.interpolable();
    Contours contours = Contours.of(outline, field);
    List<Zone> zones = new ArrayList<>();
    List<Patch> patches = new ArrayList<>();
    Optional<TargetBand> band = green.subject().band();
    double[] limits =
        band.map(b -> new double[] {b.lowPct(), b.highPct()}).orElseGet(() -> new double[0]);
    if (band.isPresent()) {
      zones.addAll(Zones.of(contours, field, band.get(), regionMean));
      patches.addAll(Patches.of(zones, field, places(green), regionMean));
      long unread = patches.stream().filter(p -> p.readings() == 0).count();
      if (unread > 0) {
        remarks.add(counted(unread, "patch") + (unread == 1 ? " holds" : " hold") + " no reading");
      }
    }
    Ground whole = Ground.of(outline, field);
    RegionMean.MeanAndSd mean =
        new RegionMean.MeanAndSd(
            whole.mean(contours.surface()), whole.sd(regionMean, field.grid().cell()));
    return new Outcome.Mapped(
        green.subject(),
        green.stations(),
        summary(green),
        remarks,
        basis,
        surface,
        new Outcome.Parts(zones, patches, contours.isoLines(settings.isoStepPct(), limits), mean));
  }

  private static List<Coordinate> places(Prepared green) {
    return green.stations().stations().stream().map(s -> new Coordinate(s.x(), s.y())).toList();
  }

  private GreenCells cells(Prepared green) {
    var outline = green.subject().green().outline();
    return GreenCells.of(
        outline, CellGrid.covering(outline.getEnvelopeInternal(), settings.cellM()));
  }

  private static Outcome noMap(Prepared green, List<String> remarks, Refusal why) {
    return new Outcome.NoMap(green.subject(), green.stations(), summary(green), remarks, why);
  }

  /** Statistics of the stations not chosen for what is seen there, unless all are. */
  static ReadingSummary summary(Prepared green) {
    var all = green.stations().stations();
    var plain = all.stream().filter(s -> !s.chosen()).toList();
    return ReadingSummary.of(
        (plain.isEmpty() ? all : plain).stream().mapToDouble(Stations.Station::value));
  }
}
