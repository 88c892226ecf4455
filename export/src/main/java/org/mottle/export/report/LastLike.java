package org.mottle.export.report;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.course.GreenLook;
import org.mottle.engine.course.LikeVisits;
import org.mottle.engine.interval.Interval;

/**
 * The last visit of the same green that can be compared with a visit: the same water before it, the
 * same rods, like grades, one purpose.
 *
 * @param now the visit
 * @param before the last one like it
 */
record LastLike(GreenLook now, GreenLook before) {

  /**
   * @param visits of all surveys, older first
   */
  static Optional<LastLike> of(GreenLook now, List<GreenLook> visits) {
    GreenLook last = null;
    for (GreenLook visit : visits) {
      if (visit == now) {
        break;
      }
      if (green(visit).equals(green(now)) && alike(visit, now)) {
        last = visit;
      }
    }
    return Optional.ofNullable(last).map(before -> new LastLike(now, before));
  }

  private static boolean alike(GreenLook a, GreenLook b) {
    return a.like().why().isEmpty() && b.like().why().isEmpty() && kind(a).equals(kind(b));
  }

  /** What like visits have in common, the survey left out. */
  private static String kind(GreenLook look) {
    LikeVisits like = look.like();
    String survey = look.outcome().subject().surveyId();
    return like.label().startsWith(survey) ? like.label().substring(survey.length()) : like.label();
  }

  private static String green(GreenLook look) {
    return look.outcome().subject().green().id();
  }

  /**
   * Later less earlier; the half widths of two intervals that know nothing of each other add in
   * squares.
   */
  static Interval difference(Interval now, Interval before) {
    double low = Math.hypot(now.best() - now.low(), before.high() - before.best());
    double high = Math.hypot(now.high() - now.best(), before.best() - before.low());
    double best = now.best() - before.best();
    return new Interval(best - low, best, best + high);
  }
}
