package org.mottle.demo.walk;

import java.util.List;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.truth.Survey;

/**
 * One operator on one green on one day.
 *
 * @param survey the day
 * @param green the green
 * @param planId plans followed, joined by +
 * @param crew who reads, with what
 * @param insertions in order
 */
public record Visit(
    Survey survey, GreenSite green, String planId, Crew crew, List<Planned> insertions) {

  public Visit {
    insertions = List.copyOf(insertions);
  }

  /**
   * @param operator initial
   * @param probe which probe
   * @param rodMm length of its rods
   * @param biasPct what this operator and probe read too high, % by volume
   */
  public record Crew(String operator, String probe, int rodMm, double biasPct) {
    static final Crew A = new Crew("A", "P1", 60, 0);
    static final Crew B = new Crew("B", "P2", 60, 2.0);
    static final Crew A_SHORT_RODS = new Crew("A", "P1", 38, -2.5);
  }

  /**
   * @param station where
   * @param replicate 1 for the first insertion at a station
   */
  public record Planned(Station station, int replicate) {}

  /** Whether this is the second operator reading stations of the first again. */
  public boolean shared() {
    return insertions.stream().allMatch(planned -> planned.replicate() > 1);
  }

  /** How positions come about on this visit. */
  public Positioning positioning() {
    return switch (survey) {
      case S2 -> green.id().compareTo("G3") <= 0 ? Positioning.ORDER : Positioning.TRACK;
      case S3 -> Positioning.PHONE;
      default -> Positioning.SBAS;
    };
  }

  /** Where a visit's positions come from, with the errors per axis, m. */
  public enum Positioning {
    SBAS("sbas", 1.0, 0.6),
    PHONE("phone", 2.0, 1.5),
    TRACK("track", 1.0, 0.6),
    ORDER("order", 0, 0);

    private final String code;
    private final double shiftSd;
    private final double jitterSd;

    Positioning(String code, double shiftSd, double jitterSd) {
      this.code = code;
      this.shiftSd = shiftSd;
      this.jitterSd = jitterSd;
    }

    public String code() {
      return code;
    }

    /** Of the error that all readings of a visit share. */
    public double shiftSd() {
      return shiftSd;
    }

    /** Of the error of each fix. */
    public double jitterSd() {
      return jitterSd;
    }

    /** Whether the readings carry a position. */
    public boolean logged() {
      return this == SBAS || this == PHONE;
    }
  }
}
