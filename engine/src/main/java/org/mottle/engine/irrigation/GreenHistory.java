package org.mottle.engine.irrigation;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.mottle.engine.survey.WaterHistory;

/**
 * Which causes explain the surveys of one green, with what probability. In one survey, with B the
 * ratios of likelihood of {@link SectorEvidence}, they weigh
 *
 * <pre>
 * none             1 − Σ π
 * spot             π_spot B_spot
 * head h           π_head B_h
 * ground of head h π_ground B_ground,h
 * </pre>
 *
 * <p>Over all surveys after irrigation a head that ever gives too little does so in each with
 * probability q, so that the surveys support one another and a repaired head is let go: with N = 1
 * − π_spot + π_spot B_spot the causes weigh
 *
 * <pre>
 * none             (1 − Σ) Π N
 * head h           π_head / q Π (q B_h + (1 − q) N)
 * ground of head h π_ground Π B_ground,h
 * </pre>
 *
 * <p>What these surveys have in common beyond the surveys seen beside them is not taken off again.
 */
final class GreenHistory {
  /** Share of the surveys in which a head that ever gives too little does so. */
  private static final double LASTING = 0.6;

  /** However many heads a green has, it is not taken for likely to have a fault. */
  private static final double LEAST_NONE = 0.2;

  private final SectorPrior prior;
  private final List<WaterHistory> history;
  private final List<Optional<SectorEvidence>> evidence;
  private final int heads;

  /**
   * Probabilities of the causes in one survey; they sum to 1 with none.
   *
   * @param head [heads]
   * @param ground [heads]
   * @param spot one dry or wet place of another cause
   * @param none of them
   */
  record Causes(double[] head, double[] ground, double spot, double none) {}

  /**
   * @param history of each survey of the green
   * @param evidence of each, where it could be tested
   */
  GreenHistory(
      SectorPrior prior,
      List<WaterHistory> history,
      List<Optional<SectorEvidence>> evidence,
      int heads) {
    this.prior = prior;
    this.history = List.copyOf(history);
    this.evidence = List.copyOf(evidence);
    this.heads = heads;
  }

  Optional<SectorEvidence> evidence(int survey) {
    return evidence.get(survey);
  }

  WaterHistory history(int survey) {
    return history.get(survey);
  }

  /** Whether other surveys of the green, after rain or in dry days, were seen beside this one. */
  boolean seenBesideOthers(int survey) {
    return evidence.get(survey).map(e -> e.beside() > 0).orElse(false);
  }

  /** From one survey and those seen beside it. */
  Causes in(int survey) {
    SectorEvidence e = evidence.get(survey).orElseThrow();
    double[] logs = new double[2 * heads + 2];
    for (int h = 0; h < heads; h++) {
      logs[h] = Math.log(prior.head()) + e.logHead()[h];
      logs[heads + h] = Math.log(prior.ground()) + e.logGround()[h];
    }
    double faults = heads * (prior.head() + prior.ground()) + prior.spot();
    logs[2 * heads] = Math.log(prior.spot()) + e.logSpot();
    logs[2 * heads + 1] = Math.log(Math.max(LEAST_NONE, 1 - faults));
    double[] share = shares(logs);
    return new Causes(
        Arrays.copyOf(share, heads),
        Arrays.copyOfRange(share, heads, 2 * heads),
        share[2 * heads],
        share[2 * heads + 1]);
  }

  /** Surveys after irrigation that could be tested. */
  List<Integer> irrigated() {
    return IntStream.range(0, history.size())
        .filter(s -> history.get(s) == WaterHistory.AFTER_IRRIGATION)
        .filter(s -> evidence.get(s).isPresent())
        .boxed()
        .toList();
  }

  /**
   * [heads] probability that each head gives too little in this survey, from it and all surveys
   * after irrigation.
   */
  double[] combined(int survey) {
    List<Integer> surveys =
        IntStream.range(0, history.size())
            .filter(s -> s == survey || irrigated().contains(s))
            .boxed()
            .toList();
    double[] logs = new double[2 * heads + 1];
    double[] here = new double[heads];
    Arrays.fill(logs, 0, heads, Math.log(prior.head() / LASTING));
    Arrays.fill(logs, heads, 2 * heads, Math.log(prior.ground()));
    double faults = heads * (prior.head() / LASTING + prior.ground());
    logs[2 * heads] = Math.log(Math.max(LEAST_NONE, 1 - faults));
    for (int s : surveys) {
      SectorEvidence e = evidence.get(s).orElseThrow();
      double none =
          sum(Math.log(1 - prior.spot()), Math.log(Math.max(1e-9, prior.spot())) + e.logSpot());
      for (int h = 0; h < heads; h++) {
        double at = Math.log(LASTING) + e.logHead()[h];
        double either = sum(at, Math.log(1 - LASTING) + none);
        logs[h] += either;
        logs[heads + h] += e.logGround()[h];
        here[h] = s == survey ? Math.exp(at - either) : here[h];
      }
      logs[2 * heads] += none;
    }
    double[] share = shares(logs);
    return IntStream.range(0, heads).mapToDouble(h -> share[h] * here[h]).toArray();
  }

  /** To the sum 1, of what these are logarithms of. */
  private static double[] shares(double[] logs) {
    double top = Arrays.stream(logs).max().orElseThrow();
    double[] weight = Arrays.stream(logs).map(v -> Math.exp(v - top)).toArray();
    double total = Arrays.stream(weight).sum();
    return Arrays.stream(weight).map(w -> w / total).toArray();
  }

  /** Logarithm of the sum of what these are logarithms of. */
  private static double sum(double a, double b) {
    double top = Math.max(a, b);
    return top + Math.log(Math.exp(a - top) + Math.exp(b - top));
  }
}
