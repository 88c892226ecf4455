package org.mottle.engine.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.position.BlurredModel;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.solve.CholeskyFactor;
import org.mottle.engine.solve.Factorisation;
import org.mottle.engine.solve.RowSums;

/**
 * Two surveys of one green kriged together, for the change D = Z₂ − Z₁ of the ground between them.
 * With z the values of both, K their covariances under {@link JointModel} (nugget by insertions and
 * the common errors of each visit included), X one indicator a survey, each survey having a mean of
 * its own, and x₀ = (−1, 1):
 *
 * <pre>
 * D̂ = x₀ᵀb + cᵀK⁻¹(z − Xb),   b = (XᵀK⁻¹X)⁻¹XᵀK⁻¹z
 * V = v − cᵀK⁻¹c + tᵀ(XᵀK⁻¹X)⁻¹t,   t = x₀ − XᵀK⁻¹c
 * v = σ₁² + σ₂² − 2 ρ σ₁ σ₂
 * cᵢ = σ₁(ρσ₂ − σ₁) R(x − xᵢ) of the first survey, σ₂(σ₂ − ρσ₁) R(x − xᵢ) of the second
 * </pre>
 *
 * <p>(Universal kriging of a linear function of two fields, Cressie 1993, sec. 3.4; R blurred by
 * the jitter of the station and the shift of its visit.) Figures are mixtures over the draws. n³/3
 * operations a draw, n² a cell and draw. Immutable, shared by threads.
 */
public final class JointPair {
  private static final int PANEL = 256;

  /** Means of the two surveys, step of an area, and what it always differs by. */
  private static final int STEP_TERMS = 4;

  private final StationCorrelations[] stations;
  private final List<Fitted> fitted;

  /** One draw, solved. */
  private static final class Fitted {
    private final JointModel model;
    private final Blurred blurred;
    private final CholeskyFactor factor;

    /** [2][n] L⁻¹X. */
    private final double[][] terms;

    /** [n] L⁻¹(z − Xb). */
    private final double[] residual;

    private final double[] mean;

    /** (XᵀK⁻¹X)⁻¹: 11, 12, 22. */
    private final double[] inverse;

    /** [n] factor of the correlation with the target, and the model it is looked up in. */
    private final double[] scale;

    private final BlurredModel[] toTarget;

    Fitted(JointModel model, Blurred blurred, StationCorrelations stations, CholeskyFactor factor) {
      int n = stations.size();
      this.model = model;
      this.blurred = blurred;
      this.factor = factor;
      this.terms = new double[2][n];
      this.residual = new double[n];
      this.scale = new double[n];
      this.toTarget = new BlurredModel[n];
      double s1 = model.sd(0);
      double s2 = model.sd(1);
      for (int i = 0; i < n; i++) {
        terms[stations.survey(i)][i] = 1;
        residual[i] = stations.value(i);
        scale[i] =
            stations.survey(i) == 0
                ? s1 * (model.share() * s2 - s1)
                : s2 * (s2 - model.share() * s1);
        toTarget[i] = blurred.at(stations.varianceToTarget(i));
      }
      factor.solveLower(terms[0]);
      factor.solveLower(terms[1]);
      factor.solveLower(residual);
      double a = dot(terms[0], terms[0]);
      double b = dot(terms[0], terms[1]);
      double c = dot(terms[1], terms[1]);
      double determinant = a * c - b * b;
      this.inverse = new double[] {c / determinant, -b / determinant, a / determinant};
      double u = dot(terms[0], residual);
      double v = dot(terms[1], residual);
      this.mean = new double[] {inverse[0] * u + inverse[1] * v, inverse[1] * u + inverse[2] * v};
      for (int i = 0; i < n; i++) {
        residual[i] -= mean[0] * terms[0][i] + mean[1] * terms[1][i];
      }
    }

    private static double dot(double[] a, double[] b) {
      double sum = 0;
      for (int i = 0; i < a.length; i++) {
        sum += a[i] * b[i];
      }
      return sum;
    }

    double quadratic(double t1, double t2) {
      return inverse[0] * t1 * t1 + 2 * inverse[1] * t1 * t2 + inverse[2] * t2 * t2;
    }
  }

  private JointPair(StationCorrelations[] stations, List<Fitted> fitted) {
    this.stations = stations;
    this.fitted = List.copyOf(fitted);
  }

  /**
   * @param before the earlier survey
   * @param after the later one, of the same green
   * @param models equally likely, of two surveys each
   */
  public static Answer<JointPair> of(SeenSurvey before, SeenSurvey after, List<JointModel> models) {
    return of(
        before, after, models, models.stream().map(m -> new Blurred(m.correlation())).toList());
  }

