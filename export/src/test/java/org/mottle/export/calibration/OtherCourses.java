package org.mottle.export.calibration;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.Matern;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;
import org.mottle.engine.variogram.VariogramModel;

/**
 * Courses from another generator, which shares no code with the demo's: nine greens of random size
 * (300 to 650 m²) and shape, read in four surveys. Of a course: the model (exponential, spherical
 * or Matérn 1.5), its practical range (6 to 20 m), nugget over sill (0.15 to 0.6), whether the
 * nugget is constant or grows with the sill, the share of the field that persists. Of a survey and
 * green: the sill (log-normal), the mean, positions ({@link OtherSurvey}). A third of the greens
 * has a smooth fault. Fields are exact: Cholesky factors of the covariance of all cells of 1 m and
 * all stations.
 */
record OtherCourses() implements Courses {
  static final int GREENS = 9;
  static final int SURVEYS = 4;

  /** So that a seed is another course than that of the demo by a number of its own. */
  private static final long SALT = 0x5DEECE66DL;

  /**
   * What holds for a whole course.
   *
   * @param unit variogram of the local mean with sill 1
   * @param nugget of one insertion where the sill is {@code sill}
   * @param sill geometric mean of the sills of its greens, %²
   * @param proportional whether the nugget grows with the sill
   * @param persistent share of the field's variance that is the same in all surveys
   */
  record Soil(
      VariogramModel unit, double nugget, double sill, boolean proportional, double persistent) {
    NestedModel structure(double ofSill) {
      return NestedModel.of(0, unit.with(ofSill, unit.range()));
    }

    double nuggetAt(double ofSill) {
      return proportional ? nugget * ofSill / sill : nugget;
    }
  }

  @Override
  public String name() {
    return "another generator";
  }

  @Override
  public List<GreenCase> of(long seed) {
    RandomGenerator random = new Well19937c(seed ^ SALT);
    Soil soil = soil(random);
    List<OtherSurvey> surveys = new ArrayList<>();
    for (int s = 1; s <= SURVEYS; s++) {
      surveys.add(OtherSurvey.draw("T" + s, random, soil));
    }
    List<GreenCase> cases = new ArrayList<>();
    for (int g = 1; g <= GREENS; g++) {
      cases.addAll(new OtherGreen("H" + g, random, soil).read(surveys));
    }
    return cases;
  }

  static double between(RandomGenerator random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private static Soil soil(RandomGenerator random) {
    VariogramModel shape =
        switch (random.nextInt(3)) {
          case 0 -> new Exponential(1, 1);
          case 1 -> new Spherical(1, 1);
          default -> new Matern(1, 1, 1.5);
        };
    double range = between(random, 6, 20) / shape.practicalRange();
    double sill = 3 * Math.exp(0.3 * random.nextGaussian());
    double share = between(random, 0.15, 0.6);
    return new Soil(
        shape.with(1, range),
        sill * share / (1 - share),
        sill,
        random.nextBoolean(),
        between(random, 0, 0.7));
  }
}
