package org.mottle.export.crs;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.mottle.export.problem.InputRefused;

/** Reads the many ways in which people and files name a reference system. */
final class CrsText {
  private static final Pattern EPSG =
      Pattern.compile(
          "(?i)(?:urn:(?:x-)?ogc:def:crs:EPSG:(?:[0-9.]*:)?|https?://www\\.opengis\\.net/def/crs/EPSG/[0-9.]+/"
              + "|https?://www\\.opengis\\.net/gml/srs/epsg\\.xml#|EPSG::?)?(\\d{1,9})");
  private static final Pattern CRS_84 =
      Pattern.compile(
          "(?i)urn:(x-)?ogc:def:crs:OGC:[0-9.]*:CRS84|https?://www\\.opengis\\.net/def/crs/OGC/[0-9.]+/CRS84"
              + "|(OGC:)?CRS:?84|WGS[ _]?(19)?84");
  private static final Pattern WKT = Pattern.compile("(?s)\\s*[A-Za-z_]+\\s*[\\[(].*");

  private CrsText() {}

  static Crs parse(String text) {
    String plain = text == null ? "" : text.strip();
    Matcher epsg = EPSG.matcher(plain);
    if (epsg.matches()) {
      return Crs.ofEpsg(Integer.parseInt(epsg.group(1)));
    }
    if (CRS_84.matcher(plain).matches()) {
      return Crs.wgs84();
    }
    if (WKT.matcher(plain).matches()) {
      return wellKnown(plain);
    }
    String remedy = "; name it by its EPSG code, like EPSG:32630";
    if (plain.toLowerCase(Locale.ROOT).contains("+proj")) {
      throw new InputRefused(
          "the CRS '%s' is a projection string, which leaves the datum open%s"
              .formatted(shortened(plain), remedy));
    }
    throw new InputRefused("the CRS '%s' is not understood%s".formatted(shortened(plain), remedy));
  }

  private static Crs wellKnown(String text) {
    WktNode root;
    try {
      root = WktNode.parse(text);
    } catch (IllegalArgumentException e) {
      throw new InputRefused(
          "the CRS description '%s' is broken: %s; name the CRS by its EPSG code with --crs"
              .formatted(shortened(text), e.getMessage()));
    }
    WktNode horizontal =
        root.find("PROJCS", "PROJCRS", "PROJECTEDCRS")
            .or(() -> root.find("GEOGCS", "GEOGCRS", "GEODCRS", "GEOGRAPHICCRS", "BASEGEOGCRS"))
            .orElseThrow(
                () ->
                    new InputRefused(
                        "the CRS description '%s' is neither projected nor geographic; name the CRS by its EPSG code with --crs"
                            .formatted(shortened(text))));
    return horizontal.epsg().map(Crs::ofEpsg).orElseGet(() -> CrsMatch.of(horizontal));
  }

  static String shortened(String text) {
    String line = text.replaceAll("\\s+", " ").strip();
    return line.length() <= 60 ? line : line.substring(0, 57) + "...";
  }
}
