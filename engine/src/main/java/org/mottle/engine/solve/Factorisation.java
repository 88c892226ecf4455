package org.mottle.engine.solve;

/**
 * What came of factoring a symmetric matrix: its Cholesky factor, or the row at which the matrix
 * turned out not to be positive definite. Both are ordinary outcomes, so neither is an exception.
 */
public sealed interface Factorisation {

  /** The matrix is positive definite. */
  record Factored(CholeskyFactor factor) implements Factorisation {}

  /**
   * The matrix is not positive definite to working precision.
   *
   * @param row the first row, from 0, whose pivot is lost
   * @param pivot what was left of that row's diagonal, at or below {@code limit}
   * @param limit n eps times the largest diagonal entry, the rounding error of a pivot
   */
  record NotPositiveDefinite(int row, double pivot, double limit) implements Factorisation {}
}
