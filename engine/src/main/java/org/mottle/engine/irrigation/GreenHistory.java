package org.mottle.engine.irrigation;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.mottle.engine.survey.WaterHistory;

/**
 * Which causes explain the surveys of one green, with what probability. With B the ratios of
 * likelihood of {@link SectorEvidence} the causes weigh
 *
 * <pre>
 * none             1 − Σ π
 * spot             π_spot B_spot
 * head h           π_head B_h
 * ground of head h π_ground B_ground,h
 * </pre>
 *
 * <p>Over several surveys the logarithms are summed, none and spot taken together in each; what the
 * surveys have in common beyond those seen beside them is not taken off again.
 */
final class GreenHistory {
  private final SectorPrior prior;
  private final List<WaterHistory> history;
  private final List<Optional<SectorEvidence>> evidence;
  private final int heads;

  /** Probabilities of the causes in one survey, [heads] each. */
  record Causes(double[] head, double[] ground, double other) {}

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

  /** In one survey by itself. */
  Causes in(int survey) {
    return causes(List.of(survey));
  }

  /** One cause for all surveys after irrigation. */
  Causes combined() {
    return causes(
        IntStream.range(0, history.size())
            .filter(s -> history.get(s) == WaterHistory.AFTER_IRRIGATION)
            .filter(s -> evidence.get(s).isPresent())
            .boxed()
            .toList());
  }

  private Causes causes(List<Integer> surveys) {
    double[] logs = new double[2 * heads + 1];
    double faults = heads * (prior.head() + prior.ground()) + prior.spot();
    double none = Math.log(Math.max(0.05, 1 - faults));
    double spot = Math.log(prior.spot());
    Arrays.fill(logs, 0, heads, Math.log(prior.head()));
    Arrays.fill(logs, heads, 2 * heads, Math.log(prior.ground()));
    for (int s : surveys) {
      SectorEvidence e = evidence.get(s).orElseThrow();
      for (int h = 0; h < heads; h++) {
        logs[h] += e.logHead()[h];
        logs[heads + h] += e.logGround()[h];
      }
      logs[2 * heads] += sum(none, spot + e.logSpot());
    }
    double top = Arrays.stream(logs).max().orElseThrow();
    double[] weight = Arrays.stream(logs).map(v -> Math.exp(v - top)).toArray();
    double total = Arrays.stream(weight).sum();
    double[] share = Arrays.stream(weight).map(w -> w / total).toArray();
    return new Causes(
        Arrays.copyOf(share, heads), Arrays.copyOfRange(share, heads, 2 * heads), share[2 * heads]);
  }

  /** Logarithm of the sum of what these are logarithms of. */
  private static double sum(double a, double b) {
    double top = Math.max(a, b);
    return top + Math.log(Math.exp(a - top) + Math.exp(b - top));
  }
}
