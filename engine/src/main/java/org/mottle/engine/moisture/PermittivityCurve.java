package org.mottle.engine.moisture;

import java.util.Optional;
import org.mottle.engine.check.Check;

/**
 * Moisture (% by volume) from the relative permittivity that a probe measures. Published curves for
 * mineral soil; none is right for every soil, and a curve of the site's own goes before them. With
 * ε the permittivity, ρ the dry bulk density (g/cm³), φ the porosity (0 to 1) and θ the moisture as
 * a fraction:
 */
public sealed interface PermittivityCurve {

  /** Least and greatest permittivity that soil and water give. */
  double LEAST = 1;

  double MOST = 81;

  /** Moisture, % by volume, of a relative permittivity; may be below 0 for very dry soil. */
  double pct(double permittivity);

  /** As it is typed and recorded. */
  String label();

  /** θ = -0.053 + 0.0292 ε - 5.5e-4 ε² + 4.3e-6 ε³ (Topp, Davis & Annan 1980, eq. 7). */
  record Topp() implements PermittivityCurve {
    @Override
    public double pct(double e) {
      return 100 * (-5.3e-2 + e * (2.92e-2 + e * (-5.5e-4 + e * 4.3e-6)));
    }

    @Override
    public String label() {
      return "topp";
    }
  }

  /** θ = 0.1138 √ε - 0.1758 (Ledieu et al. 1986). */
  record Ledieu() implements PermittivityCurve {
    @Override
    public double pct(double e) {
      return 100 * (0.1138 * Math.sqrt(e) - 0.1758);
    }

    @Override
    public String label() {
      return "ledieu";
    }
  }

  /**
   * θ = (√ε - 0.297 ρ - 1.344) / 8.79 (Ledieu et al. 1986).
   *
   * @param bulkDensity ρ, g/cm³
   */
  record LedieuDensity(double bulkDensity) implements PermittivityCurve {
    public LedieuDensity {
      Check.within("bulk density", bulkDensity, 0.1, 2.65, "g/cm³");
    }

    @Override
    public double pct(double e) {
      return 100 * (Math.sqrt(e) - 0.297 * bulkDensity - 1.344) / 8.79;
    }

    @Override
    public String label() {
      return "ledieu";
    }
  }

  /**
   * θ = (√ε - 0.819 - 0.168 ρ - 0.159 ρ²) / (7.17 + 1.18 ρ) (Malicki et al. 1996).
   *
   * @param bulkDensity ρ, g/cm³
   */
  record MalickiDensity(double bulkDensity) implements PermittivityCurve {
    public MalickiDensity {
      Check.within("bulk density", bulkDensity, 0.1, 2.65, "g/cm³");
    }

    @Override
    public double pct(double e) {
      double r = bulkDensity;
      return 100 * (Math.sqrt(e) - 0.819 - 0.168 * r - 0.159 * r * r) / (7.17 + 1.18 * r);
    }

    @Override
    public String label() {
      return "malicki";
    }
  }

  /**
   * θ = (√ε - 3.47 + 6.22 φ - 3.82 φ²) / (7.01 + 6.89 φ - 7.83 φ²) (Malicki et al. 1996).
   *
   * @param porosity φ, 0 to 1
   */
  record MalickiPorosity(double porosity) implements PermittivityCurve {
    public MalickiPorosity {
      Check.within("porosity", porosity, 0.05, 0.98, "");
    }

    @Override
    public double pct(double e) {
      double p = porosity;
      return 100
          * (Math.sqrt(e) - 3.47 + 6.22 * p - 3.82 * p * p)
          / (7.01 + 6.89 * p - 7.83 * p * p);
    }

    @Override
    public String label() {
      return "malicki";
    }
  }

  /**
   * θ = (ε^α - (1 - φ) εs^α - φ) / (εw^α - 1) (Roth et al. 1990); α = 0.5 is the refractive index
   * model.
   *
   * @param alpha α
   * @param solid permittivity of the solids, εs
   * @param porosity φ, 0 to 1
   * @param water permittivity of water, εw
   */
  record Mixing(double alpha, double solid, double porosity, double water)
      implements PermittivityCurve {
    public Mixing {
      Check.within("exponent of the mixing model", alpha, 0.1, 1, "");
      Check.within("permittivity of the solids", solid, 2, 10, "");
      Check.within("porosity", porosity, 0.05, 0.98, "");
      Check.within("permittivity of water", water, 50, 90, "");
    }

    @Override
    public double pct(double e) {
      return 100
          * (Math.pow(e, alpha) - (1 - porosity) * Math.pow(solid, alpha) - porosity)
          / (Math.pow(water, alpha) - 1);
    }

    @Override
    public String label() {
      return "roth";
    }
  }

  /**
   * A curve by its name.
   *
   * @param label topp, ledieu, malicki or roth
   * @param bulkDensity g/cm³; NaN when not known
   * @param porosity 0 to 1; NaN when not known
   * @return empty for another name, or when the curve needs a figure that is not known
   */
  static Optional<PermittivityCurve> named(String label, double bulkDensity, double porosity) {
    boolean density = !Double.isNaN(bulkDensity);
    boolean pores = !Double.isNaN(porosity);
    return Optional.ofNullable(
        switch (label) {
          case "topp" -> new Topp();
          case "ledieu" -> density ? new LedieuDensity(bulkDensity) : new Ledieu();
          case "malicki" ->
              density
                  ? new MalickiDensity(bulkDensity)
                  : pores ? new MalickiPorosity(porosity) : null;
          case "roth" ->
              pores ? new Mixing(0.5, 3.9, porosity, WaterPermittivity.malmberg(20)) : null;
          default -> null;
        });
  }

  /** The permittivity of a moisture by bisection, from {@link #LEAST} to {@link #MOST}. */
  default double permittivity(double pct) {
    double low = LEAST;
    double high = MOST;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (pct(middle) < pct) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
