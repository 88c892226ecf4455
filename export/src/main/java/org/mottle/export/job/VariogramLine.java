package org.mottle.export.job;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.likelihood.NotPooled;
import org.mottle.engine.likelihood.PooledVariogram;
import org.mottle.engine.mapping.MapVariogram;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.validation.Calibration;

/** One variogram in one line of plain words. */
final class VariogramLine {

  private VariogramLine() {}

  static String of(MapVariogram variogram, SurveyMap map) {
    List<String> parts = new ArrayList<>();
    if (variogram.outcome() instanceof NotPooled not) {
      parts.add("none: " + not.reason() + "; " + not.remedy());
    } else {
      PooledVariogram pooled = variogram.pooled().orElseThrow();
      parts.add(model(pooled));
      map.calibration(variogram).ifPresent(c -> parts.add(calibration(c)));
      parts.addAll(pooled.notes());
    }
    return subject(variogram) + ": " + String.join("; ", parts);
  }

  private static String calibration(Calibration c) {
    double msdr = c.scores().meanSquaredDeviationRatio();
    return String.format(
        Locale.ROOT,
        "cross-validation of %d: %.0f %% inside their 90 %% interval, MSDR %.2f%s",
        c.scores().predictions(),
        100 * c.scores().coverage(),
        msdr,
        remark(msdr));
  }

  /** Bounds are those of docs/map-looks-wrong.md (common practice, no source). */
  private static String remark(double msdr) {
    if (msdr > 1.3) {
      return " (the maps are surer than they should be: look for readings that do not belong)";
    }
    return msdr < 0.7 ? " (the maps are less sure than they could be)" : "";
  }

  private static String subject(MapVariogram variogram) {
    List<String> named = variogram.surveys().stream().filter(s -> !s.isEmpty()).toList();
    String surveys = named.isEmpty() ? "" : " of " + String.join(", ", named);
    String greens =
        variogram.greens().size() == 1
            ? "green " + variogram.greens().get(0)
            : variogram.greens().size() + " greens";
    return "variogram%s (%s, %d stations)".formatted(surveys, greens, variogram.stations());
  }

  private static String model(PooledVariogram pooled) {
    PooledVariogram.Parameters p = pooled.parameters();
    StringBuilder text = new StringBuilder(pooled.shape().label());
    text.append(", range ").append(words(p.practicalRange(), "%.1f m"));
    text.append(", nugget ").append(words(p.nugget(), "%.2f %%²"));
    p.sills()
        .forEach(
            (survey, sill) ->
                text.append(survey.isEmpty() ? ", sill " : ", sill " + survey + " ")
                    .append(words(sill, "%.1f %%²")));
    return text.toString();
  }

  /** The value with its 90 % interval: 12.8 m (10 to 17). */
  private static String words(Interval interval, String best) {
    return String.format(Locale.ROOT, best, interval.best())
        + " ("
        + twoDigits(interval.low())
        + " to "
        + twoDigits(interval.high())
        + ")";
  }

  private static String twoDigits(double value) {
    return new BigDecimal(value).round(new MathContext(2)).toPlainString();
  }
}
