package org.mottle.export.settings;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;

/**
 * The bands of a site.
 *
 * @param byDefault for every green without one of its own
 * @param greens by green id
 * @param source what messages call the place of the bands: the settings file
 */
public record Bands(Optional<BandRule> byDefault, Map<String, BandRule> greens, String source) {

  public static final Bands NONE = new Bands(Optional.empty(), Map.of(), "settings");

  public Bands {
    greens = Map.copyOf(greens);
  }

  /** The same with another rule for greens without one of their own. */
  public Bands withDefault(BandRule rule) {
    return new Bands(Optional.of(rule), greens, source);
  }

  /** What its rule makes of a green and the readings of a visit; empty without a rule. */
  public Optional<BandOutcome> outcome(Green green, List<Reading> readings) {
    return Optional.ofNullable(greens.get(green.id()))
        .or(() -> byDefault)
        .map(rule -> rule.of(green, readings));
  }

  /** The band of a green at a visit, where it has one. */
  public Optional<TargetBand> bandOf(Green green, List<Reading> readings) {
    return outcome(green, readings).flatMap(BandOutcome::band);
  }
}
