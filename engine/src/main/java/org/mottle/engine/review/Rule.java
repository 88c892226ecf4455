package org.mottle.engine.review;

/**
 * What is looked for. Q20, two populations of readings, needs the positions and is told by the map
 * ({@code engine.population}).
 */
public enum Rule {
  RANGE("Q01", "a value no soil gives"),
  UNITS("Q02", "fractions among per cent"),
  REPLICATES("Q03", "insertions at one station disagree"),
  INSERTION("Q04", "lower than its neighbours and its own past: rods not fully in, or a dry spot"),
  HIGH("Q05", "higher than its neighbours and its own past"),
  STUCK("Q06", "a value that does not change, or readings too fast"),
  LABEL("Q07", "labelled with a green it does not lie in"),
  CLOCK("Q08", "times that do not fit"),
  WATER("Q09", "rain or irrigation too short before"),
  DRYING("Q10", "drying while the survey lasted"),
  OPERATOR("Q11", "operators or probes compared"),
  RODS("Q12", "rod length or calibration changed"),
  SOIL("Q13", "soil temperature or salinity"),
  SPREAD("Q14", "ground no station speaks for"),
  EDGE("Q15", "station at the edge"),
  FEW("Q16", "too few stations"),
  CHOSEN("Q17", "stations chosen for what is seen there"),
  OUTLINE("Q18", "outline or reference system"),
  COPY("Q19", "a reading handed in twice"),
  POSITION("Q21", "a position that cannot be"),
  SHIFT("Q22", "a shift common to a visit"),
  PLACED("Q23", "positions by order or track"),
  CONDITIONS("Q24", "conditions not recorded");

  private final String code;
  private final String title;

  Rule(String code, String title) {
    this.code = code;
    this.title = title;
  }

  /** As it stands in files. */
  public String code() {
    return code;
  }

  /** What it is about, in plain words. */
  public String title() {
    return title;
  }
}
