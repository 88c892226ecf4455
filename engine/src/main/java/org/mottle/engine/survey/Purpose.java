package org.mottle.engine.survey;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * What the turf is managed for, with the share of the extractable water that is usually kept for
 * it: REW = (theta - wilt onset) / (field capacity - wilt onset). The shares are proposals of this
 * project for want of a published standard (common practice, no source); the site's agronomist
 * overrides them with limits of the site's own.
 */
public enum Purpose {
  BALL_ROLL("ball roll", 0.35, 0.65),
  APPEARANCE("appearance", 0.50, 0.85),
  SAVING_WATER("saving water", 0.25, 0.55);

  private final String label;
  private final double lowShare;
  private final double highShare;

  Purpose(String label, double lowShare, double highShare) {
    this.label = label;
    this.lowShare = lowShare;
    this.highShare = highShare;
  }

  public String label() {
    return label;
  }

  public static Optional<Purpose> ofLabel(String label) {
    String wanted = label.strip().toLowerCase(Locale.ROOT).replace('_', ' ').replace('-', ' ');
    return Arrays.stream(values()).filter(p -> p.label.equals(wanted)).findFirst();
  }

  /** Limits between the site's own anchors, both % by volume. */
  public TargetBand between(double wiltOnsetPct, double fieldCapacityPct, String by, String on) {
    double span = fieldCapacityPct - wiltOnsetPct;
    return new TargetBand(
        label, wiltOnsetPct + lowShare * span, wiltOnsetPct + highShare * span, by, on);
  }
}
