package org.mottle.engine.mapping;

/** How the space between the readings is filled. */
public enum Method {
  /** Kriging where the readings carry it, otherwise no map. */
  AUTO("auto"),
  KRIGING("kriging"),
  INVERSE_DISTANCE("inverse-distance");

  private final String label;

  Method(String label) {
    this.label = label;
  }

  /** As it is typed and printed. */
  public String label() {
    return label;
  }
}
