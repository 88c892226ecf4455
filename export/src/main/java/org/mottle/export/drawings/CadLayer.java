package org.mottle.export.drawings;

import java.util.List;

/**
 * A layer of a drawing, and the delivered layer it is drawn from. Labels stand on a layer of their
 * own, {@code <name>_TEXT}.
 */
enum CadLayer {
  GREEN("green", 3),
  PATCH_DRY("patch", 30),
  PATCH_WET("patch", 5),
  CORE_DRY("core", 32),
  CORE_WET("core", 150),
  ENVELOPE_DRY("envel", 41),
  ENVELOPE_WET("envel", 151),
  SPOT("spot", 40),
  MOISTURE("iso", 140),
  STATION("reading", 7),
  STATION_PLAN("station", 7),
  STATION_NEXT("nextst", 2),
  CONTOUR("contour", 8),
  HOLLOW("depress", 4),
  FLOW("flow", 150),
  WET_PLACE("hypo", 6),
  STAYS_DRY("persist", 32),
  STAYS_WET("persist", 152),
  HEAD("head", 1),
  CAN("catch", 9);

  private final String source;
  private final int colour;

  CadLayer(String source, int colour) {
    this.source = source;
    this.colour = colour;
  }

  /** The delivered layer. */
  String source() {
    return source;
  }

  /** Colour number of the drawing, 1 to 255. */
  int colour() {
    return colour;
  }

  /** Delivered layers that can be drawn, in the order of drawing. */
  static List<String> sources() {
    return java.util.Arrays.stream(values()).map(CadLayer::source).distinct().toList();
  }

  /** The layer of a row of a delivered layer, by the kind it has. */
  static CadLayer of(String source, String kind) {
    boolean wet = "wet".equals(kind);
    return switch (source) {
      case "patch" -> wet ? PATCH_WET : PATCH_DRY;
      case "core" -> wet ? CORE_WET : CORE_DRY;
      case "envel" -> wet ? ENVELOPE_WET : ENVELOPE_DRY;
      case "persist" -> wet ? STAYS_WET : STAYS_DRY;
      default ->
          java.util.Arrays.stream(values())
              .filter(l -> l.source.equals(source))
              .findFirst()
              .orElseThrow();
    };
  }
}
