package org.mottle.export.settings;

import java.util.Optional;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Purpose;
import org.mottle.engine.survey.TargetBand;

/** How the target band of a green is found. */
public sealed interface BandRule {

  /** The band for a green, or empty where the figures it needs are not known. */
  Optional<TargetBand> bandOf(Green green);

  /** Limits given as such. */
  record Limits(TargetBand band) implements BandRule {
    @Override
    public Optional<TargetBand> bandOf(Green green) {
      return Optional.of(band);
    }
  }

  /**
   * Limits from field capacity and wilt onset; a figure that is NaN is taken from the green itself.
   */
  record Anchors(
      Purpose purpose, double fieldCapacityPct, double wiltOnsetPct, String by, String on)
      implements BandRule {
    @Override
    public Optional<TargetBand> bandOf(Green green) {
      double fc = orElse(fieldCapacityPct, green.rootZone().fieldCapacityPct());
      double wp = orElse(wiltOnsetPct, green.rootZone().wiltOnsetPct());
      return fc > wp ? Optional.of(purpose.between(wp, fc, by, on)) : Optional.empty();
    }

    private static double orElse(double value, double other) {
      return Double.isNaN(value) ? other : value;
    }
  }
}
