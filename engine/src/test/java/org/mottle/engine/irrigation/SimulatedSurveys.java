package org.mottle.engine.irrigation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.mottle.engine.likelihood.OthersView;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.solve.CholeskyFactor;
import org.mottle.engine.solve.Factorisation;
import org.mottle.engine.variogram.Spherical;

/** A round green with four heads, read in one or more surveys drawn from the model of the test. */
final class SimulatedSurveys {
  static final double RANGE = 12;
  static final double NUGGET = 1.5;
  static final double[] SILL = {1.5, 3, 5};

  private SimulatedSurveys() {}

  static List<Head> heads(double cx, double cy, double turnedDeg) {
    List<Head> heads = new ArrayList<>();
    for (int k = 0; k < 4; k++) {
      double azimuth = 45 + 90 * k + turnedDeg;
      double x = cx + 13.5 * Math.sin(Math.toRadians(azimuth));
      double y = cy + 13.5 * Math.cos(Math.toRadians(azimuth));
      heads.add(
          new Head(
              "H" + (k + 1), "G1", "1", x, y, 17, azimuth + 90, azimuth + 270, 12, Double.NaN));
    }
    return heads;
  }

  /** Places on the green, about its centre. */
  static double[][] places(int n, Random random) {
    double[][] place = new double[2][n];
    for (int i = 0; i < n; i++) {
      double r = 12 * Math.sqrt(random.nextDouble());
      double t = 2 * Math.PI * random.nextDouble();
      place[0][i] = r * Math.cos(t);
      place[1][i] = r * Math.sin(t);
    }
    return place;
  }

  /** The same places, turned clockwise about the centre and moved. */
  static double[][] turned(double[][] place, double deg, double cx, double cy) {
    double c = Math.cos(Math.toRadians(deg));
    double s = Math.sin(Math.toRadians(deg));
    double[][] out = new double[2][place[0].length];
    for (int i = 0; i < out[0].length; i++) {
      out[0][i] = cx + c * place[0][i] + s * place[1][i];
      out[1][i] = cy + c * place[1][i] - s * place[0][i];
    }
    return out;
  }

  /** Surveys of these places and values, [surveys][n]; radius of the green 12 m. */
  static List<SectorSurvey> surveys(
      double[][] place, double[][] values, double cx, double cy, List<Head> heads) {
    SectorPattern pattern = new SectorPattern(heads);
    int n = place[0].length;
    double[] inside =
        IntStream.range(0, n)
            .mapToDouble(i -> 12 - Math.hypot(place[0][i] - cx, place[1][i] - cy))
            .toArray();
    int[] insertions = new int[n];
    Arrays.fill(insertions, 1);
    List<double[]> shares = heads.stream().map(h -> pattern.shares(h, place[0], place[1])).toList();
    return Arrays.stream(values)
        .map(
            v ->
                new SectorSurvey(
                    Observations.of(place[0], place[1], v), insertions, inside, shares, null))
        .toList();
  }

  static double[][] correlation(double[][] place, int surveys) {
    int n = place[0].length;
    Spherical model = new Spherical(1, RANGE);
    double[][] correlation = new double[surveys * n][surveys * n];
    for (int i = 0; i < surveys * n; i++) {
      for (int j = 0; j < surveys * n; j++) {
        double h = Math.hypot(place[0][i % n] - place[0][j % n], place[1][i % n] - place[1][j % n]);
        correlation[i][j] = 1 - model.semivariance(h);
      }
    }
    return correlation;
  }

  static OthersView view(double[][] place, int surveys) {
    List<OthersView.Sills> sills =
        Arrays.stream(SILL)
            .mapToObj(
                c -> {
                  double[] each = new double[surveys];
                  Arrays.fill(each, c);
                  return new OthersView.Sills(each, 1.0 / SILL.length);
                })
            .toList();
    return new OthersView(NUGGET, sills, correlation(place, surveys));
  }

  /** One draw of structure and scatter, [surveys][n]. */
  static double[][] field(
      double[][] place, int surveys, double sill, double common, Random random) {
    int n = place[0].length;
    double[][] r = correlation(place, surveys);
    for (int i = 0; i < r.length; i++) {
      for (int j = 0; j < r.length; j++) {
        r[i][j] *= sill * (i / n == j / n ? 1 : common);
      }
      r[i][i] += NUGGET;
    }
    double[] z = random.doubles(r.length).map(u -> random.nextGaussian()).toArray();
    double[] drawn = ((Factorisation.Factored) CholeskyFactor.factor(r)).factor().multiplyLower(z);
    double[][] values = new double[surveys][];
    for (int s = 0; s < surveys; s++) {
      values[s] = Arrays.copyOfRange(drawn, s * n, (s + 1) * n);
    }
    return values;
  }
}
