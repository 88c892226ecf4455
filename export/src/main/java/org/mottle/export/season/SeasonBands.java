package org.mottle.export.season;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.survey.WaterHistory;
import org.mottle.export.settings.Bands;

/**
 * What counts as wet through a season. After soaking rain everything lies above a band for play, so
 * wet is what lies above field capacity by more than {@value #ABOVE_FC_PCT} % for five days of it
 * (a proposal of this project); with other water before the visit it is the site's own band.
 */
final class SeasonBands {
  private static final double ABOVE_FC_PCT = 1;

  private SeasonBands() {}

  static Optional<TargetBand> of(
      Bands bands, Green green, List<Reading> readings, Optional<Conditions> conditions) {
    Optional<TargetBand> own = bands.bandOf(green, readings);
    double wet = green.rootZone().fieldCapacityPct() + ABOVE_FC_PCT;
    if (!(wet > 0)
        || conditions
            .filter(c -> WaterHistory.of(c.water()) == WaterHistory.AFTER_RAIN)
            .isEmpty()) {
      return own;
    }
    double low = own.map(TargetBand::lowPct).orElse(green.rootZone().wiltOnsetPct());
    return low < wet
        ? Optional.of(
            new TargetBand(
                "drainage",
                low,
                wet,
                own.map(TargetBand::by).orElse(""),
                own.map(TargetBand::on).orElse("")))
        : own;
  }
}
