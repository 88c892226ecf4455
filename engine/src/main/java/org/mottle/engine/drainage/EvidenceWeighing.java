package org.mottle.engine.drainage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.drainage.HypothesisScore.EvidenceLine;

/**
 * Adds the evidence of signs. Signs of one family say partly the same: with c = |2p − 1| the
 * clearness of each, the logarithms of a family are divided by 1 + ρ max(0, Σc − 1), ρ = 0.5, as
 * for observations of correlation ρ (Kish 1965); a family of one sign keeps all of it. Probability
 * ∝ prior · exp(score). The order of the signs does not matter, and a sign of p = ½ changes
 * nothing.
 */
final class EvidenceWeighing {
  /** Less is no line: a ratio of 1.05. */
  private static final double A_LINE = Math.log(1.05);

  private final EvidenceTable table;
  private final List<SeenSign> signs;
  private final Map<Sign.Family, Double> clearness = new EnumMap<>(Sign.Family.class);

  EvidenceWeighing(EvidenceTable table, List<SeenSign> given) {
    this.table = table;
    this.signs = given.stream().sorted(Comparator.comparing(SeenSign::sign)).toList();
    for (int i = 1; i < signs.size(); i++) {
      if (signs.get(i).sign() == signs.get(i - 1).sign()) {
        throw new IllegalArgumentException(
            "sign " + signs.get(i).sign() + " is there twice; give each once");
      }
    }
    for (SeenSign s : signs) {
      clearness.merge(s.sign().family(), s.clearness(), Double::sum);
    }
  }

  /** Families in which something is clear, one sign at 3 in 4 or better. */
  long clearFamilies() {
    return signs.stream()
        .filter(s -> s.clearness() >= 0.5)
        .map(s -> s.sign().family())
        .distinct()
        .count();
  }

  /** All, the most probable first; equals in the order of the hypotheses. */
  List<HypothesisScore> scores() {
    Hypothesis[] all = Hypothesis.values();
    double[] score = new double[all.length];
    double top = Double.NEGATIVE_INFINITY;
    for (Hypothesis h : all) {
      for (SeenSign s : signs) {
        score[h.ordinal()] += adds(s, h);
      }
      top = Math.max(top, Math.log(table.prior(h)) + score[h.ordinal()]);
    }
    double[] weight = new double[all.length];
    double sum = 0;
    for (Hypothesis h : all) {
      weight[h.ordinal()] = Math.exp(Math.log(table.prior(h)) + score[h.ordinal()] - top);
      sum += weight[h.ordinal()];
    }
    List<HypothesisScore> scores = new ArrayList<>();
    for (Hypothesis h : all) {
      scores.add(
          new HypothesisScore(
              h, score[h.ordinal()], weight[h.ordinal()] / sum, lines(h, 1), lines(h, -1)));
    }
    scores.sort(Comparator.comparingDouble(HypothesisScore::probability).reversed());
    return scores;
  }

  private double adds(SeenSign s, Hypothesis h) {
    double more = Math.max(0, clearness.get(s.sign().family()) - 1);
    return table.logRatio(s, h) / (1 + EvidenceTable.FAMILY_CORRELATION * more);
  }

  private List<EvidenceLine> lines(Hypothesis h, int way) {
    return signs.stream()
        .map(s -> new EvidenceLine(s.sign(), adds(s, h), s.sentence()))
        .filter(l -> way * l.logRatio() >= A_LINE)
        .sorted(Comparator.comparingDouble(l -> -way * l.logRatio()))
        .toList();
  }
}
