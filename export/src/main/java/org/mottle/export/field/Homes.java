package org.mottle.export.field;

import java.util.Optional;
import org.mottle.engine.position.PositionSource;
import org.mottle.engine.review.FieldRecord;
import org.mottle.engine.survey.Reading;
import org.mottle.export.read.GreenFinder;
import org.mottle.export.read.Greens;

/** Which green a reading belongs to, once shifts are taken off. */
final class Homes {
  /** Two standard errors of a hand-held receiver in the open, m. */
  private static final double REACH_M = 5;

  private final GreenFinder finder;

  Homes(Greens greens) {
    this.finder = new GreenFinder(greens.greens());
  }

  /** Where a reading lies that does not lie in or near the green it names; empty when it does. */
  Optional<FieldRecord.Elsewhere> elsewhere(Reading r) {
    String named = r.label().greenId();
    Optional<String> round = finder.round(r.x(), r.y());
    if (named.isEmpty()) {
      return round.isPresent()
          ? Optional.empty()
          : Optional.of(away(r, finder.nearest(r.x(), r.y())));
    }
    if (finder.isIn(named, r.x(), r.y())) {
      return Optional.empty();
    }
    if (round.isPresent()) {
      return Optional.of(new FieldRecord.Elsewhere(r, round.get(), 0));
    }
    return finder.distance(named, r.x(), r.y()) <= reach(r)
        ? Optional.empty()
        : Optional.of(away(r, named));
  }

  /** The reading with the green it lies in where it names none. */
  Reading named(Reading r) {
    Reading.Label l = r.label();
    return l.greenId().isEmpty()
        ? new Reading(
            new Reading.Label(
                finder.round(r.x(), r.y()).orElseThrow(),
                l.surveyId(),
                l.stationId(),
                l.sequence(),
                l.replicate(),
                l.row()),
            r.position(),
            r.moisture(),
            r.protocol(),
            r.role(),
            r.quality())
        : r;
  }

  private FieldRecord.Elsewhere away(Reading r, String green) {
    return new FieldRecord.Elsewhere(r, green, finder.distance(green, r.x(), r.y()));
  }

  private static double reach(Reading r) {
    double sd = r.position().sdM();
    double shift =
        PositionSource.named(r.position().source()).map(PositionSource::shiftM).orElse(0.0);
    return Double.isNaN(sd) ? REACH_M : 2 * Math.hypot(sd, shift);
  }
}
