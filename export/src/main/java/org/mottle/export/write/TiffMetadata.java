package org.mottle.export.write;

import java.util.Map;

/**
 * Metadata of a GeoTIFF in the XML that GDAL reads and other readers skip. Band unit and
 * description among it. ASCII, as the tag is: other letters are character references.
 */
final class TiffMetadata {
  private TiffMetadata() {}

  /** Of a picture. */
  static String xml(Map<String, String> items) {
    StringBuilder xml = new StringBuilder("<GDALMetadata>\n");
    items.forEach((name, value) -> item(xml, "name=\"" + name + "\"", value));
    return xml.append("</GDALMetadata>\n").toString();
  }

  static String xml(Map<String, String> items, RasterKind kind) {
    StringBuilder xml = new StringBuilder("<GDALMetadata>\n");
    items.forEach((name, value) -> item(xml, "name=\"" + name + "\"", value));
    item(xml, "name=\"DESCRIPTION\" sample=\"0\" role=\"description\"", kind.code());
    if (!kind.unit().isEmpty()) {
      item(xml, "name=\"UNITTYPE\" sample=\"0\" role=\"unittype\"", kind.unit());
    }
    return xml.append("</GDALMetadata>\n").toString();
  }

  private static void item(StringBuilder xml, String attributes, String value) {
    xml.append("  <Item ").append(attributes).append('>');
    xml.append(escape(value)).append("</Item>\n");
  }

  /**
   * GDAL undoes the escapes of a value twice, so an ampersand is escaped twice; other readers of
   * the tag see one of them. Control characters have no place in XML 1.0 and become spaces.
   */
  private static String escape(String text) {
    StringBuilder escaped = new StringBuilder(text.length());
    text.codePoints().forEach(letter -> escape(letter, escaped));
    return escaped.toString();
  }

  private static void escape(int letter, StringBuilder escaped) {
    switch (letter) {
      case '&' -> escaped.append("&amp;amp;");
      case '<' -> escaped.append("&lt;");
      case '>' -> escaped.append("&gt;");
      case '\t', '\n', '\r' -> escaped.append((char) letter);
      default -> {
        if (letter < ' ') {
          escaped.append(' ');
        } else if (letter < 0x7F) {
          escaped.append((char) letter);
        } else {
          escaped.append("&#").append(letter).append(';');
        }
      }
    }
  }
}
