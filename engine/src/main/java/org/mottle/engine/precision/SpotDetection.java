package org.mottle.engine.precision;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.check.Check;

/**
 * What a plan could find and what it would miss: in each of {@value #SIMULATIONS} simulations a
 * green with the pattern of the variogram is read at the stations, as far off them as their
 * position errors say, and mapped by kriging with that variogram, nugget filtered. Once a round
 * spot of so much less moisture lies centred anywhere on it: the spot is found where the map makes
 * some of its ground more likely below than above the limit half way to the spot, that is, where
 * the estimate falls below it; else it is missed. Once the green is sound: it is called wrongly
 * when that happens anywhere, though its ground may be that low by its own pattern. All spots are
 * put down on the same simulated greens, the larger round the smaller.
 *
 * <p>A share p of 500 is uncertain by sqrt(p (1 - p) / 500), at most 0.022. The limit counts from
 * the mean of the green, and a variogram known before: a map that has to estimate both does no
 * better. Seeded, the same bytes wherever it runs; some 5 ms a green of 500 m² with 24 stations.
 *
 * @param diameterM of the spot, m
 * @param contrastPct how much drier it is than the green would be there, % by volume; below 0:
 *     wetter
 * @param found share of spots found
 * @param wrongly share of sound greens on which such a spot would be called
 */
public record SpotDetection(double diameterM, double contrastPct, double found, double wrongly) {
  /** Simulated greens. */
  public static final int SIMULATIONS = 500;

  /** Spots found less often than this are mostly missed. */
  private static final double MISSED = 0.2;

  /**
   * The usual contrast, in standard deviations of the local mean. The limit then lies two below the
   * mean, where sound ground is once in forty-four, so that a call says something: on a green of
   * 516 m² with 24 stations and the borrowed variogram sound greens are called about 1 time in 9,
   * at two standard deviations (a limit of one) 3 times in 4.
   */
  public static final double USUAL_CONTRAST_SDS = 4;

  public SpotDetection {
    Check.above("diameter of a spot", diameterM, 0, "m");
    Check.within("share of spots found", found, 0, 1, "");
    Check.within("share of sound greens called", wrongly, 0, 1, "");
  }

  /**
   * @param prediction of the plan
   * @param diametersM of the spots, m
   * @param contrastPct how much drier they are, % by volume; below 0 wetter; not 0
   * @param seed of the simulations
   * @return in the order of the diameters
   */
  public static List<SpotDetection> of(
      Prediction prediction, double[] diametersM, double contrastPct, long seed) {
    Check.finite("contrast of a spot", contrastPct, "% by volume");
    if (contrastPct == 0) {
      throw new IllegalArgumentException(
          "a spot must be drier or wetter than its green, its contrast was " + contrastPct + " %");
    }
    for (double diameter : diametersM) {
      Check.above("diameter of a spot", diameter, 0, "m");
    }
    SpotTrials trials = new SpotTrials(prediction, diametersM, contrastPct);
    for (int s = 0; s < SIMULATIONS; s++) {
      trials.next(seed, s);
    }
    double wrongly = trials.wrongly() / (double) SIMULATIONS;
    List<SpotDetection> all = new ArrayList<>();
    for (int d = 0; d < diametersM.length; d++) {
      double found = trials.found(d) / (double) SIMULATIONS;
      all.add(new SpotDetection(diametersM[d], contrastPct, found, wrongly));
    }
    return all;
  }

  /**
   * {@value #USUAL_CONTRAST_SDS} standard deviations of the local mean, % by volume; 0 where the
   * variogram is all nugget, on which no map could show a spot.
   */
  public static double usualContrastPct(Prediction prediction) {
    return USUAL_CONTRAST_SDS * prediction.structuredSd();
  }

  /** Share of spots missed. */
  public double missed() {
    return 1 - found;
  }

  /** "a round dry spot of 5 m, 4 % drier: 8 in 10". */
  public String words() {
    boolean dry = contrastPct > 0;
    return "a round %s spot of %s m, %s %% %s: %s%s"
        .formatted(
            dry ? "dry" : "wet",
            number(diameterM),
            number(Math.abs(contrastPct)),
            dry ? "drier" : "wetter",
            inTen(),
            found < MISSED ? ", mostly missed" : "");
  }

  /** Never "10 in 10" or "0 in 10" of what is not so every time. */
  private String inTen() {
    long tenths = Math.round(10 * found);
    if (tenths == 10 && found < 1) {
      return "more than 9 in 10";
    }
    return tenths == 0 && found > 0 ? "fewer than 1 in 10" : tenths + " in 10";
  }

  private static String number(double value) {
    String text = String.format(Locale.ROOT, "%.1f", value);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }
}
