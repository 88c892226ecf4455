package org.mottle.engine.mapping;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.Contours;
import org.mottle.engine.evenness.Evenness;
import org.mottle.engine.evenness.EvennessFigures;
import org.mottle.engine.evenness.EvennessMeter;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.CoveredGround;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.inversedistance.InverseDistance;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.likelihood.NotPooled;
import org.mottle.engine.likelihood.PooledVariogram;
import org.mottle.engine.mapping.Stations.Station;
import org.mottle.engine.patch.Excursions;
import org.mottle.engine.patch.Ground;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.RegionMean;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.Zones;
import org.mottle.engine.plan.NextStations;
import org.mottle.engine.plan.Positions;
import org.mottle.engine.plan.StationRanking;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.water.Watering;

/** Maps one green. */
final class GreenMapper {
  private static final double POWER = 2;

  /** Kriging weights kept at once, 2 GB of them: more is a slip of the keyboard, not a map. */
  private static final double MOST_WEIGHTS = 2.5e8;

  /**
   * Candidates of a station to be read next: a metre apart on a green, farther on larger ground.
   */
  private static final double MOST_PLACES = 2000;

  private final MappingSettings settings;
  private final int threads;
  private final Progress progress;

  GreenMapper(MappingSettings settings, int threads, Progress progress) {
    this.settings = settings;
    this.threads = threads;
    this.progress = progress;
  }

  /**
   * @param latest whether this is the last survey of the green, so that stations to be read next
   *     are of use
   */
  Outcome map(
      Prepared green,
      MapVariogram variogram,
      Optional<GreenPopulation> population,
      boolean latest) {
    GreenRemarks remarks = new GreenRemarks(settings);
    remarks.onReadings(green);
    Optional<Refusal> obstacle = green.obstacle().or(() -> tooManyCells(green));
    if (obstacle.isPresent()) {
      return noMap(green, remarks, obstacle.get());
    }
    if (settings.method() == Method.INVERSE_DISTANCE) {
      remarks.atMost(
          Standing.INDICATIVE, "inverse distance by choice: no standard deviation, no patches");
      return inverseDistance(green, remarks);
    }
    if (variogram.outcome() instanceof NotPooled not) {
      return noMap(green, remarks, new Refusal("no variogram: " + not.reason(), not.remedy()));
    }
    return kriging(green, variogram, population, latest, remarks);
  }

  private Optional<Refusal> tooManyCells(Prepared green) {
    double box = green.subject().green().outline().getEnvelopeInternal().getArea();
    double cells = box / (settings.cellM() * settings.cellM());
    double most =
        MOST_WEIGHTS / Math.max(1, green.observations().size()) / settings.uncertainty().draws();
    return cells > most
        ? Optional.of(
            new Refusal(
                String.format(
                    Locale.ROOT,
                    "%.3g cells of %s m are more than a map can hold",
                    cells,
                    settings.cellM()),
                "a cell of " + roundedUp(Math.sqrt(box / most)) + " m or more can be held"))
        : Optional.empty();
  }

  /** To one significant digit. */
  private static String roundedUp(double metres) {
    return new BigDecimal(metres).round(new MathContext(1, RoundingMode.UP)).toPlainString();
  }

  private Outcome kriging(
      Prepared green,
      MapVariogram variogram,
      Optional<GreenPopulation> population,
      boolean latest,
      GreenRemarks remarks) {
    PooledVariogram pooled = variogram.pooled().orElseThrow();
    String survey = green.subject().surveyId();
    if (!pooled.surveys().contains(survey)) {
      return noMap(green, remarks, outside(survey));
    }
    Prepared main = GreenPopulation.surface(population, green, settings.needed().map());
    List<NestedModel> models = pooled.draws(main.sample());
    Slope slope = Slope.of(main, models);
    remarks.onVariogram(green, pooled, slope);
    population
        .filter(p -> p.found().isPresent())
        .ifPresent(p -> remarks.onPopulation(p.finding(), main.observations().size()));
    remarks.onChosen(green, main);
    KrigedGreen.Attempt attempt =
        KrigedGreen.of(
            main, models, slope, cells(green), settings.uncertainty(), threads, progress);
    if (attempt.refusal().isPresent()) {
      return noMap(green, remarks, attempt.refusal().get());
    }
    KrigedGreen kriged = attempt.green().orElseThrow();
    Seen seen = seen(green, kriged);
    Optional<BandChances> chances =
        seen.excursions().map(e -> new BandChances(green, main, kriged, e, population));
    Surface plain = kriged.surface();
    Surface surface = chances.map(c -> plain.with(c.rasters())).orElse(plain);
    return cut(
        green,
        remarks,
        basis(green, variogram, kriged, population),
        surface,
        new Cut(
            kriged.regionMean(),
            chances.map(c -> c.zones(surface)).orElse(List.of()),
            chances,
            latest ? next(green, kriged) : Optional.empty(),
            seen.evenness(),
            patches -> GreenWatering.of(green, settings, kriged, patches, threads, progress)));
  }

  /** What one pass over the realisations shows. */
  private record Seen(Optional<Excursions> excursions, Evenness evenness) {}

  private Seen seen(Prepared green, KrigedGreen kriged) {
    Optional<TargetBand> band = green.subject().band();
    Optional<Excursions.Builder> excursions =
        band.map(b -> Excursions.builder(kriged.realisations(), kriged.cells().neededCount()));
    EvennessMeter meter = meter(green, kriged.cells());
    EvennessFigures[] even = new EvennessFigures[kriged.realisations()];
    kriged.forEach(
        (r, values) -> {
          even[r] = meter.of(values);
          excursions.ifPresent(e -> e.set(r, values, band.get().lowPct(), band.get().highPct()));
        },
        threads,
        progress);
    return new Seen(excursions.map(Excursions.Builder::build), Evenness.of(even));
  }

