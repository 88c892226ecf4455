package org.mottle.export.calibration;

import java.util.List;

/**
 * What a method says of one green in one survey: the form in which all methods are scored.
 *
 * @param subject the green with its truth
 * @param cells distribution of every cell, for the proper scores
 * @param mean [cells] % by volume
 * @param fifty central 50 % intervals
 * @param ninety central 90 % intervals
 * @param dry what is said of the ground below the band
 * @param wet what is said of the ground above it
 * @param patches outlines, where the method draws them
 */
record MappedGreen(
    GreenCase subject,
    CellDistribution cells,
    double[] mean,
    Spans fifty,
    Spans ninety,
    Exceedance dry,
    Exceedance wet,
    List<PatchClaim> patches) {

  /**
   * @param p [cells] probability of being beyond the limit
   * @param area of the green beyond it
   */
  record Exceedance(double[] p, AreaClaim area) {}

  /** All from the distributions of the cells; no area intervals and no patches. */
  static MappedGreen of(GreenCase subject, CellDistribution cells) {
    double[] mean = new double[cells.cells()];
    double[] dry = new double[mean.length];
    double[] wet = new double[mean.length];
    for (int i = 0; i < mean.length; i++) {
      mean[i] = cells.mean(i);
      dry[i] = cells.below(i, subject.band().lowPct());
      wet[i] = 1 - cells.below(i, subject.band().highPct());
    }
    double cell = subject.cells().cellM2();
    return new MappedGreen(
        subject,
        cells,
        mean,
        Spans.central(cells, Normal.Z50),
        Spans.central(cells, Normal.Z90),
        new Exceedance(dry, AreaClaim.ofProbabilities(dry, cell)),
        new Exceedance(wet, AreaClaim.ofProbabilities(wet, cell)),
        List.of());
  }

  /** The same with areas and patches from realisations. */
  MappedGreen with(AreaClaim dryArea, AreaClaim wetArea, List<PatchClaim> drawn) {
    return new MappedGreen(
        subject,
        cells,
        mean,
        fifty,
        ninety,
        new Exceedance(dry.p(), dryArea),
        new Exceedance(wet.p(), wetArea),
        List.copyOf(drawn));
  }
}
