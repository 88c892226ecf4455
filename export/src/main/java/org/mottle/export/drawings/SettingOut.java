package org.mottle.export.drawings;

import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import org.locationtech.jts.geom.Coordinate;

/**
 * Points to set out, {@code P,N,E,Z,D}: number, north, east, height (empty where not known), what
 * it is. Areas have a point inside them; outlines and lines are for the drawing. Metres, to the
 * millimetre. Names people typed cannot run in a spreadsheet: within the quoted description no word
 * starts with a sign that begins a formula, whatever the spreadsheet takes for a separator.
 */
final class SettingOut {
  private static final String HEADINGS = "P,N,E,Z,D\n";

  private SettingOut() {}

  static String text(List<Shape> shapes, UnaryOperator<Coordinate> place) {
    StringBuilder csv = new StringBuilder(HEADINGS);
    int number = 0;
    for (Shape shape : shapes) {
      if (shape.geometry().getDimension() == 1) {
        continue;
      }
      Coordinate inside =
          shape.geometry().getDimension() == 2
              ? shape.geometry().getInteriorPoint().getCoordinate()
              : shape.geometry().getCoordinate();
      Coordinate at = place.apply(inside);
      number++;
      csv.append(
          String.format(
              Locale.ROOT,
              "%d,%.3f,%.3f,%s,\"%s\"\n",
              number,
              at.y,
              at.x,
              Double.isNaN(shape.z()) ? "" : String.format(Locale.ROOT, "%.3f", shape.z()),
              harmless(shape.description())));
    }
    return csv.toString();
  }

  /** Separators and control signs are blanks; a word that would begin a formula gets a quote. */
  static String harmless(String words) {
    return words
        .replaceAll("[\\p{Cntrl},;|]", " ")
        .replaceAll("(^|\\s)([=+@-])", "$1'$2")
        .replace("\"", "\"\"");
  }
}
