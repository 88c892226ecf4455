package org.mottle.export.settings;

import org.mottle.engine.mapping.PositionSettings;
import org.mottle.engine.mapping.UncertaintySettings;

/** Reads how much is drawn, and what is known of positions, from a settings file. */
final class UncertaintyReader {
  private UncertaintyReader() {}

  static UncertaintySettings uncertainty(SettingsNode node, UncertaintySettings d) {
    node.allow("realisations", "draws", "seed", "next_stations", "operator_sd_pct");
    int realisations = count(node.at("realisations"), 1, d.realisations());
    int draws = count(node.at("draws"), 1, Math.min(d.draws(), realisations));
    if (realisations < draws) {
      node.problem(
          "realisations must not be fewer than draws, were " + realisations + " and " + draws);
      draws = realisations;
    }
    return new UncertaintySettings(
        realisations,
        draws,
        node.at("seed").whole(Long.MIN_VALUE, d.seed()),
        count(node.at("next_stations"), 0, d.nextStations()),
        node.at("operator_sd_pct").notNegative(d.operatorSdPct()));
  }

  static PositionSettings positions(SettingsNode node, PositionSettings d) {
    node.allow("jitter_m", "shift_m");
    return new PositionSettings(
        metres(node.at("jitter_m"), d.jitterM()), metres(node.at("shift_m"), d.shiftM()));
  }

  private static double metres(SettingsNode node, double otherwise) {
    double metres = node.notNegative(otherwise);
    if (metres > PositionSettings.MOST_M) {
      node.problem("expected " + PositionSettings.MOST_M + " m or less, was " + metres);
      return otherwise;
    }
    return metres;
  }

  private static int count(SettingsNode node, int least, int otherwise) {
    long count = node.whole(least, otherwise);
    if (count > UncertaintySettings.MOST) {
      node.problem("expected " + UncertaintySettings.MOST + " or fewer, was " + count);
      return otherwise;
    }
    return (int) count;
  }
}
