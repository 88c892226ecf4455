package org.mottle.engine.water;

import java.util.Optional;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.survey.RootZone;

/**
 * The water of a green's root zone by {@link AvailableWater}, wilt onset as the site knows it in
 * place of the wilting point. It informs and sets no limit: greens are often kept drier on purpose.
 *
 * @param totalMm TAW, mm
 * @param readilyMm RAW, mm
 * @param depletionMm what is lacking to field capacity on the mean of the green, mm
 */
public record RootWater(double totalMm, double readilyMm, Interval depletionMm) {

  /**
   * Empty where field capacity, wilt onset or root depth is not known.
   *
   * @param meanPct mean of the green, % by volume
   * @param et0MmDay reference evapotranspiration, mm a day; NaN: p as it is tabled
   */
  public static Optional<RootWater> of(
      RootZone soil, Interval meanPct, WateringSettings settings, double et0MmDay) {
    double root = settings.rootMm(soil);
    if (Double.isNaN(root) || !(soil.fieldCapacityPct() > soil.wiltOnsetPct())) {
      return Optional.empty();
    }
    AvailableWater water = new AvailableWater(soil.fieldCapacityPct(), soil.wiltOnsetPct(), root);
    double tabled = settings.turf().tabled().depletionShare();
    double p =
        Double.isNaN(et0MmDay)
            ? tabled
            : AvailableWater.depletionShare(tabled, TurfCoefficient.etcMm(settings.kc(), et0MmDay));
    return Optional.of(
        new RootWater(
            water.totalMm(),
            water.readilyMm(p),
            new Interval(
                water.depletionMm(meanPct.high()),
                water.depletionMm(meanPct.best()),
                water.depletionMm(meanPct.low()))));
  }
}
