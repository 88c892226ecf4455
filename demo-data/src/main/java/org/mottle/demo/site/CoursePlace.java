package org.mottle.demo.site;

import java.util.List;
import org.mottle.demo.site.Shape.Harmonic;

/**
 * Ostrevane Heath in the Vale of Merrowin: nine greens that do not exist, laid out in open ocean at
 * 48° N 15° W so that nobody can mistake them for a real site.
 */
public final class CoursePlace {

  public static final String NAME = "Ostrevane Heath";
  public static final String CRS = "EPSG:32628";

  /** Metres of EPSG:32628 at (0, 0) of the course. */
  public static final Point ORIGIN = new Point(500000, 5316300);

  /** EPSG:32628: UTM zone 28 north on the WGS 84 ellipsoid. */
  public static final TransverseMercator PROJECTION =
      new TransverseMercator(
          new TransverseMercator.Ellipsoid(6378137, 298.257223563),
          new TransverseMercator.Grid(0, -15, 0.9996, 500000, 0));

  private static final List<GreenSite> GREENS =
      List.of(
          green("G1", "Alder", at(120, 80), shape(13.5, 10.5, .06, .6, .05, .2, 20), at(1.2, -1.0)),
          green("G2", "Bramble", at(310, 140), shape(15, 11, .05, 1, .07, 1.1, 75), at(-.8, 1.6)),
          green("G3", "Clé", at(520, 90), shape(14, 12, .04, .3, .06, .8, 140), at(1.5, 1.2)),
          green("G4", "Dünen", at(700, 210), shape(16, 11.5, .08, .9, .04, .5, 10), at(.5, 2)),
          green("G5", "Ember", at(640, 420), shape(12.5, 10, .05, .2, .08, .4, 55), at(-1.4, .6)),
          green(
              "G6", "Furrow", at(430, 480), shape(15.5, 12.5, .06, 1.2, .05, .9, 100), at(.9, .9)),
          green("G7", "Gorse", at(230, 520), shape(13, 11, .03, .7, .06, .1, 165), at(-1.8, -.7)),
          green("G8", "Heather", at(90, 390), shape(17, 11, .07, .4, .05, .7, 35), at(2.4, 1)),
          green("G9", "Île", at(60, 230), shape(14.5, 11.5, .05, .8, .06, .3, 120), at(.6, -1.8)));

  private CoursePlace() {}

  /** G1 to G9 in order. */
  public static List<GreenSite> greens() {
    return GREENS;
  }

  /** The green of that id. */
  public static GreenSite green(String id) {
    return GREENS.stream()
        .filter(g -> g.id().equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("there is no green '" + id + "'"));
  }

  private static GreenSite green(
      String id, String name, Point centre, Shape shape, Point slopePct) {
    Build build =
        switch (id) {
          case "G7" -> Build.PUSH_UP_SOIL;
          case "G9" -> Build.SAND;
          default -> Build.SAND_OVER_GRAVEL;
        };
    return new GreenSite(id, name, centre, shape.ring(), build, slopePct);
  }

  private static Point at(double x, double y) {
    return new Point(x, y);
  }

  private static Shape shape(
      double a, double b, double e2, double p2, double e3, double p3, double turn) {
    return new Shape(a, b, new Harmonic(e2, p2), new Harmonic(e3, p3), turn);
  }
}
