package org.mottle.engine.review;

/** What a finding means for the reading or the visit it is about. */
public enum Severity {
  /** Worth knowing; nothing is doubted. */
  NOTE("note"),
  /** In doubt: kept and used, to be looked at or read again. */
  WARN("warn"),
  /** Not used for a map; kept in the file. */
  REJECT("reject");

  private final String label;

  Severity(String label) {
    this.label = label;
  }

  /** As it stands in files. */
  public String label() {
    return label;
  }
}
