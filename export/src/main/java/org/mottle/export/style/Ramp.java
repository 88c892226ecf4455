package org.mottle.export.style;

import java.util.Arrays;
import org.mottle.engine.check.Check;

/**
 * Colours over a fixed scale, in equal classes. Two surveys drawn with one ramp can be compared.
 * Values beyond the scale have the colour of its end. Immutable.
 */
public final class Ramp {
  /**
   * Sequential, light to dark, safe for readers who tell few colours apart: YlGnBu of nine classes
   * (Brewer 1994, ColorBrewer 2.0; figures from memory).
   */
  private static final int[] DRY_TO_WET = {
    0xffffd9, 0xedf8b1, 0xc7e9b4, 0x7fcdbb, 0x41b6c4, 0x1d91c0, 0x225ea8, 0x253494, 0x081d58
  };

  /** Diverging, brown for drier and green for wetter: BrBG of eleven classes (the same source). */
  private static final int[] DRIER_TO_WETTER = {
    0x543005, 0x8c510a, 0xbf812d, 0xdfc27d, 0xf6e8c3, 0xf5f5f5, 0xc7eae5, 0x80cdc1, 0x35978f,
    0x01665e, 0x003c30
  };

  /** Sequential, light to dark: Purples of nine classes (the same source). */
  private static final int[] SURE_TO_UNSURE = {
    0xfcfbfd, 0xefedf5, 0xdadaeb, 0xbcbddc, 0x9e9ac8, 0x807dba, 0x6a51a3, 0x54278f, 0x3f007d
  };

  private final double low;
  private final double high;
  private final int[] colours;

  private Ramp(double low, double high, int[] colours) {
    this.low = Check.finite("low end of a scale", low, "");
    this.high = Check.above("high end of a scale", high, low, "");
    this.colours = colours;
  }

  /** Moisture, % by volume; of anything else that is more where the colour is darker. */
  public static Ramp moisture(double low, double high) {
    return new Ramp(low, high, DRY_TO_WET);
  }

  /** Change of moisture about none, % by volume. */
  public static Ramp change(double most) {
    return new Ramp(-most, most, DRIER_TO_WETTER);
  }

  /** Standard deviation of the error of a map, % by volume: the darker the less sure. */
  public static Ramp doubt(double high) {
    return new Ramp(0, high, SURE_TO_UNSURE);
  }

  /** A share or a probability. */
  public static Ramp share() {
    return new Ramp(0, 1, DRY_TO_WET);
  }

  public double low() {
    return low;
  }

  public double high() {
    return high;
  }

  public int classes() {
    return colours.length;
  }

  /** 0xrrggbb of a class, from 0. */
  public int colour(int cls) {
    return colours[cls];
  }

  /** Upper end of a class, from 0. */
  public double upperEnd(int cls) {
    // multiplied before it is divided, so that ends of round scales are round
    return low + (high - low) * (cls + 1) / colours.length;
  }

  /** 0xrrggbb of a value. */
  public int of(double value) {
    int cls = (int) Math.floor((value - low) / (high - low) * colours.length);
    return colours[Math.max(0, Math.min(colours.length - 1, cls))];
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Ramp r
        && low == r.low
        && high == r.high
        && Arrays.equals(colours, r.colours);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(new double[] {low, high}) + Arrays.hashCode(colours);
  }
}
