package org.mottle.engine.water;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.survey.Refusal;

/**
 * What a soil of a texture holds and lets through, by the equations of Saxton &amp; Rawls 2006
 * (Soil Sci. Soc. Am. J. 70:1569-1578), numbers 1 to 5 and 15 to 18. They are regressions over some
 * 2000 samples of farmed soils: an estimate for want of readings, which the site's own figures
 * replace. Coefficients of determination given by the authors: 0.86 at 1500 kPa, 0.63 at 33 kPa,
 * 0.29 for the saturated water content (from memory).
 *
 * <p>Field capacity is here the moisture at 33 kPa. A sand root zone over gravel is drained by its
 * own depth alone, some 3 kPa, and holds far more than that; there the estimate lies much too low
 * (see {@link #sandy}). The wilting point is at 1500 kPa; turf shows wilt before.
 *
 * <p>The authors left out samples of more than 8 % organic matter or more than 60 % clay (from
 * memory), so these are refused, as are textures at the rim of the data for which the equations
 * give no water at the wilting point or no air at field capacity.
 *
 * @param sandPct sand (0.05-2 mm), % by weight of the mineral soil
 * @param clayPct clay (below 0.002 mm), % by weight of the mineral soil
 * @param organicPct organic matter, % by weight
 */
public record SoilTexture(double sandPct, double clayPct, double organicPct) {
  private static final double MOST_CLAY_PCT = 60;
  private static final double MOST_ORGANIC_PCT = 8;

  /** Our choice: the sands and loamy sands of root zones. */
  private static final double SANDY_PCT = 80;

  private static final double WILTING_KPA = 1500;
  private static final double FIELD_CAPACITY_KPA = 33;

  public SoilTexture {
    List<Refusal> against = against(sandPct, clayPct, organicPct);
    if (!against.isEmpty()) {
      throw new IllegalArgumentException(against.get(0).toString());
    }
  }

  /** All that keeps the equations from being used on such a soil; nothing when they can be. */
  public static List<Refusal> against(double sandPct, double clayPct, double organicPct) {
    List<Refusal> against = new ArrayList<>();
    share(against, "sand", sandPct, 100);
    share(against, "clay", clayPct, MOST_CLAY_PCT);
    share(against, "organic matter", organicPct, MOST_ORGANIC_PCT);
    if (against.isEmpty() && sandPct + clayPct > 100) {
      against.add(
          new Refusal(
              said("sand and clay together are %s %% by weight", sandPct + clayPct),
              "with silt they make 100; check the analysis"));
    }
    if (against.isEmpty()) {
      Equations e = new Equations(sandPct / 100, clayPct / 100, organicPct);
      if (!(e.wiltingPoint() > 0)) {
        against.add(
            new Refusal(
                said("the equations leave %.1f %% of water at wilting", 100 * e.wiltingPoint()),
                "so little clay and organic matter is outside their data; give the site's own"
                    + " readings"));
      } else if (!(e.saturation() > e.fieldCapacity())) {
        against.add(
            new Refusal(
                said(
                    "the equations find no air at field capacity (%.1f %% of water)",
                    100 * e.fieldCapacity()),
                "so much clay and organic matter is outside their data; give the site's own"
                    + " readings"));
      }
    }
    return against;
  }

  private static void share(List<Refusal> against, String what, double pct, double most) {
    if (!(pct >= 0 && pct <= 100)) {
      against.add(
          new Refusal(
              said("%s is a share by weight, was %s %%", what, pct), "give 0 to 100, in %"));
    } else if (pct > most) {
      against.add(
          new Refusal(
              said("%s of %s %% is more than the equations were made for", what, pct),
              said("they hold up to %.0f %%; give the site's own readings", most)));
    }
  }

  /** Moisture at 1500 kPa, % by volume (equation 1). */
  public double wiltingPointPct() {
    return 100 * equations().wiltingPoint();
  }

  /** Moisture at 33 kPa, % by volume (equation 2). */
  public double fieldCapacityPct() {
    return 100 * equations().fieldCapacity();
  }

  /** Moisture when all pores are filled, % by volume (equations 3 and 5). */
  public double saturationPct() {
    return 100 * equations().saturation();
  }

  /** Saturated hydraulic conductivity, mm/h (equations 15, 16 and 18). */
  public double conductivityMmH() {
    Equations e = equations();
    double b =
        Math.log(WILTING_KPA / FIELD_CAPACITY_KPA) / Math.log(e.fieldCapacity() / e.wiltingPoint());
    return 1930 * Math.pow(e.saturation() - e.fieldCapacity(), 3 - 1 / b);
  }

  /** Whether it is so sandy that field capacity at 33 kPa is not that of a built root zone. */
  public boolean sandy() {
    return sandPct >= SANDY_PCT;
  }

  private Equations equations() {
    return new Equations(sandPct / 100, clayPct / 100, organicPct);
  }

  private static String said(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }

  /** In the paper's units: sand and clay as shares of weight, organic matter in %, m³/m³. */
  private record Equations(double sand, double clay, double organic) {
    double wiltingPoint() {
      double first =
          -0.024 * sand
              + 0.487 * clay
              + 0.006 * organic
              + 0.005 * sand * organic
              - 0.013 * clay * organic
              + 0.068 * sand * clay
              + 0.031;
      return first + (0.14 * first - 0.02);
    }

    double fieldCapacity() {
      double first =
          -0.251 * sand
              + 0.195 * clay
              + 0.011 * organic
              + 0.006 * sand * organic
              - 0.027 * clay * organic
              + 0.452 * sand * clay
              + 0.299;
      return first + (1.283 * first * first - 0.374 * first - 0.015);
    }

    double saturation() {
      double first =
          0.278 * sand
              + 0.034 * clay
              + 0.022 * organic
              - 0.018 * sand * organic
              - 0.027 * clay * organic
              - 0.584 * sand * clay
              + 0.078;
      double drainable = first + (0.636 * first - 0.107);
      return fieldCapacity() + drainable - 0.097 * sand + 0.043;
    }
  }
}
