package org.mottle.engine.evenness;

import java.util.Optional;
import org.mottle.engine.grid.CoveredGround;
import org.mottle.engine.survey.TargetBand;

/** Takes {@link EvennessFigures} of surfaces over one piece of ground. Used by one thread. */
public final class EvennessMeter {
  private final CoveredGround ground;
  private final LowQuarter lowQuarter;
  private final double wiltOnsetPct;
  private final double lowPct;
  private final double highPct;

  /**
   * @param ground which
   * @param wiltOnsetPct % by volume; NaN when not known
   * @param band limits; empty without
   */
  public EvennessMeter(CoveredGround ground, double wiltOnsetPct, Optional<TargetBand> band) {
    this.ground = ground;
    this.lowQuarter = new LowQuarter(ground);
    this.wiltOnsetPct = wiltOnsetPct;
    this.lowPct = band.map(TargetBand::lowPct).orElse(Double.NaN);
    this.highPct = band.map(TargetBand::highPct).orElse(Double.NaN);
  }

  /**
   * @param values one for each cell at which the surface is wanted, % by volume
   */
  public EvennessFigures of(double[] values) {
    int n = ground.size();
    double total = ground.areaM2();
    double sum = 0;
    double dry = 0;
    double wet = 0;
    for (int i = 0; i < n; i++) {
      double v = values[ground.place(i)];
      double area = ground.areaM2(i);
      sum += area * v;
      dry += v < lowPct ? area : 0;
      wet += v > highPct ? area : 0;
    }
    double mean = sum / total;
    double squares = 0;
    double deviation = 0;
    for (int i = 0; i < n; i++) {
      double d = values[ground.place(i)] - mean;
      squares += ground.areaM2(i) * d * d;
      deviation += ground.areaM2(i) * Math.abs(d);
    }
    double low = lowQuarter.mean(values);
    boolean banded = !Double.isNaN(lowPct);
    return new EvennessFigures(
        mean,
        Math.sqrt(squares / total),
        low / mean,
        mean > wiltOnsetPct ? (low - wiltOnsetPct) / (mean - wiltOnsetPct) : Double.NaN,
        100 * (1 - deviation / total / mean),
        banded ? dry / total : Double.NaN,
        banded ? wet / total : Double.NaN);
  }
}