  /**
   * @param blurred the correlation of each model, kept from green to green
   */
  static Answer<JointPair> of(
      SeenSurvey before, SeenSurvey after, List<JointModel> models, List<Blurred> blurred) {
    if (before.size() == 0 || after.size() == 0) {
      return Answer.refused("a survey without readings", "read the green in both surveys");
    }
    StationCorrelations[] stations = new StationCorrelations[models.size()];
    List<Fitted> fitted = new ArrayList<>();
    for (int d = 0; d < models.size(); d++) {
      stations[d] = StationCorrelations.of(List.of(before, after), blurred.get(d));
      Factorisation outcome = CholeskyFactor.factor(stations[d].covariances(models.get(d)));
      if (!(outcome instanceof Factorisation.Factored f)) {
        return Answer.refused(
            "the two surveys cannot be kriged together: without a nugget, stations at one place"
                + " leave nothing to tell them apart",
            "use a variogram with a nugget");
      }
      fitted.add(new Fitted(models.get(d), blurred.get(d), stations[d], f.factor()));
    }
    return Answer.of(new JointPair(stations, fitted));
  }

  /** The draws behind it. */
  public List<JointModel> models() {
    return fitted.stream().map(f -> f.model).toList();
  }

  /**
   * The change at points of the green; one thread or many, the same bytes.
   *
   * @param x [m] east, m
   * @param y [m] north, m
   */
  Drawn at(double[] x, double[] y, int threads, Progress progress) {
    int m = x.length;
    double[][] mean = new double[fitted.size()][m];
    double[][] sd = new double[fitted.size()][m];
    Panels.run(
        m,
        PANEL,
        threads,
        "change between surveys",
        progress,
        () -> {
          CellPanel work = new CellPanel(x, y);
          return (from, to) -> {
            for (int d = 0; d < mean.length; d++) {
              work.solve(d, from, to, mean[d], sd[d]);
            }
          };
        });
    return new Drawn(mean, sd);
  }

  /** The change at one point. */
  public ChangeFigure at(double x, double y) {
    return at(new double[] {x}, new double[] {y}, 1, Progress.NONE).figure(0);
  }

  /** Scratch memory of one thread. */
  private final class CellPanel {
    private final double[] x;
    private final double[] y;
    private final double[][] panel = new double[stations[0].size()][PANEL];
    private final double[] squaredLag = new double[PANEL];
    private final double[] squares = new double[PANEL];
    private final double[] values = new double[PANEL];
    private final double[][] drift = new double[2][PANEL];

    CellPanel(double[] x, double[] y) {
      this.x = x;
      this.y = y;
    }

    void solve(int d, int from, int to, double[] mean, double[] sd) {
      Fitted f = fitted.get(d);
      int count = to - from;
      int n = panel.length;
      for (int i = 0; i < n; i++) {
        fill(f, stations[d], i, from, count);
      }
      f.factor.solveLower(panel, count);
      Arrays.fill(squares, 0);
      Arrays.fill(values, 0);
      RowSums.addSquares(panel, n, count, squares);
      RowSums.addProducts(f.residual, panel, n, count, values);
      for (int t = 0; t < 2; t++) {
        Arrays.fill(drift[t], 0);
        RowSums.addProducts(f.terms[t], panel, n, count, drift[t]);
      }
      double own = f.model.changeVariance();
      for (int j = 0; j < count; j++) {
        mean[from + j] = f.mean[1] - f.mean[0] + values[j];
        double variance = own - squares[j] + f.quadratic(-1 - drift[0][j], 1 - drift[1][j]);
        sd[from + j] = Math.sqrt(Math.max(0, variance));
      }
    }

    private void fill(Fitted f, StationCorrelations s, int i, int from, int count) {
      double px = s.x(i);
      double py = s.y(i);
      for (int j = 0; j < count; j++) {
        double dx = x[from + j] - px;
        double dy = y[from + j] - py;
        squaredLag[j] = dx * dx + dy * dy;
      }
      double[] row = panel[i];
      Arrays.fill(row, 0, count, 0);
      f.toTarget[i].addSemivariances(squaredLag, count, row);
      double scale = f.scale[i];
      for (int j = 0; j < count; j++) {
        row[j] = scale * (1 - row[j]);
      }
    }
  }

  /** The mean change over ground, or the difference of two such means. */
  ChangeFigure over(WeighedGround ground) {
    double[][] mean = new double[fitted.size()][1];
    double[][] sd = new double[fitted.size()][1];
    IntStream.range(0, mean.length).forEach(d -> over(d, ground, mean[d], sd[d]));
    return new ChangeFigure(new Drawn(mean, sd));
  }

