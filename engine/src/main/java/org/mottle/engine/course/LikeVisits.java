package org.mottle.engine.course;

import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.review.Grade;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.survey.WaterHistory;

/**
 * Which visits can be compared: of one survey, with the same water before them, read with rods of
 * one length, for one purpose, of like grade (A and B, or C). Other differences between greens are
 * those of the days, not of the ground.
 *
 * @param label what they have in common, in words; empty: compared with none
 * @param why why a visit is compared with none; empty where it is
 */
public record LikeVisits(String label, String why) {

  static LikeVisits of(Outcome outcome, VisitRecord record) {
    if (!(outcome instanceof Outcome.Mapped)) {
      return alone("not mapped");
    }
    if (record.history() == WaterHistory.UNKNOWN) {
      return alone("the water before the visit is not recorded (rain_h, rain_mm, irr_h, irr_mm)");
    }
    Optional<Grade.Letter> letter = record.grade().map(Grade::letter);
    if (letter.isEmpty()) {
      return alone("its readings were not graded");
    }
    if (letter.get() == Grade.Letter.D) {
      return alone("grade D");
    }
    TreeSet<Double> rods =
        outcome.subject().readings().stream()
            .filter(r -> r.quality().used())
            .map(Reading::protocol)
            .map(Reading.Protocol::rodMm)
            .collect(Collectors.toCollection(TreeSet::new));
    if (rods.size() != 1 || Double.isNaN(rods.first())) {
      return alone("the rods are of several lengths, or not recorded (rod_mm)");
    }
    return new LikeVisits(
        String.format(
            Locale.ROOT,
            "%s, %s, rods %.0f mm, grade %s%s",
            outcome.subject().surveyId(),
            record.history().label(),
            rods.first(),
            letter.get() == Grade.Letter.C ? "C" : "A or B",
            outcome
                .subject()
                .band()
                .map(TargetBand::purpose)
                .filter(p -> !p.isEmpty())
                .map(p -> ", for " + p)
                .orElse("")),
        "");
  }

  private static LikeVisits alone(String why) {
    return new LikeVisits("", why);
  }

  boolean compared() {
    return why.isEmpty();
  }
}
