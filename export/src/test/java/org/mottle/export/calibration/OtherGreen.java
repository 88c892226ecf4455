package org.mottle.export.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.random.RandomGenerator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;

/**
 * One green of the other generator: an ellipse with two waves on it, stations spread over it, half
 * of the greens with close pairs (0.4 to 0.6 m), some stations read twice. The truth of a cell is
 * the mean of the day, the green's own offset, a Gaussian field and, on a third of the greens, a
 * smooth bump of 4 to 9 % that is stronger in some surveys than in others.
 */
final class OtherGreen {
  private static final double CELL_M = 1;
  private static final double FAULTY_SHARE = 1 / 3.0;
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private final String id;
  private final RandomGenerator random;
  private final OtherCourses.Soil soil;
  private final Green green;
  private final Cells cells;
  private final List<Coordinate> stations;
  private final int replicated;
  private final double offset;
  private final Optional<Bump> bump;

  private record Bump(double x, double y, double width, double pct) {
    double at(double px, double py) {
      double q = Math.hypot(px - x, py - y) / width;
      return pct * Math.exp(-0.5 * q * q);
    }
  }

  OtherGreen(String id, RandomGenerator random, OtherCourses.Soil soil) {
    this.id = id;
    this.random = random;
    this.soil = soil;
    this.green = Green.of(id, outline(random));
    this.cells = Cells.of(green.outline(), CELL_M);
    this.stations = new OtherStations(random, green.outline(), cells).draw();
    this.replicated = random.nextInt(5);
    this.offset = random.nextGaussian();
    this.bump = random.nextDouble() < FAULTY_SHARE ? Optional.of(bump()) : Optional.empty();
  }

  List<GreenCase> read(List<OtherSurvey> surveys) {
    int n = cells.size() + stations.size();
    double[] x = new double[n];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      boolean cell = i < cells.size();
      x[i] = cell ? cells.x()[i] : stations.get(i - cells.size()).x;
      y[i] = cell ? cells.y()[i] : stations.get(i - cells.size()).y;
    }
    ExactField field = new ExactField(soil.unit(), x, y);
    double[] always = field.draw(random);
    List<GreenCase> cases = new ArrayList<>();
    for (OtherSurvey survey : surveys) {
      double sill = soil.sill() * survey.sillFactor() * Math.exp(0.2 * random.nextGaussian());
      double fault = random.nextDouble();
      double[] fresh = field.draw(random);
      double[] truth = new double[n];
      for (int i = 0; i < n; i++) {
        double s =
            Math.sqrt(soil.persistent()) * always[i] + Math.sqrt(1 - soil.persistent()) * fresh[i];
        double px = x[i];
        double py = y[i];
        truth[i] =
            survey.meanPct()
                + offset
                + Math.sqrt(sill) * s
                + fault * bump.map(b -> b.at(px, py)).orElse(0.0);
      }
      cases.add(green(survey, sill, truth));
    }
    return cases;
  }

  private GreenCase green(OtherSurvey survey, double sill, double[] truth) {
    double[] ofCells = java.util.Arrays.copyOf(truth, cells.size());
    double nugget = soil.nuggetAt(sill);
    double shiftX = survey.shiftSd() * random.nextGaussian();
    double shiftY = survey.shiftSd() * random.nextGaussian();
    List<Reading> readings = new ArrayList<>();
    for (int k = 0; k < stations.size(); k++) {
      double px = stations.get(k).x + shiftX + survey.jitterSd() * random.nextGaussian();
      double py = stations.get(k).y + shiftY + survey.jitterSd() * random.nextGaussian();
      for (int rep = 1; rep <= (k < replicated ? 2 : 1); rep++) {
        double pct = truth[cells.size() + k] + Math.sqrt(nugget) * random.nextGaussian();
        readings.add(reading(survey, k + 1, rep, new Coordinate(px, py), pct));
      }
    }
    return new GreenCase(
        new GreenSurvey(green, survey.id(), readings, Optional.of(survey.band())),
        cells,
        ofCells,
        new Known("other", soil.structure(sill), nugget, survey.jitterSd(), survey.shiftSd()),
        bump.isEmpty());
  }

  private Reading reading(OtherSurvey survey, int station, int rep, Coordinate at, double pct) {
    return new Reading(
        new Reading.Label(id, survey.id(), "" + station, station, rep, 0),
        new Reading.Position(at.x, at.y, Double.NaN, "", survey.jitterSd()),
        Reading.Moisture.raw(Math.rint(10 * pct) / 10),
        Reading.Protocol.UNKNOWN,
        Reading.Role.PLAN,
        Reading.Quality.NOT_REVIEWED);
  }

  private Bump bump() {
    int cell = random.nextInt(cells.size());
    double size = OtherCourses.between(random, 4, 9);
    return new Bump(
        cells.x()[cell],
        cells.y()[cell],
        OtherCourses.between(random, 2.5, 6),
        random.nextBoolean() ? size : -size);
  }

  private static Geometry outline(RandomGenerator random) {
    double area = OtherCourses.between(random, 300, 650);
    double slim = OtherCourses.between(random, 0.65, 1);
    double turn = OtherCourses.between(random, 0, Math.PI);
    double[] wave = {0.12 * random.nextDouble(), 0.08 * random.nextDouble()};
    double[] phase = {6.3 * random.nextDouble(), 6.3 * random.nextDouble()};
    Coordinate[] ring = new Coordinate[61];
    for (int i = 0; i < 60; i++) {
      double t = 2 * Math.PI * i / 60;
      double r = 1 + wave[0] * Math.cos(2 * t + phase[0]) + wave[1] * Math.cos(3 * t + phase[1]);
      double u = r * Math.cos(t);
      double v = slim * r * Math.sin(t);
      ring[i] =
          new Coordinate(
              u * Math.cos(turn) - v * Math.sin(turn), u * Math.sin(turn) + v * Math.cos(turn));
    }
    ring[60] = ring[0].copy();
    double scale = Math.sqrt(area / FACTORY.createPolygon(ring).getArea());
    for (int i = 0; i < 60; i++) {
      ring[i] = new Coordinate(scale * ring[i].x, scale * ring[i].y);
    }
    ring[60] = ring[0].copy();
    return FACTORY.createPolygon(ring);
  }
}
