package org.mottle.engine.course;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Standing;
import org.mottle.engine.mapping.Stations;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.Spot;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.plan.Positions;
import org.mottle.engine.plan.WalkOrder;
import org.mottle.engine.review.Grade;
import org.mottle.engine.water.WaterWanted;
import org.mottle.engine.water.Watering;
import org.mottle.engine.water.WateringSettings;

/**
 * The dry places of the last survey of each green in walking order: green by green as they are
 * given, on each green by the shortest walk from where the last one ended. It offers; who waters
 * looks first, and the site's agronomist decides.
 *
 * @param stops in order
 * @param planned when the watering is planned; empty when not said
 */
public record HandWatering(List<Stop> stops, Optional<OffsetDateTime> planned) {
  /** Less than this is not worth a hose, L. */
  private static final double LEAST_L = 5;

  private static final double SURE = 0.8;
  private static final double A_DAY_H = 24;

  /** Water that ended nearer to the readings was still draining, h. */
  private static final double DRAINING_H = 6;

  /** Reference evapotranspiration of hot days, mm (common practice, no source). */
  private static final double HOT_MM_DAY = 5;

  public HandWatering {
    stops = List.copyOf(stops);
  }

  /**
   * @param map of one or more surveys, older first
   * @param records of the visits
   * @param settings how water is given
   * @param planned when; empty when not said
   */
  public static HandWatering of(
      SurveyMap map,
      List<VisitRecord> records,
      WateringSettings settings,
      Optional<OffsetDateTime> planned) {
    Map<String, GreenLook> latest = new LinkedHashMap<>();
    CourseOverview.visits(map, records)
        .forEach(l -> latest.put(l.outcome().subject().green().id(), l));
    List<Stop> walk = new ArrayList<>();
    for (GreenLook look : latest.values()) {
      look.mapped()
          .map(m -> stops(m, look, settings, planned))
          .filter(s -> !s.isEmpty())
          .ifPresent(s -> append(walk, s));
    }
    return new HandWatering(walk, planned);
  }

  /** Litres of all stops of which they are known, L. */
  public double litres() {
    return stops.stream()
        .flatMap(s -> s.water().stream())
        .mapToDouble(w -> w.litres().best())
        .sum();
  }

  private static void append(List<Stop> walk, List<Stop> green) {
    Positions places =
        Positions.of(
            green.stream().mapToDouble(s -> s.place().x()).toArray(),
            green.stream().mapToDouble(s -> s.place().y()).toArray());
    WalkOrder order =
        walk.isEmpty()
            ? WalkOrder.anywhere(places)
            : WalkOrder.from(
                walk.get(walk.size() - 1).place().x(),
                walk.get(walk.size() - 1).place().y(),
                places);
    for (int step = 0; step < order.size(); step++) {
      walk.add(green.get(order.place(step)).at(walk.size() + 1));
    }
  }

  private static List<Stop> stops(
      Outcome.Mapped map,
      GreenLook look,
      WateringSettings settings,
      Optional<OffsetDateTime> planned) {
    Set<Caution> common = common(map, look, planned);
    List<Stop> stops = new ArrayList<>();
    for (Patch patch : map.parts().patches()) {
      if (patch.kind() == ZoneClass.DRY) {
        patch(map, patch, settings, common).ifPresent(stops::add);
      }
    }
    for (Spot spot : map.parts().spots()) {
      if (spot.kind() == ZoneClass.DRY) {
        stops.add(
            spot(
                map,
                spot.point(),
                station(map, spot.station()).name(),
                Stop.Kind.SPOT,
                spot.pExist(),
                spot.pExist() >= SURE
                    ? with(common, Caution.SIZE_UNKNOWN)
                    : with(common, Caution.LOOK_FIRST, Caution.SIZE_UNKNOWN)));
      }
    }
    Stream<Outcome.Low> low = map.basis().kriging().stream().flatMap(k -> k.low().stream());
    low.forEach(
        l -> {
          Stations.Station s = station(map, l.station());
          stops.add(
              spot(
                  map,
                  new Coordinate(s.x(), s.y()),
                  s.name(),
                  Stop.Kind.REPELLENT,
                  l.membership(),
                  with(common, Caution.REPELLENT)));
        });
    return stops;
  }

