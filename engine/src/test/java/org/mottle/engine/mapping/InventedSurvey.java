package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleBinaryOperator;
import java.util.function.UnaryOperator;
import org.apache.commons.math3.random.Well19937c;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.RootZone;
import org.mottle.engine.survey.TargetBand;

/** Greens and readings for tests; every random number from a seed. */
final class InventedSurvey {
  static final TargetBand BAND = new TargetBand("ball roll", 18, 22, "site agronomist", "");

  /** Fewer draws than a map for the public, and no next stations. */
  static final MappingSettings QUICK =
      MappingSettings.defaults().withUncertainty(new UncertaintySettings(60, 6, 0, 0, 0));

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private InventedSurvey() {}

  /** A wobbly outline of about 500 m² round a centre. */
  static Green green(String id, double x, double y, long seed) {
    Well19937c random = new Well19937c(seed);
    double a = 0.08 * random.nextDouble();
    double b = 0.08 * random.nextDouble();
    Coordinate[] ring = new Coordinate[73];
    for (int i = 0; i < 72; i++) {
      double t = Math.PI * i / 36;
      double r = 12.6 * (1 + a * Math.cos(2 * t) + b * Math.cos(3 * t + 1));
      ring[i] = new Coordinate(x + r * Math.cos(t), y + r * Math.sin(t));
    }
    ring[72] = ring[0].copy();
    return Green.of(id, FACTORY.createPolygon(ring));
  }

  /** n readings inside the outline of a field given as a function of place, plus noise. */
  static List<Reading> readings(
      Green green, int n, DoubleBinaryOperator field, double noiseSd, long seed) {
    Well19937c random = new Well19937c(seed);
    Envelope box = green.outline().getEnvelopeInternal();
    List<Reading> readings = new ArrayList<>();
    while (readings.size() < n) {
      double x = box.getMinX() + random.nextDouble() * box.getWidth();
      double y = box.getMinY() + random.nextDouble() * box.getHeight();
      Geometry place = FACTORY.createPoint(new Coordinate(x, y));
      if (green.outline().contains(place)) {
        double value = field.applyAsDouble(x, y) + noiseSd * random.nextGaussian();
        readings.add(reading(green.id(), "" + (readings.size() + 1), x, y, value));
      }
    }
    return readings;
  }

  static Reading reading(String green, String station, double x, double y, double pct) {
    return new Reading(
        new Reading.Label(green, "S1", station, 0, 1, 2),
        new Reading.Position(x, y, Double.NaN, "", Double.NaN),
        Reading.Moisture.raw(pct),
        Reading.Protocol.UNKNOWN,
        Reading.Role.PLAN,
        Reading.Quality.NOT_REVIEWED);
  }

  static GreenSurvey survey(Green green, List<Reading> readings) {
    return new GreenSurvey(green, "S1", readings, Optional.of(BAND));
  }

  /** Readings on a square grid with half a metre of irregularity, as a plan lays them out. */
  static List<Reading> planned(
      Green green, double spacing, DoubleBinaryOperator field, double noiseSd, long seed) {
    Well19937c random = new Well19937c(seed);
    Envelope box = green.outline().getEnvelopeInternal();
    List<Reading> readings = new ArrayList<>();
    for (double y = box.getMaxY() - spacing / 2; y > box.getMinY(); y -= spacing) {
      for (double x = box.getMinX() + spacing / 2; x < box.getMaxX(); x += spacing) {
        double east = x + random.nextDouble() - 0.5;
        double north = y + random.nextDouble() - 0.5;
        double noise = noiseSd * random.nextGaussian();
        if (green.outline().contains(FACTORY.createPoint(new Coordinate(east, north)))) {
          double value = field.applyAsDouble(east, north) + noise;
          readings.add(reading(green.id(), "" + (readings.size() + 1), east, north, value));
        }
      }
    }
    return readings;
  }

  /** Greens in a row with a wet place each, read every 5 m: some 20 readings. */
  static List<GreenSurvey> plannedCourse(int greens, double noiseSd, long seed) {
    List<GreenSurvey> course = new ArrayList<>();
    for (int g = 0; g < greens; g++) {
      double cx = 500_000 + 100.0 * g;
      double cy = 5_316_300;
      Green green = green("G" + (g + 1), cx, cy, seed + g);
      course.add(
          survey(
              green,
              planned(green, 5, (x, y) -> wetPlace(x, y, cx, cy), noiseSd, 1000 * seed + g)));
    }
    return course;
  }

  /** The same survey with other readings. */
  static GreenSurvey with(GreenSurvey survey, UnaryOperator<Reading> change) {
    return new GreenSurvey(
        survey.green(),
        survey.surveyId(),
        survey.readings().stream().map(change).toList(),
        survey.band());
  }

  static Green renamed(Green green, String id) {
    return new Green(id, green.name(), green.outline(), green.rootZone(), green.boundary());
  }

  static Green built(Green green, String build) {
    RootZone root = new RootZone(build, "", Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    return new Green(green.id(), green.name(), green.outline(), root, green.boundary());
  }

  static Reading by(Reading r, String operator) {
    Reading.Protocol none = Reading.Protocol.UNKNOWN;
    return new Reading(
        r.label(),
        r.position(),
        r.moisture(),
        new Reading.Protocol("", none.rodMm(), "", operator, "", none.soilC(), Double.NaN),
        r.role(),
        r.quality());
  }

  static Reading from(Reading r, String source, double sdM) {
    return new Reading(
        r.label(),
        new Reading.Position(r.x(), r.y(), Double.NaN, source, sdM),
        r.moisture(),
        r.protocol(),
        r.role(),
        r.quality());
  }

  static Reading reading(Reading place, double pct) {
    return new Reading(
        place.label(),
        place.position(),
        Reading.Moisture.raw(pct),
        place.protocol(),
        place.role(),
        place.quality());
  }

  /** A smooth field with a wet place. */
  static double wetPlace(double x, double y, double cx, double cy) {
    double d2 = (x - cx - 4) * (x - cx - 4) + (y - cy - 2) * (y - cy - 2);
    return 19 + 8 * Math.exp(-d2 / 40) + 0.05 * (x - cx);
  }

  /** Greens in a row with the same kind of field, n readings each. */
  static List<GreenSurvey> course(int greens, int n, double noiseSd, long seed) {
    List<GreenSurvey> course = new ArrayList<>();
    for (int g = 0; g < greens; g++) {
      double cx = 500_000 + 100.0 * g;
      double cy = 5_316_300;
      Green green = green("G" + (g + 1), cx, cy, seed + g);
      course.add(
          survey(
              green,
              readings(green, n, (x, y) -> wetPlace(x, y, cx, cy), noiseSd, 1000 * seed + g)));
    }
    return course;
  }
}
