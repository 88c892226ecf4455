package org.mottle.export.settings;

import java.util.Map;
import java.util.Optional;
import org.mottle.engine.survey.Green;
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

  public Optional<TargetBand> bandOf(Green green) {
    BandRule own = greens.get(green.id());
    return own != null ? own.bandOf(green) : byDefault.flatMap(rule -> rule.bandOf(green));
  }

  /** Whether a rule exists for the green, even if its figures are missing. */
  public boolean hasRuleFor(Green green) {
    return greens.containsKey(green.id()) || byDefault.isPresent();
  }
}
