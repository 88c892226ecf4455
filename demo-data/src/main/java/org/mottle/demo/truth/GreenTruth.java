package org.mottle.demo.truth;

import java.util.List;
import org.mottle.demo.random.Stream;
import org.mottle.demo.site.Bunker;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.site.Ring;

/**
 * The true moisture of one green at the start of each survey, % by volume:
 *
 * <pre>m + offset − 5 (z − mean z) + S + fault + edge + bunker lip, cut at 2 and at the porosity
 * </pre>
 *
 * S is spherical: 60 % of its variance persists over all surveys, 40 % is new in each. The scatter
 * below 0.25 m (micro nugget) belongs to an insertion and is not in here. Immutable.
 */
public final class GreenTruth {

  private static final double OFFSET_SD = 0.8;
  private static final double LEAST_PCT = 2;

  /** Extra water on G9 in S3: irrigated 40 minutes before the survey. */
  private static final double JUST_IRRIGATED_PCT = 3;

  private final GreenSite green;
  private final double offset;
  private final double meanZ;
  private final Elevation elevation;
  private final float[] persistent;
  private final float[][] fresh;
  private final List<Fault> faults;
  private final List<Ring> lips;

  private GreenTruth(GreenSite green, double offset, float[] persistent, float[][] fresh) {
    this.green = green;
    this.offset = offset;
    this.persistent = persistent;
    this.fresh = fresh;
    this.elevation = new Elevation(green);
    this.meanZ =
        green.cells(0.5).stream()
            .mapToDouble(c -> elevation.at(c.x(), c.y()))
            .average()
            .getAsDouble();
    this.faults = Fault.of(green.id());
    this.lips = Bunker.of(green.id()).stream().map(Bunker::lip).toList();
  }

  /** Draws the truth of a green; the field generator must have the range of its build. */
  public static GreenTruth draw(long seed, GreenSite green, SphericalField field) {
    double offset = OFFSET_SD * Stream.of(seed, green.id(), "all", "offset").gaussian();
    Stream always = Stream.of(seed, green.id(), "all", "persistent");
    float[] persistent = Lattice.window(field.pair(always)[0]);
    float[][] fresh = new float[Survey.values().length][];
    for (int i = 0; i < fresh.length; i += 2) {
      double[][] two =
          field.pair(Stream.of(seed, green.id(), Survey.values()[i].name(), "new field"));
      fresh[i] = Lattice.window(two[0]);
      fresh[i + 1] = Lattice.window(two[1]);
    }
    return new GreenTruth(green, offset, persistent, fresh);
  }

  public GreenSite green() {
    return green;
  }

  /** How much wetter this green is than the others of its build, in every survey. */
  public double offsetPct() {
    return offset;
  }

  public Elevation elevation() {
    return elevation;
  }

  /** Mean of the day for this green: build, day, its own offset, a fresh irrigation. */
  public double meanPct(Survey survey) {
    boolean justIrrigated = survey == Survey.S3 && green.id().equals("G9");
    return survey.meanPct(green.build()) + offset + (justIrrigated ? JUST_IRRIGATED_PCT : 0);
  }

  /** The spherical part S alone, at the nearest node. */
  public double structured(Survey survey, double dx, double dy) {
    int node = Lattice.node(dx, dy);
    double share = Survey.PERSISTENT_SHARE;
    return Math.sqrt(survey.sill(green.build()))
        * (Math.sqrt(share) * persistent[node]
            + Math.sqrt(1 - share) * fresh[survey.ordinal()][node]);
  }

  /** The moisture at the node nearest to a place, metres from the centre, % by volume. */
  public double soilPct(Survey survey, double dx, double dy) {
    double x = Lattice.snap(dx);
    double y = Lattice.snap(dy);
    double pct =
        meanPct(survey) - 5 * (elevation.at(x, y) - meanZ) + structured(survey, x, y) + rim(x, y);
    for (Fault fault : faults) {
      double added = fault.addedPct(survey, x, y);
      double least = fault instanceof Fault.DrySpots ? Fault.DrySpots.FLOOR_PCT : LEAST_PCT;
      pct = added < -0.05 ? Math.max(least, pct + added) : pct + added;
    }
    return within(pct);
  }

  /** Cut at what the ground can hold. */
  public double within(double pct) {
    return Math.max(LEAST_PCT, Math.min(green.build().porosityPct(), pct));
  }

  /** The true moisture at the centres of the 0.5 m cells of the green, in their order. */
  public double[] cellPct(Survey survey) {
    return green.cells(0.5).stream().mapToDouble(c -> soilPct(survey, c.x(), c.y())).toArray();
  }

  /** The faults of this green. */
  public List<Fault> faults() {
    return faults;
  }

  private double rim(double x, double y) {
    double depth = green.ring().depth(x, y);
    double edge = depth < 1.5 ? -1 * (1 - Math.max(0, depth) / 1.5) : 0;
    double lip = 0;
    for (Ring ring : lips) {
      double distance = Math.max(0, -ring.depth(x, y));
      lip = Math.min(lip, -4 * StrictMath.exp(-distance / 1.5));
    }
    return edge + lip;
  }

  /** Area where a fault stands at half its height or more, m², by 0.1 m cells. */
  public static double halfHeightArea(GreenSite green, Fault fault) {
    long cells =
        green.cells(0.1).stream().filter((Point c) -> fault.shape(c.x(), c.y()) >= 0.5).count();
    return cells * 0.01;
  }
}
