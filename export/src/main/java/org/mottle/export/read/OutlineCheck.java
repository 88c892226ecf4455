package org.mottle.export.read;

import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygonal;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;

/**
 * Whether a geometry can be a green's outline. A fault is named with its place in the coordinates
 * of the file and left to the user: which of two lobes of a crossed outline was meant is not ours
 * to decide.
 */
final class OutlineCheck {
  private OutlineCheck() {}

  /** What is wrong, with the remedy; empty when nothing is. */
  static Optional<String> problem(Geometry outline) {
    if (outline == null) {
      return Optional.of("has no geometry; draw its outline or leave it out");
    }
    if (outline.isEmpty()) {
      return Optional.of("its outline is empty; draw it or leave it out");
    }
    if (!(outline instanceof Polygonal)) {
      return Optional.of(
          "its outline is a %s; an outline must be a polygon".formatted(outline.getGeometryType()));
    }
    TopologyValidationError error = new IsValidOp(outline).getValidationError();
    if (error != null) {
      return Optional.of(told(error));
    }
    return outline.getArea() > 0 ? Optional.empty() : Optional.of("its outline has no area");
  }

  private static String told(TopologyValidationError error) {
    String what =
        switch (error.getErrorType()) {
          case TopologyValidationError.SELF_INTERSECTION -> "its outline crosses itself";
          case TopologyValidationError.RING_SELF_INTERSECTION -> "its outline touches itself";
          case TopologyValidationError.HOLE_OUTSIDE_SHELL -> "a hole lies outside the outline";
          case TopologyValidationError.NESTED_HOLES -> "a hole lies in another hole";
          case TopologyValidationError.NESTED_SHELLS -> "a part of it lies in another part";
          case TopologyValidationError.DISCONNECTED_INTERIOR -> "holes cut it in two";
          case TopologyValidationError.DUPLICATE_RINGS -> "a ring stands twice";
          case TopologyValidationError.TOO_FEW_POINTS -> "a ring has too few different positions";
          case TopologyValidationError.INVALID_COORDINATE -> "a position is not a number";
          default -> "its outline is not sound (" + error.getMessage() + ")";
        };
    return what + at(error.getCoordinate()) + "; correct it there";
  }

  private static String at(Coordinate c) {
    if (c == null) {
      return "";
    }
    boolean degrees = Math.abs(c.x) <= 360 && Math.abs(c.y) <= 90;
    return String.format(
        Locale.ROOT, degrees ? " at x %.7f, y %.7f" : " at x %.2f, y %.2f", c.x, c.y);
  }
}
