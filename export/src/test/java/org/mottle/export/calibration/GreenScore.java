package org.mottle.export.calibration;

import java.util.function.IntPredicate;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.mottle.engine.survey.Reading;

/**
 * One map against its truth, in a form that can be added up.
 *
 * @param label which survey and green
 * @param sound whether nothing is wrong with the green
 * @param cells how many
 * @param error sums over the cells
 * @param dry of the ground below the band
 * @param wet of the ground above it
 * @param patches of the outlines drawn
 */
record GreenScore(
    Label label, boolean sound, int cells, Errors error, Side dry, Side wet, Patches patches) {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /**
   * @param survey which
   * @param green which
   * @param chosen whether stations are among the readings that were chosen for what is seen there
   */
  record Label(String survey, String green, boolean chosen) {}

  /**
   * Sums over the cells.
   *
   * @param sum of map minus truth
   * @param squares of map minus truth
   * @param in50 cells within their 50 % interval
   * @param in90 cells within their 90 % interval
   * @param crps continuous ranked probability score
   * @param log minus log density
   */
  record Errors(double sum, double squares, int in50, int in90, double crps, double log) {}

  /**
   * One limit.
   *
   * @param p probabilities against what was so
   * @param claim of the area
   * @param trueM2 of the area
   * @param wrongM2 at P ≥ 0.8 and not so
   */
  record Side(Histogram p, AreaClaim claim, double trueM2, double wrongM2) {}

  /**
   * @param drawn how many
   * @param existence sum of their probabilities
   * @param there how many hold at least 1 m² that is so
   */
  record Patches(int drawn, double existence, int there) {}

  static GreenScore of(MappedGreen map) {
    GreenCase green = map.subject();
    return new GreenScore(
        new Label(
            green.subject().surveyId(),
            green.subject().green().id(),
            green.subject().readings().stream()
                .anyMatch(r -> r.role() == Reading.Role.POINT_OF_INTEREST)),
        green.sound(),
        green.cells().size(),
        errors(map),
        side(green, map.dry(), green::isDry),
        side(green, map.wet(), green::isWet),
        patches(map));
  }

  double meanError() {
    return error.sum() / cells;
  }

  double coverage90() {
    return error.in90() / (double) cells;
  }

  private static Errors errors(MappedGreen map) {
    double sum = 0;
    double squares = 0;
    int in50 = 0;
    int in90 = 0;
    double crps = 0;
    double log = 0;
    double[] truth = map.subject().truth();
    for (int i = 0; i < truth.length; i++) {
      double off = map.mean()[i] - truth[i];
      if (!Double.isFinite(off)) {
        throw new IllegalStateException(
            map.subject().subject().label() + ": cell " + i + " is mapped as " + map.mean()[i]);
      }
      sum += off;
      squares += off * off;
      in50 += map.fifty().holds(i, truth[i]) ? 1 : 0;
      in90 += map.ninety().holds(i, truth[i]) ? 1 : 0;
      crps += map.cells().crps(i, truth[i]);
      log += map.cells().logScore(i, truth[i]);
    }
    return new Errors(sum, squares, in50, in90, crps, log);
  }

  private static Side side(GreenCase green, MappedGreen.Exceedance said, IntPredicate isSo) {
    Histogram p = new Histogram();
    double cell = green.cells().cellM2();
    double truly = 0;
    for (int i = 0; i < green.cells().size(); i++) {
      p.add(said.p()[i], isSo.test(i), cell);
      truly += isSo.test(i) ? cell : 0;
    }
    return new Side(p, said.area(), truly, p.calledM2() - p.calledSoM2());
  }

  private static Patches patches(MappedGreen map) {
    double existence = 0;
    int there = 0;
    for (PatchClaim patch : map.patches()) {
      existence += patch.existence();
      there += trueM2(map.subject(), patch) >= 1 ? 1 : 0;
    }
    return new Patches(map.patches().size(), existence, there);
  }

  private static double trueM2(GreenCase green, PatchClaim patch) {
    PreparedGeometry outline = PreparedGeometryFactory.prepare(patch.outline());
    double area = 0;
    for (int i = 0; i < green.cells().size(); i++) {
      boolean isSo = patch.wet() ? green.isWet(i) : green.isDry(i);
      var centre = FACTORY.createPoint(new Coordinate(green.cells().x()[i], green.cells().y()[i]));
      area += isSo && outline.covers(centre) ? green.cells().cellM2() : 0;
    }
    return area;
  }
}