  private static EvennessMeter meter(Prepared green, GreenCells cells) {
    return new EvennessMeter(
        CoveredGround.of(cells, green.subject().green().outline()),
        green.subject().green().rootZone().wiltOnsetPct(),
        green.subject().band());
  }

  /** Its own readings did not enter the pool: too few differ. */
  private static Refusal outside(String survey) {
    return new Refusal(
        "no variogram: no green of "
            + (survey.isEmpty() ? "the survey" : "survey " + survey)
            + " has readings that differ at enough places",
        "read more places, or to a finer step than whole per cent");
  }

  private Outcome.Basis basis(
      Prepared green,
      MapVariogram variogram,
      KrigedGreen kriged,
      Optional<GreenPopulation> population) {
    return new Outcome.Basis(
        Method.KRIGING,
        Optional.of(
            new Outcome.KrigingBasis(
                variogram,
                kriged.leaveOneOut(),
                settings.uncertainty().realisations(),
                population.map(GreenPopulation::finding),
                population.map(p -> p.lowStations(green)).orElse(List.of()),
                new Outcome.Positions(
                    green.meanJitterM(), green.observations().positionError().shiftSdM()))));
  }

  private Optional<StationRanking> next(Prepared green, KrigedGreen kriged) {
    int count = settings.uncertainty().nextStations();
    if (count == 0) {
      return Optional.empty();
    }
    List<Station> walk =
        green.stations().stations().stream()
            .sorted(Comparator.comparingInt(Station::sequence))
            .toList();
    Positions existing =
        Positions.of(
            walk.stream().mapToDouble(Station::x).toArray(),
            walk.stream().mapToDouble(Station::y).toArray());
    double places = Math.sqrt(green.subject().green().areaM2() / MOST_PLACES);
    NextStations ranking = NextStations.withDefaults().withCount(count);
    return Optional.of(
        (places > 1 ? ranking.withCell(places).withClearance(1.5 * places) : ranking)
            .rank(
                green.subject().green().outline(),
                existing,
                kriged.modelDraws(green.meanJitterM()),
                limits(green)));
  }

  /** Of the band; none without one. */
  private static double[] limits(Prepared green) {
    return green.subject().band().stream()
        .flatMapToDouble(b -> DoubleStream.of(b.lowPct(), b.highPct()))
        .toArray();
  }

  private Outcome inverseDistance(Prepared green, GreenRemarks remarks) {
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
    List<Zone> zones =
        green
            .subject()
            .band()
            .map(
                band ->
                    Zones.of(
                        green.subject().green().outline(),
                        surface.interpolable(),
                        band,
                        RegionMean.UNKNOWN))
            .orElse(List.of());
    return cut(
        green,
        remarks,
        new Outcome.Basis(Method.INVERSE_DISTANCE, Optional.empty()),
        surface,
        new Cut(
            RegionMean.UNKNOWN,
            zones,
            Optional.empty(),
            Optional.empty(),
            Evenness.plain(meter(green, cells).of(values)),
            patches -> GreenWatering.unsure()));
  }

  /** What a surface is cut with. */
  private record Cut(
      RegionMean regionMean,
      List<Zone> zones,
      Optional<BandChances> chances,
      Optional<StationRanking> next,
      Evenness evenness,
      Function<List<Patch>, Watering> watering) {}

  private Outcome cut(
      Prepared green, GreenRemarks remarks, Outcome.Basis basis, Surface surface, Cut cut) {
    Geometry outline = green.subject().green().outline();
    Raster field = surface.interpolable();
    Contours contours = Contours.of(outline, field);
    Ground whole = Ground.of(outline, field);
    RegionMean.MeanAndSd mean =
        new RegionMean.MeanAndSd(
            whole.mean(contours.surface()), whole.sd(cut.regionMean, field.grid().cell()));
    if (cut.chances.isPresent()) {
      remarks.onBand(green.subject().band().orElseThrow(), surface.medianSd());
      remarks.onZones(cut.zones, outline.getArea());
    }
    // the limits bound zones by value; zones by probability have edges of their own
    double[] limits = cut.chances.isEmpty() ? limits(green) : new double[0];
    Outcome.Parts parts =
        new Outcome.Parts(
            cut.zones,
            cut.chances.map(c -> c.marks(surface, remarks)),
            contours.isoLines(settings.isoStepPct(), limits),
            mean,
            cut.next);
    return new Outcome.Mapped(
        green.subject(),
        green.stations(),
        summary(green),
        remarks.lines(),
        remarks.standing(),
        basis,
        surface,
        parts,
        cut.evenness,
        cut.watering.apply(parts.patches()));
  }

  private GreenCells cells(Prepared green) {
    Geometry outline = green.subject().green().outline();
    return GreenCells.of(
        outline, CellGrid.covering(outline.getEnvelopeInternal(), settings.cellM()));
  }

  private static Outcome noMap(Prepared green, GreenRemarks remarks, Refusal why) {
    return new Outcome.NoMap(
        green.subject(), green.stations(), summary(green), remarks.lines(), why);
  }

  /** Statistics of the stations not chosen for what is seen there, unless all are. */
  static ReadingSummary summary(Prepared green) {
    List<Station> all = green.stations().stations();
    List<Station> plain = all.stream().filter(s -> !s.chosen()).toList();
    return ReadingSummary.of((plain.isEmpty() ? all : plain).stream().mapToDouble(Station::value));
  }
}
