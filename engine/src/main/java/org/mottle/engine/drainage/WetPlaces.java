package org.mottle.engine.drainage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.mottle.engine.contour.Band;
import org.mottle.engine.contour.Layer;
import org.mottle.engine.contour.Tiling;
import org.mottle.engine.drainage.Indicators.Drying;
import org.mottle.engine.drainage.Indicators.Gathering;
import org.mottle.engine.drainage.Indicators.Hollow;
import org.mottle.engine.drainage.Indicators.Pipes;
import org.mottle.engine.drainage.Indicators.Profile;
import org.mottle.engine.drainage.Indicators.SeenWet;
import org.mottle.engine.drainage.Indicators.Setting;
import org.mottle.engine.drainage.Indicators.Terrain;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.irrigation.Head;
import org.mottle.engine.season.BeforeAfter;
import org.mottle.engine.season.Change;
import org.mottle.engine.season.ChangeFigure;
import org.mottle.engine.season.DryDown;
import org.mottle.engine.season.Persistence;
import org.mottle.engine.season.PersistentPlace;
import org.mottle.engine.season.PlaceWetness;
import org.mottle.engine.season.SurveyedMap;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.WaterHistory;
import org.mottle.engine.terrain.Depression;
import org.mottle.engine.terrain.GreenTerrain;

/**
 * The places of a green that stay wet after rain, with what season, terrain and heads know of each
 * ({@link Indicators}), and what that speaks for ({@link DrainageFinding}).
 */
public final class WetPlaces {
  /** Reference evapotranspiration of hot days, mm (common practice, no source). */
  private static final double HOT_MM_DAY = 5;

  /** Chances of judgements that are read off levels: never sure. */
  private static final double LIKELY = 0.9;

  private static final double UNLIKELY = 0.1;

  /** A hollow smaller than this share of a place does not make it wet. */
  private static final double LEAST_HOLLOW = 0.1;

  /** Ground counts as an edge within this of the outline, m. */
  private static final double EDGE_M = 1.5;

  /** Standard deviation of the distance to a head: of its position and of the place's edge, m. */
  private static final double HEAD_SD_M = 1;

  private final Seen seen;
  private final Geometry outline;

  private WetPlaces(Seen seen) {
    this.seen = seen;
    this.outline = seen.green().outline();
  }

  /**
   * What is known of a green.
   *
   * @param green the green
   * @param visits its maps with the conditions of each, in the order of time
   * @param drying dry-down over pairs of surveys without water between
   * @param terrain the ground; empty without elevation
   * @param association that the green is wetter where its wetness index is higher; NaN: not tested
   * @param heads of the green; none known: empty
   */
  public record Seen(
      Green green,
      List<Visit> visits,
      List<DryDown> drying,
      Optional<GreenTerrain> terrain,
      double association,
      List<Head> heads) {
    public Seen {
      visits = List.copyOf(visits);
      drying = List.copyOf(drying);
      heads = List.copyOf(heads);
    }
  }

  /**
   * @param map of a survey
   * @param conditions of the visit; empty when not recorded
   */
  public record Visit(SurveyedMap map, Optional<Conditions> conditions) {
    double hours() {
      return conditions
          .map(Conditions::water)
          .map(w -> smaller(w.rainHours(), w.irrigationHours()))
          .orElse(Double.NaN);
    }

    boolean hot() {
      return conditions.filter(c -> c.water().et0MmDay() >= HOT_MM_DAY).isPresent();
    }

    private static double smaller(double a, double b) {
      return Double.isNaN(a) ? b : Double.isNaN(b) ? a : Math.min(a, b);
    }
  }

  /** Findings on the places that stay wet after rain, the largest first. */
  public static List<DrainageFinding> of(Seen seen, Persistence afterRain) {
    WetPlaces places = new WetPlaces(seen);
    List<DrainageFinding> findings = new ArrayList<>();
    int number = 0;
    for (PersistentPlace place : afterRain.wet().places()) {
      WetPlace wet =
          new WetPlace(
              seen.green().id(), "" + ++number, place.outline(), place.areaM2(), place.share());
      findings.add(DrainageFinding.of(wet, places.indicators(places.core(place.outline()))));
    }
    return findings;
  }

