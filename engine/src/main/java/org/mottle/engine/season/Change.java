package org.mottle.engine.season;

import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.progress.Progress;

/**
 * What changed on a green from one survey to another, later minus earlier, by {@link JointPair}.
 * Rasters have the cells whose centre is inside, NaN elsewhere. Immutable.
 */
public final class Change {
  private final VisitedGreen before;
  private final VisitedGreen after;
  private final JointPair pair;
  private final List<String> remarks;
  private final double limitPct;
  private final Raster mean;
  private final Raster sd;
  private final Raster rise;
  private final Raster fall;
  private final ChangeFigure whole;

  private Change(
      VisitedGreen before,
      VisitedGreen after,
      JointPair pair,
      List<String> remarks,
      double limitPct,
      int threads,
      Progress progress) {
    this.before = before;
    this.after = after;
    this.pair = pair;
    this.remarks = List.copyOf(remarks);
    this.limitPct = limitPct;
    Drawn cells = drawn(threads, progress);
    this.mean = cells().map(cells.mean());
    this.sd = cells().map(cells.sd());
    this.rise = cells().map(cells.above(limitPct));
    this.fall = cells().map(cells.below(-limitPct));
    this.whole = pair.over(WeighedGround.of(cells(), outline()));
  }

  static Change of(
      VisitedGreen before,
      VisitedGreen after,
      JointPair pair,
      List<String> remarks,
      double limitPct,
      int threads,
      Progress progress) {
    return new Change(before, after, pair, remarks, limitPct, threads, progress);
  }

  /** At every centre needed, under every draw. */
  Drawn drawn(int threads, Progress progress) {
    return pair.at(cells().neededX(), cells().neededY(), threads, progress);
  }

  JointPair pair() {
    return pair;
  }

  VisitedGreen earlier() {
    return before;
  }

  VisitedGreen later() {
    return after;
  }

  /** Of the green. */
  public Geometry outline() {
    return after.map().subject().green().outline();
  }

  public String greenId() {
    return after.greenId();
  }

  /** The earlier survey. */
  public String before() {
    return before.surveyId();
  }

  /** The later survey. */
  public String after() {
    return after.surveyId();
  }

  public GreenCells cells() {
    return after.map().surface().cells();
  }

  /** Change, % by volume. */
  public Raster mean() {
    return mean;
  }

  /** Standard deviation of its error, % by volume. */
  public Raster sd() {
    return sd;
  }

  /** A change that matters, % by volume: what the probabilities are of. */
  public double limitPct() {
    return limitPct;
  }

  /** Probability of a change beyond the limit either way. */
  public Raster pChange() {
    double[] both = rise.values();
    double[] down = fall.values();
    Arrays.setAll(both, i -> both[i] + down[i]);
    return new Raster(rise.grid(), both);
  }

  /** Probability that it became wetter by more than the limit. */
  public Raster pRise() {
    return rise;
  }

  /** Probability that it became drier by more than the limit. */
  public Raster pFall() {
    return fall;
  }

  /** Mean change over the green. */
  public ChangeFigure whole() {
    return whole;
  }

  /**
   * Mean change over a polygon; what lies outside the green does not count.
   *
   * @throws IllegalArgumentException where nothing of it lies on the green
   */
  public ChangeFigure over(Geometry area) {
    Geometry on = area.intersection(outline());
    if (!(on.getArea() > 0)) {
      throw new IllegalArgumentException(
          "the area must lie on green " + greenId() + ", at least in part");
    }
    return pair.over(WeighedGround.of(cells(), on));
  }

  /** What a reader of the change should know, in words. */
  public List<String> remarks() {
    return remarks;
  }
}
