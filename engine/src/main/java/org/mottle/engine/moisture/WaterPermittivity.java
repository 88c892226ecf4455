package org.mottle.engine.moisture;

/** Relative permittivity of water at a temperature, degrees Celsius. */
public final class WaterPermittivity {
  private static final double LIGHT_M_NS = 0.299792458;

  private WaterPermittivity() {}

  /** 87.740 - 0.40008 T + 9.398e-4 T² - 1.410e-6 T³ (Malmberg & Maryott 1956). */
  public static double malmberg(double celsius) {
    return 87.740 + celsius * (-0.40008 + celsius * (9.398e-4 - celsius * 1.410e-6));
  }

  /** 78.54 (1 - 4.579e-3 d + 1.19e-5 d² - 2.8e-8 d³), d = T - 25. */
  public static double aboutRoomTemperature(double celsius) {
    double d = celsius - 25;
    return 78.54 * (1 + d * (-4.579e-3 + d * (1.19e-5 - d * 2.8e-8)));
  }

  /**
   * Permittivity of a medium from the time a pulse takes along rods and back: ε = (c t / 2 L)².
   *
   * @param nanoseconds there and back
   * @param rodM length of the rods, m
   */
  public static double ofTravelTime(double nanoseconds, double rodM) {
    double index = LIGHT_M_NS * nanoseconds / (2 * rodM);
    return index * index;
  }
}
