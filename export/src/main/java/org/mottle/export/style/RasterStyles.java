package org.mottle.export.style;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mottle.engine.patch.ZoneClass;

/**
 * The styles of the rasters, by the end of their file names. The scales are fixed: a colour means
 * the same in every survey of every delivery. Values beyond a scale have the colour of its end.
 */
public final class RasterStyles {
  /** Moisture, nine classes of 5 % by volume. */
  static final Ramp MOISTURE = Ramp.moisture(0, 45);

  /** Change of moisture, eleven classes of 2 % by volume, the middle one about none. */
  private static final Ramp CHANGE = Ramp.change(11);

  /** Heights differ from site to site more than on a green; the contours show them. */
  public static final Set<String> WITHOUT = Set.of("z");

  private static final Map<String, RasterStyle> STYLES =
      Map.ofEntries(
          Map.entry("vwc", of(MOISTURE, "%")),
          Map.entry("sd", of(Ramp.moisture(0, 4.5), "%")),
          Map.entry("p_dry", of(Ramp.share(), "")),
          Map.entry("p_wet", of(Ramp.share(), "")),
          Map.entry("p_low", of(Ramp.share(), "")),
          Map.entry("cls", classes()),
          Map.entry("dvwc", of(CHANGE, "%")),
          Map.entry("dvwc_sd", of(Ramp.moisture(0, 4.5), "%")),
          Map.entry("p_chg", of(Ramp.share(), "")),
          Map.entry("k_pct_d", of(Ramp.moisture(0, 4.5), "% a day")),
          Map.entry("k_sd", of(Ramp.moisture(0, 1.8), "% a day")),
          Map.entry("ratio", of(Ramp.moisture(0, 2.25), "")),
          Map.entry("p_slow", of(Ramp.share(), "")),
          Map.entry("wet_share", of(Ramp.share(), "")),
          Map.entry("slope", of(Ramp.moisture(0, 9), "%")),
          Map.entry("twi", of(Ramp.moisture(0, 13.5), "")),
          Map.entry("fill", of(Ramp.moisture(0, 90), "mm")));

  private RasterStyles() {}

  /** The style of a kind of raster; none of those {@link #WITHOUT}. */
  public static Optional<RasterStyle> of(String code) {
    return Optional.ofNullable(STYLES.get(code));
  }

  private static RasterStyle of(Ramp ramp, String unit) {
    List<RasterStyle.Step> steps = new ArrayList<>();
    int last = ramp.classes() - 1;
    for (int i = 0; i <= last; i++) {
      double low = i == 0 ? Double.NEGATIVE_INFINITY : ramp.upperEnd(i - 1);
      double high = i == last ? Double.POSITIVE_INFINITY : ramp.upperEnd(i);
      steps.add(new RasterStyle.Step(high, ramp.colour(i), interval(low, high, unit)));
    }
    return new RasterStyle(steps, false);
  }

  private static RasterStyle classes() {
    List<RasterStyle.Step> steps = new ArrayList<>();
    for (ZoneClass cls : ZoneClass.values()) {
      steps.add(new RasterStyle.Step(cls.number(), MoistureClasses.colour(cls), cls.code()));
    }
    return new RasterStyle(steps, true);
  }

  /** An interval in words; an infinite end is left open. */
  static String interval(double low, double high, String unit) {
    String words =
        Double.isInfinite(low)
            ? "up to " + number(high)
            : Double.isInfinite(high) ? "over " + number(low) : number(low) + " to " + number(high);
    return unit.isEmpty() ? words : words + " " + unit;
  }

  /** At most two decimals. */
  private static String number(double value) {
    String text = String.format(Locale.ROOT, "%.2f", value);
    return text.replaceAll("\\.?0+$", "");
  }
}
