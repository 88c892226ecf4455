package org.mottle.engine.kriging;

import org.mottle.engine.check.Check;

/**
 * What an estimate stands for: a point, or the mean over a block centred on the target. Blocks are
 * discretised by 4 x 4 Gauss-Legendre points (Abramowitz & Stegun 1964, table 25.4), whose weighted
 * sums are the integrals over the block; the nugget averages out.
 *
 * @param width east-west, m; 0 for a point
 * @param height north-south, m; 0 for a point
 */
public record BlockSupport(double width, double height) {

  public static final BlockSupport POINT = new BlockSupport(0, 0);

  private static final double[] NODE = {
    -0.86113631159405257522, -0.33998104358485626480, 0.33998104358485626480, 0.86113631159405257522
  };
  private static final double[] WEIGHT = {
    0.34785484513745385737, 0.65214515486254614263, 0.65214515486254614263, 0.34785484513745385737
  };

  public BlockSupport {
    Check.atLeast("block width", width, 0, "m");
    Check.atLeast("block height", height, 0, "m");
    if ((width > 0) != (height > 0)) {
      throw new IllegalArgumentException(
          "a block needs both width and height above 0 m, was " + width + " x " + height);
    }
  }

  public static BlockSupport square(double side) {
    return new BlockSupport(side, side);
  }

  public boolean isPoint() {
    return width == 0;
  }

  /** Number of discretising points. */
  int points() {
    return isPoint() ? 1 : 16;
  }

  /** East of discretising point {@code p} from the centre, m. */
  double dx(int p) {
    return isPoint() ? 0 : NODE[p / 4] * width / 2;
  }

  /** North of discretising point {@code p} from the centre, m. */
  double dy(int p) {
    return isPoint() ? 0 : NODE[p % 4] * height / 2;
  }

  /** Weight of discretising point {@code p}; they sum to 1. */
  double weight(int p) {
    return isPoint() ? 1 : WEIGHT[p / 4] * WEIGHT[p % 4] / 4;
  }
}
