package org.mottle.engine.likelihood;

/** The restricted log likelihood of a sample over nugget and sill, at one shape and range. */
final class SampleSurface {
  /** Factors of a determinant multiplied before a logarithm is taken. */
  private static final int CHUNK = 12;

  private SampleSurface() {}

  /**
   * -½ Σ [ln v + y²/v] with v = c λ + c0. With q = c / c0 it is -½ [m ln c0 + Σ ln(q λ + 1) + (Σ
   * y²/(q λ + 1)) / c0], m the number of contrasts: the sums depend on the ratio alone.
   *
   * @return [nugget][sill], in one array
   */
  static double[] of(Contrasts.Spectrum spectrum, Axes axes) {
    int nuggets = axes.nugget().length;
    int sills = axes.sill().length;
    double[] ratio = axes.ratios();
    double[] logs = new double[ratio.length];
    double[] quadratic = new double[ratio.length];
    for (int k = 0; k < ratio.length; k++) {
      logs[k] = logDeterminant(spectrum, 1, ratio[k]);
      quadratic[k] = quadratic(spectrum, 1, ratio[k]);
    }
    double[] out = new double[nuggets * sills];
    for (int i = 0; i < nuggets; i++) {
      double scale = spectrum.square().length * Math.log(axes.nugget()[i]);
      double perNugget = 1 / axes.nugget()[i];
      int first = nuggets - 1 - i;
      for (int j = 0; j < sills; j++) {
        out[i * sills + j] = -0.5 * (scale + logs[first + j] + perNugget * quadratic[first + j]);
      }
    }
    return out;
  }

  static double at(Contrasts.Spectrum spectrum, double nugget, double sill) {
    return -0.5 * (logDeterminant(spectrum, nugget, sill) + quadratic(spectrum, nugget, sill));
  }

  private static double quadratic(Contrasts.Spectrum spectrum, double nugget, double sill) {
    double[] eigenvalue = spectrum.eigenvalue();
    double[] square = spectrum.square();
    double sum = 0;
    for (int k = 0; k < square.length; k++) {
      sum += square[k] / (sill * eigenvalue[k] + nugget);
    }
    return sum;
  }

  private static double logDeterminant(Contrasts.Spectrum spectrum, double nugget, double sill) {
    double[] eigenvalue = spectrum.eigenvalue();
    double logs = 0;
    for (int from = 0; from < eigenvalue.length; from += CHUNK) {
      int to = Math.min(from + CHUNK, eigenvalue.length);
      double product = 1;
      for (int k = from; k < to; k++) {
        product *= sill * eigenvalue[k] + nugget;
      }
      logs += Math.log(product);
    }
    return logs;
  }
}
