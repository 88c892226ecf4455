package org.mottle.export.season;

import java.util.List;
import java.util.Locale;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.season.SurveyedMap;
import org.mottle.export.report.Markup;

/**
 * The mean moisture of a green over its surveys as a drawing: a bar for the 90 % interval, a mark
 * for the mean, a letter for the water before (R rain, I irrigation, D dry days). Surveys stand in
 * their order, not to the scale of time.
 */
final class Timeline {
  private static final double STEP = 74;
  private static final double LEFT = 44;
  private static final double HIGH = 150;
  private static final double TOP = 12;

  private Timeline() {}

  /**
   * @param low end of the scale, % by volume
   * @param high end of the scale, % by volume
   */
  static String of(List<SurveyedMap> maps, double low, double high) {
    StringBuilder svg = new StringBuilder();
    double width = LEFT + STEP * maps.size() + 10;
    svg.append(
        String.format(
            Locale.ROOT,
            "<svg width=\"%.0f\" height=\"%.0f\" viewBox=\"0 0 %.0f %.0f\" role=\"img\""
                + " aria-label=\"mean moisture over the surveys\">",
            width,
            HIGH + 52,
            width,
            HIGH + 52));
    for (double v = Math.ceil(low / 5) * 5; v <= high; v += 5) {
      double y = y(v, low, high);
      svg.append(
          String.format(
              Locale.ROOT,
              "<path d=\"M%.0f %.1fH%.0f\" stroke=\"#ddd\"/><text x=\"%.0f\" y=\"%.1f\""
                  + " font-size=\"11\" text-anchor=\"end\">%.0f %%</text>",
              LEFT,
              y,
              width - 8,
              LEFT - 5,
              y + 4,
              v));
    }
    for (int i = 0; i < maps.size(); i++) {
      SurveyedMap m = maps.get(i);
      Interval mean = m.map().evenness().mean();
      double x = LEFT + STEP * (i + 0.5);
      svg.append(
          String.format(
              Locale.ROOT,
              "<path d=\"M%.1f %.1fV%.1f\" stroke=\"#1c1c1c\" stroke-width=\"2\"/><circle cx=\"%.1f\""
                  + " cy=\"%.1f\" r=\"4\" fill=\"#23402b\"/><text x=\"%.1f\" y=\"%.0f\" font-size=\"11\""
                  + " text-anchor=\"middle\">%s</text><text x=\"%.1f\" y=\"%.0f\" font-size=\"11\""
                  + " text-anchor=\"middle\">%s%s</text>",
              x,
              y(mean.low(), low, high),
              y(mean.high(), low, high),
              x,
              y(mean.best(), low, high),
              x,
              HIGH + TOP + 18,
              Markup.text(m.surveyId()),
              x,
              HIGH + TOP + 33,
              letter(m),
              m.grade().map(g -> ", grade " + g.name()).orElse("")));
    }
    return svg + "</svg>\n";
  }

  private static double y(double v, double low, double high) {
    return TOP + HIGH * (high - Math.max(low, Math.min(high, v))) / (high - low);
  }

  private static String letter(SurveyedMap m) {
    return switch (m.history()) {
      case AFTER_RAIN -> "R";
      case AFTER_IRRIGATION -> "I";
      case DRYING -> "D";
      case UNKNOWN -> "?";
    };
  }
}
