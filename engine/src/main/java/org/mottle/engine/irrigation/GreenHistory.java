package org.mottle.engine.irrigation;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.mottle.engine.survey.WaterHistory;

/**
 * The surveys of one green beside each other: which causes explain them, with what probability.
 *
 * <p>In a survey after irrigation, with B the ratios of likelihood of {@link SectorEvidence} and N
 * = 1 − π_spot + π_spot B_spot what the survey weighs when no head's ground is dry, the causes
 * weigh
 *
 * <pre>
 * none, or a spot       (1 − Σ π) N
 * head h                π_head B_h
 * the ground of head h  π_ground B_h Π over surveys after rain of B_h / N
 * </pre>
 *
 * for ground that is dry by soil or slope shows it after rain too, and what a head leaves dry does
 * not. Errors of different surveys are taken for independent; the persistent part of the moisture
 * makes them alike, which works for the ground and against the head.
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

  /** Surveys after rain with evidence, without this one. */
  List<Integer> controls(int survey) {
    return IntStream.range(0, history.size())
        .filter(s -> s != survey && history.get(s) == WaterHistory.AFTER_RAIN)
        .filter(s -> evidence.get(s).isPresent())
        .boxed()
        .toList();
  }

  Optional<SectorEvidence> evidence(int survey) {
    return evidence.get(survey);
  }

  /** In one survey by itself, surveys after rain in sight. */
  Causes in(int survey) {
    return causes(List.of(survey), controls(survey));
  }

  /** One cause for all surveys after irrigation. */
  Causes combined() {
    List<Integer> irrigated =
        IntStream.range(0, history.size())
            .filter(s -> history.get(s) == WaterHistory.AFTER_IRRIGATION)
            .filter(s -> evidence.get(s).isPresent())
            .boxed()
            .toList();
    return causes(irrigated, controls(-1));
  }

  private Causes causes(List<Integer> surveys, List<Integer> controls) {
    double[] logs = new double[2 * heads + 1];
    for (int h = 0; h < heads; h++) {
      double own = 0;
      for (int s : surveys) {
        own += logBayes(s, h);
      }
      double rain = 0;
      for (int s : controls) {
        rain += logBayes(s, h) - logNone(s);
      }
      logs[h] = Math.log(prior.head()) + own;
      logs[heads + h] = Math.log(prior.ground()) + own + rain;
    }
    logs[2 * heads] = Math.log(Math.max(0.05, 1 - heads * (prior.head() + prior.ground())));
    for (int s : surveys) {
      logs[2 * heads] += logNone(s);
    }
    double top = Double.NEGATIVE_INFINITY;
    for (double v : logs) {
      top = Math.max(top, v);
    }
    double sum = 0;
    for (double v : logs) {
      sum += Math.exp(v - top);
    }
    double[] head = new double[heads];
    double[] ground = new double[heads];
    for (int h = 0; h < heads; h++) {
      head[h] = Math.exp(logs[h] - top) / sum;
      ground[h] = Math.exp(logs[heads + h] - top) / sum;
    }
    return new Causes(head, ground, Math.exp(logs[2 * heads] - top) / sum);
  }

  private double logBayes(int survey, int head) {
    return evidence.get(survey).orElseThrow().logBayes()[head];
  }

  /** ln N. */
  private double logNone(int survey) {
    double spot = Math.log(prior.spot()) + evidence.get(survey).orElseThrow().logSpot();
    double none = Math.log(1 - prior.spot());
    double top = Math.max(spot, none);
    return top + Math.log(Math.exp(spot - top) + Math.exp(none - top));
  }
}
