package org.mottle.export.report;

import java.util.Locale;

/**
 * Two axes from a low end, with ticks at round figures, and the frame of a drawing.
 *
 * @param far high end of the horizontal axis
 * @param top high end of the vertical axis
 * @param from low end of both
 */
record Axes(double far, double top, double from, double w, double h, double left, double foot) {
  private static final double EDGE = 8;

  Axes(double far, double top, double w, double h, double left, double foot) {
    this(far, top, 0, w, h, left, foot);
  }

  double x(double value) {
    return left + (value - from) / (far - from) * (w - left - EDGE);
  }

  double y(double value) {
    return h - foot - (value - from) / (top - from) * (h - foot - EDGE);
  }

  String open(String title, String across, String up) {
    StringBuilder svg = new StringBuilder();
    svg.append(
        String.format(
            Locale.ROOT,
            "<svg class=\"chart\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" aria-label=\"%s\">"
                + "<path d=\"M%.1f %.1fV%.1fH%.1f\" fill=\"none\" stroke=\"#111\"/>",
            w,
            h,
            Markup.text(title),
            left,
            EDGE,
            h - foot,
            w - EDGE));
    for (double t = first(far); t <= far; t += step(far)) {
      svg.append(
          String.format(
              Locale.ROOT,
              "<path d=\"M%.1f %.1fv4\" stroke=\"#111\"/><text class=\"tick\" x=\"%.1f\""
                  + " y=\"%.1f\" text-anchor=\"middle\">%s</text>",
              x(t),
              h - foot,
              x(t),
              h - foot + 15,
              figure(t)));
    }
    for (double t = first(top); t <= top; t += step(top)) {
      svg.append(
          String.format(
              Locale.ROOT,
              "<path d=\"M%.1f %.1fh-4\" stroke=\"#111\"/><text class=\"tick\" x=\"%.1f\""
                  + " y=\"%.1f\" text-anchor=\"end\">%s</text>",
              left,
              y(t),
              left - 7,
              y(t) + 4,
              figure(t)));
    }
    svg.append(
        String.format(
            Locale.ROOT,
            "<text class=\"tick\" x=\"%.1f\" y=\"%.1f\" text-anchor=\"end\">%s</text>"
                + "<text class=\"tick\" transform=\"translate(12 %.1f) rotate(-90)\""
                + " text-anchor=\"middle\">%s</text>",
            w - EDGE,
            h - 5,
            across,
            (h - foot) / 2,
            up));
    return svg.toString();
  }

  private double first(double end) {
    return Math.ceil(from / step(end)) * step(end);
  }

  private double step(double end) {
    return SheetMap.bar((end - from) / 3);
  }

  private static String figure(double t) {
    return Math.abs(t - Math.rint(t)) < 1e-9
        ? String.format(Locale.ROOT, "%.0f", t)
        : String.format(Locale.ROOT, "%.2g", t);
  }
}
