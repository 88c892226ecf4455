package org.mottle.engine.mapping;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.Contours;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.inversedistance.InverseDistance;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.likelihood.NotPooled;
import org.mottle.engine.likelihood.PooledVariogram;
import org.mottle.engine.patch.Ground;
import org.mottle.engine.patch.RegionMean;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.Zones;
import org.mottle.engine.plan.NextStations;
import org.mottle.engine.plan.Positions;
import org.mottle.engine.plan.StationRanking;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Refusal;

/** Maps one green. */
final class GreenMapper {
  private static final double POWER = 2;

  /** More cells than this on one green, some 2 GB, are a slip of the keyboard, not a map. */
  private static final double MOST_CELLS = 1e7;

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

  private Outcome kriging(
      Prepared green,
      MapVariogram variogram,
      Optional<GreenPopulation> population,
      boolean latest,
      GreenRemarks remarks) {
    PooledVariogram pooled = variogram.pooled().orElseThrow();
    remarks.onVariogram(green, pooled);
    remarks.onPopulation(population);
    int n = green.observations().size();
    int[] main = population.map(p -> p.main(n)).orElseGet(() -> Arrays.copyOf(all(n), n));
    GreenCells cells = cells(green);
    KrigedGreen.Attempt attempt =
        KrigedGreen.of(
            green,
            main,
            pooled.draws(green.sample()),
            cells,
            settings.uncertainty(),
            threads,
            progress);
    if (attempt.refusal().isPresent()) {
      return noMap(green, remarks, attempt.refusal().get());
    }
    KrigedGreen kriged = attempt.green().orElseThrow();
    Outcome.Basis basis =
        new Outcome.Basis(
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
    Surface surface = kriged.surface();
    Optional<BandChances> chances =
        green
            .subject()
            .band()
            .map(b -> BandChances.of(green, kriged, cells, b, population, threads, progress));
    return cut(
        green,
        remarks,
        basis,
        chances.map(c -> surface.with(c.rasters())).orElse(surface),
        new Cut(
            kriged.regionMean(),
            chances.map(c -> c.zones(surface)).orElse(List.of()),
            chances,
            latest ? next(green, kriged) : Optional.empty()));
  }

  private static int[] all(int n) {
    int[] all = new int[n];
    Arrays.setAll(all, i -> i);
    return all;
  }

  private Optional<StationRanking> next(Prepared green, KrigedGreen kriged) {
    int count = settings.uncertainty().nextStations();
    if (count == 0) {
      return Optional.empty();
    }
    var walk =
        green.stations().stations().stream()
            .sorted(
                Comparator.comparingInt(
                    s ->
                        s.insertions().stream()
                            .mapToInt(r -> r.label().sequence())
                            .min()
                            .orElse(0)))
            .toList();
    Positions existing =
        Positions.of(
            walk.stream().mapToDouble(Stations.Station::x).toArray(),
            walk.stream().mapToDouble(Stations.Station::y).toArray());
    double[] limits =
        green
            .subject()
            .band()
            .map(b -> new double[] {b.lowPct(), b.highPct()})
            .orElseGet(() -> new double[0]);
    return Optional.of(
        NextStations.withDefaults()
            .withCount(count)
            .rank(
                green.subject().green().outline(),
                existing,
                kriged.modelDraws(green.meanJitterM()),
                limits));
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
        new Cut(RegionMean.UNKNOWN, zones, Optional.empty(), Optional.empty()));
  }

  /** What a surface is cut with. */
  private record Cut(
      RegionMean regionMean,
      List<Zone> zones,
      Optional<BandChances> chances,
      Optional<StationRanking> next) {}

  private Outcome cut(
      Prepared green, GreenRemarks remarks, Outcome.Basis basis, Surface surface, Cut cut) {
    Geometry outline = green.subject().green().outline();
    Raster field = surface.interpolable();
    Contours contours = Contours.of(outline, field);
    Ground whole = Ground.of(outline, field);
    RegionMean.MeanAndSd mean =
        new RegionMean.MeanAndSd(
            whole.mean(contours.surface()), whole.sd(cut.regionMean, field.grid().cell()));
    cut.chances.ifPresent(c -> c.judge(cut.zones, remarks));
    boolean byValue = cut.chances.isEmpty();
    double[] limits =
        green
            .subject()
            .band()
            .filter(b -> byValue)
            .map(b -> new double[] {b.lowPct(), b.highPct()})
            .orElseGet(() -> new double[0]);
    Outcome.Parts parts =
        new Outcome.Parts(
            cut.zones,
            cut.chances.map(c -> c.marks(surface, cut.regionMean, remarks)),
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
        parts);
  }

  private GreenCells cells(Prepared green) {
    var outline = green.subject().green().outline();
    return GreenCells.of(
        outline, CellGrid.covering(outline.getEnvelopeInternal(), settings.cellM()));
  }

  private static Outcome noMap(Prepared green, GreenRemarks remarks, Refusal why) {
    return new Outcome.NoMap(
        green.subject(), green.stations(), summary(green), remarks.lines(), why);
  }

  /** Statistics of the stations not chosen for what is seen there, unless all are. */
  static ReadingSummary summary(Prepared green) {
    var all = green.stations().stations();
    var plain = all.stream().filter(s -> !s.chosen()).toList();
    return ReadingSummary.of(
        (plain.isEmpty() ? all : plain).stream().mapToDouble(Stations.Station::value));
  }
}
