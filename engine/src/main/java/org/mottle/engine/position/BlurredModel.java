package org.mottle.engine.position;

import java.util.Arrays;
import org.mottle.engine.check.Check;
import org.mottle.engine.variogram.VariogramModel;

/**
 * A variogram model as it looks between places recorded with an error: {@link
 * DisplacedSemivariance} of one standard deviation, tabulated for inner loops. Between two
 * readings, each with jitter s per axis, the standard deviation is sqrt(2) s; between a reading and
 * an exact place it is s, a common shift added in squares. At lag 0 the blurred model stands above
 * 0: the share of the structure that the position error has turned into nugget.
 *
 * <p>The table is cut where the function bends, finely within s of the kinks at 0 and at the range
 * and ever coarser away from them, and interpolated in 12 Chebyshev nodes a piece; it agrees with
 * the integral to 1e-7 of the partial sill. It takes some ten pieces and under 100 microseconds to
 * make, one square root and twelve multiplications to use. With standard deviation 0 it is the
 * model itself, to the last bit. Immutable, shared by threads.
 */
public final class BlurredModel {
  private static final int CELLS = 128;

  private final VariogramModel model;
  private final double sdM;
  private final double partialSill;

  /** Null when there is no displacement. */
  private final Table table;

  private BlurredModel(VariogramModel model, double sdM, Table table) {
    this.model = model;
    this.sdM = sdM;
    this.partialSill = model.partialSill();
    this.table = table;
  }

  /**
   * @param sdM standard deviation of the displacement per axis, m
   * @throws IllegalArgumentException for a model without a sill, or a negative deviation
   */
  public static BlurredModel of(VariogramModel model, double sdM) {
    Check.atLeast("standard deviation of a displacement", sdM, 0, "m");
    DisplacedSemivariance exact = DisplacedSemivariance.of(model);
    return new BlurredModel(model, sdM, sdM == 0 ? null : Table.of(exact, sdM));
  }

  public VariogramModel model() {
    return model;
  }

  /** Standard deviation of the displacement per axis, m. */
  public double sdM() {
    return sdM;
  }

  /** Semivariance to expect at a recorded lag in metres, value². */
  public double semivariance(double lag) {
    return table == null ? model.semivariance(lag) : partialSill * table.at(lag);
  }

  /**
   * Adds the semivariances of many lags.
   *
   * @param squaredLag [count] recorded lags squared, m²
   * @param sum [count] to which the semivariances are added, value²
   */
  public void addSemivariances(double[] squaredLag, int count, double[] sum) {
    if (table == null) {
      model.addSemivariances(squaredLag, count, sum);
      return;
    }
    for (int i = 0; i < count; i++) {
      sum[i] += partialSill * table.at(Math.sqrt(squaredLag[i]));
    }
  }

  /** Polynomials on [edge k, edge k + 1), and for each of equal cells the piece it starts in. */
  private record Table(
      double[] edge, double[] coefficient, int[] pieceAtCell, double perCell, double end) {

    static Table of(DisplacedSemivariance exact, double sdM) {
      double[] edge = Pieces.edges(exact, sdM);
      int pieces = edge.length - 1;
      double[] lag = new double[pieces * ChebyshevPiece.NODES];
      for (int p = 0; p < pieces; p++) {
        double half = (edge[p + 1] - edge[p]) / 2;
        for (int k = 0; k < ChebyshevPiece.NODES; k++) {
          lag[p * ChebyshevPiece.NODES + k] = ChebyshevPiece.node(k, edge[p] + half, half);
        }
      }
      double[] coefficient = new double[lag.length];
      exact.shares(sdM, lag, lag.length, coefficient);
      for (int p = 0; p < pieces; p++) {
        ChebyshevPiece.fit(coefficient, p * ChebyshevPiece.NODES, coefficient);
      }
      double end = edge[pieces];
      return new Table(edge, coefficient, cells(edge, end), CELLS / end, end);
    }

    private static int[] cells(double[] edge, double end) {
      int[] piece = new int[CELLS + 1];
      for (int c = 0; c <= CELLS; c++) {
        int found = Arrays.binarySearch(edge, c * end / CELLS);
        piece[c] = Math.max(0, Math.min(found >= 0 ? found - 1 : -found - 2, edge.length - 2));
      }
      return piece;
    }

    /** Share of the partial sill. */
    double at(double lag) {
      if (!(lag < end)) {
        return 1;
      }
      int piece = pieceAtCell[(int) (lag * perCell)];
      while (lag >= edge[piece + 1]) {
        piece++;
      }
      double low = edge[piece];
      double high = edge[piece + 1];
      double t = (2 * lag - low - high) / (high - low);
      return ChebyshevPiece.at(coefficient, piece * ChebyshevPiece.NODES, t);
    }
  }
}
