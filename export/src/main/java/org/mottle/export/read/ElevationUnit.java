package org.mottle.export.read;

import java.util.Locale;
import java.util.Optional;

/** Unit of heights. */
public enum ElevationUnit {
  /** What the file says; metres, told, where it says nothing. */
  ASK(Double.NaN),
  METRE(1),
  /** International foot, 0.3048 m. */
  FOOT(0.3048),
  /** US survey foot, 1200 / 3937 m. */
  US_FOOT(1200 / 3937.0);

  private final double metres;

  ElevationUnit(double metres) {
    this.metres = metres;
  }

  /** Metres in one of it; NaN for {@link #ASK}. */
  public double metres() {
    return metres;
  }

  /** By the name a file gives it. */
  public static Optional<ElevationUnit> named(String text) {
    String plain = text.strip().toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", " ").strip();
    return switch (plain) {
      case "m", "metre", "metres", "meter", "meters" -> Optional.of(METRE);
      case "ft", "foot", "feet", "international foot", "foot intl" -> Optional.of(FOOT);
      case "ftus", "us ft", "usft", "us survey foot", "us survey feet", "foot us", "sfoot" ->
          Optional.of(US_FOOT);
      default -> Optional.empty();
    };
  }

  /** By the EPSG code of the unit. */
  static Optional<ElevationUnit> ofEpsg(int code) {
    return switch (code) {
      case 9001 -> Optional.of(METRE);
      case 9002 -> Optional.of(FOOT);
      case 9003 -> Optional.of(US_FOOT);
      default -> Optional.empty();
    };
  }

  String words() {
    return switch (this) {
      case FOOT -> "feet (0.3048 m)";
      case US_FOOT -> "US survey feet";
      default -> "metres";
    };
  }
}
