package org.mottle.export.calibration;

import org.apache.commons.math3.random.RandomGenerator;
import org.mottle.engine.survey.TargetBand;

/**
 * One day on a course of the other generator.
 *
 * @param id of the survey
 * @param meanPct of the course, % by volume
 * @param sillFactor of the day
 * @param jitterSd of a position, per axis, m
 * @param shiftSd of the positions of a green together, per axis, m
 * @param band the same on all greens
 */
record OtherSurvey(
    String id,
    double meanPct,
    double sillFactor,
    double jitterSd,
    double shiftSd,
    TargetBand band) {

  static OtherSurvey draw(String id, RandomGenerator random, OtherCourses.Soil soil) {
    double mean = OtherCourses.between(random, 13, 30);
    double spread = Math.sqrt(soil.sill() + 1);
    double jitter = Math.exp(OtherCourses.between(random, Math.log(0.1), Math.log(3)));
    return new OtherSurvey(
        id,
        mean,
        Math.exp(0.3 * random.nextGaussian()),
        jitter,
        OtherCourses.between(random, 0, 1) * Math.max(jitter, 0.5),
        TargetBand.of(
            mean - OtherCourses.between(random, 0.5, 1.6) * spread,
            mean + OtherCourses.between(random, 0.5, 1.6) * spread));
  }
}
