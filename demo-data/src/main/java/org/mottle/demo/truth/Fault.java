package org.mottle.demo.truth;

import java.util.List;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.Head;

/**
 * What is wrong with a green: a shape between 0 and 1, and an amplitude in % by volume for each of
 * the six surveys. All shapes are of the green's own ground and the same in every survey.
 */
public sealed interface Fault {

  /** Share of the amplitude at a place, metres from the centre of the green. */
  double shape(double dx, double dy);

  /** Amplitudes of S1 to S6, % by volume. */
  List<Double> amplitudes();

  /** What the fault adds to the moisture, % by volume. */
  default double addedPct(Survey survey, double dx, double dy) {
    return amplitudes().get(survey.ordinal()) * shape(dx, dy);
  }

  /** The faults of a green; most have none. */
  static List<Fault> of(String greenId) {
    return switch (greenId) {
      case "G3" -> List.of(new BlockedDrain(List.of(7.0, 10.0, 5.0, 4.0, 8.0, 5.0)));
      case "G5" -> List.of(new DeadHead(List.of(0.0, 0.0, -6.0, -7.0, -1.0, 0.0)));
      case "G6" -> List.of(new Hollow(List.of(8.0, 4.0, 0.0, 0.0, 8.0, 0.0)));
      case "G8" -> List.of(new DrySpots(List.of(-2.0, -5.0, -7.0, -10.0, -8.0, -5.0)));
      default -> List.of();
    };
  }

  /**
   * A blocked lateral under G3: exp(−½(u²/6² + v²/3.8²)) round (−5, −3.5), u along an axis 0.5 rad
   * from east. Wetter than the rest, and more so as the rest dries.
   */
  record BlockedDrain(List<Double> amplitudes) implements Fault {
    @Override
    public double shape(double dx, double dy) {
      double c = StrictMath.cos(0.5);
      double s = StrictMath.sin(0.5);
      double u = (dx + 5) * c + (dy + 3.5) * s;
      double v = (dy + 3.5) * c - (dx + 5) * s;
      return StrictMath.exp(-0.5 * (u * u / 36 + v * v / (3.8 * 3.8)));
    }
  }

  /** Head H5-2 dead from 20 May to 20 August: exp(−(r/11)⁴), r from that head. */
  record DeadHead(List<Double> amplitudes) implements Fault {
    private static final Head HEAD = Head.of(CoursePlace.green("G5")).get(1);

    @Override
    public double shape(double dx, double dy) {
      double r = HEAD.distance(dx, dy) / 11;
      return StrictMath.exp(-r * r * r * r);
    }
  }

  /** The closed hollow of G6: exp(−½ r²/4²) round (−3, 2); water stands after rain, then drains. */
  record Hollow(List<Double> amplitudes) implements Fault {
    @Override
    public double shape(double dx, double dy) {
      return StrictMath.exp(-((dx + 3) * (dx + 3) + (dy - 2) * (dy - 2)) / 32);
    }
  }

  /** Hydrophobic spots on the high side of G8: 2^−(d/r)⁴ of the nearest, so half at its radius. */
  record DrySpots(List<Double> amplitudes) implements Fault {

    /** Least moisture the fault leaves, % by volume. */
    static final double FLOOR_PCT = 3;

    /** Radius of a spot round its centre, all in metres. */
    public record Spot(double x, double y, double radius) {}

    private static final List<Spot> SPOTS =
        List.of(
            new Spot(6, 3, 1.1),
            new Spot(7.5, 4.6, 0.8),
            new Spot(4.4, 4.8, 1.4),
            new Spot(8.6, 2, 0.7),
            new Spot(5.6, 6.3, 0.9),
            new Spot(2.6, 3.4, 0.8));

    public static List<Spot> spots() {
      return SPOTS;
    }

    @Override
    public double shape(double dx, double dy) {
      double most = 0;
      for (Spot spot : SPOTS) {
        double u = (dx - spot.x()) * (dx - spot.x()) + (dy - spot.y()) * (dy - spot.y());
        double q = u / (spot.radius() * spot.radius());
        most = Math.max(most, StrictMath.exp(-StrictMath.log(2) * q * q));
      }
      return most;
    }
  }
}
