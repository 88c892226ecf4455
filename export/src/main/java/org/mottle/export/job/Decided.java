package org.mottle.export.job;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.mottle.engine.course.CourseOverview;
import org.mottle.engine.course.GreenLook;
import org.mottle.engine.course.HandWatering;
import org.mottle.engine.course.VisitRecord;
import org.mottle.engine.irrigation.HeadFinding;
import org.mottle.engine.mapping.SurveyMap;

/**
 * The maps of a course with what is offered for the decision.
 *
 * @param map what the engine found
 * @param visits every green and survey, compared with its like
 * @param course every green by its last survey
 * @param watering dry places in walking order
 * @param heads what the moisture says of heads; empty where none were given
 */
record Decided(
    SurveyMap map,
    List<GreenLook> visits,
    CourseOverview course,
    HandWatering watering,
    List<HeadFinding> heads) {

  static Decided of(
      SurveyMap map,
      List<VisitRecord> records,
      Optional<OffsetDateTime> watering,
      List<HeadFinding> heads) {
    return new Decided(
        map,
        CourseOverview.visits(map, records),
        CourseOverview.of(map, records),
        HandWatering.of(map, records, map.settings().watering(), watering),
        heads);
  }
}