  private void over(int d, WeighedGround ground, double[] mean, double[] sd) {
    Fitted f = fitted.get(d);
    StationCorrelations s = stations[d];
    int m = ground.weight().length;
    double[] c = new double[s.size()];
    double[] squaredLag = new double[m];
    double[] gamma = new double[m];
    for (int i = 0; i < c.length; i++) {
      double weighted = weighted(ground, s.x(i), s.y(i), m, f.toTarget[i], squaredLag, gamma);
      c[i] = f.scale[i] * weighted;
    }
    BlurredModel exact = f.blurred.at(0);
    double own = 0;
    for (int k = 0; k < m; k++) {
      double[] w = ground.weight();
      own += w[k] * w[k];
      own += 2 * w[k] * weighted(ground, ground.x()[k], ground.y()[k], k, exact, squaredLag, gamma);
    }
    f.factor.solveLower(c);
    double sum = ground.sum();
    mean[0] = sum * (f.mean[1] - f.mean[0]) + Fitted.dot(c, f.residual);
    double variance =
        f.model.changeVariance() * own
            - Fitted.dot(c, c)
            + f.quadratic(-sum - Fitted.dot(f.terms[0], c), sum - Fitted.dot(f.terms[1], c));
    sd[0] = Math.sqrt(Math.max(0, variance));
  }

  /** Which ground a station of one of the surveys stands on, of two pieces compared. */
  enum Ground {
    AREA,
    CONTROL,
    ELSEWHERE
  }

  /** Number of stations of both surveys. */
  int stations() {
    return stations[0].size();
  }

  /** Whether station {@code i} was read in the earlier survey. */
  boolean earlier(int i) {
    return stations[0].survey(i) == 0;
  }

  double x(int i) {
    return stations[0].x(i);
  }

  double y(int i) {
    return stations[0].y(i);
  }

  /**
   * Change of an area, of its control area, and the first less the second, from the stations on
   * them alone: a mean for each survey and a step of the area in the later one, by generalised
   * least squares. The step is not drawn towards what usually changes, as the map of the change is.
   *
   * @param ground [stations]; both pieces read in both surveys
   */
  List<ChangeFigure> step(Ground[] ground) {
    int[] rows =
        IntStream.range(0, ground.length).filter(i -> ground[i] != Ground.ELSEWHERE).toArray();
    double[][] wanted = {{-1, 1, 1, 0}, {-1, 1, 0, 0}, {0, 0, 1, 0}};
    double[][][] mean = new double[wanted.length][fitted.size()][1];
    double[][][] sd = new double[wanted.length][fitted.size()][1];
    for (int d = 0; d < fitted.size(); d++) {
      double[][] all = stations[d].covariances(fitted.get(d).model);
      int n = rows.length;
      double[][] k = new double[n][n];
      double[][] panel = new double[n][STEP_TERMS + 1];
      for (int i = 0; i < n; i++) {
        for (int j = i; j < n; j++) {
          k[i][j] = all[rows[i]][rows[j]];
        }
        boolean later = !earlier(rows[i]);
        panel[i][later ? 1 : 0] = 1;
        panel[i][2] = later && ground[rows[i]] == Ground.AREA ? 1 : 0;
        panel[i][3] = ground[rows[i]] == Ground.AREA ? 1 : 0;
        panel[i][STEP_TERMS] = stations[d].value(rows[i]);
      }
      CholeskyFactor factor = factor(k);
      factor.solveLower(panel, STEP_TERMS + 1);
      double[][] g = new double[STEP_TERMS][STEP_TERMS];
      double[] b = new double[STEP_TERMS];
      for (double[] row : panel) {
        for (int s = 0; s < STEP_TERMS; s++) {
          b[s] += row[s] * row[STEP_TERMS];
          for (int t = s; t < STEP_TERMS; t++) {
            g[s][t] += row[s] * row[t];
          }
        }
      }
      CholeskyFactor normal = factor(g);
      for (int w = 0; w < wanted.length; w++) {
        double[] solved = wanted[w].clone();
        normal.solve(solved);
        mean[w][d][0] = Fitted.dot(solved, b);
        sd[w][d][0] = Math.sqrt(Fitted.dot(solved, wanted[w]));
      }
    }
    return IntStream.range(0, wanted.length)
        .mapToObj(w -> new ChangeFigure(new Drawn(mean[w], sd[w])))
        .toList();
  }

  private static CholeskyFactor factor(double[][] upper) {
    if (CholeskyFactor.factor(upper) instanceof Factorisation.Factored f) {
      return f.factor();
    }
    throw new IllegalStateException("part of a sound system is sound");
  }

  /** Sum of weight times correlation with a place, over the first points. */
  private static double weighted(
      WeighedGround ground,
      double x,
      double y,
      int count,
      BlurredModel model,
      double[] squaredLag,
      double[] gamma) {
    for (int k = 0; k < count; k++) {
      double dx = ground.x()[k] - x;
      double dy = ground.y()[k] - y;
      squaredLag[k] = dx * dx + dy * dy;
    }
    Arrays.fill(gamma, 0, count, 0);
    model.addSemivariances(squaredLag, count, gamma);
    double sum = 0;
    for (int k = 0; k < count; k++) {
      sum += ground.weight()[k] * (1 - gamma[k]);
    }
    return sum;
  }
}
