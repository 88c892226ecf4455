package org.mottle.export.report;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.likelihood.PooledVariogram;
import org.mottle.engine.mapping.MapVariogram;
import org.mottle.engine.variogram.VariogramModel;

/**
 * The variogram of a pool: semivariances by lag with their pairs, the fitted model, and the band of
 * all models whose range, nugget and sill lie in their 90 % intervals. That band holds more than 90
 * %. The sill is the mean of the surveys'.
 */
final class PoolChart {
  private static final double W = 420;
  private static final double H = 250;
  private static final double LEFT = 46;
  private static final double FOOT = 36;
  private static final int STEPS = 60;

  private PoolChart() {}

  static String of(MapVariogram variogram, String title) {
    List<Lag> lags = variogram.experimental().lags();
    Optional<PooledVariogram> pooled = variogram.pooled();
    double far = lags.stream().mapToDouble(Lag::distance).max().orElse(1) * 1.05;
    List<DoubleUnaryOperator> corners = pooled.map(PoolChart::corners).orElse(List.of());
    double top = lags.stream().mapToDouble(Lag::semivariance).max().orElse(1);
    for (DoubleUnaryOperator c : corners) {
      top = Math.max(top, Math.min(3 * top, c.applyAsDouble(far)));
    }
    Axes axes = new Axes(far, top * 1.15, W, H, LEFT, FOOT);
    StringBuilder svg = new StringBuilder(axes.open(title, "lag, m", "semivariance"));
    if (!corners.isEmpty()) {
      svg.append(band(corners, axes));
      svg.append(line(best(pooled.orElseThrow()), axes));
    }
    for (Lag lag : lags) {
      svg.append(
          String.format(
              Locale.ROOT,
              "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"3.5\" fill=\"#111\"/><text class=\"figure\""
                  + " x=\"%.1f\" y=\"%.1f\">%d</text>",
              axes.x(lag.distance()),
              axes.y(lag.semivariance()),
              axes.x(lag.distance()),
              axes.y(lag.semivariance()) - 7,
              lag.pairs()));
    }
    return svg + "</svg>";
  }

  private static String band(List<DoubleUnaryOperator> corners, Axes axes) {
    StringBuilder up = new StringBuilder();
    StringBuilder down = new StringBuilder();
    for (int i = 0; i <= STEPS; i++) {
      double h = Math.max(1e-6, axes.far() * i / STEPS);
      double high = corners.stream().mapToDouble(c -> c.applyAsDouble(h)).max().orElseThrow();
      double low = corners.stream().mapToDouble(c -> c.applyAsDouble(h)).min().orElseThrow();
      up.append(
          String.format(
              Locale.ROOT,
              "%s%.1f %.1f",
              i == 0 ? "M" : "L",
              axes.x(h),
              axes.y(Math.min(high, axes.top()))));
      down.insert(
          0,
          String.format(Locale.ROOT, "L%.1f %.1f", axes.x(h), axes.y(Math.min(low, axes.top()))));
    }
    return "<path d=\""
        + up
        + down
        + "Z\" fill=\"#dadaeb\" stroke=\"#807dba\" stroke-dasharray=\"2 3\"/>";
  }

  private static String line(DoubleUnaryOperator model, Axes axes) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i <= STEPS; i++) {
      double h = Math.max(1e-6, axes.far() * i / STEPS);
      path.append(
          String.format(
              Locale.ROOT,
              "%s%.1f %.1f",
              i == 0 ? "M" : "L",
              axes.x(h),
              axes.y(model.applyAsDouble(h))));
    }
    return "<path d=\"" + path + "\" fill=\"none\" stroke=\"#3f007d\" stroke-width=\"2\"/>";
  }

  private static DoubleUnaryOperator best(PooledVariogram p) {
    return curve(
        p,
        p.parameters().nugget().best(),
        sill(p, Interval::best),
        p.parameters().practicalRange().best());
  }

  private static List<DoubleUnaryOperator> corners(PooledVariogram p) {
    List<DoubleUnaryOperator> corners = new ArrayList<>();
    for (double nugget : ends(p.parameters().nugget())) {
      for (double range : ends(p.parameters().practicalRange())) {
        for (double sill : List.of(sill(p, Interval::low), sill(p, Interval::high))) {
          if (Double.isFinite(nugget + range + sill)) {
            corners.add(curve(p, nugget, sill, range));
          }
        }
      }
    }
    return corners;
  }

  private static double[] ends(Interval i) {
    return new double[] {i.low(), i.high()};
  }

  private static double sill(PooledVariogram p, ToDoubleFunction<Interval> end) {
    Collection<Interval> sills = p.parameters().sills().values();
    return sills.stream().mapToDouble(end).average().orElse(Double.NaN);
  }

  private static DoubleUnaryOperator curve(
      PooledVariogram p, double nugget, double sill, double practicalRange) {
    VariogramModel model = p.shape().model(sill, practicalRange);
    return h -> nugget + model.semivariance(h);
  }
}
