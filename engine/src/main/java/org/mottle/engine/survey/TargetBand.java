package org.mottle.engine.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The moisture the site's agronomist wants on a green for a purpose: dry below {@code lowPct}, wet
 * above {@code highPct}, in band between them (limits included). A band of which it is not recorded
 * who set it and when, or whose limits are assumed, is provisional: it may be mapped, and says so.
 *
 * @param purpose what for, in the site's words
 * @param lowPct lower limit, % by volume
 * @param highPct upper limit, % by volume
 * @param by who set it; empty when not recorded
 * @param on when, ISO 8601 date; empty when not recorded
 * @param assumed what of the limits is assumed and not found on the site; empty when nothing is
 */
public record TargetBand(
    String purpose, double lowPct, double highPct, String by, String on, String assumed) {
  /** The purpose of {@link #aroundMedian}. */
  public static final String EVENNESS = "evenness";

  private static final double LEAST_HALF_WIDTH_PCT = 2;
  private static final double HALF_WIDTH_SHARE = 0.10;

  public TargetBand {
    if (!(lowPct < highPct) || Double.isInfinite(lowPct) || Double.isInfinite(highPct)) {
      throw new IllegalArgumentException(
          "the lower limit of a band must be below its upper limit, were "
              + lowPct
              + " and "
              + highPct);
    }
  }

  /** Limits of which nothing is assumed. */
  public TargetBand(String purpose, double lowPct, double highPct, String by, String on) {
    this(purpose, lowPct, highPct, by, on, "");
  }

  /** Limits of which nothing else is recorded. */
  public static TargetBand of(double lowPct, double highPct) {
    return new TargetBand("", lowPct, highPct, "", "");
  }

  /**
   * A band that asks for evenness alone: the green's own median, and 2 % by volume or a tenth of
   * the median to either side, whichever is more (proposals of this project, no source). It says
   * which ground differs from the rest of the green, not which lacks water.
   */
  public static TargetBand aroundMedian(double medianPct, String by, String on) {
    double half = Math.max(LEAST_HALF_WIDTH_PCT, HALF_WIDTH_SHARE * medianPct);
    return new TargetBand(EVENNESS, medianPct - half, medianPct + half, by, on);
  }

  /** The same with a word on what is assumed of its limits. */
  public TargetBand assuming(String what) {
    return new TargetBand(purpose, lowPct, highPct, by, on, what);
  }

  /** Why the band is provisional; empty when it is not. */
  public String provisional() {
    List<String> why = new ArrayList<>();
    if (!assumed.isEmpty()) {
      why.add(assumed);
    }
    if (by.isBlank() && on.isBlank()) {
      why.add("it is not recorded who set it, nor when");
    } else if (by.isBlank()) {
      why.add("it is not recorded who set it");
    } else if (on.isBlank()) {
      why.add("it is not recorded when it was set");
    }
    return String.join("; ", why);
  }

  /** The band in words, in one line: limits, purpose, author, and why it is provisional if so. */
  public String statement() {
    StringBuilder words = new StringBuilder(provisional().isEmpty() ? "" : "provisional: ");
    words.append(String.format(Locale.ROOT, "dry below %.1f, wet above %.1f %%", lowPct, highPct));
    append(words, " for ", purpose);
    if (!by.isBlank() || !on.isBlank()) {
      words.append("; set");
      append(words, " by ", by);
      append(words, " on ", on);
    }
    append(words, "; ", provisional());
    return words.toString();
  }

  private static void append(StringBuilder words, String before, String word) {
    if (!word.isBlank()) {
      words.append(before).append(word);
    }
  }
}
