package org.mottle.engine.mapping;

/**
 * Over which readings a variogram is pooled. Pairs of readings never cross greens or surveys
 * whatever is chosen.
 */
public enum Pooling {
  /** The greens that are built alike, in all their surveys. */
  ROOT_ZONE("root-zone"),
  /** All greens of a survey, however built. */
  SURVEY("survey"),
  /** Each green by itself, in all its surveys. */
  GREEN("green");

  private final String label;

  Pooling(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }
}
