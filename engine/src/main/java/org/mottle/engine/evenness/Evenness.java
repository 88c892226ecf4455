package org.mottle.engine.evenness;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import org.mottle.engine.interval.Interval;

/**
 * How even the moisture of a green is, with 90 % intervals: the {@link EvennessFigures} of the
 * realisations. Their mean is the best figure; a kriged surface is smoother than the ground and
 * would flatter it. The standard deviation is that of the ground alone, the error of the readings
 * taken out: √(mean of the squares over the realisations).
 *
 * @param mean % by volume
 * @param sd of the ground, % by volume
 * @param variationPct coefficient of variation of the ground, %
 * @param lowQuarter share
 * @param lowQuarterAvailable share; not known without wilt onset, or where most realisations do not
 *     lie above it
 * @param uniformityPct %
 * @param dryShare of the area, 0 to 1; not known without a band
 * @param bandShare of the area
 * @param wetShare of the area
 */
public record Evenness(
    Interval mean,
    Interval sd,
    Interval variationPct,
    Interval lowQuarter,
    Interval lowQuarterAvailable,
    Interval uniformityPct,
    Interval dryShare,
    Interval bandShare,
    Interval wetShare) {

  /** Of realisations that are equally likely; at least one. */
  public static Evenness of(EvennessFigures[] realisations) {
    Interval sd = interval(realisations, EvennessFigures::sd);
    double squares = Arrays.stream(realisations).mapToDouble(f -> f.sd() * f.sd()).sum();
    return new Evenness(
        interval(realisations, EvennessFigures::mean),
        sd.about(Math.sqrt(squares / realisations.length)),
        interval(realisations, EvennessFigures::variationPct),
        interval(realisations, EvennessFigures::lowQuarter),
        interval(realisations, EvennessFigures::lowQuarterAvailable),
        interval(realisations, EvennessFigures::uniformityPct),
        interval(realisations, EvennessFigures::dryShare),
        interval(realisations, EvennessFigures::bandShare),
        interval(realisations, EvennessFigures::wetShare));
  }

  /** Of a surface of which nobody says how sure it is: figures without intervals. */
  public static Evenness plain(EvennessFigures f) {
    return new Evenness(
        Interval.plain(f.mean()),
        Interval.plain(f.sd()),
        Interval.plain(f.variationPct()),
        Interval.plain(f.lowQuarter()),
        Interval.plain(f.lowQuarterAvailable()),
        Interval.plain(f.uniformityPct()),
        Interval.plain(f.dryShare()),
        Interval.plain(f.bandShare()),
        Interval.plain(f.wetShare()));
  }

  /** A figure that some realisations do not have is not known when most have it not. */
  private static Interval interval(
      EvennessFigures[] realisations, ToDoubleFunction<EvennessFigures> figure) {
    double[] known =
        Arrays.stream(realisations).mapToDouble(figure).filter(v -> !Double.isNaN(v)).toArray();
    return 2 * known.length < realisations.length ? Interval.UNKNOWN : Interval.of(known);
  }
}
