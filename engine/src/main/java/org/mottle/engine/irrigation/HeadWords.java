package org.mottle.engine.irrigation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.survey.WaterHistory;

/** Puts what is known of a green's heads in one survey into findings with their reasons. */
final class HeadWords {
  private final Outcome outcome;
  private final List<WaterHistory> history;
  private final int survey;
  private final GreenHistory green;

  HeadWords(Outcome outcome, List<WaterHistory> history, int survey, GreenHistory green) {
    this.outcome = outcome;
    this.history = history;
    this.survey = survey;
    this.green = green;
  }

  List<HeadFinding> findings(List<Head> heads) {
    List<HeadFinding> findings = new ArrayList<>();
    if (green.evidence(survey).isEmpty()) {
      return findings;
    }
    SectorEvidence e = green.evidence(survey).get();
    GreenHistory.Causes causes = green.in(survey);
    GreenHistory.Causes all = green.combined();
    List<Integer> order =
        IntStream.range(0, heads.size())
            .boxed()
            .sorted(Comparator.comparingDouble(h -> -e.logHead()[h]))
            .toList();
    for (int h = 0; h < heads.size(); h++) {
      findings.add(
          new HeadFinding(
              outcome.subject().green().id(),
              outcome.subject().surveyId(),
              heads.get(h),
              history.get(survey),
              new HeadFinding.Evidence(
                  e.effectPct()[h],
                  e.effectSd()[h],
                  causes.head()[h],
                  all.head()[h],
                  causes.head()[h] + causes.ground()[h],
                  order.indexOf(h) + 1),
              HeadFinding.Verdict.NOT_SUGGESTED,
              new HeadFinding.Words(List.of(), List.of(), "")));
    }
    return findings;
  }
}
