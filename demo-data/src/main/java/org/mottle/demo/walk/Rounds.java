package org.mottle.demo.walk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.Lattice;
import org.mottle.demo.truth.Survey;
import org.mottle.demo.walk.Station.Role;
import org.mottle.demo.walk.Visit.Crew;
import org.mottle.demo.walk.Visit.Planned;

/**
 * Who visits which green on which day, in what order, with which stations. The order of the greens
 * rotates from survey to survey. Three stations are read twice. In S4 operator B takes G4 to G6,
 * and each operator also reads six stations of a green of the other.
 */
public final class Rounds {

  private static final List<String> TWICE = List.of("2", "6", "13");
  private static final int SHARED = 6;

  private final Map<String, StationPlan> base = new TreeMap<>();
  private final Map<String, List<Station>> infill = new TreeMap<>();
  private final StationPlan zigzag;
  private final StationPlan tour;
  private final StationPlan front;

  public Rounds(long seed) {
    for (GreenSite green : CoursePlace.greens()) {
      Designs designs = new Designs(seed, green);
      StationPlan plan = designs.base();
      base.put(green.id(), plan);
      if (List.of("G3", "G5", "G6").contains(green.id())) {
        infill.put(green.id(), designs.infill(plan));
      }
    }
    zigzag = new Designs(seed, CoursePlace.green("G1")).zigzag();
    tour = new Designs(seed, CoursePlace.green("G2")).tour();
    front = new Designs(seed, CoursePlace.green("G8")).frontThird();
  }

  /** The plans that are handed out; the walk without plan is not among them. */
  public List<StationPlan> plans() {
    List<StationPlan> plans = new ArrayList<>(base.values());
    plans.add(zigzag);
    plans.add(tour);
    return plans;
  }

  /** Infill and points of interest, as plans of their own. */
  public List<StationPlan> extras() {
    List<StationPlan> extras = new ArrayList<>();
    infill.forEach((green, stations) -> extras.add(new StationPlan("infill", green, stations)));
    extras.add(new StationPlan("poi", "G8", Designs.pointsOfInterest()));
    return extras;
  }

  /** A control station on the collar, 0.6 m outside the green. */
  public static Station control(String greenId) {
    Point p = CoursePlace.green(greenId).ring().outset(0.6).vertex(0);
    Point node = new Point(Lattice.snap(p.x()), Lattice.snap(p.y()));
    return new Station(greenId.equals("G1") ? "C1" : "C2", Role.CONTROL, node);
  }

  /** The visits of one operator on one day, in order; empty when the operator was not there. */
  public List<Visit> visits(Survey survey, String operator) {
    List<Visit> visits = new ArrayList<>();
    List<GreenSite> greens = CoursePlace.greens();
    for (int i = 0; i < greens.size(); i++) {
      GreenSite green = greens.get((i + 2 * survey.ordinal()) % greens.size());
      Crew crew = crew(survey, green.id());
      if (crew.operator().equals(operator)) {
        visits.add(visit(survey, green, crew));
      }
    }
    if (survey == Survey.S4) {
      visits.add(operator.equals("A") ? shared("G4", Crew.A) : shared("G3", Crew.B));
    }
    return visits;
  }

  private static Crew crew(Survey survey, String greenId) {
    if (survey != Survey.S4) {
      return Crew.A;
    }
    return switch (greenId) {
      case "G4", "G5", "G6" -> Crew.B;
      case "G9" -> Crew.A_SHORT_RODS;
      default -> Crew.A;
    };
  }

  private Visit visit(Survey survey, GreenSite green, Crew crew) {
    StationPlan plan = plan(survey, green.id());
    List<Planned> insertions = new ArrayList<>();
    for (Station station : Defects.visited(survey, plan)) {
      insertions.add(new Planned(station, 1));
      if (Defects.replicated(survey, plan, TWICE).contains(station.id())) {
        insertions.add(new Planned(station, 2));
      }
    }
    List<Station> extra = extra(survey, green.id());
    extra.forEach(station -> insertions.add(new Planned(station, 1)));
    String more = extra.isEmpty() ? "" : green.id().equals("G8") ? "+poi" : "+infill";
    return new Visit(survey, green, plan.id() + more, crew, insertions);
  }

  private StationPlan plan(Survey survey, String greenId) {
    if (survey == Survey.S1 && greenId.equals("G1")) {
      return zigzag;
    }
    if (survey == Survey.S2 && greenId.equals("G2")) {
      return tour;
    }
    return survey == Survey.S2 && greenId.equals("G8") ? front : base.get(greenId);
  }

  private List<Station> extra(Survey survey, String greenId) {
    boolean rain = survey == Survey.S1 || survey == Survey.S2 || survey == Survey.S5;
    return switch (greenId) {
      case "G3", "G6" -> rain ? infill.get(greenId) : List.of();
      case "G5" -> rain ? List.of() : infill.get(greenId);
      case "G8" ->
          survey == Survey.S3 || survey == Survey.S4 || survey == Survey.S5
              ? Designs.pointsOfInterest()
              : List.of();
      default -> List.of();
    };
  }

  /** The first six stations again, by the other operator, in new holes beside the old. */
  private Visit shared(String greenId, Crew crew) {
    StationPlan plan = base.get(greenId);
    List<Planned> insertions = new ArrayList<>();
    for (Station station : plan.stations().subList(0, SHARED)) {
      insertions.add(new Planned(station, TWICE.contains(station.id()) ? 3 : 2));
    }
    return new Visit(Survey.S4, CoursePlace.green(greenId), plan.id(), crew, insertions);
  }
}
