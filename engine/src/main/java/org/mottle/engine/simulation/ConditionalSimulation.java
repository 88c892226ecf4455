package org.mottle.engine.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import org.mottle.engine.check.Check;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Refusal;

/**
 * Conditional realisations of the surface at the needed cells of a green, prepared and ready to be
 * drawn as often as wanted; every pass gives the same bytes.
 *
 * <p>Realisation = kriging mean + S_c - sum of w_i Z_i, with S a field on a lattice, Z_i what
 * reading i would have been on it ({@link SimulatedReadings}) and w_i its kriging weight at the
 * cell. Mean and covariance over the realisations of a draw are the kriging mean and the covariance
 * of the kriging error, errors of position and in common included, but for the error of {@link
 * #covarianceError} and for what readings amid neighbouring, not the same, four nodes share beyond
 * them. Draws take equal, consecutive shares of the realisations.
 *
 * <p>Keeps readings x cells numbers a draw, never cells x realisations. Immutable, shared by
 * threads.
 */
public final class ConditionalSimulation implements SimulationOutcome {
  private static final String PHASE = "simulation";

  /** Realisations of one stretch at most: even, as they come in pairs. */
  private static final int STRETCH = 16;

  private final CellGrid lattice;
  private final int[] nodes;
  private final List<PreparedDraw> draws;
  private final int realisations;
  private final long seed;
  private final List<Stretch> stretches = new ArrayList<>();

  /** Realisations [from, to) of one draw. */
  private record Stretch(int from, int to) {}

  private ConditionalSimulation(
      CellGrid lattice, int[] nodes, List<PreparedDraw> draws, Simulation settings) {
    this.lattice = lattice;
    this.nodes = nodes;
    this.draws = draws;
    this.realisations = settings.realisations();
    this.seed = settings.seed();
    for (int d = 0; d < draws.size(); d++) {
      for (int from = firstOf(d); from < firstOf(d + 1); from += STRETCH) {
        stretches.add(new Stretch(from, Math.min(from + STRETCH, firstOf(d + 1))));
      }
    }
  }

  static SimulationOutcome prepare(
      Simulation settings, List<Draw> draws, GreenCells cells, int threads, Progress progress) {
    CellGrid lattice = ReadingLattice.of(cells.surfaceGrid(), draws);
    Targets targets = Targets.of(cells.neededX(), cells.neededY());
    PreparedDraw.Attempt[] attempts = new PreparedDraw.Attempt[draws.size()];
    Panels.run(
        draws.size(),
        1,
        threads,
        "preparing the simulation",
        progress,
        () ->
            (from, to) ->
                attempts[from] =
                    PreparedDraw.of(
                        draws.get(from), settings.drift(), lattice, targets, Progress.NONE));
    List<PreparedDraw> prepared = new ArrayList<>();
    for (int d = 0; d < attempts.length; d++) {
      if (attempts[d].refusal() != null) {
        Refusal r = attempts[d].refusal();
        return new NotSimulated(
            new Refusal(
                String.format(Locale.ROOT, "draw %d of %d: %s", d + 1, attempts.length, r.reason()),
                r.remedy()));
      }
      prepared.add(attempts[d].prepared());
    }
    return new ConditionalSimulation(lattice, nodes(cells, lattice), prepared, settings);
  }

  /** Indices on the lattice of the needed cells. */
  private static int[] nodes(GreenCells cells, CellGrid lattice) {
    CellGrid surface = cells.surfaceGrid();
    int west = (int) Math.round((surface.west() - lattice.west()) / lattice.cell());
    int north = (int) Math.round((lattice.north() - surface.north()) / lattice.cell());
    int[] nodes = new int[cells.neededCount()];
    for (int i = 0; i < nodes.length; i++) {
      int cell = cells.neededCell(i);
      nodes[i] = lattice.index(cell / surface.columns() + north, cell % surface.columns() + west);
    }
    return nodes;
  }

  public int realisations() {
    return realisations;
  }

  /** Number of needed cells. */
  public int cells() {
    return nodes.length;
  }

  public int draws() {
    return draws.size();
  }

  /** The draw that a realisation belongs to. */
  public int drawOf(int realisation) {
    Check.within("realisation", realisation, 0, realisations - 1, "");
    int draw = (int) ((long) realisation * draws.size() / realisations);
    while (firstOf(draw + 1) <= realisation) {
      draw++;
    }
    return draw;
  }

  /** The first realisation of a draw. */
  int firstOf(int draw) {
    return (int) ((long) draw * realisations / draws.size());
  }

