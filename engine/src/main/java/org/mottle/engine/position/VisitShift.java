package org.mottle.engine.position;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.mottle.engine.check.Check;

/**
 * The shift common to all positions of a visit, told from positions recorded at marks whose place
 * is known: recorded minus known. To be subtracted from the positions of the visit.
 *
 * <p>The shift has the prior N(0, p²) along each axis and the mean m of n ties the standard error s
 * = jitter / sqrt(n), so that it is estimated as m p²/(p² + s²) with the standard error sqrt(p²
 * s²/(p² + s²)). A mean beyond 3 p of zero contradicts the prior, which is then dropped: the shift
 * is m, its standard error s. Without ties the shift is 0 and its standard error p. Immutable.
 *
 * @param dx estimated shift east, m
 * @param dy estimated shift north, m
 * @param sdM standard error per axis, m
 * @param ties how many ties it rests on
 * @param priorDropped whether the ties lay too far off for the prior
 * @param unknownMarks ids of marks that no tie could be compared with, each once
 */
public record VisitShift(
    double dx, double dy, double sdM, int ties, boolean priorDropped, List<String> unknownMarks) {
  /** Shifts smaller than this are not worth a remark, m. */
  public static final double NOTABLE_M = 2;

  private static final double NOTABLE_SDS = 2;
  private static final double PRIOR_SDS = 3;

  public VisitShift {
    unknownMarks = List.copyOf(unknownMarks);
  }

  /**
   * @param ties of one visit
   * @param marks known places by id
   * @param priorShiftSdM usual size of such shifts, standard deviation per axis, m; above 0
   * @param jitterSdM standard error per axis of one recorded position, m; above 0
   */
  public static VisitShift of(
      List<Tie> ties, Map<String, Mark> marks, double priorShiftSdM, double jitterSdM) {
    Check.above("usual size of a shift", priorShiftSdM, 0, "m");
    Check.above("jitter of a position", jitterSdM, 0, "m");
    Set<String> unknown = new LinkedHashSet<>();
    List<Tie> known = new ArrayList<>();
    for (Tie tie : ties) {
      Check.finite("x of the tie at mark " + tie.markId(), tie.x(), "m");
      Check.finite("y of the tie at mark " + tie.markId(), tie.y(), "m");
      if (marks.containsKey(tie.markId())) {
        known.add(tie);
      } else {
        unknown.add(tie.markId());
      }
    }
    if (known.isEmpty()) {
      return new VisitShift(0, 0, priorShiftSdM, 0, false, List.copyOf(unknown));
    }
    double x = known.stream().mapToDouble(t -> t.x() - marks.get(t.markId()).x()).sum();
    double y = known.stream().mapToDouble(t -> t.y() - marks.get(t.markId()).y()).sum();
    int n = known.size();
    double variance = jitterSdM * jitterSdM / n;
    double prior = priorShiftSdM * priorShiftSdM;
    boolean dropped = Math.hypot(x / n, y / n) > PRIOR_SDS * priorShiftSdM;
    double share = dropped ? 1 : prior / (prior + variance);
    return new VisitShift(
        share * x / n,
        share * y / n,
        Math.sqrt(share * variance),
        n,
        dropped,
        List.copyOf(unknown));
  }

  /** Length of the shift, m. */
  public double lengthM() {
    return Math.hypot(dx, dy);
  }

  /** Whether the shift is more than 2 m and more than twice its standard error. */
  public boolean notable() {
    return lengthM() > NOTABLE_M && lengthM() > NOTABLE_SDS * sdM;
  }
}
