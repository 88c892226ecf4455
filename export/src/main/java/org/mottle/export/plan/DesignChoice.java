package org.mottle.export.plan;

import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.design.Design;
import org.mottle.engine.design.StationPlan;
import org.mottle.export.problem.Nearest;
import org.mottle.export.problem.Problems;

/**
 * A design by its name, with what was given for it.
 *
 * @param name as typed
 * @param bearingDeg of a transect, degrees clockwise from grid north; NaN: along the green
 * @param earlier files of earlier plans, for repeat and infill
 * @param areas file of areas and points, for interest
 */
public record DesignChoice(
    String name, double bearingDeg, List<String> earlier, Optional<String> areas) {

  private static final String TRANSECT = "transect";
  private static final String INTEREST = "interest";
  private static final List<String> NEED_EARLIER = List.of("repeat", "infill");

  /** Every design, as typed. */
  public static final List<String> NAMES =
      List.of(
          TRANSECT,
          "w",
          "square-grid",
          "triangular-grid",
          "coverage",
          "stratified",
          "balanced",
          INTEREST,
          "repeat",
          "infill");

  public DesignChoice {
    earlier = List.copyOf(earlier);
  }

  /** The default for maps. */
  public static DesignChoice coverage() {
    return of("coverage");
  }

  public static DesignChoice of(String name) {
    return new DesignChoice(name, Double.NaN, List.of(), Optional.empty());
  }

  public DesignChoice withEarlier(String file) {
    return new DesignChoice(name, bearingDeg, List.of(file), areas);
  }

  public DesignChoice withAreas(String file) {
    return new DesignChoice(name, bearingDeg, earlier, Optional.of(file));
  }

  /** What does not go together, one line each. */
  public Problems check(Problems problems) {
    if (!NAMES.contains(name)) {
      return problems.add(
          "--design: unknown '%s'%s; known: %s",
          name,
          Nearest.to(name, NAMES).map(n -> ", did you mean '" + n + "'").orElse(""),
          String.join(", ", NAMES));
    }
    boolean again = NEED_EARLIER.contains(name);
    problems.require(
        !again || !earlier.isEmpty(),
        "--design %s needs the earlier plan: add --earlier with a stations.csv of 'mottle plan'",
        name);
    problems.require(
        again || earlier.isEmpty(),
        "--earlier is for the designs repeat and infill, and the design is %s",
        name);
    problems.require(
        !name.equals(INTEREST) || areas.isPresent(),
        "--design interest needs areas or points: add --areas with a file of them");
    problems.require(
        name.equals(INTEREST) || areas.isEmpty(),
        "--areas is for the design interest, and the design is %s",
        name);
    problems.require(
        name.equals(TRANSECT) || Double.isNaN(bearingDeg),
        "--bearing is for the design transect, and the design is %s",
        name);
    return problems;
  }

  /** The design, once its files are read. */
  Design design(List<StationPlan> plans, List<Geometry> geometries) {
    return switch (name) {
      case TRANSECT -> new Design.Transect(bearingDeg);
      case "w" -> new Design.Zigzag();
      case "square-grid" -> new Design.SquareGrid();
      case "triangular-grid" -> new Design.TriangularGrid();
      case "coverage" -> new Design.SpatialCoverage();
      case "stratified" -> new Design.StratifiedRandom();
      case "balanced" -> new Design.SpatiallyBalanced();
      case INTEREST -> new Design.Interest(geometries);
      case "repeat" -> new Design.Repeat(plans);
      case "infill" -> new Design.Infill(plans);
      default -> throw new IllegalArgumentException("no design is called '" + name + "'");
    };
  }
}
