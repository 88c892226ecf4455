package org.mottle.engine.drainage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Why a place may stay wet: what speaks for and against each hypothesis, and what would decide.
 * Evidence, not a verdict; "insufficient evidence" is a valid answer.
 *
 * @param place the place
 * @param hypotheses with their evidence, the most probable first, none of these among them
 * @param suggested the hypothesis that is clearly ahead; empty: insufficient evidence
 * @param why in one sentence, why it is suggested or why the evidence is insufficient
 * @param next the test that would decide between the two best
 * @param notKnown what is not known, in the order in which it would tell the two best apart
 */
public record DrainageFinding(
    WetPlace place,
    List<HypothesisScore> hypotheses,
    Optional<Hypothesis> suggested,
    String why,
    NextTest next,
    List<String> notKnown) {
  /** A hypothesis is suggested from this probability on ... */
  public static final double AHEAD = 0.5;

  /**
   * ... if it is as many times as probable as the next ("positive" evidence: Kass, Raftery 1995).
   */
  public static final double TIMES = 3;

  private static final int FAMILIES = 2;

  /**
   * The next step.
   *
   * @param one the more probable of the two best, none of these left out
   * @param other the second
   * @param text what to do, the test that needs no hole first
   * @param cautions to be printed beside it
   */
  public record NextTest(Hypothesis one, Hypothesis other, String text, List<String> cautions) {
    public NextTest {
      cautions = List.copyOf(cautions);
    }
  }

  public DrainageFinding {
    hypotheses = List.copyOf(hypotheses);
    notKnown = List.copyOf(notKnown);
  }

  /** By the proposed table. */
  public static DrainageFinding of(WetPlace place, Indicators known) {
    return of(place, SignReader.read(known), EvidenceTable.proposal());
  }

  /**
   * @param signs those looked for, each once, in any order
   * @param table how often each is seen where each hypothesis holds
   */
  public static DrainageFinding of(WetPlace place, List<SeenSign> signs, EvidenceTable table) {
    EvidenceWeighing weighing = new EvidenceWeighing(table, signs);
    List<HypothesisScore> scores = weighing.scores();
    List<Hypothesis> best =
        scores.stream()
            .map(HypothesisScore::hypothesis)
            .filter(h -> h != Hypothesis.NONE)
            .limit(2)
            .toList();
    String lacking = lacking(scores, weighing.clearFamilies());
    HypothesisScore first = scores.get(0);
    return new DrainageFinding(
        place,
        scores,
        lacking.isEmpty() ? Optional.of(first.hypothesis()) : Optional.empty(),
        lacking.isEmpty() ? "the evidence suggests " + named(first) : lacking,
        next(best.get(0), best.get(1), first.hypothesis() == Hypothesis.NONE),
        notKnown(signs, table, best.get(0), best.get(1)));
  }

  /** Probability of a hypothesis after the evidence. */
  public double probability(Hypothesis hypothesis) {
    return score(hypothesis).probability();
  }

  /** The evidence of a hypothesis. */
  public HypothesisScore score(Hypothesis hypothesis) {
    return hypotheses.stream().filter(s -> s.hypothesis() == hypothesis).findFirst().orElseThrow();
  }

  private static String lacking(List<HypothesisScore> scores, long families) {
    HypothesisScore first = scores.get(0);
    HypothesisScore second = scores.get(1);
    if (first.hypothesis() == Hypothesis.NONE) {
      return "insufficient evidence: no hypothesis is more likely than that it is none of these; "
          + named(second);
    }
    if (families < FAMILIES) {
      return "insufficient evidence: signs of one kind only are known; the best by them is "
          + named(first);
    }
    return first.probability() >= AHEAD && first.probability() >= TIMES * second.probability()
        ? ""
        : "insufficient evidence: none is clearly ahead; " + named(first) + ", " + named(second);
  }

  private static String named(HypothesisScore s) {
    return String.format(Locale.ROOT, "%s, %.2f", s.hypothesis().label(), s.probability());
  }

  private static NextTest next(Hypothesis one, Hypothesis other, boolean noneFirst) {
    boolean otherFirst = one.digs() && !other.digs();
    Hypothesis first = otherFirst ? other : one;
    Hypothesis then = otherFirst ? one : other;
    String text =
        (noneFirst
                ? "read the place again 24 to 48 h after soaking rain, and 2 to 4 days later; then "
                : "")
            + "for or against %s: %s; for or against %s: %s"
                .formatted(first.label(), first.test(), then.label(), then.test());
    List<String> cautions = new ArrayList<>();
    if (one.digs() || other.digs()) {
      cautions.add(
          "before any hole deeper than the probe have buried services located (irrigation mains,"
              + " control cable, power, gas, drains)");
    }
    cautions.add(
        "drainage and grading are designed by licensed professionals, with permits for discharge;"
            + " this is evidence, not design");
    cautions.add("the site's agronomist and course manager decide");
    return new NextTest(one, other, text, cautions);
  }

  private static List<String> notKnown(
      List<SeenSign> signs, EvidenceTable table, Hypothesis one, Hypothesis other) {
    Set<Sign> unknown = EnumSet.allOf(Sign.class);
    signs.forEach(s -> unknown.remove(s.sign()));
    Comparator<Sign> telling = Comparator.comparingDouble(s -> -table.separation(s, one, other));
    // signs that want the same are asked for once
    Map<String, List<String>> wanted = new LinkedHashMap<>();
    unknown.stream()
        .sorted(telling.thenComparing(s -> s))
        .forEach(s -> wanted.computeIfAbsent(s.wants(), w -> new ArrayList<>()).add(s.statement()));
    return wanted.entrySet().stream()
        .map(e -> "whether " + String.join("; whether ", e.getValue()) + ": wants " + e.getKey())
        .toList();
  }
}