  private static Stations.Station station(Outcome.Mapped map, int index) {
    return map.stations().stations().get(index);
  }

  private static Set<Caution> common(
      Outcome.Mapped map, GreenLook look, Optional<OffsetDateTime> planned) {
    Set<Caution> cautions = EnumSet.noneOf(Caution.class);
    if (VisitTimes.hours(look.lastRead(), planned) > A_DAY_H) {
      cautions.add(Caution.OLD);
    }
    if (look.record().et0MmDay() >= HOT_MM_DAY) {
      cautions.add(Caution.HEAT);
    }
    look.record()
        .conditions()
        .map(c -> Math.min(hours(c.water().rainHours()), hours(c.water().irrigationHours())))
        .filter(h -> h < DRAINING_H)
        .ifPresent(h -> cautions.add(Caution.JUST_WATERED));
    boolean weak =
        look.record().grade().filter(g -> g.letter() == Grade.Letter.C).isPresent()
            || map.standing() == Standing.INDICATIVE;
    if (weak) {
      cautions.add(Caution.INDICATIVE);
    }
    if (map.watering() instanceof Watering.Wanted wanted) {
      double rods =
          map.stations().stations().stream()
              .flatMap(s -> s.insertions().stream())
              .mapToDouble(r -> r.protocol().rodMm())
              .min()
              .orElse(Double.NaN);
      if (wanted.deficit().rootMm() > rods) {
        cautions.add(Caution.BELOW_THE_RODS);
      }
      if (Double.isNaN(wanted.deficit().fieldCapacityPct())) {
        cautions.add(Caution.NO_FIELD_CAPACITY);
      }
    }
    return cautions;
  }

  private static double hours(double recorded) {
    return Double.isNaN(recorded) ? Double.POSITIVE_INFINITY : recorded;
  }

  private static List<Caution> with(Set<Caution> common, Caution... own) {
    Set<Caution> all = EnumSet.copyOf(List.of(own));
    all.addAll(common);
    return List.copyOf(all);
  }

  private static Optional<Stop> patch(
      Outcome.Mapped map, Patch patch, WateringSettings settings, Set<Caution> common) {
    Optional<WaterWanted> wanted =
        map.watering() instanceof Watering.Wanted w
            ? w.patches().stream()
                .filter(p -> p.patch() == patch.number())
                .map(Watering.PatchWater::wanted)
                .findFirst()
            : Optional.empty();
    if (wanted.filter(w -> w.litres().best() < LEAST_L).isPresent()) {
      return Optional.empty();
    }
    double exists = patch.likelihood().map(Patch.Likelihood::pExist).orElse(Double.NaN);
    Set<Caution> cautions = EnumSet.noneOf(Caution.class);
    cautions.addAll(common);
    if (!(exists >= SURE)
        || wanted
            .map(WaterWanted::litres)
            .map(Interval::low)
            .filter(l -> l < LEAST_L)
            .isPresent()) {
      cautions.add(Caution.LOOK_FIRST);
    }
    if (wanted.filter(w -> w.passes() > 1).isPresent()) {
      cautions.add(Caution.SEVERAL_PASSES);
    }
    Coordinate at = patch.geometry().getInteriorPoint().getCoordinate();
    return Optional.of(
        new Stop(
            0,
            new Stop.Place(
                map.subject().green().id(),
                map.subject().surveyId(),
                patch.number(),
                "",
                at.x,
                at.y),
            Stop.Kind.PATCH,
            exists,
            patch.areaM2(),
            wanted,
            wanted.map(w -> settings.minutes(w.litres().best())).orElse(Double.NaN),
            List.copyOf(cautions)));
  }

  private static Stop spot(
      Outcome.Mapped map,
      Coordinate at,
      String station,
      Stop.Kind kind,
      double exists,
      List<Caution> cautions) {
    return new Stop(
        0,
        new Stop.Place(
            map.subject().green().id(), map.subject().surveyId(), 0, station, at.x, at.y),
        kind,
        exists,
        Double.NaN,
        Optional.empty(),
        Double.NaN,
        cautions);
  }
}
