package org.mottle.export.report;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.validation.Predictions;

/**
 * Each reading against what the others of its green predict for it, with the line of equality. A
 * filled dot lies in its 90 % interval, a cross outside.
 */
final class CrossChart {
  private static final double SIDE = 300;

  private CrossChart() {}

  static String of(List<Outcome.Mapped> maps, String title) {
    List<Predictions> all =
        maps.stream().flatMap(m -> m.basis().crossValidation().stream()).toList();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Predictions p : all) {
      for (int i = 0; i < p.size(); i++) {
        if (!Double.isNaN(p.predicted(i))) {
          low = Math.min(low, Math.min(p.observed(i), p.predicted(i)));
          high = Math.max(high, Math.max(p.observed(i), p.predicted(i)));
        }
      }
    }
    double from = Math.floor(low) - 1;
    double to = Math.ceil(high) + 1;
    Axes axes = new Axes(to, to, from, SIDE, SIDE, 42, 36);
    StringBuilder svg =
        new StringBuilder(axes.open(title, "predicted from the others, %", "read, %"));
    svg.append(
        String.format(
            Locale.ROOT,
            "<path d=\"M%.1f %.1fL%.1f %.1f\" stroke=\"#807dba\"/>",
            axes.x(from),
            axes.y(from),
            axes.x(to),
            axes.y(to)));
    for (Predictions p : all) {
      IntStream.range(0, p.size())
          .filter(i -> !Double.isNaN(p.predicted(i)))
          .forEach(i -> svg.append(mark(axes.x(p.predicted(i)), axes.y(p.observed(i)), p.z(i))));
    }
    return svg + "</svg>";
  }

  private static String mark(double x, double y, double z) {
    return Math.abs(z) <= 1.645
        ? String.format(
            Locale.ROOT,
            "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"2.2\" fill=\"#111\" fill-opacity=\".6\"/>",
            x,
            y)
        : String.format(
            Locale.ROOT,
            "<path d=\"M%.1f %.1fl6 6m0 -6l-6 6\" stroke=\"#a6611a\" stroke-width=\"1.6\"/>",
            x - 3,
            y - 3);
  }
}
