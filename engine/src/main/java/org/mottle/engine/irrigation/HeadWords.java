package org.mottle.engine.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.mottle.engine.irrigation.HeadFinding.Evidence;
import org.mottle.engine.irrigation.HeadFinding.Verdict;
import org.mottle.engine.irrigation.HeadFinding.Words;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.survey.WaterHistory;

/**
 * Puts what is known of a green's heads in one survey into findings with their reasons. A head is
 * suggested from {@value #LOOK} on, to be considered from {@value #CONSIDER} on, and neither where
 * the survey by itself gives it less than {@value #LEAST_OWN}.
 */
final class HeadWords {
  static final double LOOK = 0.8;
  static final double CONSIDER = 0.5;

  /** Other surveys do not name a head that this one hardly shows. */
  static final double LEAST_OWN = 0.2;

  /** A shortfall whose standard error is not below its prior deviation cannot be seen. */
  private static final double LEAST_SHOWN = 1;

  /** A cause of this probability is worth a word. */
  private static final double WORTH_A_WORD = 0.15;

  private final Outcome outcome;
  private final int survey;
  private final GreenHistory green;

  HeadWords(Outcome outcome, int survey, GreenHistory green) {
    this.outcome = outcome;
    this.survey = survey;
    this.green = green;
  }

  List<HeadFinding> findings(List<Head> heads) {
    if (green.evidence(survey).isEmpty()) {
      return heads.stream()
          .map(h -> finding(h, Evidence.NONE, Verdict.CANNOT_TELL, untested()))
          .toList();
    }
    SectorEvidence e = green.evidence(survey).get();
    GreenHistory.Causes causes = green.in(survey);
    double[] combined = green.combined(survey);
    List<Integer> order =
        IntStream.range(0, heads.size())
            .boxed()
            .sorted(Comparator.comparingDouble(h -> -e.logHead()[h]))
            .toList();
    List<HeadFinding> findings = new ArrayList<>();
    for (int h = 0; h < heads.size(); h++) {
      Head head = heads.get(h);
      Evidence figures =
          new Evidence(
              e.effectPct()[h],
              e.effectSd()[h],
              causes.head()[h],
              combined[h],
              causes.ground()[h],
              causes.spot(),
              order.indexOf(h) + 1);
      Optional<Words> why = cannotTell(e.shown()[h]);
      Verdict verdict = why.isPresent() ? Verdict.CANNOT_TELL : verdict(figures);
      findings.add(
          finding(head, figures, verdict, why.orElseGet(() -> words(figures, verdict, head))));
    }
    return findings;
  }

  private HeadFinding finding(Head head, Evidence evidence, Verdict verdict, Words words) {
    return new HeadFinding(
        outcome.subject().green().id(),
        outcome.subject().surveyId(),
        head,
        green.history(survey),
        evidence,
        verdict,
        words);
  }

  private Words untested() {
    if (outcome instanceof Outcome.NoMap no) {
      return new Words(List.of(), List.of("no map: " + no.why().reason()), no.why().remedy());
    }
    return new Words(
        List.of(),
        List.of("without a variogram the readings cannot be told from chance"),
        "map by kriging");
  }

  private Optional<Words> cannotTell(double shown) {
    return switch (green.history(survey)) {
      case AFTER_RAIN ->
          Optional.of(
              new Words(
                  List.of(),
                  List.of(
                      "after rain the ground shows how it drains, not how it is watered; the"
                          + " survey is used to tell the ground from its heads"),
                  "read the same stations 2 to 12 h after an irrigation"));
      case UNKNOWN ->
          Optional.of(
              new Words(
                  List.of(),
                  List.of("the water before the survey is not on record"),
                  "record irr_h and irr_mm, rain_h and rain_mm of the survey"));
      default ->
          shown < LEAST_SHOWN
              ? Optional.of(
                  new Words(
                      List.of(),
                      List.of(
                          "the head's share of the water is so alike at the stations read that a"
                              + " shortfall would not show"),
                      "read stations where it gives most and where it gives least"))
              : Optional.empty();
    };
  }

