package org.mottle.export.plan;

/** How many stations of which kind, in words. */
final class Count {
  private Count() {}

  /** "18 stations (2 close pairs, 3 read twice) and 1 control". */
  static String of(GreenPlan plan) {
    StringBuilder words = new StringBuilder();
    words.append(plan.stations()).append(plan.stations() == 1 ? " station" : " stations");
    String separator = " (";
    if (plan.closePairs() > 0) {
      words.append(separator).append(plan.closePairs());
      words.append(plan.closePairs() == 1 ? " close pair" : " close pairs");
      separator = ", ";
    }
    if (plan.readTwice() > 0) {
      words.append(separator).append(plan.readTwice()).append(" read twice");
      separator = ", ";
    }
    if (separator.equals(", ")) {
      words.append(')');
    }
    if (plan.controls() > 0) {
      words.append(" and ").append(plan.controls());
      words.append(plan.controls() == 1 ? " control" : " controls");
    }
    return words.toString();
  }
}
