package org.mottle.demo.truth;

import java.util.List;
import org.mottle.demo.site.Bunker;
import org.mottle.demo.site.GreenSite;

/**
 * Height of a green and of 35 m round it, m: a tilted plane at 40 m, the hollow of G6 (−0.15 m,
 * width 3.2 m, closed: a fill of 54 mm), bunkers, and mounds of 0.6 m (width 9 m) 28 m north and
 * west that fade in between 2 and 10 m outside the outline, so that they never touch the green.
 */
public final class Elevation {

  private final GreenSite green;
  private final List<Bunker> bunkers;

  public Elevation(GreenSite green) {
    this.green = green;
    this.bunkers = Bunker.of(green.id());
  }

  /** Without noise; metres from the centre of the green. */
  public double at(double dx, double dy) {
    double z = 40 + 0.01 * (green.slopePct().x() * dx + green.slopePct().y() * dy);
    if (green.id().equals("G6")) {
      z += bell(-0.15, 3.2, dx + 3, dy - 2);
    }
    for (Bunker bunker : bunkers) {
      z -= bunker.depth(dx, dy);
    }
    double mounds = bell(0.6, 9, dx, dy - 28) + bell(0.6, 9, dx + 28, dy);
    if (mounds > 1e-6) {
      z += mounds * fade(-green.ring().depth(dx, dy));
    }
    return z;
  }

  private static double bell(double height, double width, double u, double v) {
    return height * StrictMath.exp(-(u * u + v * v) / (2 * width * width));
  }

  private static double fade(double outsideM) {
    double t = Math.max(0, Math.min(1, (outsideM - 2) / 8));
    return t * t * (3 - 2 * t);
  }
}
