package org.mottle.engine.drainage;

/** Why a place stays wet. */
public enum Hypothesis {
  SURFACE(
      "surface collection",
      "check the levels of the place and watch a hose flood: where does the water stand, and over"
          + " which lip does it leave?",
      false),
  SUBSURFACE(
      "subsurface drainage (drain blocked or absent, gravel sealed, outlet)",
      "time the flow at the outlet after rain; then a drain camera, and a core to the gravel",
      true),
  LAYERING(
      "layering, organic matter or compaction near the top",
      "profile cores, infiltration with a ring, organic matter by depth",
      true),
  RUN_ON(
      "run-on or seepage from the surrounds",
      "walk the swale and the uphill edge after rain; a piezometer at the uphill edge",
      true),
  LEAK(
      "leaking pipe, or a head that gives too much",
      "isolate the branch and test its pressure; catch cans round the heads",
      false),
  SHADE(
      "shade: water leaves slowly because little is drawn",
      "light over the day at the place and beside it",
      false),
  PERCHED(
      "perched water of a sound sand green",
      "read at two depths: short and long rods at the same stations",
      false),
  /** What the others are measured against. */
  NONE("none of these", "", false);

  private final String label;
  private final String test;
  private final boolean digs;

  Hypothesis(String label, String test, boolean digs) {
    this.label = label;
    this.test = test;
    this.digs = digs;
  }

  /** In words. */
  public String label() {
    return label;
  }

  /** The test that would decide for or against it. */
  public String test() {
    return test;
  }

  /** Whether the test makes a hole deeper than a probe's. */
  public boolean digs() {
    return digs;
  }
}
