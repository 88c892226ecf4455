package org.mottle.engine.survey;

import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygonal;

/**
 * A putting green, or any other bounded piece of ground that is mapped by itself.
 *
 * @param id as the site numbers it; unique in a survey
 * @param name what people call it; may be empty
 * @param outline valid polygon or multipolygon, holes allowed, in metres (x east, y north)
 * @param rootZone build and soil figures
 * @param boundary where the outline comes from
 */
public record Green(
    String id, String name, Geometry outline, RootZone rootZone, Boundary boundary) {

  /**
   * Where an outline comes from.
   *
   * @param source GNSS walk, imagery, drawing, ...; empty when not recorded
   * @param accuracyM standard error of a boundary point, m; NaN when not recorded
   */
  public record Boundary(String source, double accuracyM) {
    public static final Boundary UNKNOWN = new Boundary("", Double.NaN);
  }

  public Green {
    if (id == null || id.isBlank()) {
      throw new IllegalArgumentException("a green needs an id, was '" + id + "'");
    }
    if (!(outline instanceof Polygonal) || outline.isEmpty() || !outline.isValid()) {
      throw new IllegalArgumentException(
          "green " + id + ": the outline must be a valid, non-empty polygon");
    }
    outline = outline.copy();
  }

  /** A green of which only the outline is known. */
  public static Green of(String id, Geometry outline) {
    return new Green(id, "", outline, RootZone.UNKNOWN, Boundary.UNKNOWN);
  }

  public double areaM2() {
    return outline.getArea();
  }

  public double perimeterM() {
    return outline.getLength();
  }
}
