package org.mottle.demo.walk;

import java.util.ArrayList;
import java.util.List;
import org.mottle.demo.random.Stream;
import org.mottle.demo.site.Head;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.Survey;
import org.mottle.demo.walk.Visit.Positioning;

/**
 * The positioning of one visit: a shift that all its fixes share, and a jitter of each. Further
 * insertions at a station repeat its fix within 0.05 m, since the receiver has hardly moved. Tracks
 * wander: their jitter forgets itself over 30 s.
 */
public final class Receiver {

  private static final double REPEAT_SD = 0.05;
  private static final double MEMORY_S = 30;

  /** A fix while walking, EPSG:32628. */
  public record TrackPoint(double seconds, Point place) {}

  /** A fix at a head, whose place is known: before or after the visit. */
  public record Tie(Head head, double seconds, Point place) {}

  private final long seed;
  private final Walk.Timed timed;
  private final Positioning positioning;
  private final Point shift;
  private final Stream fixes;
  private Station standing;
  private Point jitter;

  Receiver(long seed, Walk.Timed timed) {
    this.seed = seed;
    this.timed = timed;
    this.positioning = timed.visit().positioning();
    this.shift = drawShift();
    this.fixes = stream("fixes");
  }

  /** The error shared by the visit, m. */
  public Point shift() {
    return shift;
  }

  public Walk.Timed timed() {
    return timed;
  }

  /** What the logger writes for one insertion; advances the stream of jitters. */
  LoggedReading.Fix fix(Insertion insertion, Point place) {
    if (!positioning.logged()) {
      return new LoggedReading.Fix(null, positioning.code(), 0);
    }
    if (insertion.station() != standing) {
      jitter = scatter(fixes, positioning.jitterSd());
      standing = insertion.station();
    }
    Point repeat = insertion.replicate() > 1 ? scatter(fixes, REPEAT_SD) : new Point(0, 0);
    Point fixed =
        place.plus(shift.x() + jitter.x() + repeat.x(), shift.y() + jitter.y() + repeat.y());
    return new LoggedReading.Fix(fixed, positioning.code(), positioning.jitterSd());
  }

  /** The track of the visit; empty where no receiver ran. */
  public List<TrackPoint> track() {
    List<TrackPoint> track = new ArrayList<>();
    if (positioning != Positioning.TRACK && positioning != Positioning.PHONE) {
      return track;
    }
    int step = positioning == Positioning.TRACK ? 5 : 10;
    Stream stream = stream("track");
    double keep = StrictMath.exp(-step / MEMORY_S);
    Point wander = scatter(stream, positioning.jitterSd());
    for (double t = timed.startSecond() - step; t <= timed.endSecond() + step; t += step) {
      Point at = where(t);
      track.add(new TrackPoint(t, at.plus(shift.x() + wander.x(), shift.y() + wander.y())));
      Point fresh = scatter(stream, positioning.jitterSd() * Math.sqrt(1 - keep * keep));
      wander = new Point(keep * wander.x() + fresh.x(), keep * wander.y() + fresh.y());
    }
    return track;
  }

  /** Fixes at the first head of the green, a minute before and after; none without positions. */
  public List<Tie> ties() {
    List<Tie> ties = new ArrayList<>();
    if (!positioning.logged()) {
      return ties;
    }
    Stream stream = stream("ties");
    Head head = Head.of(timed.visit().green()).get(0);
    Point at = timed.visit().green().world(head.place());
    for (double t : new double[] {timed.startSecond() - 60, timed.endSecond() + 60}) {
      Point e = scatter(stream, positioning.jitterSd());
      ties.add(new Tie(head, t, at.plus(shift.x() + e.x(), shift.y() + e.y())));
    }
    return ties;
  }

  private Point drawShift() {
    boolean planted =
        timed.visit().survey() == Survey.S5 && timed.visit().green().id().equals("G2");
    return planted
        ? new Point(Defects.COMMON_SHIFT_M, 0)
        : scatter(stream("shift"), positioning.shiftSd());
  }

  private Point where(double seconds) {
    List<Walk.Moment> moments = timed.moments();
    Walk.Moment before = moments.get(0);
    for (Walk.Moment after : moments) {
      if (after.seconds() >= seconds) {
        double span = after.seconds() - before.seconds();
        double share = span > 0 ? Math.max(0, (seconds - before.seconds()) / span) : 0;
        return before
            .world()
            .plus(
                share * (after.world().x() - before.world().x()),
                share * (after.world().y() - before.world().y()));
      }
      before = after;
    }
    return before.world();
  }

  private Stream stream(String component) {
    Visit visit = timed.visit();
    return Stream.of(
        seed, visit.green().id(), visit.survey().name(), component, visit.crew().operator());
  }

  private static Point scatter(Stream stream, double sd) {
    double x = sd * stream.gaussian();
    return new Point(x, sd * stream.gaussian());
  }
}
