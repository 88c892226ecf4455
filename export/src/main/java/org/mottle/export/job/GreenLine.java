package org.mottle.export.job;

import java.util.Locale;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyVariogram;
import org.mottle.engine.patch.ZoneClass;

/** One green in one line of plain words. */
final class GreenLine {

  private GreenLine() {}

  static String of(Outcome outcome) {
    StringBuilder line = new StringBuilder(outcome.subject().label()).append(": ");
    int n = outcome.stations().stations().size();
    line.append(n).append(n == 1 ? " place read" : " places read");
    if (outcome.summary().n() > 0) {
      line.append(String.format(Locale.ROOT, ", mean %.1f %%", outcome.summary().mean()));
    }
    if (outcome instanceof Outcome.NoMap none) {
      line.append("; NO MAP: ").append(none.why());
    } else if (outcome instanceof Outcome.Mapped map) {
      line.append("; ").append(map.basis().method().label());
      map.basis()
          .variogram()
          .map(SurveyVariogram::source)
          .ifPresent(s -> line.append(" with ").append(s));
      if (map.subject().band().isPresent()) {
        line.append(
            String.format(
                Locale.ROOT,
                "; dry %.0f m², in band %.0f m², wet %.0f m²",
                map.areaM2(ZoneClass.DRY),
                map.areaM2(ZoneClass.IN_BAND),
                map.areaM2(ZoneClass.WET)));
      } else {
        line.append("; no classes, since no band is set for it");
      }
      double sd = map.surface().medianSd();
      if (!Double.isNaN(sd)) {
        line.append(String.format(Locale.ROOT, "; SD about %.1f %%", sd));
      }
    }
    outcome.remarks().forEach(remark -> line.append("; ").append(remark));
    return line.toString();
  }
}
