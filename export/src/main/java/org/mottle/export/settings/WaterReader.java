package org.mottle.export.settings;

import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import org.mottle.engine.water.WateringSettings;
import org.mottle.engine.water.WateringSettings.Outlook;

/** Reads from a settings file how much water is wanted and how it is given. */
final class WaterReader {
  /** Of cool-season turf, a proposal of this project. */
  private static final double COEFFICIENT = 0.9;

  private static final double MOST_COEFFICIENT = 1.5;
  private static final double MOST_MM_DAY = 20;
  private static final double MOST_DAYS = 14;
  private static final double MOST_MM = 300;

  private WaterReader() {}

  static WateringSettings watering(SettingsNode node, WateringSettings d) {
    node.allow(
        "target_share",
        "efficiency",
        "cap_mm",
        "flow_l_min",
        "root_mm",
        "kc",
        "et0_mm_d",
        "days",
        "rain_mm",
        "at");
    return new WateringSettings(
        between(node.at("target_share"), 0, 1, d.targetShare()),
        between(node.at("efficiency"), 0.1, 1, d.efficiency()),
        node.at("cap_mm").positive(d.capMm()),
        node.at("flow_l_min").positive(d.flowLMin()),
        node.at("root_mm").positive(d.rootMm()),
        outlook(node));
  }

  private static Outlook outlook(SettingsNode node) {
    double kc = between(node.at("kc"), 0, MOST_COEFFICIENT, COEFFICIENT);
    double et0 = between(node.at("et0_mm_d"), 0, MOST_MM_DAY, Double.NaN);
    double days = between(node.at("days"), 0, MOST_DAYS, Double.NaN);
    double rain = between(node.at("rain_mm"), 0, MOST_MM, 0);
    if (Double.isNaN(et0) != Double.isNaN(days)) {
      node.problem(
          "the outlook needs et0_mm_d and days together: what the turf draws is kc · et0_mm_d ·"
              + " days");
      return Outlook.NONE;
    }
    return new Outlook(Double.isNaN(et0) ? 0 : kc * et0 * days, rain);
  }

  /** When the watering is planned. */
  static Optional<OffsetDateTime> at(SettingsNode node) {
    Optional<String> typed = node.text();
    try {
      return typed.map(OffsetDateTime::parse);
    } catch (DateTimeParseException e) {
      node.problem(
          "expected a time with its offset, as 2031-07-10T05:00+01:00, was '" + typed.get() + "'");
      return Optional.empty();
    }
  }

  private static double between(SettingsNode node, double least, double most, double otherwise) {
    double number = node.number(otherwise);
    if (!node.absent() && !(number >= least && number <= most)) {
      node.problem("expected a number from " + least + " to " + most + ", was " + number);
      return otherwise;
    }
    return number;
  }
}
