package org.mottle.export.drawings;

import java.math.BigDecimal;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.mottle.export.report.Markup;
import org.mottle.export.write.FixedDecimals;
import org.mottle.export.write.PictureFrame;

/**
 * KML 2.2 (OGC 07-147r2): pictures over the ground in a box of longitude and latitude, a legend on
 * the screen, outlines. Names that people typed are escaped; in descriptions, which viewers show as
 * HTML, twice.
 */
final class KmlText {
  private static final int DECIMALS = 9;

  private final StringBuilder text = new StringBuilder();

  KmlText(String name, String description) {
    text.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    text.append("<kml xmlns=\"http://www.opengis.net/kml/2.2\">\n<Document>\n");
    named(name, description);
    text.append(
        "<Style id=\"outline\"><LineStyle><color>ff000000</color><width>2</width></LineStyle>"
            + "<PolyStyle><fill>0</fill></PolyStyle></Style>\n");
  }

  KmlText folder(String name, String description, boolean shown) {
    text.append("<Folder>\n");
    named(name, description);
    text.append("<visibility>").append(shown ? 1 : 0).append("</visibility>\n");
    return this;
  }

  KmlText endFolder() {
    text.append("</Folder>\n");
    return this;
  }

  /** A picture whose outer edges are the box. */
  KmlText ground(String name, String picture, PictureFrame frame, boolean shown) {
    text.append("<GroundOverlay>\n");
    named(name, "");
    text.append("<visibility>").append(shown ? 1 : 0).append("</visibility>\n");
    text.append("<Icon><href>").append(Markup.text(picture)).append("</href></Icon>\n");
    text.append("<LatLonBox><north>").append(exact(frame.north()));
    text.append("</north><south>").append(exact(frame.south()));
    text.append("</south><east>").append(exact(frame.east()));
    text.append("</east><west>").append(exact(frame.west()));
    text.append("</west></LatLonBox>\n</GroundOverlay>\n");
    return this;
  }

  KmlText legend(String name, String picture, boolean shown) {
    text.append("<ScreenOverlay>\n");
    named(name, "");
    text.append("<visibility>").append(shown ? 1 : 0).append("</visibility>\n");
    text.append("<Icon><href>").append(Markup.text(picture)).append("</href></Icon>\n");
    text.append(
        "<overlayXY x=\"0\" y=\"1\" xunits=\"fraction\" yunits=\"fraction\"/>"
            + "<screenXY x=\"0.02\" y=\"0.9\" xunits=\"fraction\" yunits=\"fraction\"/>"
            + "<size x=\"0\" y=\"0\" xunits=\"pixels\" yunits=\"pixels\"/>\n</ScreenOverlay>\n");
    return this;
  }

  /** Polygons in degrees. */
  KmlText outline(String name, String description, Geometry degrees) {
    text.append("<Placemark>\n");
    named(name, description);
    text.append("<styleUrl>#outline</styleUrl>\n<MultiGeometry>\n");
    for (int i = 0; i < degrees.getNumGeometries(); i++) {
      if (degrees.getGeometryN(i) instanceof Polygon polygon) {
        text.append("<Polygon><outerBoundaryIs>");
        ring(polygon.getExteriorRing());
        text.append("</outerBoundaryIs>");
        for (int hole = 0; hole < polygon.getNumInteriorRing(); hole++) {
          text.append("<innerBoundaryIs>");
          ring(polygon.getInteriorRingN(hole));
          text.append("</innerBoundaryIs>");
        }
        text.append("</Polygon>\n");
      }
    }
    text.append("</MultiGeometry>\n</Placemark>\n");
    return this;
  }

  private void ring(LineString ring) {
    text.append("<LinearRing><coordinates>");
    for (Coordinate at : ring.getCoordinates()) {
      text.append(FixedDecimals.text(at.x, DECIMALS)).append(',');
      text.append(FixedDecimals.text(at.y, DECIMALS)).append(' ');
    }
    text.append("</coordinates></LinearRing>");
  }

  private void named(String name, String description) {
    text.append("<name>").append(escaped(name)).append("</name>\n");
    if (!description.isEmpty()) {
      text.append("<description>").append(escaped(Markup.text(description)));
      text.append("</description>\n");
    }
  }

  /** Control signs have no place in XML. */
  private static String escaped(String words) {
    return Markup.text(words.replaceAll("[\\x00-\\x1F\\x7F\\uFFFE\\uFFFF]|\\p{Cs}", " "));
  }

  private static String exact(double degrees) {
    return new BigDecimal(degrees).setScale(14, java.math.RoundingMode.HALF_EVEN).toPlainString();
  }

  String end() {
    return text + "</Document>\n</kml>\n";
  }

  /** The description of a key, a line a class. */
  static String words(String head, List<Colouring.Entry> key) {
    StringBuilder words = new StringBuilder(head).append(". Classes: ");
    words.append(String.join("; ", key.stream().map(Colouring.Entry::label).toList()));
    return words.toString();
  }
}
