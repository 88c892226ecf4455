package org.mottle.export.settings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.mapping.Stations;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Purpose;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.RootZone;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.water.SoilTexture;

/** How the target band of a green is found. */
public sealed interface BandRule {

  /** The band for a green and the readings of a visit to it, or which figure is missing. */
  BandOutcome of(Green green, List<Reading> readings);

  /** Limits given as such. */
  record Limits(TargetBand band) implements BandRule {
    @Override
    public BandOutcome of(Green green, List<Reading> readings) {
      return new BandOutcome.Found(band, AnchorRemarks.of(band, green.rootZone()));
    }
  }

  /**
   * Limits from field capacity and wilt onset; a figure that is NaN is taken from the green itself.
   */
  record Anchors(
      Purpose purpose, double fieldCapacityPct, double wiltOnsetPct, String by, String on)
      implements BandRule {
    @Override
    public BandOutcome of(Green green, List<Reading> readings) {
      RootZone own = green.rootZone();
      double fc = orElse(fieldCapacityPct, own.fieldCapacityPct());
      double wp = orElse(wiltOnsetPct, own.wiltOnsetPct());
      if (Double.isNaN(fc) || Double.isNaN(wp)) {
        return new BandOutcome.NotFound(missing(Double.isNaN(fc), Double.isNaN(wp)));
      }
      if (fc <= wp) {
        return new BandOutcome.NotFound(
            new Refusal(
                String.format(
                    Locale.ROOT,
                    "field capacity (fc_pct %s) is not above wilt onset (wp_pct %s)",
                    fc,
                    wp),
                "correct them in the outlines' file or under bands in the settings"));
      }
      TargetBand band = purpose.between(wp, fc, by, on);
      return new BandOutcome.Found(band, AnchorRemarks.of(band, own));
    }

    private Refusal missing(boolean noFieldCapacity, boolean noWiltOnset) {
      List<String> words = new ArrayList<>();
      List<String> keys = new ArrayList<>();
      if (noFieldCapacity) {
        words.add("field capacity (fc_pct)");
        keys.add("fc_pct");
      }
      if (noWiltOnset) {
        words.add("wilt onset (wp_pct)");
        keys.add("wp_pct");
      }
      return new Refusal(
          "a band for "
              + purpose.label()
              + " needs "
              + String.join(" and ", words)
              + ", not recorded there",
          "give "
              + String.join(" and ", keys)
              + " in the outlines' file or under bands in the settings, or lo_pct and hi_pct");
    }

    private static double orElse(double value, double other) {
      return Double.isNaN(value) ? other : value;
    }
  }

  /** Limits between anchors estimated from the texture of the root zone: always provisional. */
  record OfTexture(Purpose purpose, SoilTexture texture, String by, String on) implements BandRule {
    @Override
    public BandOutcome of(Green green, List<Reading> readings) {
      TargetBand band =
          purpose
              .between(texture.wiltingPointPct(), texture.fieldCapacityPct(), by, on)
              .assuming(
                  String.format(
                      Locale.ROOT,
                      "its anchors (wilt %.1f, field capacity %.1f %%) are estimated from texture, not"
                          + " from readings of the site",
                      texture.wiltingPointPct(),
                      texture.fieldCapacityPct()));
      List<String> remarks = new ArrayList<>(AnchorRemarks.of(band, green.rootZone()));
      if (texture.sandy()) {
        remarks.add(
            "field capacity from texture is that at 33 kPa; a sand root zone over gravel holds far"
                + " more, so these limits may lie much too low; check against readings 12 to 24 h"
                + " after soaking rain before any water is held back");
      }
      if (green.rootZone().fieldCapacityPct() > green.rootZone().wiltOnsetPct()) {
        remarks.add(
            "the outlines' file has field capacity and wilt onset of the site's own; consider"
                + " leaving texture out, so that they are used");
      }
      return new BandOutcome.Found(band, remarks);
    }
  }

  /** Limits about the median of the visit's own readings. */
  record OwnMedian(String by, String on) implements BandRule {
    private static final String NOT_A_LACK =
        "it lies about the median of the visit, so dry and wet mean drier and wetter than the rest of"
            + " the green, not too little or too much; litres to it would even the green out, and may"
            + " be more than it needs";

    @Override
    public BandOutcome of(Green green, List<Reading> readings) {
      double median = Stations.of(readings).medianPct();
      return Double.isNaN(median)
          ? new BandOutcome.NotFound(
              new Refusal(
                  "a band for evenness lies about the median of the readings, and none is used",
                  "read the green, or give lo_pct and hi_pct"))
          : new BandOutcome.Found(TargetBand.aroundMedian(median, by, on), List.of(NOT_A_LACK));
    }
  }
}
