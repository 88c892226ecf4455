package org.mottle.export.settings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.survey.RootZone;
import org.mottle.engine.survey.TargetBand;

/** What to consider about a band that reaches beyond what the green's soil is recorded to hold. */
final class AnchorRemarks {
  /** After soaking rain the wet limit is set above field capacity on purpose. */
  private static final String DRAINAGE = "drainage";

  private AnchorRemarks() {}

  static List<String> of(TargetBand band, RootZone soil) {
    List<String> remarks = new ArrayList<>();
    if (band.highPct() > soil.fieldCapacityPct()
        && !band.purpose().strip().equalsIgnoreCase(DRAINAGE)) {
      remarks.add(
          said(
              "the upper limit %.1f %% is above field capacity (%.1f %%): ground that has not drained"
                  + " counts as in band; check the limit, or its purpose",
              band.highPct(), soil.fieldCapacityPct()));
    }
    if (band.lowPct() < soil.wiltOnsetPct()) {
      remarks.add(
          said(
              "the lower limit %.1f %% is below wilt onset (%.1f %%): turf may wilt before its ground"
                  + " counts as dry; check the limit",
              band.lowPct(), soil.wiltOnsetPct()));
    }
    return remarks;
  }

  private static String said(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
