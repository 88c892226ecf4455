package org.mottle.demo.walk;

import java.util.ArrayList;
import java.util.List;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.Survey;

/**
 * One operator's morning on the clock: 1.2 m/s between places, 20 s for the first insertion at a
 * station and 12 s for each further one, the value taken 12 s after arriving. Visits begin no
 * sooner than their share of the morning. The two control stations are read, five insertions each,
 * at the start, about every hour between two greens, and at the end.
 */
public final class Walk {

  private static final double SPEED = 1.2;
  private static final int CONTROL_INSERTIONS = 5;
  private static final double LEAD_S = 840;
  private static final double TAIL_S = 1560;

  /** Where the operator is at a moment; straight lines between moments. */
  public record Moment(double seconds, Point world) {}

  /**
   * @param visit what was done
   * @param insertions with their times
   * @param moments from first station to last
   */
  public record Timed(Visit visit, List<Insertion> insertions, List<Moment> moments) {
    public double startSecond() {
      return moments.get(0).seconds();
    }

    public double endSecond() {
      return moments.get(moments.size() - 1).seconds();
    }
  }

  /**
   * @param greenId G1 or G5, beside which the control station lies
   * @param insertion with its time
   */
  public record Control(String greenId, Insertion insertion) {}

  private final Survey survey;
  private final List<Timed> timed = new ArrayList<>();
  private final List<Control> controls = new ArrayList<>();
  private double clock;
  private Point here;

  private Walk(Survey survey, Point start) {
    this.survey = survey;
    this.here = start;
  }

  /** The walk over these visits; only with controls where this operator reads them. */
  public static Walk of(Survey survey, List<Visit> visits, boolean withControls) {
    Walk walk = new Walk(survey, visits.get(0).green().world(0, 0));
    int hour = 0;
    for (int k = 0; k < visits.size(); k++) {
      double slot = LEAD_S + k * (survey.seconds() - LEAD_S - TAIL_S) / visits.size();
      if (withControls && Math.max(walk.clock, slot) >= 3600 * hour - 600) {
        walk.controlRound(3600.0 * hour);
        hour++;
      }
      walk.visit(visits.get(k), slot);
    }
    if (withControls) {
      walk.controlRound(survey.seconds() - 840);
    }
    return walk;
  }

  public List<Timed> visits() {
    return List.copyOf(timed);
  }

  public List<Control> controls() {
    return List.copyOf(controls);
  }

  private void controlRound(double notBefore) {
    for (String greenId : List.of("G1", "G5")) {
      GreenSite green = CoursePlace.green(greenId);
      Station station = Rounds.control(greenId);
      arrive(green.world(station.place()), greenId.equals("G1") ? notBefore - 600 : 0);
      for (int replicate = 1; replicate <= CONTROL_INSERTIONS; replicate++) {
        clock += 12;
        controls.add(new Control(greenId, new Insertion(null, station, replicate, clock)));
      }
    }
  }

  private void visit(Visit visit, double notBefore) {
    List<Insertion> insertions = new ArrayList<>();
    List<Moment> moments = new ArrayList<>();
    String standing = "";
    for (Visit.Planned planned : visit.insertions()) {
      boolean again = planned.station().id().equals(standing) && planned.replicate() > 1;
      if (!again) {
        arrive(
            visit.green().world(planned.station().place()), insertions.isEmpty() ? notBefore : 0);
        moments.add(new Moment(clock, here));
      }
      insertions.add(new Insertion(visit, planned.station(), planned.replicate(), clock + 12));
      clock += again ? 12 : 20;
      moments.add(new Moment(clock, here));
      standing = planned.station().id();
    }
    timed.add(new Timed(visit, insertions, moments));
  }

  private void arrive(Point world, double notBefore) {
    double arrival = clock + here.distance(world) / SPEED;
    clock = Math.ceil(Math.max(arrival, notBefore));
    here = world;
  }
}