  /**
   * The wetter half of a place, by the mean of the maps after rain: an outline by the limit takes
   * in the flanks too, which dry and lie like the rest of the green.
   */
  private Geometry core(Geometry place) {
    List<Raster> rain =
        seen.visits().stream()
            .map(Visit::map)
            .filter(m -> m.history() == WaterHistory.AFTER_RAIN)
            .map(m -> m.map().surface().interpolable())
            .toList();
    double[] sum = new double[rain.get(0).grid().size()];
    for (Raster map : rain) {
      Arrays.setAll(sum, i -> sum[i] + map.value(i) / rain.size());
    }
    Raster mean = new Raster(rain.get(0).grid(), sum);
    double[] own = within(mean, place);
    if (own.length == 0) {
      return place;
    }
    Arrays.sort(own);
    Geometry half =
        Tiling.of(place, List.of(Layer.atLeast(mean, own[own.length / 2])))
            .by(passed -> passed[0], 0)
            .stream()
            .filter(b -> b.index() == 1)
            .map(Band::geometry)
            .map(g -> (Geometry) g)
            .findFirst()
            .orElse(place);
    return half.isEmpty() ? place : half;
  }

  Indicators indicators(Geometry place) {
    return new Indicators(
        seen.visits().stream().map(v -> seenWet(v, place)).toList(),
        drying(place),
        seen.terrain().map(t -> terrain(t, place)).orElse(Terrain.UNKNOWN),
        Profile.UNKNOWN,
        pipes(place),
        Double.NaN);
  }

  private static SeenWet seenWet(Visit visit, Geometry place) {
    double wet = PlaceWetness.of(place, List.of(visit.map())).get(0).wetChance();
    return new SeenWet(
        visit.map().surveyId(), visit.map().history(), visit.hours(), visit.hot(), wet);
  }

  /** Of the first pair after the rain: later ones start from ground that is dry already. */
  private Drying drying(Geometry place) {
    for (DryDown dried : seen.drying()) {
      if (!Double.isNaN(dried.etRate())) {
        Change change = dried.change();
        ChangeFigure own = change.over(place);
        double drawn = dried.etRate() * dried.days();
        Geometry rest = outline.difference(place);
        Optional<ChangeFigure> gap =
            rest.isEmpty()
                ? Optional.empty()
                : BeforeAfter.of(change, place, rest, BeforeAfter.Wanted.DRIER)
                    .value()
                    .map(BeforeAfter::effect);
        return new Drying(
            -own.mean() / drawn,
            own.sd() / drawn,
            gap.map(ChangeFigure::mean).orElse(Double.NaN),
            gap.map(ChangeFigure::sd).orElse(Double.NaN));
      }
    }
    return Drying.UNKNOWN;
  }

  private Terrain terrain(GreenTerrain t, Geometry place) {
    double shared = 0;
    double deepest = 0;
    for (Depression d : t.hollowsOn(place)) {
      // a hollow within the place fills it from there; a place within a hollow lies in it
      double smaller = Math.min(d.areaM2(), place.getArea());
      if (d.areaM2() >= LEAST_HOLLOW * place.getArea()) {
        shared = Math.max(shared, d.outline().intersection(place).getArea() / smaller);
        deepest = Math.max(deepest, 1000 * d.deepestM());
      }
    }
    Raster height = t.model().raster();
    return new Terrain(
        new Hollow(Math.min(1, shared), deepest, 1000 * t.leftSdM()),
        new Gathering(percentile(t.wetness(), place), seen.association()),
        new Setting(
            uphillEdge(height, place), drainsIn(t, place), lowEnd(percentile(height, place))));
  }

