package org.mottle.export.read;

import org.mottle.engine.check.Check;

/**
 * How elevation is read.
 *
 * @param unit of heights in files that do not say theirs
 * @param marginM ground kept round each green's box, m
 */
public record ElevationOptions(ElevationUnit unit, double marginM) {
  /** 30 m of surrounds are wanted; the rest is for smoothing at the edge. */
  public static final ElevationOptions DEFAULT = new ElevationOptions(ElevationUnit.ASK, 40);

  public ElevationOptions {
    Check.atLeast("marginM", marginM, 0, "m");
  }

  public ElevationOptions withUnit(ElevationUnit wanted) {
    return new ElevationOptions(wanted, marginM);
  }

  public ElevationOptions withMargin(double wantedM) {
    return new ElevationOptions(unit, wantedM);
  }
}
