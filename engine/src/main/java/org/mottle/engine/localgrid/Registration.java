package org.mottle.engine.localgrid;

import java.util.ArrayList;
import java.util.List;

/**
 * How an image lies to the survey, from marks seen in both: image less survey. A shift is all that
 * is estimated; what is left at the marks is told.
 *
 * @param shiftEast mean of image less survey, m
 * @param shiftNorth the same to the north, m
 * @param rmseBefore root of the mean squared length of image less survey, m
 * @param rmseAfter the same with the shift taken out, m
 * @param residuals what is left at each mark with the shift taken out
 */
public record Registration(
    double shiftEast,
    double shiftNorth,
    double rmseBefore,
    double rmseAfter,
    List<Residual> residuals) {
  public Registration {
    residuals = List.copyOf(residuals);
  }

  /**
   * @param marks from the survey to the image; at least one
   */
  public static Registration of(List<PointPair> marks) {
    if (marks.isEmpty()) {
      throw new IllegalArgumentException("a registration needs marks, was given none");
    }
    double east = 0;
    double north = 0;
    double before = 0;
    for (PointPair mark : marks) {
      double e = mark.to().x - mark.from().x;
      double n = mark.to().y - mark.from().y;
      east += e / marks.size();
      north += n / marks.size();
      before += e * e + n * n;
    }
    List<Residual> residuals = new ArrayList<>();
    double after = 0;
    for (PointPair mark : marks) {
      Residual left =
          new Residual(
              mark.name(), mark.to().x - mark.from().x - east, mark.to().y - mark.from().y - north);
      residuals.add(left);
      after += left.east() * left.east() + left.north() * left.north();
    }
    return new Registration(
        east, north, Math.sqrt(before / marks.size()), Math.sqrt(after / marks.size()), residuals);
  }

  /** m. */
  public double shift() {
    return Math.hypot(shiftEast, shiftNorth);
  }
}
