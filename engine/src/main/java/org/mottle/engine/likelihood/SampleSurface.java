package org.mottle.engine.likelihood;

/** The restricted log likelihood of a sample over nugget and sill, at one shape and range. */
final class SampleSurface {
  /** Factors of a determinant multiplied before a logarithm is taken. */
  private static final int CHUNK = 12;

  private SampleSurface() {}

  /**
   * -½ Σ [ln v + y²/v] with v = c λ + c0.
   *
   * @return [nugget][sill], in one array
   */
  static double[] of(Contrasts.Spectrum spectrum, Axes axes) {
    int sills = axes.sill().length;
    double[] out = new double[axes.nugget().length * sills];
    for (int i = 0; i < axes.nugget().length; i++) {
      for (int j = 0; j < sills; j++) {
        out[i * sills + j] = at(spectrum, axes.nugget()[i], axes.sill()[j]);
      }
    }
    return out;
  }

  static double at(Contrasts.Spectrum spectrum, double nugget, double sill) {
    double[] eigenvalue = spectrum.eigenvalue();
    double[] square = spectrum.square();
    double quadratic = 0;
    double logs = 0;
    for (int from = 0; from < eigenvalue.length; from += CHUNK) {
      int to = Math.min(from + CHUNK, eigenvalue.length);
      double product = 1;
      for (int k = from; k < to; k++) {
        double v = sill * eigenvalue[k] + nugget;
        product *= v;
        quadratic += square[k] / v;
      }
      logs += Math.log(product);
    }
    return -0.5 * (logs + quadratic);
  }
}
