package org.mottle.engine.mapping;

/**
 * Over which greens an experimental variogram is pooled. Pairs of readings never cross greens
 * whatever is chosen.
 */
public enum Pooling {
  /** All greens of a survey. */
  SURVEY("survey"),
  /** The greens of a survey that are built alike. */
  ROOT_ZONE("root-zone"),
  /** Each green by itself. */
  GREEN("green");

  private final String label;

  Pooling(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }
}
