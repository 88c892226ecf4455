package org.mottle.engine.season;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.water.TurfCoefficient;
import org.mottle.engine.water.WateringSettings;

/**
 * How fast a green dried between two surveys without water between them, Δt days apart:
 *
 * <pre>
 * k    = (θ₁ − θ₂) / Δt                          % by volume a day
 * k_ET = 100 Kc Σ ET0 / (z Δt)                    what the turf draws, z root depth, mm
 * R    = k / k_ET
 * τ    = Δt / ln((θ₁ − θ_r) / (θ₂ − θ_r))         days; θ_r the moisture at wilt onset
 * </pre>
 *
 * <p>Soon after rain k holds drainage as well as what the turf draws. τ is given only where the
 * ground fell with probability {@value #FELL} and still stood two standard deviations above θ_r;
 * else NaN (our choice). Immutable.
 */
public final class DryDown {
  /** Ground that dries by less than this share of what the turf draws is slow. */
  public static final double SLOW_SHARE = 0.6;

  private static final double FELL = 0.95;
  private static final double ABOVE_SDS = 2;

  /** Less time between two surveys shows no rate, days. */
  private static final double LEAST_DAYS = 0.5;

  private final Change change;
  private final double days;
  private final double etRate;
  private final Raster rate;
  private final Raster sd;
  private final Raster slow;
  private final Raster tau;
  private final List<String> remarks;

  private DryDown(Change change, double days, double etRate, List<String> remarks, Drawn drawn) {
    this.change = change;
    this.days = days;
    this.etRate = etRate;
    this.remarks = List.copyOf(remarks);
    GreenCells cells = change.cells();
    this.rate = scaled(change.mean(), -1 / days);
    this.sd = scaled(change.sd(), 1 / days);
    double[] share = drawn.above(-SLOW_SHARE * etRate * days);
    if (Double.isNaN(etRate)) {
      Arrays.fill(share, Double.NaN);
    }
    this.slow = cells.map(share);
    this.tau = tau(cells.map(drawn.below(0)));
  }

  private static Raster scaled(Raster raster, double factor) {
    double[] values = raster.values();
    Arrays.setAll(values, i -> factor * values[i]);
    return new Raster(raster.grid(), values);
  }

  private Raster tau(Raster fell) {
    double residual = change.later().map().subject().green().rootZone().wiltOnsetPct();
    double[] value = change.later().map().surface().mean().values();
    double[] error = change.later().map().surface().sd().values();
    double[] tau = new double[value.length];
    for (int i = 0; i < tau.length; i++) {
      double left = value[i] - residual;
      double had = left - change.mean().value(i);
      boolean sound = fell.value(i) >= FELL && left > ABOVE_SDS * error[i] && had > left;
      tau[i] = sound ? days / Math.log(had / left) : Double.NaN;
    }
    return new Raster(fell.grid(), tau);
  }

  /**
   * @param settings root depth where the green's own is not recorded, and crop coefficient
   */
  static Answer<DryDown> of(
      Change change, WateringSettings settings, int threads, Progress progress) {
    VisitedGreen before = change.earlier();
    VisitedGreen after = change.later();
    String pair = "green " + after.greenId() + ", " + before.surveyId() + " to " + after.surveyId();
    Optional<OffsetDateTime> from = before.time();
    Optional<OffsetDateTime> to = after.time();
    if (from.isEmpty() || to.isEmpty()) {
      return Answer.refused(
          pair + ": when it was read is not recorded", "record the start of both visits");
    }
    double days = Duration.between(from.get(), to.get()).toSeconds() / 86_400.0;
    if (!(days >= LEAST_DAYS)) {
      return Answer.refused(
          String.format(Locale.ROOT, "%s: %.1f days apart show no rate of drying", pair, days),
          "read again 2 to 4 days after the first survey");
    }
    Optional<String> water = water(after.conditions(), days);
    if (water.isPresent()) {
      return Answer.refused(
          pair + ": " + water.get(), "compare two surveys without rain or irrigation between them");
    }
    List<String> remarks = new ArrayList<>(change.remarks());
    double root = settings.rootMm(after.map().subject().green().rootZone());
    double et0 = after.conditions().orElseThrow().water().et0MmDay();
    if (Double.isNaN(root) || Double.isNaN(et0)) {
      remarks.add(
          (Double.isNaN(root) ? "the root depth" : "the evapotranspiration")
              + " is not recorded: what the turf drew cannot be told");
    }
    double etRate =
        Double.isNaN(root) || Double.isNaN(et0)
            ? Double.NaN
            : 100 * TurfCoefficient.etcMm(settings.kc(), et0) / root;
    return Answer.of(new DryDown(change, days, etRate, remarks, change.drawn(threads, progress)));
  }

  /** What speaks against a dry spell of these days before the visit. */
  private static Optional<String> water(Optional<Conditions> conditions, double days) {
    if (conditions.isEmpty()) {
      return Optional.of("the water between the surveys is not recorded");
    }
    Conditions.Water w = conditions.get().water();
    boolean noIrrigation = Double.isNaN(w.irrigationHours()) && w.irrigationMm() == 0;
    if (Double.isNaN(w.rainHours()) || Double.isNaN(w.irrigationHours()) && !noIrrigation) {
      return Optional.of("whether it rained or was irrigated between the surveys is not recorded");
    }
    double hours = 24 * days;
    if (w.rainHours() < hours) {
      return Optional.of(
          String.format(Locale.ROOT, "it rained %.0f h before the second survey", w.rainHours()));
    }
    if (w.irrigationHours() < hours) {
      return Optional.of(
          String.format(
              Locale.ROOT,
              "it was irrigated %.0f h before the second survey",
              w.irrigationHours()));
    }
    return Optional.empty();
  }

  /** The change it rests on. */
  public Change change() {
    return change;
  }

  /** Δt. */
  public double days() {
    return days;
  }

  /** k, % by volume a day; above 0 where the ground dried. */
  public Raster rate() {
    return rate;
  }

  /** Standard deviation of the error of k, % by volume a day. */
  public Raster sd() {
    return sd;
  }

  /** k over the green with its 90 % interval, % by volume a day. */
  public Interval whole() {
    Interval i = change.whole().interval();
    return new Interval(-i.high() / days, -i.best() / days, -i.low() / days);
  }

  /** k_ET, % by volume a day; NaN where root depth or evapotranspiration is not recorded. */
  public double etRate() {
    return etRate;
  }

  /** R; NaN where k_ET is. */
  public Raster ratio() {
    return scaled(rate, 1 / etRate);
  }

  /** Probability that k is below 0.6 k_ET; NaN where k_ET is. */
  public Raster slow() {
    return slow;
  }

  /** τ, days; NaN where it makes no sense. */
  public Raster tau() {
    return tau;
  }

  /** What a reader should know, in words. */
  public List<String> remarks() {
    return remarks;
  }
}
