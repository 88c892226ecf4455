package org.mottle.export.field;

import java.util.Optional;
import org.mottle.engine.review.FieldRecord;
import org.mottle.engine.survey.Reading;
import org.mottle.export.read.GreenFinder;
import org.mottle.export.read.Greens;

/** Which green a reading belongs to, once shifts are taken off. */
final class Homes {
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
    return finder.distance(named, r.x(), r.y())
            <= GreenFinder.reachM(r.position().sdM(), r.position().source())
        ? Optional.empty()
        : Optional.of(away(r, named));
  }

  /** The reading with the green it lies in where it names none. */
  Reading named(Reading r) {
    Reading.Label l = r.label();
    return l.greenId().isEmpty()
        ? r.withLabel(l.withGreen(finder.round(r.x(), r.y()).orElseThrow()))
        : r;
  }

  private FieldRecord.Elsewhere away(Reading r, String green) {
    return new FieldRecord.Elsewhere(r, green, finder.distance(green, r.x(), r.y()));
  }
}
