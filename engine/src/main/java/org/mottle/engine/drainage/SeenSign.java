package org.mottle.engine.drainage;

import org.mottle.engine.check.Check;

/**
 * A sign that was looked for.
 *
 * @param sign which
 * @param chance that it holds, 0 to 1, as judged without regard to any hypothesis; ½ when what was
 *     seen does not tell
 * @param figure what was seen, in words with figures
 */
public record SeenSign(Sign sign, double chance, String figure) {
  public SeenSign {
    Check.within("chance of " + sign, chance, 0, 1, "");
  }

  /** How much it tells: 0 at a chance of ½, 1 at 0 and 1. */
  double clearness() {
    return Math.abs(2 * chance - 1);
  }

  /** One sentence, the way round that is more likely. */
  String sentence() {
    long tenths = Math.round(10 * Math.max(chance, 1 - chance));
    return (chance >= 0.5 ? sign.statement() : sign.otherwise())
        + (figure.isEmpty() ? "" : " (" + figure + ")")
        + (tenths == 10 ? "" : ", " + tenths + " in 10");
  }
}
