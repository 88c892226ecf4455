package org.mottle.export.drawings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleToIntFunction;
import org.mottle.export.style.Ramp;
import org.mottle.export.write.RasterKind;

/**
 * Colours of a kind of map over a scale that is the same on every green and in every delivery, so
 * that pictures can be compared.
 *
 * @param title what is shown, with its unit
 * @param colour 0xrrggbb of a value
 * @param key the classes from low to high
 */
public record Colouring(String title, DoubleToIntFunction colour, List<Entry> key) {

  /**
   * @param colour 0xrrggbb
   * @param label in words and figures
   * @param mark in figures alone, for a picture
   */
  public record Entry(int colour, String label, String mark) {}

  /** Ends of the scale of moisture, % by volume. */
  public record MoistureScale(double low, double high) {
    public static final MoistureScale USUAL = new MoistureScale(5, 50);
  }

  private static final double MOST_SD = 9;
  private static final double MOST_CHANGE = 11;
  private static final int NO_CLASS = 0xbdbdbd;
  private static final List<String> CLASSES =
      List.of("no value", "dry", "probably dry", "in band", "probably wet", "wet", "cannot tell");

  public Colouring {
    key = List.copyOf(key);
  }

  /** Empty for kinds that have no scale of their own (heights, slopes, rates). */
  static Optional<Colouring> of(RasterKind kind, MoistureScale scale) {
    Ramp ramp =
        switch (kind) {
          case VWC -> Ramp.moisture(scale.low(), scale.high());
          case SD, DVWC_SD -> Ramp.moisture(0, MOST_SD);
          case DVWC -> Ramp.change(MOST_CHANGE);
          case P_DRY, P_WET, P_LOW, P_CHG, P_SLOW, WET_SHARE -> Ramp.share();
          default -> null;
        };
    if (kind == RasterKind.CLS) {
      return Optional.of(classes());
    }
    return Optional.ofNullable(ramp).map(r -> of(r, kind));
  }

  private static Colouring of(Ramp ramp, RasterKind kind) {
    List<Entry> key = new ArrayList<>();
    double step = (ramp.high() - ramp.low()) / ramp.classes();
    for (int c = 0; c < ramp.classes(); c++) {
      double from = ramp.low() + c * step;
      String mark = String.format(Locale.ROOT, "%.3g", from + 0.0);
      String words = mark + " to " + String.format(Locale.ROOT, "%.3g", from + step + 0.0);
      key.add(new Entry(ramp.colour(c), words, figures(from) + " - " + figures(from + step)));
    }
    String unit = kind.unit().isEmpty() ? "" : ", " + kind.unit();
    return new Colouring(kind.meaning() + unit, ramp::of, key);
  }

  private static String figures(double value) {
    double hundredths = Math.rint(value * 100) / 100;
    return hundredths == Math.rint(hundredths)
        ? Long.toString((long) hundredths)
        : Double.toString(hundredths);
  }

  /** Five steps of the moisture ramp for dry to wet, grey where it cannot be told. */
  private static Colouring classes() {
    Ramp ramp = Ramp.moisture(0, 9);
    int[] colours = {
      NO_CLASS,
      ramp.colour(0),
      ramp.colour(2),
      ramp.colour(3),
      ramp.colour(5),
      ramp.colour(7),
      NO_CLASS
    };
    List<Entry> key = new ArrayList<>();
    for (int c = 1; c < colours.length; c++) {
      key.add(new Entry(colours[c], c + " " + CLASSES.get(c), Integer.toString(c)));
    }
    return new Colouring(
        "class", v -> colours[(int) Math.max(0, Math.min(colours.length - 1, v))], key);
  }
}
