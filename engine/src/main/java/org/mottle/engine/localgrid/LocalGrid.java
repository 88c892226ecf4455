package org.mottle.engine.localgrid;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.survey.Refusal;

/**
 * The similarity that takes controls to their places in a local grid with the least sum of squared
 * residuals. With coordinates e, n and e', n' taken from their means,
 *
 * <pre>
 *   a = sum(e e' + n n') / sum(e² + n²)      b = sum(e n' - n e') / sum(e² + n²)
 * </pre>
 *
 * (normal equations of the four-parameter model, as in any textbook of survey adjustment; Umeyama
 * 1991, eqs. 40-42, gives the general case). Two controls would fix it, with nothing left to show a
 * wrong one: three are wanted. In a line they show no mistake across it, so that is refused too.
 * O(n). Stateless.
 */
public final class LocalGrid {
  /** Controls that are wanted. */
  public static final int LEAST = 3;

  /** Two points closer than this are one, m. */
  static final double SAME_M = 0.01;

  /** Spread across over spread along, below which controls stand in a line. */
  static final double IN_LINE = 0.05;

  private LocalGrid() {}

  /** The least-squares similarity, or every reason against it. */
  public static LocalGridOutcome fit(List<PointPair> controls) {
    List<Refusal> why = refusals(controls);
    if (!why.isEmpty()) {
      return new LocalGridOutcome.NotFitted(why);
    }
    return fitted(controls);
  }

  /**
   * Whether the controls fit clearly better with east and north of the local grid exchanged: the
   * commonest slip, since surveyors write north first. To be asked where the fit is poor.
   */
  public static boolean betterExchanged(List<PointPair> controls, double rmse) {
    List<PointPair> exchanged =
        controls.stream()
            .map(c -> new PointPair(c.name(), c.from(), new Coordinate(c.to().y, c.to().x)))
            .toList();
    return fit(exchanged) instanceof LocalGridOutcome.Fitted other && other.rmse() < 0.1 * rmse;
  }

  private static List<Refusal> refusals(List<PointPair> controls) {
    List<Refusal> why = new ArrayList<>();
    if (controls.size() < LEAST) {
      why.add(
          new Refusal(
              "a local grid needs at least " + LEAST + " controls, found " + controls.size(),
              "add controls round the site"));
    }
    Set<String> names = new HashSet<>();
    for (int i = 0; i < controls.size(); i++) {
      PointPair one = controls.get(i);
      if (!names.add(one.name())) {
        why.add(new Refusal("control " + one.name() + " is given twice", "keep one"));
      }
      for (int j = 0; j < i; j++) {
        PointPair other = controls.get(j);
        if (near(one, other, PointPair::from) || near(one, other, PointPair::to)) {
          why.add(
              new Refusal(
                  String.format(
                      Locale.ROOT,
                      "controls %s and %s share a place (within %.2f m)",
                      other.name(),
                      one.name(),
                      SAME_M),
                  "give each its own, or drop one"));
        }
      }
    }
    if (why.isEmpty()) {
      double across = Math.min(width(controls, PointPair::from), width(controls, PointPair::to));
      if (across < IN_LINE) {
        why.add(
            new Refusal(
                String.format(
                    Locale.ROOT,
                    "the controls stand in a line: their spread across it is %.3f of that along,"
                        + " %.2f wanted",
                    across,
                    IN_LINE),
                "add a control off the line"));
      }
    }
    return why;
  }

  private static boolean near(
      PointPair one, PointPair other, Function<PointPair, Coordinate> side) {
    return side.apply(one).distance(side.apply(other)) < SAME_M;
  }

  /** Root of the ratio of the eigenvalues of the scatter, the lesser over the greater. */
  private static double width(List<PointPair> controls, Function<PointPair, Coordinate> side) {
    Coordinate mean = mean(controls, side);
    double ee = 0;
    double nn = 0;
    double en = 0;
    for (PointPair control : controls) {
      double e = side.apply(control).x - mean.x;
      double n = side.apply(control).y - mean.y;
      ee += e * e;
      nn += n * n;
      en += e * n;
    }
    double half = (ee + nn) / 2;
    double root = Math.hypot((ee - nn) / 2, en);
    return Math.sqrt(Math.max(0, half - root) / (half + root));
  }

  private static LocalGridOutcome.Fitted fitted(List<PointPair> controls) {
    Coordinate from = mean(controls, PointPair::from);
    Coordinate to = mean(controls, PointPair::to);
    double along = 0;
    double across = 0;
    double square = 0;
    for (PointPair c : controls) {
      double e = c.from().x - from.x;
      double n = c.from().y - from.y;
      double east = c.to().x - to.x;
      double north = c.to().y - to.y;
      along += e * east + n * north;
      across += e * north - n * east;
      square += e * e + n * n;
    }
    // a mirrored set may cancel out to no scale at all; the residuals then tell
    double a = along == 0 && across == 0 ? Double.MIN_NORMAL : along / square;
    Similarity similarity = new Similarity(from, to, a, across / square);
    List<Residual> residuals = new ArrayList<>();
    double sum = 0;
    for (PointPair c : controls) {
      Coordinate put = similarity.apply(c.from());
      Residual left = new Residual(c.name(), c.to().x - put.x, c.to().y - put.y);
      residuals.add(left);
      sum += left.east() * left.east() + left.north() * left.north();
    }
    int n = controls.size();
    return new LocalGridOutcome.Fitted(
        similarity, residuals, Math.sqrt(sum / n), Math.sqrt(sum / (2 * n - 4)));
  }

  private static Coordinate mean(List<PointPair> controls, Function<PointPair, Coordinate> side) {
    double x = 0;
    double y = 0;
    for (PointPair control : controls) {
      x += side.apply(control).x;
      y += side.apply(control).y;
    }
    return new Coordinate(x / controls.size(), y / controls.size());
  }
}
