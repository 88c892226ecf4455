package org.mottle.engine.simulation;

/**
 * Makes realisations by Matheron's rule (Journel & Huijbregts 1978, ch. VII; de Fouquet 1994):
 * kriging mean of the readings, plus a field, less the kriging of what would have been read on that
 * field. Two at a time, from one sub-stream of the seed for each pair. Scratch memory of one
 * thread.
 */
final class Realiser {
  private final ConditionalSimulation simulation;
  private final double[] one;
  private final double[] other;
  private final double[] first;
  private final double[] second;
  private int draw = -1;
  private long pair = -1;
  private GaussianField.Sampler sampler;
  private SimulatedReadings readings;

  Realiser(ConditionalSimulation simulation) {
    this.simulation = simulation;
    this.one = new double[simulation.lattice().size()];
    this.other = new double[simulation.lattice().size()];
    this.first = new double[simulation.cells()];
    this.second = new double[simulation.cells()];
  }

  /** Values [cells] of a realisation, lent until the next call. */
  double[] realisation(int index) {
    int wantedDraw = simulation.drawOf(index);
    int within = index - simulation.firstOf(wantedDraw);
    if (wantedDraw != draw) {
      draw = wantedDraw;
      pair = -1;
      PreparedDraw prepared = simulation.draw(draw);
      sampler = prepared.field().newSampler();
      readings =
          new SimulatedReadings(prepared.observations(), simulation.lattice(), prepared.stencil());
    }
    if (within / 2 != pair) {
      pair = within / 2;
      drawPair(simulation.draw(draw), simulation.stream(draw, pair));
    }
    return within % 2 == 0 ? first : second;
  }

  private void drawPair(PreparedDraw prepared, NormalStream normals) {
    int n = prepared.observations().size();
    double[] readOne = new double[n];
    double[] readOther = new double[n];
    sampler.drawPair(normals, one, other);
    readings.draw(normals, one, readOne);
    readings.draw(normals, other, readOther);
    int[] node = simulation.nodes();
    double[] mean = prepared.mean();
    for (int c = 0; c < node.length; c++) {
      first[c] = mean[c] + one[node[c]];
      second[c] = mean[c] + other[node[c]];
    }
    subtract(prepared.weight(), readOne, readOther);
  }

  private void subtract(double[][] weight, double[] readOne, double[] readOther) {
    int i = 0;
    for (; i + 4 <= weight.length; i += 4) {
      four(weight, i, readOne, first);
      four(weight, i, readOther, second);
    }
    for (; i < weight.length; i++) {
      single(weight[i], readOne[i], first);
      single(weight[i], readOther[i], second);
    }
  }

  private static void four(double[][] weight, int i, double[] read, double[] into) {
    double[] a = weight[i];
    double[] b = weight[i + 1];
    double[] c = weight[i + 2];
    double[] d = weight[i + 3];
    double ra = read[i];
    double rb = read[i + 1];
    double rc = read[i + 2];
    double rd = read[i + 3];
    for (int k = 0; k < into.length; k++) {
      into[k] -= (ra * a[k] + rb * b[k]) + (rc * c[k] + rd * d[k]);
    }
  }

  private static void single(double[] weight, double read, double[] into) {
    for (int k = 0; k < into.length; k++) {
      into[k] -= read * weight[k];
    }
  }
}
