package org.mottle.engine.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The readings of one visit of a green whose places were not recorded, in the order in which they
 * were taken.
 *
 * @param surveyId the survey
 * @param greenId the green
 * @param readings put in the order of their sequence numbers; equal numbers stay as given
 */
public record OrderedVisit(String surveyId, String greenId, List<OrderedReading> readings) {

  /**
   * @param sequence number in the log
   * @param replicate 1 for the first insertion at a station, as logged
   * @param seconds time of the reading, s since any moment common to the visit; NaN when not
   *     recorded
   */
  public record OrderedReading(int sequence, int replicate, double seconds) {
    public OrderedReading {
      if (replicate < 1) {
        throw new IllegalArgumentException(
            "reading %d needs a replicate number of at least 1, was %d"
                .formatted(sequence, replicate));
      }
      if (Double.isInfinite(seconds)) {
        throw new IllegalArgumentException(
            "time of reading %d must be finite or not a number, was %s s"
                .formatted(sequence, seconds));
      }
    }
  }

  public OrderedVisit {
    List<OrderedReading> sorted = new ArrayList<>(readings);
    sorted.sort(Comparator.comparingInt(OrderedReading::sequence));
    readings = List.copyOf(sorted);
  }

  public int size() {
    return readings.size();
  }

  /** Whether any two readings in a row both have a time. */
  public boolean timed() {
    for (int k = 1; k < size(); k++) {
      if (Double.isFinite(gap(k))) {
        return true;
      }
    }
    return false;
  }

  /** Time from reading k - 1 to reading k, s; NaN when not known, or when it runs backwards. */
  double gap(int k) {
    double gap = readings.get(k).seconds() - readings.get(k - 1).seconds();
    return gap >= 0 ? gap : Double.NaN;
  }

  /** Sequence numbers of readings whose time lies before that of the reading before. */
  public List<Integer> backwards() {
    List<Integer> backwards = new ArrayList<>();
    for (int k = 1; k < size(); k++) {
      if (readings.get(k).seconds() < readings.get(k - 1).seconds()) {
        backwards.add(readings.get(k).sequence());
      }
    }
    return backwards;
  }
}
