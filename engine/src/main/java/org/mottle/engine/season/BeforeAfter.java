package org.mottle.engine.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.season.JointPair.Ground;

/**
 * Before and after a repair, with a control area that was left alone on the same green:
 *
 * <pre>effect = (after − before in the area) − (after − before in the control area)
 * </pre>
 *
 * What the weather did to both, and what an operator or a probe read too high everywhere, drops
 * out. From the stations in the two areas alone, by generalised least squares under the model of
 * {@link JointPair} with a mean of each survey, what the area always differs by, and the effect as
 * a step: a repair is no draw from what usually changes, and is not smoothed towards it.
 *
 * @param area change in the repaired area, % by volume
 * @param control change in the control area, % by volume
 * @param effect their difference
 * @param wanted what the repair was to bring
 * @param stations in both areas and surveys
 * @param remarks what a reader should know, in words
 */
public record BeforeAfter(
    ChangeFigure area,
    ChangeFigure control,
    ChangeFigure effect,
    Wanted wanted,
    Stations stations,
    List<String> remarks) {

  /** What a repair was to bring. */
  public enum Wanted {
    DRIER,
    WETTER
  }

  /** Stations read in the two areas in the two surveys. */
  public record Stations(int areaBefore, int areaAfter, int controlBefore, int controlAfter) {
    int least() {
      return Math.min(Math.min(areaBefore, areaAfter), Math.min(controlBefore, controlAfter));
    }
  }

  /** Fewer stations in an area are told. */
  private static final int FEW = 3;

  private static final double SHOWN = 0.95;
  private static final double LIKELY = 0.8;

  public BeforeAfter {
    remarks = List.copyOf(remarks);
  }

  /**
   * @param area that was repaired
   * @param control that was not, on the same green and apart from the area
   */
  public static Answer<BeforeAfter> of(
      Change change, Geometry area, Geometry control, Wanted wanted) {
    Geometry on = area.intersection(change.outline());
    Geometry other = control.intersection(change.outline());
    String green = "green " + change.greenId();
    if (!(on.getArea() > 0) || !(other.getArea() > 0)) {
      return Answer.refused(
          "the " + (on.getArea() > 0 ? "control" : "repaired") + " area is not on " + green,
          "draw both areas on the green");
    }
    double shared = on.intersection(other).getArea();
    if (shared > 0.01 * Math.min(on.getArea(), other.getArea())) {
      return Answer.refused(
          String.format(
              Locale.ROOT, "the control area shares %.1f m² with the repaired area", shared),
          "draw the control area where nothing was done");
    }
    JointPair pair = change.pair();
    Ground[] ground = new Ground[pair.stations()];
    Arrays.setAll(ground, i -> ground(pair, i, on, other));
    Stations stations =
        new Stations(
            count(pair, ground, Ground.AREA, true),
            count(pair, ground, Ground.AREA, false),
            count(pair, ground, Ground.CONTROL, true),
            count(pair, ground, Ground.CONTROL, false));
    if (stations.least() == 0) {
      return Answer.refused(
          "no station was read in the "
              + (stations.areaBefore() == 0 || stations.areaAfter() == 0 ? "repaired" : "control")
              + " area in both surveys",
          "read both areas before and after the repair, 3 stations each or more");
    }
    List<String> remarks = new ArrayList<>(change.remarks());
    if (stations.least() < FEW) {
      remarks.add(
          "an area has "
              + stations.least()
              + (stations.least() == 1 ? " station" : " stations")
              + " in a survey: read 3 or more");
    }
    remarks.add(
        "other things than the repair may differ between the two areas; consider a further pair of"
            + " surveys after like water, and ask the site's agronomist");
    List<ChangeFigure> step = pair.step(ground);
    return Answer.of(
        new BeforeAfter(step.get(0), step.get(1), step.get(2), wanted, stations, remarks));
  }

  private static Ground ground(JointPair pair, int i, Geometry area, Geometry control) {
    Point at = area.getFactory().createPoint(new Coordinate(pair.x(i), pair.y(i)));
    return area.covers(at) ? Ground.AREA : control.covers(at) ? Ground.CONTROL : Ground.ELSEWHERE;
  }

  private static int count(JointPair pair, Ground[] ground, Ground of, boolean earlier) {
    return (int)
        IntStream.range(0, ground.length)
            .filter(i -> ground[i] == of && pair.earlier(i) == earlier)
            .count();
  }

  /** Probability that the area changed in the wanted direction against the control area. */
  public double pImproved() {
    return wanted == Wanted.DRIER ? effect.below(0) : effect.above(0);
  }

  /** In words that suggest and do not claim. */
  public String words() {
    Interval i = effect.interval();
    String figure =
        String.format(
            Locale.ROOT,
            "%.1f %% %s than the control area (90 %% from %+.1f to %+.1f %%)",
            Math.abs(i.best()),
            i.best() < 0 ? "drier" : "wetter",
            i.low(),
            i.high());
    double p = pImproved();
    String odds = String.format(Locale.ROOT, "; probability of having improved %.2f", p);
    if (p >= SHOWN) {
      return "the readings suggest that the area became " + figure + odds;
    }
    if (p >= LIKELY) {
      return "consistent with an improvement, not yet shown: the area became " + figure + odds;
    }
    return (p <= 1 - SHOWN
            ? "the readings suggest the contrary of what was wanted"
            : "no improvement that these readings can show")
        + ": the area became "
        + figure
        + odds;
  }
}
