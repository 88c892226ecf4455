package org.mottle.engine.population;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.math3.special.Erf;
import org.mottle.engine.check.Check;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.observation.Duplicates;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.position.BlurredModel;
import org.mottle.engine.solve.CholeskyFactor;
import org.mottle.engine.solve.Factorisation;
import org.mottle.engine.variogram.Spherical;

/**
 * The probability that a place belongs to the lower population: simple indicator kriging (Journel
 * 1983, Math. Geol. 15:445-468) of the memberships of one survey, with the share of the ground as
 * known mean and the spherical correlation of {@link SpotRange}, cut to [0, 1].
 *
 * <p>Where positions are exact it is the station's membership at a station, and beyond the range of
 * every station the share of the ground. Where they err, correlations are those of {@link
 * BlurredModel} and no place is sure. Stations within {@value #SAME_PLACE} m count once, with their
 * mean. O(n³) once, O(n) a place; immutable and shared by threads.
 */
public final class LowProbability {
  private static final double SAME_PLACE = 0.01;

  private final Observations stations;
  private final double[] weight;
  private final double share;
  private final SpotRange range;
  private final BlurredModel toGround;

  private LowProbability(
      Observations stations,
      double[] weight,
      double share,
      SpotRange range,
      BlurredModel toGround) {
    this.stations = stations;
    this.weight = weight;
    this.share = share;
    this.range = range;
    this.toGround = toGround;
  }

  /**
   * @param survey whose stations, as they were placed then, say where the low ground is
   */
  public static LowProbability of(TwoFound found, int survey) {
    SpotRange range = SpotRange.of(found);
    double share = found.groundShare().share().best();
    Observations stations = stations(found, survey);
    PositionError error = found.surveys().get(survey).positionError();
    BlurredModel between = blurred(range, error.betweenStations());
    int n = stations.size();
    double[][] correlation = new double[n][n];
    double[] weight = new double[n];
    for (int i = 0; i < n; i++) {
      for (int j = i; j < n; j++) {
        double h = Math.hypot(stations.x(i) - stations.x(j), stations.y(i) - stations.y(j));
        correlation[i][j] = i == j ? 1 : 1 - between.semivariance(h);
      }
      weight[i] = stations.value(i) - share;
    }
    Factorisation factorisation = CholeskyFactor.factor(correlation);
    if (!(factorisation instanceof Factorisation.Factored factored)) {
      throw new IllegalStateException(
          "correlations of stations at least " + SAME_PLACE + " m apart: " + factorisation);
    }
    factored.factor().solve(weight);
    return new LowProbability(stations, weight, share, range, blurred(range, error.toGround()));
  }

  /** Of a spherical indicator of sill 1, between places known to within an error. */
  private static BlurredModel blurred(SpotRange range, double sdM) {
    return BlurredModel.of(new Spherical(1, range.metres()), sdM);
  }

  private static Observations stations(TwoFound found, int survey) {
    StationValues values = found.surveys().get(survey);
    int n = values.size();
    double[] x = IntStream.range(0, n).mapToDouble(values::x).toArray();
    double[] y = IntStream.range(0, n).mapToDouble(values::y).toArray();
    double[] membership = new double[n];
    Arrays.setAll(membership, i -> found.membership(survey, i));
    Duplicates.Resolved places =
        (Duplicates.Resolved)
            Duplicates.resolve(
                Observations.of(x, y, membership), SAME_PLACE, DuplicatePolicy.AVERAGE);
    return places.observations();
  }

  /** The probability at a place, in metres. */
  public double at(double x, double y) {
    double sum = share;
    for (int i = 0; i < weight.length; i++) {
      double h = Math.hypot(x - stations.x(i), y - stations.y(i));
      sum += weight[i] * (1 - toGround.semivariance(h));
    }
    return Math.min(1, Math.max(0, sum));
  }

  /** How far a station speaks, and whether the readings decided it. */
  public SpotRange range() {
    return range;
  }

  /** What is said where no station is near. */
  public double share() {
    return share;
  }

  /**
   * The probability that a place is drier than a limit, both populations together.
   *
   * <p>{@code p = low · Phi((limit - lowMean) / lowSd) + (1 - low) · mainDry}. Where the lower
   * population lies well below the limit this is {@code low + (1 - low) · mainDry}.
   *
   * @param low probability that the place belongs to the lower population
   * @param mainDry probability that it is drier than the limit if it does not
   * @param lowMean mean of the lower population, % by volume
   * @param lowSd standard deviation within it, % by volume, above 0
   * @param limit % by volume
   */
  public static double dry(double low, double mainDry, double lowMean, double lowSd, double limit) {
    Check.within("probability of the low population", low, 0, 1, "");
    Check.within("probability of a dry main population", mainDry, 0, 1, "");
    Check.above("standard deviation", lowSd, 0, "% by volume");
    double below = 0.5 * Erf.erfc((lowMean - limit) / (lowSd * Math.sqrt(2)));
    return low * below + (1 - low) * mainDry;
  }
}
