package org.mottle.engine.mapping;

/** What a map is good for; each step says less than the one before. */
public enum Standing {
  /** Classes with probability, and patches with an outline. */
  PATCHES("patches"),
  /** Classes with probability; no outline is honest. */
  PROBABILITIES("probabilities"),
  /** Where it is wetter and drier, to see where to read more. */
  INDICATIVE("indicative"),
  /** No map. */
  NONE("none");

  private final String code;

  Standing(String code) {
    this.code = code;
  }

  /** As it stands in files. */
  public String code() {
    return code;
  }

  Standing atMost(Standing other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
