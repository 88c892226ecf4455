package org.mottle.engine.water;

import org.mottle.engine.grid.CoveredGround;
import org.mottle.engine.interval.Interval;

/**
 * Sums up realisation by realisation what a piece of ground wants: litres = pass · area /
 * efficiency, the pass by the mean depth over its cells: a hose gives a place one depth. Takes
 * realisations in any order, each once.
 */
public final class WaterMeter {
  private final CoveredGround ground;
  private final Deficit deficit;
  private final double efficiency;
  private final double belowPct;
  private final double[] depthMm;
  private final double[] litres;

  private WaterMeter(
      CoveredGround ground, Deficit deficit, double efficiency, double belowPct, int realisations) {
    this.ground = ground;
    this.deficit = deficit;
    this.efficiency = efficiency;
    this.belowPct = belowPct;
    this.depthMm = new double[realisations];
    this.litres = new double[realisations];
  }

  /** Of all the ground. */
  public static WaterMeter of(
      CoveredGround ground, Deficit deficit, double efficiency, int realisations) {
    return new WaterMeter(ground, deficit, efficiency, Double.POSITIVE_INFINITY, realisations);
  }

  /** Of what lies below a limit, wherever on the ground it is. */
  public static WaterMeter below(
      double limitPct, CoveredGround ground, Deficit deficit, double efficiency, int realisations) {
    return new WaterMeter(ground, deficit, efficiency, limitPct, realisations);
  }

  /**
   * @param realisation which, from 0
   * @param values one for each cell at which the surface is wanted, % by volume
   */
  public void take(int realisation, double[] values) {
    double depth = 0;
    double areaM2 = 0;
    for (int i = 0; i < ground.size(); i++) {
      double v = values[ground.place(i)];
      if (v < belowPct) {
        depth += ground.areaM2(i) * deficit.depthMm(v);
        areaM2 += ground.areaM2(i);
      }
    }
    double mean = areaM2 == 0 ? 0 : depth / areaM2;
    depthMm[realisation] = mean;
    litres[realisation] = deficit.passMm(mean) * areaM2 / efficiency;
  }

  /** Once every realisation was taken. */
  public WaterWanted wanted() {
    Interval depth = Interval.of(depthMm);
    Interval one = Interval.of(litres);
    int passes = (int) Math.ceil(depth.best() / deficit.capMm() - 1e-9);
    return new WaterWanted(depth, one, passes);
  }
}
