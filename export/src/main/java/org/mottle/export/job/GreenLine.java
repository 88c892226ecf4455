package org.mottle.export.job;

import java.util.Locale;
import org.mottle.engine.mapping.MapVariogram;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Standing;
import org.mottle.engine.patch.ExpectedGround;
import org.mottle.engine.patch.Marks;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.water.Watering;
import org.mottle.export.report.Words;

/** One green in one line of plain words. */
final class GreenLine {

  /** Less is not worth a word, L. */
  private static final double LEAST_L = 5;

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
      append(line, map);
    }
    Remarks.of(outcome).forEach(remark -> line.append("; ").append(remark));
    return line.toString();
  }

  private static void append(StringBuilder line, Outcome.Mapped map) {
    line.append("; ").append(map.basis().method().label());
    map.basis()
        .variogram()
        .map(MapVariogram::source)
        .ifPresent(s -> line.append(" with ").append(s));
    if (map.subject().band().isEmpty()) {
      line.append("; no classes, since no band is set for it");
    } else if (map.parts().marks().isPresent()) {
      append(line, map.parts().marks().get());
    } else {
      line.append(
          String.format(
              Locale.ROOT,
              "; dry %s m², in band %s m², wet %s m² by the value alone",
              Words.area(map.areaM2(ZoneClass.DRY)),
              Words.area(map.areaM2(ZoneClass.IN_BAND)),
              Words.area(map.areaM2(ZoneClass.WET))));
    }
    double sd = map.surface().medianSd();
    if (!Double.isNaN(sd)) {
      line.append(String.format(Locale.ROOT, "; SD about %.1f %%", sd));
    }
    if (map.watering() instanceof Watering.Wanted wanted
        && wanted.dryGround().litres().best() >= LEAST_L) {
      line.append("; dry ground wants ").append(Words.litres(wanted.dryGround().litres()));
    } else if (map.watering() instanceof Watering.NotWorkedOut not
        && map.subject().band().isPresent()
        && map.basis().kriging().isPresent()) {
      line.append("; ").append(not.why());
    }
    line.append("; ").append(words(map.standing()));
  }

  private static void append(StringBuilder line, Marks marks) {
    String separator = "; expected ";
    for (ExpectedGround e : marks.expected()) {
      line.append(separator)
          .append(e.kind().code())
          .append(' ')
          .append(Words.area(e.areaM2(), e.areaLow(), e.areaHigh()));
      separator = ", ";
    }
    append(line, "; ", marks.patches().size(), "patch outlined", "patches outlined");
    append(line, "; ", marks.spots().size(), "spot without outline", "spots without outline");
  }

  private static void append(
      StringBuilder line, String separator, int count, String one, String more) {
    if (count > 0) {
      line.append(separator).append(count).append(' ').append(count == 1 ? one : more);
    }
  }

  private static String words(Standing standing) {
    return switch (standing) {
      case PATCHES -> "good for patches";
      case PROBABILITIES -> "good for probabilities, not for outlines";
      case INDICATIVE -> "indicative only";
      case NONE -> "no map";
    };
  }
}
