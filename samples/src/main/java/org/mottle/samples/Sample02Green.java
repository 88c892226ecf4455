package org.mottle.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Stations;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.Spot;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.plan.NextStation;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;

/**
 * 02: a green mapped with the engine alone: an outline, readings and a target band go in; zones
 * that tile the green, patches to look at and places to read next come out.
 */
public final class Sample02Green {

  private Sample02Green() {}

  public static void main(String[] args) {
    Outcome outcome = map();
    if (outcome instanceof Outcome.NoMap none) {
      print("no map: %s", none.why());
      return;
    }
    Outcome.Mapped map = (Outcome.Mapped) outcome;
    print("green %s: %.0f m²", map.subject().green().id(), map.subject().green().areaM2());
    map.basis().variogram().ifPresent(v -> print("kriging with %s", v.source()));
    for (Zone zone : map.parts().zones()) {
      print(
          "zone  %-13s %6.0f m²   mean %.1f %%, SD %.1f %%, so with probability %.2f",
          zone.cls().code(), zone.areaM2(), zone.mean(), zone.sd(), zone.probability());
    }
    for (Patch patch : map.parts().patches()) {
      Patch.Likelihood sure = patch.likelihood().orElseThrow();
      print(
          "patch %d %-11s %6.0f m² (%.0f to %.0f)   %d stations, mean %.1f %%, SD %.1f %%",
          patch.number(),
          patch.kind().code(),
          patch.areaM2(),
          sure.areaLow(),
          sure.areaHigh(),
          patch.readings(),
          patch.mean(),
          patch.sd());
    }
    for (Spot spot : map.parts().spots()) {
      Stations.Station station = map.stations().stations().get(spot.station());
      print("spot  %-13s near station %s, size unknown", spot.kind().code(), station.name());
    }
    for (NextStation next : map.parts().next().orElseThrow().stations()) {
      print("read next %d: %.1f, %.1f", next.rank(), next.x(), next.y());
    }
  }

  /** One green, one survey. With several greens in the list the variogram is pooled over them. */
  static Outcome map() {
    TargetBand band = new TargetBand("saving water", 14.0, 18.8, "site agronomist", "2025-05-01");
    GreenSurvey subject =
        new GreenSurvey(Green.of("G5", outline()), "S4", readings(), Optional.of(band));
    SurveyMapper mapper = new SurveyMapper(MappingSettings.defaults().withCellM(0.5));
    return mapper.map(List.of(subject), 1, Progress.NONE).outcomes().get(0);
  }

  /** An oval of about 400 m², in metres from its centre. */
  static Polygon outline() {
    int corners = 72;
    Coordinate[] ring = new Coordinate[corners + 1];
    for (int i = 0; i < corners; i++) {
      double t = 2 * Math.PI * i / corners;
      double x = 12.5 * Math.cos(t);
      double y = 10 * Math.sin(t);
      double turn = Math.toRadians(55);
      ring[i] =
          new Coordinate(
              x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn));
    }
    ring[corners] = ring[0].copy(); // a ring ends where it begins
    return new GeometryFactory().createPolygon(ring);
  }

  /** Green G5 of the invented course on 9 July, day 5 of heat, one sprinkler dead. */
  static List<Reading> readings() {
    double[][] xyMoisture = {
      {-4.2, -8.8, 20.7}, {-8.8, -7.5, 21.2}, {-7.9, -1.5, 16.5}, {-4.9, -3.9, 19.6},
      {0.1, -4.4, 17.4}, {2.0, -6.8, 13.6}, {6.2, -4.2, 9.5}, {2.3, -2.0, 18.7},
      {-2.6, 0.8, 18.3}, {-5.0, 0.6, 16.3}, {-5.6, 0.9, 13.5}, {-2.9, 5.8, 16.8},
      {-0.7, 8.9, 18.9}, {4.3, 8.7, 15.2}, {5.4, 5.4, 11.0}, {6.5, 1.0, 10.3},
      {5.6, 0.7, 12.1}, {2.9, 3.4, 14.7}, {-1.0, -9.7, 16.5}, {2.3, -4.2, 13.5},
      {5.2, -7.1, 7.7}, {7.6, -1.6, 12.0}, {7.6, 3.1, 10.4}, {-0.9, -1.9, 17.9}
    };
    List<Reading> readings = new ArrayList<>();
    for (double[] r : xyMoisture) {
      String station = Integer.toString(readings.size() + 1);
      readings.add(Reading.of("G5", station, r[0], r[1], r[2]));
    }
    return readings;
  }

  private static void print(String format, Object... values) {
    System.out.println(String.format(Locale.ROOT, format, values));
  }
}
