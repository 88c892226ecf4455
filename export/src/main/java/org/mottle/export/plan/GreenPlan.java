package org.mottle.export.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading.Role;

/**
 * A green with its stations and what their readings could tell.
 *
 * @param green the green
 * @param plan its stations in walking order
 * @param design how the places were chosen, as typed
 * @param insetM least distance of a station from the outline, m
 * @param note what the user should know; empty when nothing
 * @param prospect what the readings could tell
 */
public record GreenPlan(
    Green green, StationPlan plan, String design, double insetM, String note, Prospect prospect) {

  /**
   * From one station to the next.
   *
   * @param lengthM how far; NaN for the first station, which comes from nowhere
   * @param degrees which way, clockwise from grid north; NaN where there is no way to go
   */
  public record Step(double lengthM, double degrees) {
    /** "4.7 m 045°", "stay" or "start". */
    String words() {
      if (Double.isNaN(lengthM)) {
        return "start";
      }
      long turned = Math.round(degrees) % 360;
      return Double.isNaN(degrees)
          ? "stay"
          : String.format(Locale.ROOT, "%.1f m %03d°", lengthM, turned);
    }
  }

  /** Stations without the control stations. */
  public int stations() {
    return count(s -> s.role() != Role.CONTROL);
  }

  public int closePairs() {
    return count(s -> s.role() == Role.PAIR);
  }

  /** Stations where the probe goes in more than once, without the control stations. */
  public int readTwice() {
    return count(s -> s.role() != Role.CONTROL && s.insertions() > 1);
  }

  public int controls() {
    return count(s -> s.role() == Role.CONTROL);
  }

  private int count(Predicate<PlannedStation> wanted) {
    return (int) plan.stations().stream().filter(wanted).count();
  }

  /** Spacing of the stations as of a square grid, m: the root of area by number. */
  public double spacingM() {
    return Math.sqrt(green.areaM2() / Math.max(1, stations()));
  }

  /** "Alder (G1)", or the id alone. */
  public String label() {
    return green.name().isBlank() || green.name().equals(green.id())
        ? green.id()
        : green.name() + " (" + green.id() + ")";
  }

  /** The way to every station from the one before. */
  public List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    PlannedStation last = null;
    for (PlannedStation s : plan.stations()) {
      steps.add(last == null ? new Step(Double.NaN, Double.NaN) : step(last, s));
      last = s;
    }
    return steps;
  }

  private static Step step(PlannedStation a, PlannedStation b) {
    double east = b.x() - a.x();
    double north = b.y() - a.y();
    double length = Math.hypot(east, north);
    double degrees = (Math.toDegrees(Math.atan2(east, north)) + 360) % 360;
    return new Step(length, length == 0 ? Double.NaN : degrees);
  }
}
