package org.mottle.export.calibration;

import java.util.List;

/** A generator of courses with their truth. Used by several threads. */
interface Courses {

  String name();

  /** All greens of all surveys of the course of that seed that enough stations were read on. */
  List<GreenCase> of(long seed);
}
