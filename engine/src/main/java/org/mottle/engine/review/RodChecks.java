package org.mottle.engine.review;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.math3.stat.StatUtils;
import org.mottle.engine.survey.Reading;

/**
 * Rods and soil that make readings incomparable: lengths mixed in a visit or between visits, a
 * calibration that changed, soil much warmer or saltier. Rods give the mean over their length, so
 * readings of two lengths are of two layers and never mixed in one map or trend.
 */
final class RodChecks {
  /** One study of a low-cost capacitance probe: about 2 % by volume for 10 degrees. */
  private static final double WARMER_C = 10;

  /**
   * Bulk conductivity above which permittivity probes are disturbed (common practice, no source).
   */
  private static final double SALTY_DSM = 2;

  private RodChecks() {}

  /** All sheets of a record, older surveys first. */
  static void check(List<Sheet> sheets) {
    double usual = usual(sheets);
    sheets.forEach(RodChecks::withinVisit);
    Map<String, Sheet> last = new HashMap<>();
    for (Sheet sheet : sheets) {
      double own = length(sheet);
      if (!Double.isNaN(own) && !Double.isNaN(usual) && own != usual) {
        sheet.find(
            Rule.RODS,
            Severity.REJECT,
            String.format(
                Locale.ROOT,
                "read with rods of %.0f mm where the record is read with %.0f mm: another layer of"
                    + " the soil, and bands belong to a rod length",
                own,
                usual),
            "map it apart, with a band of its own, or compare by a paired regression of this site"
                + " (15 pairs or more)");
      } else if (Double.isNaN(own) && sheet.size() > 0) {
        sheet.find(
            Rule.CONDITIONS,
            Severity.NOTE,
            "the length of the rods is not recorded (rod_mm)",
            "record it: readings of other rods must not be mixed with these");
      }
      soil(sheet, last.put(sheet.visit.green().id(), sheet));
    }
  }

  private static void withinVisit(Sheet sheet) {
    double own = length(sheet);
    int[] other =
        Arrays.stream(sheet.counting())
            .filter(i -> !Double.isNaN(rod(sheet, i)) && rod(sheet, i) != own)
            .toArray();
    if (other.length > 0) {
      sheet.find(
          Rule.RODS,
          Severity.REJECT,
          other,
          String.format(
              Locale.ROOT,
              "%s: rods of %.0f mm among rods of %.0f mm",
              sheet.names(other),
              rod(sheet, other[0]),
              own),
          "read these stations with the rods of the others");
    }
    List<String> curves =
        Arrays.stream(sheet.counting())
            .mapToObj(i -> sheet.reading(i).protocol().calibration())
            .filter(c -> !c.isEmpty())
            .distinct()
            .toList();
    if (curves.size() > 1) {
      sheet.find(
          Rule.RODS,
          Severity.WARN,
          "read with the calibrations " + String.join(" and ", curves),
          "use one calibration on a green");
    }
  }

  private static void soil(Sheet sheet, Sheet before) {
    double warmth = mean(sheet, true);
    if (before != null && Math.abs(warmth - mean(before, true)) > WARMER_C) {
      sheet.find(
          Rule.SOIL,
          Severity.WARN,
          String.format(
              Locale.ROOT,
              "the soil was at %.0f °C, in %s at %.0f °C; probes may read about 2 %% by volume apart",
              warmth,
              before.visit.surveyId(),
              mean(before, true)),
          "compare the two with care");
    }
    double salt = mean(sheet, false);
    if (salt > SALTY_DSM) {
      sheet.find(
          Rule.SOIL,
          Severity.WARN,
          String.format(Locale.ROOT, "bulk conductivity is %.1f dS/m", salt),
          "check the probe against cores: salt disturbs permittivity");
    }
  }

  private static double mean(Sheet sheet, boolean warmth) {
    double[] values =
        Arrays.stream(sheet.counting())
            .mapToDouble(
                i -> {
                  Reading.Protocol p = sheet.reading(i).protocol();
                  return warmth ? p.soilC() : p.conductivityDsM();
                })
            .filter(v -> !Double.isNaN(v))
            .toArray();
    return values.length == 0 ? Double.NaN : StatUtils.mean(values);
  }

  /** The length most readings of a visit, or its record, name. */
  static double length(Sheet sheet) {
    return mostFrequent(Arrays.stream(sheet.counting()).mapToDouble(i -> rod(sheet, i)).toArray());
  }

  private static double rod(Sheet sheet, int i) {
    double own = sheet.reading(i).protocol().rodMm();
    return Double.isNaN(own)
        ? sheet.visit.conditions().map(c -> c.crew().rodMm()).orElse(Double.NaN)
        : own;
  }

  private static double usual(List<Sheet> sheets) {
    return mostFrequent(sheets.stream().mapToDouble(RodChecks::length).toArray());
  }

  /** Ties go to the longer rod. */
  private static double mostFrequent(double[] lengths) {
    Map<Double, Integer> count = new HashMap<>();
    for (double length : lengths) {
      if (!Double.isNaN(length)) {
        count.merge(length, 1, Integer::sum);
      }
    }
    double best = Double.NaN;
    for (Map.Entry<Double, Integer> e : count.entrySet()) {
      int most = Double.isNaN(best) ? 0 : count.get(best);
      if (e.getValue() > most || e.getValue() == most && e.getKey() > best) {
        best = e.getKey();
      }
    }
    return best;
  }
}