  PreparedDraw draw(int d) {
    return draws.get(d);
  }

  CellGrid lattice() {
    return lattice;
  }

  /** Not to be written to. */
  int[] nodes() {
    return nodes;
  }

  NormalStream stream(int draw, long pair) {
    return new NormalStream(seed, ((long) draw << 32) + pair);
  }

  /** The field of a draw: how it is made, and how exact. */
  public GaussianField field(int draw) {
    return draws.get(draw).field();
  }

  /** Largest error of a covariance of the fields of all draws, as a share of their sill. */
  public double covarianceError() {
    return draws.stream().mapToDouble(d -> d.field().covarianceError()).max().orElse(0);
  }

  /** Realisation {@code index} [cells] by itself: the one that a pass over all shows. */
  public double[] realisation(int index) {
    return new Realiser(this).realisation(index).clone();
  }

  /** Mean of the cells over the draws, value. */
  public double[] mean() {
    return new Mixture(draws, cells()).mean();
  }

  /** Standard deviation of the cells, that between the draws included, value. */
  public double[] standardDeviation() {
    return new Mixture(draws, cells()).standardDeviation();
  }

  /** Probability that a cell is below a limit: the mean over the draws, without realisations. */
  public double[] probabilityBelow(double limit) {
    return new Mixture(draws, cells()).below(limit);
  }

  /** Probability that a cell is above a limit. */
  public double[] probabilityAbove(double limit) {
    return new Mixture(draws, cells()).above(limit);
  }

  /**
   * Shows every realisation in its order. They are made on all threads and shown by the calling
   * one.
   *
   * @param progress is told of stretches of realisations, and may stop the work between them
   */
  public void forEach(RealisationVisitor visitor, int threads, Progress progress) {
    Check.atLeast("threads", threads, 1, "");
    int wave = Math.min(threads, stretches.size());
    Realiser[] realisers = new Realiser[wave];
    double[][][] kept = new double[wave][STRETCH][];
    for (int w = 0; w < wave; w++) {
      realisers[w] = new Realiser(this);
      for (int r = 0; r < STRETCH; r++) {
        kept[w][r] = new double[cells()];
      }
    }
    for (int first = 0; first < stretches.size(); first += wave) {
      int begin = first;
      int count = Math.min(wave, stretches.size() - first);
      Panels.Work work =
          (from, to) -> keep(realisers[from], stretches.get(begin + from), kept[from]);
      Panels.run(count, 1, threads, PHASE, following(progress, first), () -> work);
      for (int w = 0; w < count; w++) {
        show(visitor, stretches.get(first + w), kept[w]);
      }
    }
  }

  private static void keep(Realiser realiser, Stretch stretch, double[][] kept) {
    for (int r = stretch.from(); r < stretch.to(); r++) {
      double[] values = realiser.realisation(r);
      System.arraycopy(values, 0, kept[r - stretch.from()], 0, values.length);
    }
  }

  private static void show(RealisationVisitor visitor, Stretch stretch, double[][] kept) {
    for (int r = stretch.from(); r < stretch.to(); r++) {
      visitor.visit(r, kept[r - stretch.from()]);
    }
  }

  /** Progress of one wave told as that of all. */
  private Progress following(Progress progress, int before) {
    return new Progress() {
      @Override
      public void report(String phase, long done, long total) {
        progress.report(phase, before + done, stretches.size());
      }

      @Override
      public boolean cancelled() {
        return progress.cancelled();
      }
    };
  }

  /**
   * Accumulates all realisations on several threads: one accumulator for each stretch of
   * realisations, merged in the order of the stretches as soon as those before are in.
   *
   * @param empty makes an accumulator; called from all threads
   */
  public <A extends RealisationAccumulator<A>> A collect(
      Supplier<A> empty, int threads, Progress progress) {
    Merging<A> merging = new Merging<>(empty.get());
    Panels.run(
        stretches.size(),
        1,
        threads,
        PHASE,
        progress,
        () -> {
          Realiser realiser = new Realiser(this);
          return (from, to) -> merging.put(from, filled(empty.get(), realiser, from));
        });
    return merging.all();
  }

  private <A extends RealisationAccumulator<A>> A filled(
      A accumulator, Realiser realiser, int stretch) {
    for (int r = stretches.get(stretch).from(); r < stretches.get(stretch).to(); r++) {
      accumulator.add(r, realiser.realisation(r));
    }
    return accumulator;
  }
}
