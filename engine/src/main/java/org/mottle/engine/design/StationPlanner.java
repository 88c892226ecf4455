package org.mottle.engine.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.Refusal;

/**
 * Stations on a green by a design, with close pairs, double insertions and a control station, in
 * the order of the walk and numbered in it. All stand at least the inset from the outline; points
 * of interest and repeated stations need only be on the green. A transect and a W are walked as
 * they run; other designs by the shortest walk found. Close pairs go with designs of the whole
 * green only: points of interest, repeats and infill get none. Random choices follow the seed and
 * the green's id, so other greens do not change them.
 *
 * <p>Immutable, and safe for threads if the design is. About 20 ms a green of 500 m².
 */
public final class StationPlanner {
  /** Stations closer than this tell the same, m. */
  private static final double LEAST_SPACING_M = 1;

  private static final double WIDTH_TOLERANCE_M = 0.005;

  private final Design design;
  private final PlanSettings settings;

  public StationPlanner(Design design, PlanSettings settings) {
    this.design = design;
    this.settings = settings;
  }

  /** The plan of a green, or why there is none. */
  public PlanOutcome plan(Green green) {
    if (design instanceof Design.Repeat repeat) {
      return repeated(green, repeat);
    }
    Geometry shape = green.outline().buffer(-settings.insetM());
    if (shape.isEmpty()) {
      return tooNarrow(green);
    }
    Ground ground = new Ground(shape);
    double spacing = Math.sqrt(ground.areaM2() / settings.stations());
    if (!(design instanceof Design.Interest) && spacing < LEAST_SPACING_M) {
      return refused(
          green,
          format(
              "%d stations on %.0f m² stand %.2f m apart, less than %.0f m",
              settings.stations(), ground.areaM2(), spacing, LEAST_SPACING_M),
          format("plan at most %d stations", (int) Math.floor(ground.areaM2())));
    }
    return placed(green, ground, random(green));
  }

  private PlanOutcome placed(Green green, Ground ground, RandomGenerator random) {
    List<StationPlan> earlier =
        design instanceof Design.Infill infill ? of(green, infill.earlier()) : List.of();
    if (design instanceof Design.Infill && earlier.isEmpty()) {
      return refused(
          green, "no earlier plan of this green to fill in", "give its plan, or plan by coverage");
    }
    List<Coordinate> places = places(green, ground, earlier, random);
    if (places.isEmpty()) {
      return new PlanOutcome.NotPlanned(green, nothing());
    }
    Furnishing furnishing = new Furnishing(ground, settings, earlier, random);
    return new PlanOutcome.Planned(
        green,
        new StationPlan(
            design.label(), green.id(), furnishing.stations(places, role(), inOrder(), paired())),
        furnishing.note());
  }

  private List<Coordinate> places(
      Green green, Ground ground, List<StationPlan> earlier, RandomGenerator random) {
    int n = settings.stations();
    if (design instanceof Design.Transect transect) {
      return WalkedLine.transect(ground, transect.bearingDeg(), n);
    } else if (design instanceof Design.Zigzag) {
      return WalkedLine.zigzag(ground, n);
    } else if (design instanceof Design.SquareGrid) {
      return Lattice.square(ground, n).places(random);
    } else if (design instanceof Design.TriangularGrid) {
      return Lattice.triangular(ground, n).places(random);
    } else if (design instanceof Design.StratifiedRandom) {
      return new Strata(ground, n, random).places(random);
    } else if (design instanceof Design.SpatiallyBalanced) {
      return Pivotal.places(ground, n, random);
    } else if (design instanceof Design.Interest interest) {
      return new InterestPlaces(green.outline(), ground.shape()).places(interest, n, random);
    }
    return new Coverage(ground, coordinates(earlier)).places(n, random);
  }

  private PlanOutcome tooNarrow(Green green) {
    double widest =
        new MaximumInscribedCircle(green.outline(), WIDTH_TOLERANCE_M).getRadiusLine().getLength();
    return refused(
        green,
        format(
            "the green of %.0f m² is at most %.2f m wide, too narrow for an inset of %.2f m",
            green.areaM2(), 2 * widest, settings.insetM()),
        format("make the inset less than %.2f m", Math.floor(100 * widest) / 100));
  }

  private Refusal nothing() {
    if (design instanceof Design.Interest interest) {
      return new Refusal(
          format(
              "none of the %d points and areas of interest is on this green",
              interest.areas().size()),
          "check their coordinates against the outline");
    }
    return new Refusal(
        format("no %s of exactly %d stations fits this green", design.label(), settings.stations()),
        "plan another number, or by coverage");
  }

  private Reading.Role role() {
    if (design instanceof Design.Interest) {
      return Reading.Role.POINT_OF_INTEREST;
    }
    return design instanceof Design.Infill ? Reading.Role.INFILL : Reading.Role.PLAN;
  }

  private boolean inOrder() {
    return design instanceof Design.Transect || design instanceof Design.Zigzag;
  }

  private boolean paired() {
    return role() == Reading.Role.PLAN;
  }

  /** The last of the earlier plans, without stations that are no longer on the green. */
  private PlanOutcome repeated(Green green, Design.Repeat repeat) {
    List<StationPlan> plans = of(green, repeat.earlier());
    if (plans.isEmpty()) {
      return refused(
          green, "no earlier plan of this green to repeat", "give its plan, or plan by coverage");
    }
    StationPlan last = plans.get(plans.size() - 1);
    Ground whole = new Ground(green.outline());
    List<PlannedStation> kept =
        last.stations().stream().filter(s -> whole.holds(new Coordinate(s.x(), s.y()))).toList();
    if (kept.isEmpty()) {
      return refused(
          green,
          format(
              "none of the %d stations of plan %s is on this green",
              last.stations().size(), last.planId()),
          "check the outline and the plan's coordinates");
    }
    List<String> lost =
        last.stations().stream().filter(s -> !kept.contains(s)).map(PlannedStation::id).toList();
    String note = lost.isEmpty() ? "" : "no longer on the green: " + String.join(", ", lost);
    return new PlanOutcome.Planned(green, new StationPlan(last.planId(), green.id(), kept), note);
  }

  private static List<StationPlan> of(Green green, List<StationPlan> plans) {
    return plans.stream().filter(p -> p.greenId().equals(green.id())).toList();
  }

  private static List<Coordinate> coordinates(List<StationPlan> plans) {
    List<Coordinate> all = new ArrayList<>();
    for (StationPlan plan : plans) {
      plan.stations().forEach(s -> all.add(new Coordinate(s.x(), s.y())));
    }
    return all;
  }

  private RandomGenerator random(Green green) {
    int[] seed = new int[green.id().length() + 2];
    seed[0] = (int) settings.seed();
    seed[1] = (int) (settings.seed() >>> 32);
    for (int i = 2; i < seed.length; i++) {
      seed[i] = green.id().charAt(i - 2);
    }
    return new Well19937c(seed);
  }

  private static PlanOutcome refused(Green green, String reason, String remedy) {
    return new PlanOutcome.NotPlanned(green, new Refusal(reason, remedy));
  }

  private static String format(String text, Object... values) {
    return String.format(Locale.ROOT, text, values);
  }
}
