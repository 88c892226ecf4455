/**
 * The calibration study: maps of courses whose truth is known, scored alike whatever made them. Two
 * generators of courses ({@link org.mottle.export.calibration.DemoCourses}, {@link
 * org.mottle.export.calibration.OtherCourses}), methods behind {@link
 * org.mottle.export.calibration.Method}, scores from the neutral {@link
 * org.mottle.export.calibration.MappedGreen}. Not part of the default tests: {@link
 * org.mottle.export.calibration.Study} is run by docs/calibration/run.sh.
 */
package org.mottle.export.calibration;
