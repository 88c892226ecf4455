package org.mottle.export.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.demo.CourseGenerator;
import org.mottle.demo.GeneratedCourse;
import org.mottle.demo.site.Build;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.GreenTruth;
import org.mottle.demo.truth.Survey;
import org.mottle.demo.walk.Probe;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.RootZone;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

/**
 * The invented courses of the demo generator, surveys S1 to S5. The truth is the local mean at the
 * start of the survey; raw readings dry by 0.35 % an hour after it, so that maps of raw readings
 * are too dry by 0.35 times the hours to the green's visit.
 *
 * @param clean whether readings are as a review would hand them on ({@link CleanReadings}), or as
 *     the files hold them
 */
record DemoCourses(boolean clean) implements Courses {
  private static final double CELL_M = 0.5;
  private static final double NUGGET = Probe.MICRO_VARIANCE + Probe.ERROR_SD * Probe.ERROR_SD;
  private static final double TIED_SHIFT_SD = 0.5;
  private static final List<String> SOUND = List.of("G1", "G2");
  private static final GeometryFactory FACTORY = new GeometryFactory();

  @Override
  public String name() {
    return clean ? "demo, reviewed readings" : "demo, readings as they are";
  }

  @Override
  public List<GreenCase> of(long seed) {
    GeneratedCourse course = CourseGenerator.generate(seed);
    List<GreenCase> cases = new ArrayList<>();
    for (Survey survey : List.of(Survey.S1, Survey.S2, Survey.S3, Survey.S4, Survey.S5)) {
      SurveyReadings readings = new SurveyReadings(course.season(), survey, clean);
      for (GreenSite site : CoursePlace.greens()) {
        GreenCase green = green(course.season().truth(site.id()), survey, readings.of(site.id()));
        if (green.isMappable()) {
          cases.add(green);
        }
      }
    }
    return cases;
  }

  static Geometry outline(GreenSite site) {
    int n = site.ring().size();
    Coordinate[] ring = new Coordinate[n + 1];
    for (int i = 0; i <= n; i++) {
      Point p = site.world(site.ring().vertex(i % n));
      ring[i] = new Coordinate(p.x(), p.y());
    }
    return FACTORY.createPolygon(ring);
  }

  private GreenCase green(GreenTruth truth, Survey survey, List<Reading> readings) {
    GreenSite site = truth.green();
    Green green =
        new Green(
            site.id(), site.name(), outline(site), rootZone(site.build()), Green.Boundary.UNKNOWN);
    Cells cells = Cells.of(green.outline(), CELL_M);
    Point centre = site.world(0, 0);
    double[] pct =
        IntStream.range(0, cells.size())
            .mapToDouble(
                i -> truth.soilPct(survey, cells.x()[i] - centre.x(), cells.y()[i] - centre.y()))
            .toArray();
    return new GreenCase(
        new GreenSurvey(green, survey.name(), readings, Optional.of(band(survey, site.build()))),
        cells,
        pct,
        known(survey, site, readings),
        SOUND.contains(site.id()));
  }

  private Known known(Survey survey, GreenSite site, List<Reading> readings) {
    double jitter =
        readings.isEmpty()
            ? 0
            : Arrays.stream(readings.stream().mapToDouble(r -> r.position().sdM()).toArray())
                .average()
                .orElseThrow();
    double shift =
        switch (survey) {
          case S2 -> site.id().compareTo("G3") <= 0 ? 0 : 1;
          case S3 -> 2;
          case S5 -> clean && site.id().equals("G2") ? TIED_SHIFT_SD : 1;
          default -> 1;
        };
    Build build = site.build();
    return new Known(
        build == Build.PUSH_UP_SOIL ? "soil" : "sand",
        NestedModel.of(0, new Spherical(survey.sill(build), Survey.rangeM(build))),
        NUGGET,
        jitter,
        shift);
  }

  private static RootZone rootZone(Build build) {
    return new RootZone(
        build.label(),
        "",
        build.rootDepthMm(),
        build.fieldCapacityPct(),
        build.wiltOnsetPct(),
        build.porosityPct());
  }

  /**
   * After rain: wet above field capacity + 1 %, dry below field capacity - 5 %, where the rain did
   * not go in. Otherwise shares of the extractable water: ball roll in S2 and S3, saving water in
   * S4.
   */
  static TargetBand band(Survey survey, Build build) {
    double fc = build.fieldCapacityPct();
    double wp = build.wiltOnsetPct();
    return switch (survey) {
      case S1, S5 -> TargetBand.of(fc - 5, fc + 1);
      case S4 -> TargetBand.of(wp + 0.25 * (fc - wp), wp + 0.55 * (fc - wp));
      default -> TargetBand.of(wp + 0.35 * (fc - wp), wp + 0.65 * (fc - wp));
    };
  }
}
