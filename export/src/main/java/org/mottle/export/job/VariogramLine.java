package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.fit.Fitted;
import org.mottle.engine.fit.NotFitted;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyVariogram;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.VariogramModel;

/** One variogram in one line of plain words. */
final class VariogramLine {

  private VariogramLine() {}

  static String of(SurveyVariogram variogram, SurveyMap map) {
    List<String> parts = new ArrayList<>();
    if (variogram.outcome() instanceof NotFitted not) {
      parts.add("none: " + not.reason());
    } else if (variogram.outcome() instanceof Fitted fitted) {
      parts.add(model(fitted.model()));
      map.scores(variogram)
          .ifPresent(
              s ->
                  parts.add(
                      String.format(
                          Locale.ROOT,
                          "cross-validation of %d: MSDR %.2f%s",
                          s.predictions(),
                          s.meanSquaredDeviationRatio(),
                          remark(s.meanSquaredDeviationRatio()))));
      parts.addAll(fitted.notes());
    }
    return subject(variogram) + ": " + String.join("; ", parts);
  }

  /** Bounds are those of docs/map-looks-wrong.md (common practice, no source). */
  private static String remark(double msdr) {
    if (msdr > 1.3) {
      return " (the maps are surer than they should be: look for readings that do not belong)";
    }
    return msdr < 0.7 ? " (the maps are less sure than they could be)" : "";
  }

  private static String subject(SurveyVariogram variogram) {
    String survey = variogram.surveyId().isEmpty() ? "" : " of " + variogram.surveyId();
    String greens =
        variogram.greens().size() == 1
            ? "green " + variogram.greens().get(0)
            : variogram.greens().size() + " greens";
    return "variogram%s (%s, %d pairs)".formatted(survey, greens, variogram.pairs());
  }

  private static String model(NestedModel model) {
    StringBuilder text = new StringBuilder();
    model.structures().forEach(s -> text.append(s.model().type()).append(", "));
    text.append(String.format(Locale.ROOT, "nugget %.2f %%²", model.nugget()));
    if (model.bounded()) {
      text.append(String.format(Locale.ROOT, ", sill %.2f %%²", model.sill()));
    }
    model.structures().forEach(s -> text.append(range(s.model())));
    return text.toString();
  }

  private static String range(VariogramModel model) {
    double practical = model.practicalRange();
    if (!Double.isFinite(practical)) {
      return "";
    }
    String range = String.format(Locale.ROOT, ", range %.1f m", model.range());
    return practical == model.range()
        ? range
        : range + String.format(Locale.ROOT, " (practical %.1f m)", practical);
  }
}
