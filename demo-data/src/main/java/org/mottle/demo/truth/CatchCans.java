package org.mottle.demo.truth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.mottle.demo.random.Stream;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Head;
import org.mottle.demo.site.Point;

/**
 * What 24 cans caught on a green in 30 minutes: 9 mm/h · (1 − (r/R)²) summed over the live heads
 * whose arc holds the can, times the scatter of a can (lognormal, 16 %). Tuned so that the sound G1
 * has a mean near 12 mm/h and a lower-quarter uniformity of about 0.78, and G5, one head dead, of
 * about 0.58 (means over 40 seeds).
 */
public final class CatchCans {

  public static final double MOUTH_CM2 = 95;
  public static final int MINUTES = 30;
  public static final double WIND_MS = 1.4;
  private static final double CAN_SCATTER = 0.16;
  private static final double PEAK_MM_H = 9;

  /**
   * @param place metres from the centre of the green
   * @param millilitres read in whole ml
   */
  public record Can(Point place, int millilitres) {
    public double mmPerHour() {
      return 10.0 * millilitres / MOUTH_CM2 * 60 / MINUTES;
    }
  }

  private CatchCans() {}

  /** The catch in cans at these places, with the heads named dead giving nothing. */
  public static List<Can> read(
      long seed, GreenSite green, List<Point> places, List<String> deadHeads) {
    Stream stream = Stream.of(seed, green.id(), "audit", "cans");
    List<Head> live =
        Head.of(green).stream().filter(head -> !deadHeads.contains(head.id())).toList();
    List<Can> cans = new ArrayList<>();
    for (Point place : places) {
      double mm = appliedMmPerHour(live, place) * MINUTES / 60;
      mm *= StrictMath.exp(CAN_SCATTER * stream.gaussian());
      cans.add(new Can(place, (int) Math.round(mm * MOUTH_CM2 / 10)));
    }
    return cans;
  }

  /** Water from these heads at a place. */
  static double appliedMmPerHour(List<Head> heads, Point place) {
    double sum = 0;
    for (Head head : heads) {
      if (head.reaches(place.x(), place.y())) {
        double r = head.distance(place.x(), place.y()) / Head.RADIUS_M;
        sum += PEAK_MM_H * (1 - r * r);
      }
    }
    return sum;
  }

  /** Mean of the lowest quarter of the catch over its mean. */
  public static double lowerQuarterUniformity(List<Can> cans) {
    int[] ml = cans.stream().mapToInt(Can::millilitres).sorted().toArray();
    double low = Arrays.stream(ml, 0, ml.length / 4).average().orElseThrow();
    return low / Arrays.stream(ml).average().orElseThrow();
  }
}
