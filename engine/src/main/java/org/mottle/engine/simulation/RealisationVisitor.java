package org.mottle.engine.simulation;

/** Is shown realisations one after the other, in their order, by one thread at a time. */
@FunctionalInterface
public interface RealisationVisitor {
  /**
   * @param index of the realisation, from 0
   * @param values [needed cells] lent for this call only
   */
  void visit(int index, double[] values);
}