  private Verdict verdict(Evidence e) {
    if (e.probability() < LEAST_OWN || e.combined() < CONSIDER) {
      return Verdict.NOT_SUGGESTED;
    }
    boolean irrigated = green.history(survey) == WaterHistory.AFTER_IRRIGATION;
    return irrigated && e.combined() >= LOOK ? Verdict.LOOK : Verdict.CONSIDER;
  }

  private Words words(Evidence e, Verdict verdict, Head head) {
    boolean named = verdict != Verdict.NOT_SUGGESTED;
    return new Words(speaksFor(e, named), against(e, named), named ? next(head) : "");
  }

  private List<String> speaksFor(Evidence e, boolean named) {
    List<String> reasons = new ArrayList<>();
    if (!named && e.probability() < WORTH_A_WORD) {
      return reasons;
    }
    reasons.add(
        String.format(
            Locale.ROOT,
            "%s the ground it waters is drier than the rest, by %.1f %% by volume where it gives"
                + " most (standard deviation %.1f): consistent with a head that gives too little,"
                + " %s from this survey",
            green.history(survey).label(),
            -e.effectPct(),
            e.effectSd(),
            chance(e.probability())));
    if (green.seenBesideOthers(survey) && e.ground() < e.probability() / 3) {
      reasons.add("after rain and in dry days the same ground is not so much drier");
    }
    if (others() > 0 && e.combined() > e.probability()) {
      reasons.add(together(e));
    }
    return reasons;
  }

  private List<String> against(Evidence e, boolean named) {
    List<String> reasons = new ArrayList<>();
    if (!named && e.probability() + e.ground() < WORTH_A_WORD) {
      return reasons;
    }
    if (!green.seenBesideOthers(survey)) {
      reasons.add(
          "no survey after rain or in dry days beside it: slope, soil and roots under the head"
              + " would look the same; read the same stations 24 to 48 h after soaking rain, or"
              + " just before an irrigation");
    } else if (e.ground() >= WORTH_A_WORD) {
      reasons.add(
          "the same ground is dry after rain or in dry days too, "
              + chance(e.ground())
              + ": slope, drainage or soil rather than the head");
    }
    if (e.spot() >= WORTH_A_WORD) {
      reasons.add("one dry or wet place of another cause would explain it, " + chance(e.spot()));
    }
    if (others() > 0 && e.combined() <= e.probability()) {
      reasons.add(together(e));
    }
    if (green.history(survey) == WaterHistory.DRYING) {
      reasons.add("dry days: how the ground dries is seen with how it was watered");
    }
    if (low() > 0) {
      reasons.add(
          low()
              + " stations are a drier population by themselves, small and scattered, consistent"
              + " with water repellency; they are left out of this");
    }
    return reasons;
  }

  /** Surveys after irrigation but for this one. */
  private long others() {
    return green.irrigated().stream().filter(s -> s != survey).count();
  }

  private String together(Evidence e) {
    return chance(e.combined())
        + (others() == 1
            ? " together with the other survey after irrigation"
            : " together with the " + others() + " other surveys after irrigation");
  }

  private int low() {
    return outcome instanceof Outcome.Mapped m
        ? m.basis().kriging().map(k -> k.low().size()).orElse(0)
        : 0;
  }

  private static String next(Head head) {
    String run = head.station().isEmpty() ? "run its station" : "run station " + head.station();
    return run
        + " and watch head "
        + head.id()
        + ": does it turn, how far does it throw, at what pressure; catch cans round it tell how"
        + " much it gives. Watering the whole green longer would leave the rest too wet; the site's"
        + " agronomist decides";
  }

  /** In tenths. */
  private static String chance(double p) {
    if (p < 0.05) {
      return "less than 1 in 20";
    }
    return p >= 0.95 ? "more than 19 in 20" : Math.max(1, Math.round(10 * p)) + " in 10";
  }
}
