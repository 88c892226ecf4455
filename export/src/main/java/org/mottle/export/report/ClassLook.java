package org.mottle.export.report;

import java.util.Locale;
import org.mottle.engine.patch.ZoneClass;

/**
 * How a class looks on the pages: colour, hatch and letter, so that none stands on colour alone.
 * Colours are the five classes of the diverging scheme BrBG (Brewer and Harrower, ColorBrewer 2.0),
 * half as strong for what is probable; dry is dotted, wet is hatched.
 */
enum ClassLook {
  DRY(ZoneClass.DRY, "D", "#dfc27d", "#a6611a", dots(6, 1.1)),
  PROBABLY_DRY(ZoneClass.PROBABLY_DRY, "d", "#efe1bf", "#a6611a", dots(11, 0.9)),
  IN_BAND(ZoneClass.IN_BAND, "B", "#f5f5f5", "#6b6b6b", ""),
  PROBABLY_WET(ZoneClass.PROBABLY_WET, "w", "#bfe6e0", "#018571", lines(11, 0.8)),
  WET(ZoneClass.WET, "W", "#80cdc1", "#018571", lines(5, 1.1)),
  CANNOT_TELL(ZoneClass.CANNOT_TELL, "?", "#ffffff", "#7a7a7a", upright(6)),
  NO_VALUE(ZoneClass.NO_VALUE, "–", "#ffffff", "#7a7a7a", "");

  static final String SOURCE =
      "Colours of classes: BrBG, of moisture: YlGnBu, of doubt: Purples; all of ColorBrewer 2.0"
          + " (Brewer and Harrower; Harrower and Brewer 2003, The Cartographic Journal 40), chosen"
          + " for readers of any colour vision. Each class has a letter and a hatch as well.";

  private final ZoneClass cls;
  private final String letter;
  private final String fill;
  private final String ink;
  private final String hatch;

  ClassLook(ZoneClass cls, String letter, String fill, String ink, String hatch) {
    this.cls = cls;
    this.letter = letter;
    this.fill = fill;
    this.ink = ink;
    this.hatch = hatch;
  }

  static ClassLook of(ZoneClass cls) {
    for (ClassLook look : values()) {
      if (look.cls == cls) {
        return look;
      }
    }
    throw new IllegalArgumentException("no look for the class " + cls);
  }

  ZoneClass cls() {
    return cls;
  }

  String letter() {
    return letter;
  }

  String code() {
    return cls.code();
  }

  /** What SVG fills with. */
  String paint() {
    return "url(#look-" + cls.number() + ")";
  }

  /** The patterns of all classes, once a page. */
  static String patterns() {
    StringBuilder defs =
        new StringBuilder(
            "<svg width=\"0\" height=\"0\" style=\"position:absolute\" aria-hidden=\"true\"><defs>");
    for (ClassLook look : values()) {
      int side = look.side();
      defs.append(
          String.format(
              Locale.ROOT,
              "<pattern id=\"look-%d\" width=\"%d\" height=\"%d\" patternUnits=\"userSpaceOnUse\"%s>"
                  + "<rect width=\"%d\" height=\"%d\" fill=\"%s\"/>%s</pattern>",
              look.cls.number(),
              side,
              side,
              look == WET || look == PROBABLY_WET ? " patternTransform=\"rotate(45)\"" : "",
              side,
              side,
              look.fill,
              look.hatch.replace("INK", look.ink)));
    }
    return defs + "</defs></svg>\n";
  }

  private int side() {
    return this == PROBABLY_DRY || this == PROBABLY_WET ? 11 : this == WET ? 5 : 6;
  }

  /** A swatch with its letter and words. */
  String key() {
    return String.format(
        Locale.ROOT,
        "<span class=\"key\"><svg width=\"26\" height=\"16\" aria-hidden=\"true\"><rect x=\".5\""
            + " y=\".5\" width=\"25\" height=\"15\" fill=\"%s\" stroke=\"#444\"/>%s</svg> %s</span>",
        paint(),
        letterAt(13, 12, 11),
        code());
  }

  /** The letter in black on a white rim. */
  String letterAt(double x, double y, double size) {
    return String.format(
        Locale.ROOT,
        "<text class=\"letter\" x=\"%.1f\" y=\"%.1f\" font-size=\"%.1f\">%s</text>",
        x,
        y,
        size,
        letter);
  }

  private static String dots(int side, double radius) {
    return String.format(
        Locale.ROOT,
        "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\" fill=\"INK\"/>",
        side / 2.0,
        side / 2.0,
        radius);
  }

  private static String lines(int side, double width) {
    return String.format(
        Locale.ROOT, "<path d=\"M0 0V%d\" stroke=\"INK\" stroke-width=\"%.1f\"/>", side, 2 * width);
  }

  private static String upright(int side) {
    return String.format(
        Locale.ROOT, "<path d=\"M2 0V%d\" stroke=\"INK\" stroke-width=\".7\"/>", side);
  }
}
