package org.mottle.engine.review;

import java.util.List;

/**
 * How far the readings of a visit can be trusted (a scale of this project, no source).
 *
 * @param letter A to D
 * @param why what keeps it from a better one; empty for A
 * @param raise what would raise it; empty for A
 */
public record Grade(Letter letter, List<String> why, List<String> raise) {

  /** The letters. */
  public enum Letter {
    /** 16 stations, little rejected, drying known, positions to 1 m. */
    A("a map"),
    /** 12 stations, positions to 2.5 m. */
    B("a map, somewhat less sure"),
    /** Indicative. */
    C("indicative"),
    /** A summary, no map. */
    D("a summary, no map");

    private final String meaning;

    Letter(String meaning) {
      this.meaning = meaning;
    }

    public String meaning() {
      return meaning;
    }
  }

  public Grade {
    why = List.copyOf(why);
    raise = List.copyOf(raise);
  }
}
