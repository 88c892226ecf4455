package org.mottle.engine.moisture;

import org.mottle.engine.check.Check;

/**
 * A core weighed wet and oven-dry (ASTM D2216, ISO 11465; volumetric by ISO 11461).
 *
 * @param wetG can and wet soil, g
 * @param dryG can and dry soil, g
 * @param canG empty can, g
 * @param volumeCm3 of the core as it was taken, cm³
 */
public record GravimetricCore(double wetG, double dryG, double canG, double volumeCm3) {
  /** Density of quartz sand, g/cm³. */
  public static final double PARTICLE_DENSITY = 2.65;

  public GravimetricCore {
    Check.above("volume of the core", volumeCm3, 0, "cm³");
    Check.atLeast("mass of the can", canG, 0, "g");
    Check.above("mass of can and dry soil", dryG, canG, "g");
    Check.atLeast("mass of can and wet soil", wetG, dryG, "g");
  }

  /** Water over dry soil, g/g. */
  public double gravimetric() {
    return (wetG - dryG) / (dryG - canG);
  }

  /** Dry soil over the volume, g/cm³. */
  public double bulkDensity() {
    return (dryG - canG) / volumeCm3;
  }

  /** θ = w ρb / ρw, % by volume. */
  public double pct() {
    return 100 * (wetG - dryG) / volumeCm3;
  }

  /** 1 - ρb / 2.65. */
  public double porosity() {
    return 1 - bulkDensity() / PARTICLE_DENSITY;
  }

  /** Share of the pores that holds water. */
  public double saturation() {
    return pct() / 100 / porosity();
  }
}
