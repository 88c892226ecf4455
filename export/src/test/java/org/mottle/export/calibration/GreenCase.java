package org.mottle.export.calibration;

import java.util.List;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.Stations;
import org.mottle.engine.survey.TargetBand;

/**
 * One green in one survey, with its truth.
 *
 * @param subject what a mapper sees
 * @param cells where map and truth are compared
 * @param truth [cells] local mean, % by volume
 * @param known what the generator knows
 * @param sound whether nothing is wrong with the green
 */
record GreenCase(GreenSurvey subject, Cells cells, double[] truth, Known known, boolean sound) {

  /** Fewer stations than this carry no map. */
  static final int LEAST_STATIONS = 8;

  TargetBand band() {
    return subject.band().orElseThrow();
  }

  List<Stations.Station> stations() {
    return Stations.of(subject.readings()).stations();
  }

  boolean isMappable() {
    return stations().size() >= LEAST_STATIONS;
  }

  boolean isDry(int cell) {
    return truth[cell] < band().lowPct();
  }

  boolean isWet(int cell) {
    return truth[cell] > band().highPct();
  }
}
