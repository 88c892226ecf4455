package org.mottle.engine.fit;

/**
 * One parameter that enters the model non-linearly, on the scale on which it is searched.
 *
 * @param structure index of the structure it belongs to
 * @param kind which parameter of it
 * @param low least place on the scale
 * @param high greatest place on the scale
 */
record Axis(int structure, Kind kind, double low, double high) {

  enum Kind {
    RANGE,
    EXPONENT,
    KAPPA,
    AZIMUTH,
    RATIO
  }

  private static final double DEGREES = 60;

  /** An axis between two values of the parameter. */
  static Axis between(int structure, Kind kind, double least, double greatest) {
    return new Axis(structure, kind, place(kind, least), place(kind, greatest));
  }

  /** Value of the parameter at a place. */
  double value(double place) {
    return switch (kind) {
      case EXPONENT -> place;
      case AZIMUTH -> place * DEGREES;
      default -> Math.exp(place);
    };
  }

  private static double place(Kind kind, double value) {
    return switch (kind) {
      case EXPONENT -> value;
      case AZIMUTH -> value / DEGREES;
      default -> Math.log(value);
    };
  }

  /** Whether the axis is a full turn, so that its ends are one. */
  boolean turns() {
    return kind == Kind.AZIMUTH && high - low >= 180 / DEGREES;
  }

  /** The place brought between the bounds. */
  double clamp(double place) {
    return turns() ? place : Math.max(low, Math.min(high, place));
  }

  /** Place of a node of a grid of several. */
  double node(int index, int nodes) {
    int gaps = turns() ? nodes : nodes - 1;
    return low + (high - low) * index / gaps;
  }
}
