package org.mottle.engine.irrigation;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.mottle.engine.survey.Refusal;

/**
 * The catches of an area in one unit, so that their ratios mean something: depths; rates where the
 * cans stood for different times; millilitres where no mouth is recorded, as of cans that are
 * alike. Refused where neither holds. Immutable.
 */
public final class CanValues {
  private final double[] values;
  private final String unit;
  private final Optional<Refusal> refusal;

  private CanValues(double[] values, String unit, Optional<Refusal> refusal) {
    this.values = values;
    this.unit = unit;
    this.refusal = refusal;
  }

  static CanValues of(List<CatchCan> cans) {
    Recorded mouths = Recorded.of(cans, c -> c.measure().mouthCm2());
    Recorded minutes = Recorded.of(cans, c -> c.measure().minutes());
    Optional<Refusal> refusal = mouths.mixed("mouth area", "cm²", "measure every mouth");
    refusal = refusal.or(() -> minutes.mixed("run time", "min", "record how long each can stood"));
    if (refusal.isPresent()) {
      return new CanValues(new double[0], "", refusal);
    }
    boolean depths = mouths.missing() == 0;
    boolean rates = minutes.missing() == 0 && minutes.distinct().size() > 1;
    double[] values =
        cans.stream()
            .map(CatchCan::measure)
            .mapToDouble(m -> depths ? (rates ? m.rateMmH() : m.depthMm()) : plain(m, rates))
            .toArray();
    String unit = depths ? (rates ? "mm/h" : "mm") : rates ? "ml/min" : "ml";
    for (double value : values) {
      if (value > 0) {
        return new CanValues(values, unit, Optional.empty());
      }
    }
    return new CanValues(
        new double[0],
        "",
        Optional.of(new Refusal("no can caught anything", "check that the heads ran")));
  }

  private static double plain(CatchCan.Measure m, boolean rates) {
    return rates ? m.ml() / m.minutes() : m.ml();
  }

  /** One a can, in the order of the cans; none when refused. */
  public double[] values() {
    return values.clone();
  }

  /** mm, mm/h, ml or ml/min. */
  public String unit() {
    return unit;
  }

  public Optional<Refusal> refusal() {
    return refusal;
  }

  /**
   * A figure of the cans.
   *
   * @param missing cans without it
   * @param of all cans
   * @param distinct different values, ascending
   */
  record Recorded(int missing, int of, List<Double> distinct) {
    static Recorded of(List<CatchCan> cans, ToDoubleFunction<CatchCan> figure) {
      List<Double> known =
          cans.stream().mapToDouble(figure).filter(v -> !Double.isNaN(v)).boxed().toList();
      return new Recorded(
          cans.size() - known.size(), cans.size(), known.stream().distinct().sorted().toList());
    }

    /** Some have it and differ, some do not: nothing can be taken for granted. */
    Optional<Refusal> mixed(String what, String unit, String remedy) {
      return missing == 0 || distinct.size() < 2
          ? Optional.empty()
          : Optional.of(
              new Refusal(
                  "%d of %d cans have no %s and the others differ (%s)"
                      .formatted(missing, of, what, listed(unit)),
                  remedy));
    }

    String listed(String unit) {
      String first =
          distinct.stream()
              .limit(4)
              .map(v -> String.format(Locale.ROOT, "%.4g", v).replaceAll("\\.?0+$", ""))
              .collect(Collectors.joining(", "));
      return first + (distinct.size() > 4 ? ", ..." : "") + " " + unit;
    }
  }
}
