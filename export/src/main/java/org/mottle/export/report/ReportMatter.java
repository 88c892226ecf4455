package org.mottle.export.report;

import java.util.List;
import org.mottle.engine.course.GreenLook;
import org.mottle.engine.course.HandWatering;
import org.mottle.engine.irrigation.HeadFinding;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.review.Finding;
import org.mottle.export.read.AerialImage;

/**
 * What a report tells of.
 *
 * @param map what the engine found
 * @param visits every green and survey, in the order of the map
 * @param heads what the moisture says of heads
 * @param watering dry places in walking order
 * @param findings of the review; empty where there was none
 * @param imagery aerial images to lie beneath the map
 */
public record ReportMatter(
    SurveyMap map,
    List<GreenLook> visits,
    List<HeadFinding> heads,
    HandWatering watering,
    List<Finding> findings,
    List<AerialImage> imagery) {
  public ReportMatter {
    visits = List.copyOf(visits);
    heads = List.copyOf(heads);
    findings = List.copyOf(findings);
    imagery = List.copyOf(imagery);
  }
}