  /** Share of the green's cells whose value lies below the mean of the place. */
  private double percentile(Raster raster, Geometry place) {
    double own = mean(raster, place);
    double[] all = within(raster, outline);
    long below = Arrays.stream(all).filter(v -> v < own).count();
    return all.length == 0 || Double.isNaN(own) ? Double.NaN : below / (double) all.length;
  }

  private double uphillEdge(Raster height, Geometry place) {
    double percentile = percentile(height, place);
    if (Double.isNaN(percentile)) {
      return Double.NaN;
    }
    boolean edge = place.distance(outline.getBoundary()) < EDGE_M;
    return edge && percentile > 0.75 ? LIKELY : UNLIKELY;
  }

  /** From level with the lowest fifth to the middle of the green's heights. */
  private static double lowEnd(double percentile) {
    double share = (0.5 - percentile) / 0.3;
    return Double.isNaN(percentile)
        ? Double.NaN
        : UNLIKELY + (LIKELY - UNLIKELY) * Math.max(0, Math.min(1, share));
  }

  /** Whether more ground outside the green drains to the place than the place is large. */
  private double drainsIn(GreenTerrain t, Geometry place) {
    if (!t.surrounds().enough()) {
      return Double.NaN;
    }
    CellGrid grid = t.model().grid();
    IndexedPointInAreaLocator inPlace = new IndexedPointInAreaLocator(place);
    IndexedPointInAreaLocator inGreen = new IndexedPointInAreaLocator(outline);
    // 0 not known yet, 1 runs to the place, 2 does not
    byte[] runs = new byte[grid.size()];
    int[] way = new int[grid.size()];
    long outside = 0;
    for (int cell = 0; cell < grid.size(); cell++) {
      int length = 0;
      int at = cell;
      while (at >= 0 && runs[at] == 0 && !holds(inPlace, grid, at)) {
        way[length++] = at;
        runs[at] = 2;
        at = t.flow().receiver(at);
      }
      byte verdict = at >= 0 && (runs[at] == 1 || holds(inPlace, grid, at)) ? (byte) 1 : (byte) 2;
      for (int k = 0; k < length; k++) {
        runs[way[k]] = verdict;
      }
      outside += runs[cell] == 1 && !holds(inGreen, grid, cell) ? 1 : 0;
    }
    double ratio = outside * grid.cell() * grid.cell() / place.getArea();
    return UNLIKELY + (LIKELY - UNLIKELY) * Math.max(0, Math.min(1, ratio));
  }

  private static boolean holds(IndexedPointInAreaLocator area, CellGrid grid, int cell) {
    return area.locate(new Coordinate(grid.x(cell % grid.columns()), grid.y(cell / grid.columns())))
        != Location.EXTERIOR;
  }

  /** From the middle: heads stand round every green, and near its edge one is always near. */
  private Pipes pipes(Geometry place) {
    double nearest =
        seen.heads().stream()
            .mapToDouble(
                h ->
                    place.getInteriorPoint().getCoordinate().distance(new Coordinate(h.x(), h.y())))
            .min()
            .orElse(Double.NaN);
    return Double.isNaN(nearest) ? Pipes.UNKNOWN : new Pipes(nearest, HEAD_SD_M, Double.NaN);
  }

  /** Mean of the cells whose centre lies in an area; NaN where none does. */
  public static double mean(Raster raster, Geometry area) {
    return Arrays.stream(within(raster, area)).average().orElse(Double.NaN);
  }

  private static double[] within(Raster raster, Geometry area) {
    CellGrid grid = raster.grid();
    IndexedPointInAreaLocator inside = new IndexedPointInAreaLocator(area);
    double[] values = new double[grid.size()];
    int n = 0;
    for (int i = 0; i < grid.size(); i++) {
      if (raster.has(i) && holds(inside, grid, i)) {
        values[n++] = raster.value(i);
      }
    }
    return Arrays.copyOf(values, n);
  }
}
