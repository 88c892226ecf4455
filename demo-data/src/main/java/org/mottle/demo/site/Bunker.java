package org.mottle.demo.site;

import java.util.List;

/**
 * A bunker: an ellipse along x whose bowl falls to 0.9 m below the ground.
 *
 * @param id B4-1, B4-2
 * @param greenId the green it guards
 * @param centre metres from the centre of that green
 * @param halfX half its length, m
 * @param halfY half its width, m
 */
public record Bunker(String id, String greenId, Point centre, double halfX, double halfY) {

  private static final double FLOOR_M = 0.9;
  private static final List<Bunker> ALL =
      List.of(
          new Bunker("B4-1", "G4", new Point(-6, -14.8), 2.5, 1.5),
          new Bunker("B4-2", "G4", new Point(5, -13.3), 2.5, 1.5));

  /** Those of one green. */
  public static List<Bunker> of(String greenId) {
    return ALL.stream().filter(b -> b.greenId.equals(greenId)).toList();
  }

  public static List<Bunker> all() {
    return ALL;
  }

  /** The lip, in 48 steps, metres from the centre of the green. */
  public Ring lip() {
    return Ring.of(
        48,
        i -> centre.x() + halfX * StrictMath.cos(2 * Math.PI * i / 48),
        i -> centre.y() + halfY * StrictMath.sin(2 * Math.PI * i / 48));
  }

  /** Metres below the ground that would be there without it; 0 outside. */
  public double depth(double dx, double dy) {
    double u = (dx - centre.x()) / halfX;
    double v = (dy - centre.y()) / halfY;
    return FLOOR_M * Math.max(0, 1 - u * u - v * v);
  }
}
